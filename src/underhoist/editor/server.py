"""The language server over standard input and output; any editor that speaks its protocol will do.

Nothing is decided here: places and texts go in, findings and suggestions come out.
"""

import asyncio
from importlib.metadata import version
from itertools import count
from pathlib import Path

from lsprotocol import types as lsp
from pygls.lsp.server import LanguageServer
from pygls.uris import from_fs_path, to_fs_path
from pygls.workspace import TextDocument

from underhoist.editor.cursor import spot
from underhoist.editor.desk import Desk, folder_of
from underhoist.editor.help import explanation, suggestions
from underhoist.finding import Finding, Severity
from underhoist.project import Unusable

_LEVEL = {
    Severity.STOP: lsp.DiagnosticSeverity.Error,
    Severity.LOOK: lsp.DiagnosticSeverity.Warning,
}

PAUSE = 0.25
"""Seconds without a keystroke before the findings are looked for."""

server = LanguageServer("underhoist", version("underhoist"))
_desks: dict[Path, Desk] = {}
_changes = count(1)
_latest: dict[Path, int] = {}
"""Number of the last change in each manual."""
_told: dict[Path, set[str]] = {}
"""Files of each manual whose findings were published, so that they can be taken back."""


def _desk_of(document: TextDocument) -> tuple[Desk, str] | None:
    """Return the manual of an open page and the page's path in it."""
    path = Path(document.path)
    folder = folder_of(path)
    if folder is None:
        return None
    try:
        desk = _desks.get(folder) or _desks.setdefault(folder, Desk(folder))
    except Unusable:
        return None
    return desk, path.resolve().relative_to(folder).as_posix()


def _publish(desk: Desk) -> None:
    """Show the findings of every page that has any, and clear those of pages that had."""
    found = desk.findings()
    for file in _told.get(desk.folder, set()) - found.keys():
        found[file] = []
    _told[desk.folder] = {file for file, findings in found.items() if findings}
    for file, findings in found.items():
        uri = from_fs_path(str(desk.folder / file)) or ""
        document = server.workspace.get_text_document(uri)
        diagnostics = [_diagnostic(each, document) for each in findings]
        server.text_document_publish_diagnostics(
            lsp.PublishDiagnosticsParams(uri=uri, diagnostics=diagnostics)
        )


def _diagnostic(finding: Finding, document: TextDocument) -> lsp.Diagnostic:
    lines = _lines(document)
    line = min(finding.at.line - 1, max(len(lines) - 1, 0))
    text = lines[line].rstrip("\r\n") if lines else ""
    start = min(finding.at.column - 1, len(text))
    end = start + len(finding.written)
    end = end if finding.written and text[start:end] == finding.written else len(text)
    return lsp.Diagnostic(
        range=document.position_codec.range_to_client_units(lines, _range(line, start, line, end)),
        severity=_LEVEL[finding.severity],
        code=finding.code,
        source="underhoist",
        message=f"{finding.wrong} {finding.mend}",
    )


def _lines(document: TextDocument) -> list[str]:
    """Return the page's lines; a file that is gone or no text has none."""
    try:
        return list(document.lines)
    except (OSError, UnicodeDecodeError):
        return []


def _range(line: int, column: int, end_line: int, end_column: int) -> lsp.Range:
    return lsp.Range(lsp.Position(line, column), lsp.Position(end_line, end_column))


@server.feature(lsp.TEXT_DOCUMENT_DID_OPEN)
def _opened(params: lsp.DidOpenTextDocumentParams) -> None:
    if desk := _show(params.text_document.uri):
        _publish(desk)


@server.feature(lsp.TEXT_DOCUMENT_DID_CHANGE)
async def _changed(params: lsp.DidChangeTextDocumentParams) -> None:
    """Check once the author pauses: a large manual takes longer than a keystroke."""
    desk = _show(params.text_document.uri)
    if desk is None:
        return
    _latest[desk.folder] = mine = next(_changes)
    await asyncio.sleep(PAUSE)
    if _latest[desk.folder] == mine:
        _publish(desk)


