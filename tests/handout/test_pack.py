"""The manual in one file: whole without a script, and held to what stands in it."""

import base64
import gzip
import hashlib
import json
import re

import pytest

from underhoist.bound import Choice, chosen
from underhoist.pack import pack
from underhoist.pack.dense import CHARSET, ascii_script, ascii_style, dense


@pytest.fixture(scope="module")
def text(demo, modules):
    sheets = chosen(demo, Choice(procedures=("set-band",)))
    made = pack(demo, sheets, modules, address="https://manual.example.org/", calculators=False)
    return made.content.decode("latin-1")


def of_element(text, name):
    return re.search(rf"<{name}>(.*?)</{name}>", text, re.DOTALL)[1]


def test_the_text_stands_in_it_as_it_is(text):
    plain = text[: text.index("<script>")]
    assert "Seat the screw" in plain
    assert "pound-force inches" in plain
    assert 'href="#kestrel-3/set-band"' in plain


def test_every_link_leads_to_a_place_of_the_file(text):
    ids = set(re.findall(r'\sid="([^"]+)"', text))
    links = re.findall(r'\shref="#([^"?]+)', text)
    assert len(links) > 40
    assert [each for each in links if each not in ids] == []


def test_no_id_stands_twice(text):
    ids = re.findall(r'\sid="([^"]+)"', text[: text.index("<script>")])
    assert sorted(ids) == sorted(set(ids))


def test_nothing_is_fetched_and_only_its_own_script_and_style_count(text):
    """Content Security Policy Level 3: hashes of inline scripts and styles."""
    policy = re.search(r'Content-Security-Policy" content="([^"]+)"', text)[1].replace("&#39;", "'")
    for name, source in (("script", "script-src"), ("style", "style-src")):
        digest = base64.b64encode(hashlib.sha256(of_element(text, name).encode()).digest()).decode()
        assert f"{source} 'sha256-{digest}'" in policy
    assert "default-src 'none'" in policy
    assert "unsafe-inline" not in policy
    assert re.findall(r'\s(?:src|href)="(?!data:|#)([^"]*)"', text[: text.index("<script>")]) == [
        "https://manual.example.org/"
    ]
    assert ' style="' not in text[: text.index("<script>")]


def test_it_says_why_there_are_no_job_cards_and_where_they_are(text):
    assert "Job cards are not in it" in text
    assert "https://manual.example.org/" in text
    assert "prints with a square to tick" in text


def test_the_demo_says_that_it_is_invented(text):
    assert "Its figures are invented" in text


def test_a_calculator_that_does_not_answer_says_so(text):
    assert "This file was made for reading only" in text
    assert 'id="worker"' not in text
    assert "part-image" not in text
    assert "Causes are found by hand" in text
    assert "data-fault=" not in text


def test_a_page_gives_every_byte_back(text):
    """HTML Living Standard: a parser changes NUL and CR; an element ends at "<"."""
    whole = bytes(range(256)) * 2 + b"</script>\r\n\0=}"
    written = dense(whole)
    assert not set(b"\0\r<") & set(written)
    assert len(written) < len(whole) * 1.03
    back = re.sub(rb"=(.)", lambda found: bytes([found[1][0] - 64]), written, flags=re.DOTALL)
    assert back == whole
    assert f'<meta charset="{CHARSET}">' in text[:1024]


def test_scripts_and_styles_are_written_in_ascii():
    assert ascii_script('"½ \N{LEFT RIGHT ARROW} \N{WRENCH}"') == r'"\u00bd \u2194 \ud83d\udd27"'
    assert ascii_style('content: "·a"') == r'content: "\b7 a"'


def test_complaints_of_the_set_alone_are_in_it(demo, modules):
    sheets = chosen(demo, Choice(families=("plover-2",)))
    content = pack(demo, sheets, modules).content
    [packed] = re.findall(rb'id="part-faults">(.*?)</script>', content, re.DOTALL)
    back = re.sub(rb"=(.)", lambda found: bytes([found[1][0] - 64]), packed, flags=re.DOTALL)
    held = json.loads(gzip.decompress(back))
    assert held.keys() == {each.address.split("/")[1] for each in sheets if each.kind == "fault"}
    assert 0 < len(held) < len(demo.manual.faults) or held.keys() == demo.manual.faults.keys()
