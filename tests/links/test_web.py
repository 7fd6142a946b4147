"""Who uses what, and the order of the work."""


def test_before_shows_on_both_pages(web):
    links = web(a=("before: [b]", "Do it."), b=("", "Do it."))
    assert links.before == {"a": ("b",), "b": ()}
    assert links.follows == {"a": (), "b": ("a",)}


def test_after_shows_on_both_pages(web):
    links = web(a=("after: [b]", "Do it."), b=("", "Do it."))
    assert links.before == {"a": (), "b": ("a",)}
    assert links.follows == {"a": ("b",), "b": ()}


def test_what_both_pages_say_counts_once(web):
    links = web(a=("after: [b]", "Do it."), b=("before: [a]", "Do it."))
    assert links.follows["a"] == ("b",)
    assert links.before["b"] == ("a",)


def test_order_of_the_author_is_kept(web):
    plain = ("", "Do it.")
    links = web(a=("before: [d, b, c]", "Do it."), b=plain, c=plain, d=plain)
    assert links.before["a"] == ("d", "b", "c")


def test_own_statements_come_before_those_of_other_pages(web):
    plain = ("", "Do it.")
    links = web(a=("after: [d]", "Do it."), b=plain, c=plain, d=("before: [c, b]", "Do it."))
    assert links.before["d"] == ("c", "b", "a")


def test_reading_of_the_page_itself_is_no_use(web):
    reading = "readings: {turns: {name: Turns, unit: turn, when: as found, limits: 1 to 2 turns}}"
    links = web(a=(reading, "Count. <reading:turns>"), b=("", "See <reading:a/turns>."))
    assert [page.id for page in links.used_by("reading", "a/turns")] == ["b"]


def test_neighbour_that_is_not_there_is_left_out(web):
    links = web(a=("before: [nowhere]", "Do it."))
    assert links.before == {"a": ()}


def test_use_in_text_and_in_front_matter_counts_once(web):
    links = web(a=("before: [b]", "See <procedure:b> and [it](procedure:b)."), b=("", "Do it."))
    assert [page.id for page in links.used_by("procedure", "b")] == ["a"]
    assert links.count == 1


def test_page_does_not_use_itself(web):
    links = web(a=("", "Repeat <procedure:a>."))
    assert links.used_by("procedure", "a") == ()
    assert links.count == 0


def test_reference_in_code_is_no_use(web):
    links = web(a=("", "Write `<procedure:b>`."), b=("", "Do it."))
    assert links.used_by("procedure", "b") == ()
