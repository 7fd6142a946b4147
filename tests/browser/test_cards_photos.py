"""Photos on a job card: made small on the phone, kept with their event, shown small and large."""

from __future__ import annotations

import pytest
from card_filled import show
from card_hands import fresh_card, go_to, open_cards, stored_events
from card_pictures import NO_PHOTOS, camera_photo
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


STORED = """async (root) => {
  const { allEvents, pictureOf } = await import(root + "assets/cards/record/store.js");
  const photos = (await allEvents()).filter(({ kind }) => kind === "photo");
  return Promise.all(photos.map(async ({ id, value }) => {
    const picture = await pictureOf(id);
    const bytes = new Uint8Array(await picture.arrayBuffer());
    const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
    const hash = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
    const bitmap = await createImageBitmap(picture, { imageOrientation: "none" });
    const pen = new OffscreenCanvas(bitmap.width, bitmap.height).getContext("2d");
    pen.drawImage(bitmap, 0, 0);
    const [right] = pen.getImageData(bitmap.width - 20, bitmap.height / 2, 1, 1).data;
    const text = new TextDecoder("latin1").decode(bytes);
    return { value, hash, right, type: picture.type, size: bytes.length,
      marked: text.includes("Exif"), width: bitmap.width, height: bitmap.height };
  }));
}"""


def take(page, file, at=0):
    page.locator(".uh-photo__take input").nth(at).set_input_files([file])


def small(page):
    return page.locator(".uh-photo__small")


@pytest.fixture
def card(page, site_url):
    """The id of a card whose first step is on the screen."""
    card = fresh_card(page, site_url, "set-band")
    show(page, site_url, card, "1")
    return card


def test_a_photo_is_made_small_and_upright_and_leaves_its_marks_behind(page, site_url, card):
    take(page, camera_photo(page))
    expect(small(page)).to_have_count(1)
    (photo,) = page.evaluate(STORED, site_url)
    assert (photo["width"], photo["height"]) == (1200, 1600)
    assert photo["right"] > 240, "the edge that was on top is on the right"
    assert photo["size"] < 300_000
    assert photo["type"] == "image/jpeg"
    assert not photo["marked"], "neither position nor camera is kept"
    value = photo["value"]
    assert (value["width"], value["height"], value["bytes"]) == (1200, 1600, photo["size"])
    assert value["sha256"] == photo["hash"]
    assert value["step"] == 1


def test_a_photo_is_shown_small_then_large_with_a_way_back(page, card):
    take(page, camera_photo(page))
    image = small(page).locator("img")
    expect(image).to_have_js_property("complete", value=True)
    page.wait_for_function("() => document.querySelector('.uh-photo').naturalWidth === 1200")
    assert small(page).bounding_box()["width"] == 88
    small(page).click()
    large = page.get_by_role("dialog")
    expect(large).to_be_visible()
    expect(large.get_by_role("button", name="Back", exact=True)).to_be_focused()
    large.get_by_role("button", name="Back", exact=True).click()
    expect(large).to_have_count(0)
    expect(small(page)).to_be_focused()
    page.keyboard.press("Enter")
    expect(large).to_be_visible()
    page.keyboard.press("Escape")
    expect(large).to_have_count(0)
    expect(small(page)).to_be_focused()


def test_a_large_photo_goes_with_the_step_that_it_is_on(page, card):
    take(page, camera_photo(page))
    small(page).click()
    page.evaluate("location.hash = '#'")
    expect(page.get_by_role("dialog")).to_have_count(0)
    expect(page.get_by_role("link", name="Start a card")).to_be_visible()


def test_what_is_no_photo_is_said_in_words(page, site_url, card):
    for kept, (file, words) in enumerate(NO_PHOTOS):
        take(page, file)
        expect(page.locator(".uh-card__place").get_by_role("alert")).to_have_text(words)
        kinds = [event["kind"] for event in stored_events(page, site_url)]
        assert kinds == ["start", "add"] + ["photo"] * kept, file["name"]
        take(page, camera_photo(page))
        expect(small(page)).to_have_count(kept + 1)


def test_taking_a_photo_back_is_an_event_and_the_picture_stays(page, site_url, card):
    take(page, camera_photo(page))
    expect(small(page)).to_have_count(1)
    page.get_by_role("button", name="Undo the photo by RB").click()
    expect(small(page)).to_have_count(0)
    take(page, camera_photo(page))
    expect(small(page)).to_have_count(1)
    small(page).click()
    page.get_by_role("button", name="Take it back").click()
    expect(small(page)).to_have_count(0)
    kinds = [event["kind"] for event in stored_events(page, site_url)]
    assert kinds == ["start", "add", "photo", "undo", "photo", "undo"]
    assert len(page.evaluate(STORED, site_url)) == 2


def test_a_picture_that_is_not_on_this_phone_is_said(page, site_url, card):
    take(page, camera_photo(page))
    expect(small(page)).to_have_count(1)
    page.evaluate(
        """() => new Promise((done, fail) => {
            const opening = indexedDB.open("underhoist-cards");
            opening.onsuccess = () => {
                const change = opening.result.transaction("photos", "readwrite");
                change.objectStore("photos").clear();
                change.oncomplete = () => done(opening.result.close());
                change.onerror = fail;
            };
        })"""
    )
    page.reload()
    expect(small(page)).to_contain_text("The picture is not on this phone.")


def test_a_photo_is_shown_only_once_it_is_stored(page, site_url, card):
    page.evaluate(
        """() => {
            const add = IDBObjectStore.prototype.add;
            window.mend = () => { IDBObjectStore.prototype.add = add; };
            IDBObjectStore.prototype.add = () => {
                throw new DOMException("full", "QuotaExceededError");
            };
        }"""
    )
    take(page, camera_photo(page))
    expect(page.get_by_text("1 photo not stored yet.")).to_be_visible()
    alert = page.get_by_role("alert").filter(has_text="Not stored yet.")
    expect(alert).to_contain_text("The phone has no room left for records.")
    expect(small(page)).to_have_count(0)
    page.evaluate("window.mend()")
    page.get_by_role("button", name="Try again").click()
    expect(small(page)).to_have_count(1)
    expect(page.get_by_text("not stored yet")).to_have_count(0)
    assert len(page.evaluate(STORED, site_url)) == 1


def test_a_finding_takes_photos_of_its_own(page, site_url, card):
    open_cards(page, site_url, f"#card/{card}/findings")
    page.get_by_role("button", name="Write down a finding").click()
    page.get_by_label("What did you find?").fill("Rear joint worn")
    page.get_by_label("Before it is driven").check()
    page.get_by_role("button", name="Write it down").click()
    expect(page.locator(".uh-finding__what")).to_have_text("Rear joint worn")
    take(page, camera_photo(page))
    expect(page.locator(".uh-finding .uh-photo__small")).to_have_count(1)
    events = stored_events(page, site_url)
    assert events[-1]["value"]["finding"] == events[-2]["id"]
    go_to(page, site_url, card, 1)
    expect(small(page)).to_have_count(0)
