"""What a browser sees of the preview while a page is written, page by page."""

import shutil

PAGE = "---\nkind: page\ntitle: Notes\nsummary: For a test.\n---\n\nKeep the bench clean.\n"


def test_a_fault_appears_in_its_page_and_goes_with_its_mend(previewed):
    assert 'class="uh-found"' not in previewed.get("jobs/set-band/")
    previewed.replace("jobs/set-band.md", "<torque:band-seat>", "<torque:band-set>")
    page = previewed.get("jobs/set-band/")
    assert "1 finding on this page" in page
    assert "<dt>Written</dt><dd>band-set</dd>" in page
    assert "<dt>Wrong</dt><dd>There is no torque band-set for this page.</dd>" in page
    assert "<dt>Mend</dt><dd>Did you mean band-seat?</dd>" in page
    assert "<h3>Line 39</h3>" in page
    assert 'Stops the build: <a href="/rules/dead-reference/">' in page
    assert "Wipe the case." in page
    previewed.replace("jobs/set-band.md", "<torque:band-set>", "<torque:band-seat>")
    assert 'class="uh-found"' not in previewed.get("jobs/set-band/")


def test_every_page_says_how_many_findings_the_manual_has(previewed):
    number = len(previewed.preview.board.now.checked.findings)
    previewed.replace("jobs/set-band.md", "<torque:band-seat>", "<torque:band-set>")
    for address in ("", "tools/lamp/", "_preview/findings/", "search.html"):
        findings = "finding" if number == 0 else "findings"
        said = f"{number + 1} {findings} in the manual</a>: 1 stops the build."
        assert said in previewed.get(address), address
    everything = previewed.get("_preview/findings/")
    assert '<a href="/jobs/set-band/">jobs/set-band.md</a>' in everything
    assert "Did you mean band-seat?" in everything


def test_only_what_reads_otherwise_is_written(previewed):
    before = previewed.files()
    previewed.replace("jobs/set-band.md", "Wipe the case.", "Polish the case.")
    after = previewed.files()
    changed = {file for file in after if before[file] != after[file]}
    assert "jobs/set-band/index.html" in changed
    assert changed <= {"jobs/set-band/index.html", "drafting/index.html"}
    assert "Polish the case." in previewed.get("jobs/set-band/")


def test_a_changed_torque_shows_wherever_it_is_shown(previewed):
    previewed.replace("families/wren-2.md", "torque: 120 lbf*in", "torque: 118 lbf*in")
    for address in ("jobs/set-band/", "torques/wren-2/band-seat/", "families/wren-2/"):
        assert "118" in previewed.get(address), address


def test_facts_that_cannot_be_read_leave_the_last_ones_and_the_new_text(previewed):
    previewed.replace("jobs/set-band.md", "Wipe the case.", "Polish the case.")
    previewed.replace("jobs/set-band.md", "minutes: 25", "minutes: soon")
    previewed.replace("jobs/set-band.md", "Polish the case.", "Clean the case.")
    page = previewed.get("jobs/set-band/")
    assert "The facts on top cannot be read. The last good ones are shown" in page
    assert "minutes is a whole number." in page
    assert "25 minutes" in page and "Clean the case." in page
    previewed.replace("jobs/set-band.md", "minutes: soon", "minutes: 30")
    page = previewed.get("jobs/set-band/")
    assert "30 minutes" in page and "cannot be read" not in page


def test_a_faults_order_shows_while_other_facts_cannot_be_read(previewed):
    band = "  road: {name: Drive it, minutes: 20, access: on the road, procedure: road-test,"
    turn = "  turn: {name: Turn it, minutes: 5, access: here, bad_with: {band: mostly}}\n"
    previewed.replace("faults/late.md", band, f"{turn}{band}")
    previewed.replace("faults/late.md", "summary: The shifts come late.", "sumary: Late.")
    page = previewed.get("faults/late/")
    assert "Some facts on top cannot be read. What can be is shown, and the order" in page
    assert "Did you mean summary?" in page
    assert "In this order the cause is known after 18 minutes on average" in page
    previewed.replace("faults/late.md", "name: Turn it, minutes: 5", "name: Turn it, minutes: soon")
    page = previewed.get("faults/late/")
    assert "In this order the cause is known after 20 minutes on average" in page
    assert "Turn it" not in page.partition("Checks, in this order")[2]