def _show(uri: str) -> Desk | None:
    """Lay the page as it is in the editor over the manual; return the manual if it has one."""
    document = server.workspace.get_text_document(uri)
    found = _desk_of(document)
    if found is None:
        return None
    desk, file = found
    desk.show(file, document.source)
    return desk


@server.feature(lsp.TEXT_DOCUMENT_DID_SAVE)
def _saved(params: lsp.DidSaveTextDocumentParams) -> None:
    if found := _desk_of(server.workspace.get_text_document(params.text_document.uri)):
        found[0].read_again()
        _publish(found[0])


@server.feature(lsp.TEXT_DOCUMENT_DID_CLOSE)
def _closed(params: lsp.DidCloseTextDocumentParams) -> None:
    path = to_fs_path(params.text_document.uri)
    folder = folder_of(Path(path)) if path else None
    desk = _desks.get(folder) if folder else None
    if path and folder and desk:
        desk.close(Path(path).resolve().relative_to(folder).as_posix())
        _publish(desk)


@server.feature(
    lsp.TEXT_DOCUMENT_COMPLETION, lsp.CompletionOptions(trigger_characters=[":", " ", "[", "{"])
)
def _complete(params: lsp.CompletionParams) -> lsp.CompletionList:
    document = server.workspace.get_text_document(params.text_document.uri)
    found = _desk_of(document)
    if found is None:
        return lsp.CompletionList(is_incomplete=False, items=[])
    desk, file = found
    place = document.position_codec.position_from_client_units(document.lines, params.position)
    offered = suggestions(
        desk.manual, desk.page(file), document.source, place.line, place.character
    )
    here = spot(document.source.split("\n"), place.line, place.character)
    begun = place.character - len(here.typed) if here else place.character
    where = document.position_codec.range_to_client_units(
        document.lines, _range(place.line, begun, place.line, place.character)
    )
    items = [
        lsp.CompletionItem(
            label=each.label,
            text_edit=lsp.TextEdit(range=where, new_text=each.insert),
            detail=each.detail or None,
            documentation=each.explained or None,
            sort_text=f"{number:04}",
        )
        for number, each in enumerate(offered)
    ]
    return lsp.CompletionList(is_incomplete=False, items=items)


@server.feature(lsp.TEXT_DOCUMENT_HOVER)
def _hover(params: lsp.HoverParams) -> lsp.Hover | None:
    document = server.workspace.get_text_document(params.text_document.uri)
    found = _desk_of(document)
    if found is None:
        return None
    desk, file = found
    place = document.position_codec.position_from_client_units(document.lines, params.position)
    said = explanation(desk.manual, desk.page(file), document.source, place.line, place.character)
    return lsp.Hover(contents=said) if said else None


@server.feature(
    lsp.TEXT_DOCUMENT_CODE_ACTION,
    lsp.CodeActionOptions(code_action_kinds=[lsp.CodeActionKind.QuickFix]),
)
def _mends(params: lsp.CodeActionParams) -> list[lsp.CodeAction]:
    """Offer the mechanical mends of the findings in the range."""
    document = server.workspace.get_text_document(params.text_document.uri)
    found = _desk_of(document)
    if found is None:
        return []
    desk, file = found
    return [
        _action(each, document)
        for each in desk.findings().get(file, [])
        if each.edit and params.range.start.line <= each.at.line - 1 <= params.range.end.line
    ]


def _action(finding: Finding, document: TextDocument) -> lsp.CodeAction:
    edit = finding.edit
    changes: dict[str, list[lsp.TextEdit]] = {}
    if edit is not None:
        where = _range(edit.line - 1, edit.column - 1, edit.end_line - 1, edit.end_column - 1)
        where = document.position_codec.range_to_client_units(document.lines, where)
        changes[document.uri] = [lsp.TextEdit(range=where, new_text=edit.text)]
    return lsp.CodeAction(
        title=finding.mend,
        kind=lsp.CodeActionKind.QuickFix,
        diagnostics=[_diagnostic(finding, document)],
        edit=lsp.WorkspaceEdit(changes=changes),
    )
