"""The language server, driven by its protocol as an editor drives it."""

import json
import subprocess
import sys
from itertools import count

import pytest
from click.testing import CliRunner

from underhoist.cli import main


class Editor:
    """Speaks the base protocol: a header with the length, then JSON."""

    def __init__(self):
        self.folder = None
        self.numbers = count(1)
        self.published = {}
        self.process = subprocess.Popen(
            [sys.executable, "-m", "underhoist", "editor"],
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
        )  # fmt: skip
        self.abilities = self.ask("initialize", processId=None, rootUri=None, capabilities={})
        self.tell("initialized")

    def work_in(self, folder):
        """Turn to another manual: what is still published for the last one is not heard."""
        self.folder, self.published = folder, {}

    def send(self, **message):
        text = json.dumps({"jsonrpc": "2.0", **message}).encode()
        self.process.stdin.write(b"Content-Length: %d\r\n\r\n%s" % (len(text), text))
        self.process.stdin.flush()

    def read(self):
        length = 0
        while line := self.process.stdout.readline().strip():
            name, _, value = line.partition(b":")
            if name.lower() == b"content-length":
                length = int(value)
        message = json.loads(self.process.stdout.read(length))
        if message.get("method") == "textDocument/publishDiagnostics":
            at = message["params"]
            if self.folder and at["uri"].startswith(self.uri("")):
                self.published[at["uri"].rpartition("/procedures/")[2]] = at["diagnostics"]
        return message

    def tell(self, method, **params):
        self.send(method=method, params=params)

    def ask(self, method, **params):
        number = next(self.numbers)
        self.send(id=number, method=method, params=params)
        while (message := self.read()).get("id") != number:
            pass
        assert "error" not in message, message
        return message["result"]

    def uri(self, file):
        folder = (self.folder / "procedures").as_uri()
        return f"{folder}/{file}"

    def open(self, file, text=None):
        text = (self.folder / "procedures" / file).read_text() if text is None else text
        document = {"uri": self.uri(file), "languageId": "markdown", "version": 1, "text": text}
        self.tell("textDocument/didOpen", textDocument=document)
        self.diagnostics(file)
        return text

    def change(self, file, text, version=2):
        self.tell(
            "textDocument/didChange",
            textDocument={"uri": self.uri(file), "version": version},
            contentChanges=[{"text": text}],
        )

    def at(self, method, file, line, character):
        return self.ask(
            f"textDocument/{method}",
            textDocument={"uri": self.uri(file)},
            position={"line": line, "character": character},
        )

    def completed(self, file, line, character):
        items = self.at("completion", file, line, character)["items"]
        return {item["label"]: item for item in items}

    def diagnostics(self, file):
        """What is published next for the file."""
        self.published.pop(file, None)
        while file not in self.published:
            self.read()
        return self.published[file]

    def stop(self):
        self.ask("shutdown")
        self.tell("exit")
        return self.process.wait(timeout=20)


PAGE = "example-3/fit-pan.md"


@pytest.fixture(scope="module")
def server():
    """One server for all manuals: an editor too keeps it for whatever folders are opened."""
    editor = Editor()
    yield editor
    editor.process.kill()
    editor.process.wait()


@pytest.fixture
def editor(server, tmp_path):
    """The editor in a new manual, of which the server knows nothing yet."""
    folder = tmp_path / "manual"
    assert CliRunner().invoke(main, ["init", str(folder)]).exit_code == 0
    server.work_in(folder)
    return server


def row(text, start):
    return next(number for number, line in enumerate(text.split("\n")) if line.startswith(start))


def test_it_says_what_it_can_do_and_stops_when_it_is_told():
    editor = Editor()
    able = editor.abilities["capabilities"]
    assert able["completionProvider"] and able["hoverProvider"] and able["codeActionProvider"]
    assert editor.stop() == 0


def test_a_good_page_has_no_findings(editor):
    editor.open(PAGE)
    assert editor.published[PAGE] == []


def test_while_one_types_only_the_last_state_is_checked(editor):
    text = editor.open(PAGE)
    for number, typed in enumerate(("w", "wh", "whoo: senior"), 2):
        editor.change(PAGE, text.replace("who: apprentice", typed), number)
    (found,) = editor.diagnostics(PAGE)
    assert found["code"] == "unknown-key"


def test_findings_are_those_of_the_check_and_go_when_the_page_is_mended(editor):
    text = editor.open(PAGE)
    editor.change(PAGE, text.replace("who: apprentice", "who: aprentice"))
    (found,) = editor.diagnostics(PAGE)
    assert (found["code"], found["severity"], found["source"]) == ("wrong-value", 1, "underhoist")
    assert found["message"] == "who is apprentice or senior. Did you mean apprentice?"
    line = row(text, "who:")
    assert found["range"] == {
        "start": {"line": line, "character": 5}, "end": {"line": line, "character": 14},
    }  # fmt: skip
    editor.change(PAGE, text, 3)
    assert editor.diagnostics(PAGE) == []