def test_a_file_that_is_no_text_leaves_the_last_good_page(previewed):
    (previewed.pages / "jobs/set-band.md").write_bytes(b"\xff\xfe\0")
    assert previewed.preview.look()
    page = previewed.get("jobs/set-band/")
    assert "The file cannot be read. Below is the page as it last could be." in page
    assert "The file is UTF-16 text" in page
    assert "Wipe the case." in page


def test_a_preview_of_a_broken_manual_starts(previewed):
    previewed.replace("jobs/raise.md", "minutes:", "minuets:")
    previewed.replace("jobs/set-band.md", "cautions: [hot-fluid, ", "cautions: [hot-flued, ")
    previewed.stop()
    shutil.rmtree(previewed.folder / "preview")
    previewed.start()
    page = previewed.get("jobs/raise/")
    assert "Did you mean minutes?" in page
    assert "The facts on top cannot be read yet. Below is the text alone." in page
    page = previewed.get("jobs/set-band/")
    assert "Did you mean hot-fluid?" in page and "Wipe the case." in page


def test_new_deleted_and_renamed_pages(previewed):
    previewed.write("notes/bench.md", PAGE)
    assert "Keep the bench clean." in previewed.get("notes/bench/")
    previewed.replace("jobs/set-band.md", "Wipe the case.", "Wipe [the case](../notes/bench.md).")
    (previewed.pages / "notes/bench.md").rename(previewed.pages / "notes/tidy.md")
    assert previewed.preview.look()
    assert previewed.get("notes/bench/").startswith("404 ")
    assert "Keep the bench clean." in previewed.get("notes/tidy/")
    assert "1 finding on this page" in previewed.get("jobs/set-band/")
    (previewed.pages / "notes/tidy.md").unlink()
    assert previewed.preview.look()
    assert previewed.get("notes/tidy/").startswith("404 ")
    assert not (previewed.root / "notes").exists()


def test_a_changed_drawing_is_shown_with_its_new_size(previewed):
    drawing = "drawings/adjuster.svg"
    text = (previewed.pages / drawing).read_text(encoding="utf-8")
    box = text.split('viewBox="')[1].split('"')[0]
    previewed.replace(drawing, f'viewBox="{box}"', 'viewBox="0 0 123 45"')
    assert 'viewBox="0 0 123 45"' in previewed.get(drawing)
    page = previewed.get("jobs/set-band/")
    assert 'width="123"' in page and 'height="45"' in page


def test_changed_templates_or_settings_build_all_anew(previewed):
    settings = previewed.folder / "mkdocs.yml"
    settings.write_text(settings.read_text().replace("A small manual", "Another name"))
    assert previewed.preview.look()
    assert "Another name" in previewed.get("tools/lamp/")
    settings.write_text("site_name: [\n")
    assert previewed.preview.look()
    page = previewed.get("tools/lamp/")
    assert "Another name" in page and "<strong>" in page


def test_two_pages_at_one_address_are_told_and_stop_nothing(previewed):
    previewed.write("tools/lamp/index.md", PAGE)
    page = previewed.get("")
    assert "would stand at one address. Rename one of them." in page


def test_a_folder_that_is_gone_is_told_until_it_is_back(previewed):
    aside = previewed.folder / "aside"
    previewed.pages.rename(aside)
    assert not previewed.preview.look()
    assert not previewed.preview.look()
    assert "the folder cannot be read" in previewed.get("tools/lamp/")
    assert previewed.out.getvalue().count("the folder cannot be read") == 1
    aside.rename(previewed.pages)
    assert previewed.preview.look()
    assert "cannot be read" not in previewed.get("tools/lamp/")


def test_cards_follow(previewed):
    assert "Wipe the case." in previewed.get("cards/data/set-band.json")
    previewed.replace("jobs/set-band.md", "Wipe the case.", "Polish the case.")
    assert "Polish the case." in previewed.get("cards/data/set-band.json")


def test_nothing_outside_the_site_is_served(previewed):
    assert previewed.get("jobs/../../../pages/jobs/set-band.md").startswith("404 ")
    assert previewed.get("_preview/../../mkdocs.yml").startswith("404 ")


def test_an_unchanged_project_is_left_alone(previewed):
    count = previewed.preview.board.count
    assert not previewed.preview.look()
    assert previewed.preview.board.count == count
