"""The page of words: under their letters, each with a place of its own, other names below."""

from markupsafe import Markup

from underhoist.check import check
from underhoist.links import word_address, word_anchor
from underhoist.pages.words import LETTERS_FROM, words_list

PAGE = "---\nkind: page\ntitle: Words\nsummary: Ours.\nwords:\n{words}---\nBefore.\n"


def manual(folder, words):
    (folder / "words.md").write_text(PAGE.format(words=words), encoding="utf-8")
    return check(folder).manual


def test_words_stand_under_their_letters_in_the_order_of_the_alphabet(tmp_path):
    words = manual(tmp_path, "  pan: {}\n  bush: {}\n  Band: {}\n  3-2 shift: {}\n").words
    html = words_list(words)
    marks = ("letter-other", "word-3-2-shift", "letter-b", "word-band", "word-bush", "letter-p")
    places = [html.index(f'id="{each}"') for each in marks]
    assert places == sorted(places)
    assert html.count("<h2") == 3


def test_an_entry_says_meaning_and_other_names(tmp_path):
    written = "  bush: {also: [bushing, plain bearing], heard: [sleeve], meaning: It wears.}\n"
    assert Markup(
        '<div id="word-bush"><dt>bush</dt>\n<dd>It wears.</dd>\n'
        '<dd class="uh-words__others"><b>Also:</b> bushing, plain bearing</dd>\n'
        '<dd class="uh-words__others"><b>Heard for it:</b> sleeve</dd></div>'
    ) in words_list(manual(tmp_path, written).words)


def test_markup_in_a_word_stays_text(tmp_path):
    html = words_list(manual(tmp_path, '  "<b>x": {also: ["<i>y"]}\n').words)
    assert "&lt;b&gt;x" in html and "&lt;i&gt;y" in html and 'id="word-b-x"' in html


def test_letters_lead_to_many_words_and_not_to_few(tmp_path):
    few = "".join(f"  word {n}: {{}}\n" for n in range(LETTERS_FROM - 1))
    assert "uh-jumps" not in words_list(manual(tmp_path, few).words)
    many = words_list(manual(tmp_path, few + "  axle: {}\n").words)
    assert '<li><a href="#letter-a">A</a></li><li><a href="#letter-w">W</a></li>' in many


def test_no_words_no_list(tmp_path):
    assert words_list(manual(tmp_path, "  {}\n").words) == ""


def test_address_of_a_word(tmp_path):
    made = manual(tmp_path, "  Kick-down: {}\n  lbf·in: {}\n")
    assert word_address(made, "Kick-down") == "words/#word-kick-down"
    assert word_address(made, "bush") is None
    assert word_anchor("lbf·in") == "word-lbf-in"
