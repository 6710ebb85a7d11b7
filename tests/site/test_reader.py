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
    """From the front page: slash, words, arrow down, Enter, faster than the server answers.

    What was typed last opens, never an older hit.
    """
    page.goto(site("/"))
    page.keyboard.press("/")
    assert page.evaluate("document.activeElement.id") == "search"
    page.keyboard.type("torvane", delay=15)
    page.wait_for_selector("#hits li")
    page.keyboard.type(" 40")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile("/fixtures/pelluwick/torvane-40"))
    assert "Torvane 40" in page.text_content("h1")


def test_search_by_a_meaning(page: Any, site: Served) -> None:
    """Words of a range's meaning lead to the modes that have it."""
    page.goto(site("/"))
    page.keyboard.press("/")
    page.keyboard.type("reset")
    page.wait_for_selector("#hits li")
    assert page.locator("#hits li").count() >= 1


def test_escape_closes_the_list(page: Any, site: Served) -> None:
    """The list goes away, and the words stay."""
    page.goto(site("/"))
    page.keyboard.press("/")
    page.keyboard.type("torvane")
    page.wait_for_selector("#hits li")
    page.keyboard.press("Escape")
    page.wait_for_selector("#hits", state="hidden")
    assert page.input_value("#search") == "torvane"


def test_three_steps_from_the_front_page(page: Any, site: Served) -> None:
    """Click 1: all modes with 16-bit pan that allow remote change. Click 2: one of them. 3: the number 101,
    for which its field waits.

    Each row of smoothing then shows the byte to send, its address, and how much later a snap is.
    """
    page.goto(site("/"))
    page.get_by_role("link", name=re.compile("16-bit pan.*remote", re.IGNORECASE)).first.click()
    page.wait_for_url(re.compile("/find"))
    with sqlite3.connect(f"file:{site.database}?mode=ro", uri=True) as connection:
        (modes,) = connection.execute(
            "SELECT count(*) FROM modes WHERE standing <> 'draft' AND remote AND id IN "
            "(SELECT mode FROM parameters WHERE word = 'pan' AND bits >= 16)"
        ).fetchone()
    connection.close()
    assert page.locator("main table tbody tr").count() == modes
    page.locator("main table a[href^='/fixtures/pelluwick/torvane-40']").first.click()
    page.wait_for_url(re.compile("/fixtures/"))
    page.wait_for_function("document.activeElement.id === 'address'")
    page.keyboard.type("101")
    page.wait_for_url(re.compile("address=101"))
    record = read_fixture(CATALOG / "fixtures" / "pelluwick" / "torvane-40.json")
    name = page.url.partition("mode=")[2].partition("&")[0].replace("+", " ").replace("%20", " ")
    mode = next(one for one in record.modes if one.name.casefold() == name.casefold())
    smoothing = {setting.key: setting for setting in record.settings if setting.setting == "smoothing"}
    ways = [way for way in slot_ways(mode) if way.setting in smoothing]
    assert ways
    for way in ways:
        choice = next(one for one in smoothing[way.setting].choices if one.key == way.choice)
        value = byte_values(way.parameter, value_for(way.piece))[0]
        slot = way.parameter.slots[0]
        row = page.locator(
            ".choices tr", has=page.get_by_text(f"{slot}@ {100 + slot} ← {value}", exact=True)
        ).filter(has=page.get_by_role("rowheader", name=re.compile(f"^{choice.label}")))
        assert row.count() == 1
        assert re.search(r"\d+ ms", row.locator(".late").inner_text())
        assert row.is_visible()


def test_a_part_has_an_address_field_of_its_own(page: Any, site: Served) -> None:
    """A part's slots show its own start address + slot - 1; the mode's own slots stay as they are."""
    page.goto(site("/fixtures/wexombre/skelvane-ring-24"))
    head = page.locator("[data-part-head]").first
    head.scroll_into_view_if_needed()
    section = head.locator("xpath=ancestor::section")
    assert section.locator("[data-part-slot]").count() > 0
    head.locator("input").fill("201")
    for byte in section.locator("[data-part-slot]").all():
        slot = int(byte.get_attribute("data-part-slot") or 0)
        assert byte.locator(".at").inner_text() == f"@ {200 + slot}"
    assert set(section.locator("[data-slot] .at").all_text_contents()) == {""}
    page.goto(site("/fixtures/wexombre/skelvane-ring-24?mode=Two+parts"))
    page.fill("#address", "101")
    assert "parts have start addresses of their own" in page.inner_text("#address-told")
    page.reload()
    assert "parts have start addresses of their own" in page.inner_text("#address-told")
    head = page.locator("[data-part-head]").first
    section = head.locator("xpath=ancestor::section")
    head.locator("input").fill("600")
    assert set(section.locator("[data-part-slot] .at").all_text_contents()) == {""}


@pytest.mark.parametrize("path", ["/find?q=pan", FIXTURE, "/rigs/ossilby-pier", "/low", "/rules"])
def test_no_word_is_broken_at_390_px(page: Any, site: Served, path: str) -> None:
    """Words of up to 16 letters stand on one line in every table; the page does not scroll sideways."""
    page.set_viewport_size({"width": 390, "height": 900})
    page.goto(site(path))
    broken = page.evaluate(
        """() => {
        const found = [];
        const walk = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
        while (walk.nextNode()) {
            const node = walk.currentNode;
            if (!node.parentElement.closest('td, th')) continue;
            for (const word of node.data.matchAll(/[A-Za-z]{2,16}/g)) {
                const range = document.createRange();
                range.setStart(node, word.index);
                range.setEnd(node, word.index + word[0].length);
                const lines = new Set([...range.getClientRects()].map(r => Math.round(r.top)));
                if (lines.size > 1) found.push(word[0]);
            }
        }
        return found; }"""
    )
    assert broken == []
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


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
