"""A page within a document: ids with the page's name, links that lead within, pictures in it."""

import pytest
from markupsafe import Markup

from underhoist.bound import Binder, name_of
from underhoist.pages import Sheet

HERE = "kestrel-3/set-band/"


def bound(html, **more):
    names = {HERE: "kestrel-3/set-band", "tools/torch/": "tools/torch", "": "front"}
    binder = Binder(names, lambda address: f"data:{address}", **more)
    sheet = Sheet(address=HERE, kind="procedure", title="t", summary="s", html=Markup(html))  # noqa: S704
    return binder.bound(sheet)


@pytest.mark.parametrize(
    ("written", "wanted"),
    [
        ('<a href="../../tools/torch/">x</a>', '<a href="#tools/torch">x</a>'),
        ('<a href="../../tools/torch/#use">x</a>', '<a href="#tools/torch.use">x</a>'),
        ('<a href="../../tools/torch/?a=1&amp;b=2">x</a>',
         '<a href="#tools/torch?a=1&amp;b=2">x</a>'),
        ('<a href="#step-2">x</a>', '<a href="#kestrel-3/set-band.step-2">x</a>'),
        ('<a href="../../">x</a>', '<a href="#front">x</a>'),
        ('<a class="c" href="../other/">x</a>', '<a class="c">x</a>'),
        ('<a href="https://example.org/">x</a>', '<a href="https://example.org/">x</a>'),
        ('<li id="step-1">x</li>', '<li id="kestrel-3/set-band.step-1">x</li>'),
        ('<input aria-describedby="a-help a-error">',
         '<input aria-describedby="kestrel-3/set-band.a-help kestrel-3/set-band.a-error">'),
        ('<img src="../../drawings/band.svg" alt="">', '<img src="data:drawings/band.svg" alt="">'),
        ('<rect fill="url(#hatch)"/>', '<rect fill="url(#kestrel-3/set-band.hatch)"/>'),
        ("<p>1 &lt; 2 &#39;x&#39; &amp; more</p>", "<p>1 &lt; 2 &#39;x&#39; &amp; more</p>"),
        ('<svg viewBox="0 0 2 2"><path d="M0 0z"/></svg>',
         '<svg viewBox="0 0 2 2"><path d="M0 0z"/></svg>'),
    ],
)  # fmt: skip
def test_one_piece(written, wanted):
    assert bound(written) == wanted


def test_what_is_left_out_takes_all_that_is_in_it_along():
    html = '<p>a</p><section class="uh-used"><section><p>b<br></p></section></section><p>c</p>'
    assert bound(html, without=("uh-used",)) == "<p>a</p><p>c</p>"


def test_lists_of_the_site_lead_to_what_stands_for_them():
    html = '<a href="../../areas/bands/">x</a>'
    assert (
        bound(html, lists={"areas": "contents.procedures"})
        == '<a href="#contents.procedures">x</a>'
    )


def test_names():
    assert (name_of(""), name_of(HERE)) == ("front", "kestrel-3/set-band")
