"""A check of a complaint: one procedure is its link, several stand below it, none is plain."""

from underhoist.pages.fault import fault_sheet


def body(site):
    return str(fault_sheet(site, site.manual.faults["late"]).html)


def test_the_only_procedure_is_the_link_of_the_check(site):
    html = body(site)
    assert '<li><a href="../../jobs/road-test/">Drive it</a><p>20 minutes' in html
    assert "How:" not in html


def test_several_procedures_are_listed_by_their_titles(changed):
    site = changed("faults/late.md", ("procedure: road-test", "procedure: [road-test, set-band]"))
    html = body(site)
    assert "<li><strong>Drive it</strong>" in html
    assert "<p>How: <a " in html
    assert html.count("</a>, <a ") == 1


def test_a_check_without_a_procedure_is_told_all_the_same(changed):
    html = body(changed("faults/late.md", (", procedure: road-test", "")))
    assert "<li><strong>Drive it</strong>" in html
    assert "How:" not in html
