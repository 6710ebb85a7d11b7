"""What a reader does with a keyboard and a mouse: search and open, filter, addresses, scales."""

from __future__ import annotations

import re
import sqlite3
from typing import Any

import pytest

from modebook.documents.control_values import byte_values, value_for
from modebook.documents.ways import slot_ways
from modebook.shelf.reading import read_fixture
from support.program import CATALOG
from support.site import Served

FIXTURE = "/fixtures/pelluwick/torvane-40"


def test_search_and_open_by_keyboard_alone(page: Any, site: Served) -> None:
    """From the front page: slash, words, arrow down, Enter; the fixture's page opens."""
    page.goto(site("/"))
    page.keyboard.press("/")
    assert page.evaluate("document.activeElement.id") == "search"
    page.keyboard.type("torvane 40", delay=15)
    page.wait_for_selector("#hits li, #found [role=option]")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile("/fixtures/pelluwick/torvane-40"))
    assert "Torvane 40" in page.text_content("h1")


def test_search_by_a_meaning(page: Any, site: Served) -> None:
    """Words of a range's meaning lead to the modes that have it."""
    page.goto(site("/"))
    page.keyboard.press("/")
    page.keyboard.type("reset")
    page.wait_for_selector("#hits li, #found [role=option]")
    assert page.locator("#hits li, #found [role=option]").count() >= 1


def test_escape_closes_the_list(page: Any, site: Served) -> None:
    """The list goes away, and the words stay."""
    page.goto(site("/"))
    page.keyboard.press("/")
    page.keyboard.type("torvane")
    page.wait_for_selector("#hits li, #found [role=option]")
    page.keyboard.press("Escape")
    page.wait_for_selector("#hits, #found", state="hidden")
    assert page.input_value("#search") == "torvane"


def test_three_steps_from_the_front_page(page: Any, site: Served) -> None:
    """Step 1: all modes with 16-bit pan that allow remote change. 2: one of them. 3: address 101.

    Then the page shows the byte to send at its address, and how much later a snap is done.
    """
    page.goto(site("/"))
    page.get_by_role("link", name=re.compile("16-bit pan.*remote", re.IGNORECASE)).first.click()
    page.wait_for_load_state()
    page.locator("main table a[href^='/fixtures/pelluwick/torvane-40']").first.click()
    page.wait_for_load_state()
    page.fill("#address", "101")
    page.keyboard.press("Enter")
    text = page.inner_text("main")
    record = read_fixture(CATALOG / "fixtures" / "pelluwick" / "torvane-40.json")
    name = page.url.partition("mode=")[2].partition("&")[0].replace("+", " ").replace("%20", " ")
    mode = next(one for one in record.modes if one.name.casefold() == name.casefold())
    smoothing = {setting.key for setting in record.settings if setting.setting == "smoothing"}
    ways = [way for way in slot_ways(mode) if way.setting in smoothing]
    assert ways
    for way in ways:
        value = byte_values(way.parameter, value_for(way.piece))[0]
        address = 101 + way.parameter.slots[0] - 1
        assert re.search(rf"\b{value}\b", text)
        assert re.search(rf"\b{address}\b", text)
    assert re.search(r"\d+ ms", text)


@pytest.mark.parametrize(
    ("asked", "condition"),
    [
        ("smoothing_by=remote", "remote"),
        ("smoothing_by=slot", "' ' || smoothing_by || ' ' LIKE '% slot %'"),
        ("smoothing_by=unknown", "smoothing_by = 'unknown'"),
        (
            "smoothing_by=remote&parameter=pan&bits=16",
            "remote AND EXISTS (SELECT 1 FROM parameters "
            "WHERE mode = modes.id AND word = 'pan' AND bits >= 16)",
        ),
    ],
)
def test_filters_count_as_sql_does(page: Any, site: Served, asked: str, condition: str) -> None:
    """The list says the number that SQL over the tables gives, and shows as many rows (up to a page)."""
    with sqlite3.connect(f"file:{site.database}?mode=ro", uri=True) as connection:
        (expected,) = connection.execute(
            f"SELECT count(*) FROM modes WHERE standing <> 'draft' AND ({condition})"
        ).fetchone()
    connection.close()
    page.goto(site(f"/find?{asked}"))
    assert re.search(rf"\b{expected} modes?\b", page.inner_text("main"))
    assert page.locator("main table tbody tr").count() == min(expected, 50)
    assert expected > 0


def shown_slots(page: Any) -> list[str]:
    """What the first mode's chart shows for its slots, in the order of the rows."""
    texts: list[str] = page.locator("[data-slot]").all_inner_texts()
    return texts


def test_the_address_field_turns_slots_into_addresses(page: Any, site: Served) -> None:
    """Every slot shows start address + slot - 1 (ANSI E1.11), as one types; emptied, slots come back."""
    page.goto(site(f"{FIXTURE}?mode=Extended"))
    slots = [
        int(one) for one in page.locator("[data-slot]").evaluate_all("all => all.map(a => a.dataset.slot)")
    ]
    assert slots
    page.fill("#address", "101")
    page.wait_for_function("document.body.innerText.includes('101')")
    shown = page.locator("[data-slot]").all_inner_texts()
    for slot, text in zip(slots, shown, strict=True):
        assert str(100 + slot) in text.replace("\n", " "), (slot, text)
    page.fill("#address", "")
    page.wait_for_timeout(100)
    for slot, text in zip(slots, page.locator("[data-slot]").all_inner_texts(), strict=True):
        assert re.search(rf"\b{slot}\b", text)


def test_addresses_without_script(browser: Any, site: Served) -> None:
    """?address=101 gives the same addresses where scripts do not run."""
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    try:
        page.goto(site(f"{FIXTURE}?mode=Extended&address=101"))
        html = page.content()
        marks = re.findall(r'data-slot="(\d+)"[^>]*>([^<]*)', html)
        assert marks
        text = page.inner_text("main")
        assert "101" in text
        page.goto(site("/find?q=torvane"))
        assert page.locator("main table tbody tr").count() > 0
    finally:
        context.close()


def test_ranges_can_be_read_by_keyboard(page: Any, site: Served) -> None:
    """Tab reaches a chart's scale; arrow keys read it range by range, in the record's words."""
    page.goto(site(f"{FIXTURE}?mode=Extended"))
    record = read_fixture(CATALOG / "fixtures" / "pelluwick" / "torvane-40.json")
    mode = next(one for one in record.modes if one.name == "Extended")
    first = next(one for one in mode.parameters if len(one.ranges) > 2)
    page.locator("main .bar").first.wait_for()
    for _ in range(200):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.classList.contains('bar')"):
            break
    bar = page.locator("main .bar:focus")
    assert bar.count() == 1, "Tab alone reaches a scale"
    told = [bar.get_attribute("aria-valuetext")]
    for _ in first.ranges[1:]:
        page.keyboard.press("ArrowRight")
        told.append(bar.get_attribute("aria-valuetext"))
    for piece, words in zip(first.ranges, told, strict=True):
        assert str(piece.from_) in (words or "")
        assert piece.meaning in (words or "")
    assert page.locator("main .bar-told").first.inner_text() == told[-1]
