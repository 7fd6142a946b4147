"""What a built page says to machines: one block of JSON-LD in the head of each procedure."""

import json
import re

import pytest

BLOCK = re.compile(r'<script type="application/ld\+json">(.*?)</script>', re.DOTALL)


@pytest.fixture(scope="module")
def texts(built):
    """Every page of the built site by its address."""
    return {
        path.parent.relative_to(built.site).as_posix(): path.read_text(encoding="utf-8")
        for path in built.site.rglob("index.html")
    }


def test_each_procedure_has_one_and_no_other_page_has_any(texts):
    told = {address for address, text in texts.items() if BLOCK.search(text)}
    assert told == {"jobs/set-band", "jobs/raise", "jobs/road-test"}
    for address in told:
        head, _, body = texts[address].partition("</head>")
        (block,) = BLOCK.findall(head)
        assert json.loads(block)["@type"] == "HowTo"
        assert not BLOCK.search(body)


def test_addresses_in_it_lead_to_what_is_on_the_site(texts, built):
    data = json.loads(BLOCK.findall(texts["jobs/set-band"])[0])
    page = built.site / "jobs/set-band"
    assert all((page / tool["url"] / "index.html").is_file() for tool in data["tool"])
    assert all((page / image).is_file() for image in data["image"])


def test_no_page_has_a_script_that_a_strict_policy_would_stop(texts):
    """Scripts come as files of the site; what stands in a page is data, which is not run."""
    for address, text in texts.items():
        for attributes, inner in re.findall(r"<script\b([^>]*)>(.*?)</script>", text, re.DOTALL):
            is_data = 'type="application/' in attributes
            assert is_data or ("src=" in attributes and not inner.strip()), address