def test_a_page_that_breaks_another_is_marked_there_too(editor):
    family = "families/example-3.md"
    text = editor.open(family)
    editor.change(family, text.replace("  pan-bolts:", "  cover-bolts:"))
    assert {each["code"] for each in editor.diagnostics(PAGE)} == {"dead-reference"}


def test_columns_are_counted_as_the_protocol_does(editor):
    """By default in UTF-16 units: a sign beyond the basic plane counts as two."""
    text = editor.open("words.md")
    editor.change("words.md", text + "\n\U0001f527\U0001f527 <tool:wrnch>\n")
    (found,) = [e for e in editor.diagnostics("words.md") if e["code"] == "dead-reference"]
    assert found["range"]["start"]["character"] == 5


def test_keys_that_are_not_there_yet_are_completed_and_explained(editor):
    text = editor.open(PAGE)
    line = row(text, "readings:")
    editor.change(PAGE, text.replace("readings:", "f\nreadings:"))
    offered = editor.completed(PAGE, line, 1)
    assert {"fluids", "fasteners", "author", "before"} <= offered.keys()
    assert not {"title", "tools", "kind"} & offered.keys()
    assert offered["fluids"]["documentation"].startswith("Specifications of the fluids used.")
    assert offered["fluids"]["textEdit"]["newText"] == "fluids: "


def test_nested_keys_choices_units_and_ids_are_completed(editor):
    text = editor.open(PAGE)
    line = row(text, "    unit:")
    assert "mm" in editor.completed(PAGE, line, len("    unit: "))
    assert editor.completed(PAGE, line + 1, len("    when: ")).keys() == {
        "as found", "as left", "both",
    }  # fmt: skip
    tools = editor.completed(PAGE, row(text, "tools:"), len("tools: ["))
    assert tools["inch-pound-wrench"]["detail"] == "Inch-pound torque wrench"
    assert editor.completed(PAGE, row(text, "unit_family:"), len("unit_family: ")).keys() == {
        "any", "example-3",
    }  # fmt: skip


def test_an_id_half_typed_is_replaced_whole(editor):
    text = editor.open(PAGE)
    line = row(text, "torques:")
    editor.change(PAGE, text.replace("torques: [pan-bolts]", "torques: [pan-b"))
    edit = editor.completed(PAGE, line, len("torques: [pan-b"))["pan-bolts"]["textEdit"]
    assert edit["newText"] == "pan-bolts"
    assert edit["range"]["start"]["character"] == len("torques: [")


def test_references_in_the_text_are_completed_with_their_value(editor):
    text = editor.open(PAGE)
    line = len(text.split("\n")) - 1
    editor.change(PAGE, f"{text}Mind <torque:")
    offered = editor.completed(PAGE, line, len("Mind <torque:"))
    assert offered["pan-bolts"]["documentation"] == "Pan bolts\n\n110 lbf*in"


def test_hover_explains_keys_ids_and_references(editor):
    text = editor.open(PAGE)

    def said(start, word):
        line = row(text, start)
        found = editor.at("hover", PAGE, line, text.split("\n")[line].index(word) + 1)
        return found and found["contents"]

    assert said("minutes:", "minutes") == (
        "How long it takes, in minutes.\n\n"
        "Written as: a whole number, at least 1 and at most 10000, e.g. 25."
    )
    assert (
        said("tools:", "inch-pound")
        == "Inch-pound torque wrench\n\nThe short wrench for small bolts."
    )
    assert said("4. Tighten", "pan-bolts") == "Pan bolts\n\n110 lbf*in"
    assert said("cautions:", "raised-vehicle").startswith("Raised vehicle\n\nDANGER: It falls")
    assert said("3. Lay", "gasket") is None


def test_a_new_page_without_a_kind_is_offered_the_kinds(editor):
    editor.open("new.md", "---\nki\n")
    assert editor.completed("new.md", 1, 2).keys() == {"kind"}
    editor.change("new.md", "---\nkind: \n")
    assert "hazard" in editor.completed("new.md", 1, 6)


def test_a_page_that_is_in_no_manual_is_left_alone(editor, tmp_path):
    uri = (tmp_path / "elsewhere.md").as_uri()
    editor.tell(
        "textDocument/didOpen",
        textDocument={"uri": uri, "languageId": "markdown", "version": 1, "text": "---\nki"},
    )
    asked = {"textDocument": {"uri": uri}, "position": {"line": 1, "character": 2}}
    assert editor.ask("textDocument/completion", **asked)["items"] == []
    assert editor.ask("textDocument/hover", **asked) is None


def test_another_page_saved_elsewhere_counts_after_saving(editor):
    text = editor.open(PAGE)
    editor.change(PAGE, text.replace("tools: [", "tools: [drift, "))
    assert [each["code"] for each in editor.diagnostics(PAGE)] == ["dead-reference"]
    tool = "---\nkind: tool\ntitle: Drift\nsummary: Knocks pins out.\n---\n"
    (editor.folder / "procedures/tools/drift.md").write_text(tool)
    editor.tell("textDocument/didSave", textDocument={"uri": editor.uri(PAGE)})
    assert editor.diagnostics(PAGE) == []
