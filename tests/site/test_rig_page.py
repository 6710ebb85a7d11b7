"""The rig page filters and draws; the plan's boxes are remembered by the browser; nothing is cut on paper."""

from __future__ import annotations

import re
import sqlite3
from pathlib import Path
from typing import Any

import pytest

from support.site import Served

PLAN = "/rigs/ossilby-pier/plan"
LONGEST_MS = 300_000


def test_units_of_a_position_against_sql(page: Any, site: Served) -> None:
    """A choice acts at once: as many rows, and as high a count, as the database has; a reload keeps it."""
    page.goto(site("/rigs/ossilby-pier"))
    page.select_option("select[name=position]", "Truss 1")
    page.wait_for_url(re.compile("position=Truss"))
    connection = sqlite3.connect(site.database)
    (count,) = connection.execute(
        "SELECT count(DISTINCT unit) FROM units WHERE rig = 'ossilby-pier' AND position = 'Truss 1'"
    ).fetchone()
    totals = connection.execute("SELECT count(*) FROM units WHERE rig = 'ossilby-pier' AND counts").fetchone()
    connection.close()
    (total,) = totals
    for _ in ("as chosen", "asked of the server"):
        assert page.locator("[data-unit]:visible").count() == count > 0
        assert page.inner_text("#units-told") == f"{count} of {total}"
        page.reload()
    page.select_option("select[name=position]", "")
    assert page.inner_text("#units-told") == str(total)
    assert "position" not in page.url


def test_findings_filter_without_script(browser: Any, site: Served) -> None:
    """The form asks, the server hides the others."""
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    try:
        page.goto(site("/rigs/ossilby-pier"))
        rule = page.locator("select[name=finding] option").nth(1).get_attribute("value")
        page.select_option("select[name=finding]", rule)
        page.get_by_role("button", name="Show").click()
        shown = page.locator("[data-unit]:visible")
        assert shown.count() > 0
        assert all(rule in text for text in shown.all_inner_texts())
    finally:
        context.close()


def test_every_universe_in_use_is_drawn(page: Any, site: Served) -> None:
    """With a name that says how full it is, and a title on every unit."""
    page.goto(site("/rigs/ossilby-pier"))
    connection = sqlite3.connect(site.database)
    rows = connection.execute(
        "SELECT DISTINCT universe FROM units WHERE rig = 'ossilby-pier' AND universe > 0"
    )
    universes = {number for (number,) in rows}
    connection.close()
    drawn = page.locator("svg.map")
    assert drawn.count() >= len(universes)
    assert re.match(r"Universe \d+: \d+ of 512 slots taken", drawn.first.get_attribute("aria-label"))
    assert page.locator("svg.map g title").count() > 50


@pytest.fixture(scope="module")
def planned(browser: Any, site: Served) -> None:
    """The plan has been worked out."""
    page = browser.new_page()
    page.goto(site(PLAN))
    page.wait_for_selector("#clear-ticks", timeout=LONGEST_MS)
    page.close()


@pytest.mark.usefixtures("planned")
def test_boxes_stay_ticked_after_a_reload(page: Any, site: Served) -> None:
    """And are cleared together."""
    page.goto(site(PLAN))
    boxes = page.locator("[data-tick]")
    assert boxes.count() > 10
    boxes.nth(2).check()
    page.reload()
    assert boxes.nth(2).is_checked()
    assert not boxes.nth(3).is_checked()
    assert page.inner_text("#ticks-told").startswith("1 of ")
    page.click("#clear-ticks")
    page.reload()
    assert not boxes.nth(2).is_checked()


@pytest.mark.usefixtures("planned")
def test_the_plan_on_paper_cuts_no_line(page: Any, site: Served, tmp_path: Path) -> None:
    """Every line to tick is whole on one sheet of A4: what may not break is short enough not to have to."""
    page.goto(site(PLAN))
    page.emulate_media(media="print")
    page.set_viewport_size({"width": 703, "height": 1032})  # A4 less 12 mm each side, at 96 px an inch
    told = page.evaluate(
        """() => [...document.querySelectorAll('ul.ticks li')].map(e =>
        [e.offsetHeight, getComputedStyle(e).breakInside, e.scrollWidth - e.clientWidth])"""
    )
    assert all(height < 1032 for height, _, _ in told)
    assert {inside for _, inside, _ in told} == {"avoid"}
    assert all(over <= 1 for _, _, over in told)
    sheet = page.pdf(format="A4", path=tmp_path / "plan.pdf")
    assert sheet.startswith(b"%PDF")
