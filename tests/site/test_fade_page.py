"""The fade page says the engine's figures, before and after a change, and plays nothing unless asked to."""

from __future__ import annotations

import json
import re
import urllib.request
from typing import Any

import pytest

from modebook.response.camera import Camera
from modebook.response.fade import Fade, answer
from modebook.response.link import Link
from modebook.response.smoothing import Smoothing
from support.site import Served


def engine(packets: float, seconds_s: float) -> Any:
    """20 to 0 % over 8 bits at 30 packets a second, before a camera of 24 frames at 180 degrees."""
    return answer(
        Fade(
            20.0,
            0.0,
            seconds_s,
            Link(30.0, line="network"),
            bits=8,
            smoothing=Smoothing("average", packets=packets),
            camera=Camera(24.0, 180.0),
        )
    )


def figures(page: Any, column: int) -> dict[str, str]:
    """A case's titles and figures."""
    case = page.locator(".case").nth(column)
    titles = case.locator("dt").all_inner_texts()
    return dict(zip(titles, case.locator("dd").all_inner_texts(), strict=True))


def test_the_endpoint_gives_the_engines_figures(site: Served) -> None:
    """Unrounded, for each case."""
    address = site("/-/fade.json?bits=8&packets=5&from=20&to=0&seconds=4&refresh=30&camera=24&shutter=180")
    told = json.loads(urllib.request.urlopen(address, timeout=30).read())
    wanted = engine(5.0, 4.0)
    found = told["cases"][1]["answer"]
    for key in ("added_s", "settles_s", "worst_stepping_jnd", "largest_step_percent", "distinct_values"):
        assert found[key] == pytest.approx(getattr(wanted, key)), key


def test_the_page_redraws_to_the_engines_figures(page: Any, site: Served) -> None:
    """After a change of the smoothing's length, without a new page."""
    page.goto(site("/fade"))
    page.wait_for_selector("#patches canvas")
    before = page.locator(".case svg").nth(1).inner_html()
    page.fill("input[name=packets]", "9")
    page.locator("#fade-cases:not(.stale) .case h2", has_text="9 packets").wait_for()
    wanted = engine(9.0, 4.0)
    shown = figures(page, 1)
    assert shown["smoothing adds"] == f"{1000 * wanted.added_s:.0f} ms"
    assert shown["done after, s"] == f"{wanted.settles_s:.2f}"
    assert shown["values"] == str(wanted.distinct_values)
    assert page.locator(".case svg").nth(1).inner_html() != before
    assert "packets=9" in page.url


def test_the_slider_and_the_field_are_one(page: Any, site: Served) -> None:
    """A step of the slider by the keyboard changes the field and asks again."""
    page.goto(site("/fade"))
    page.wait_for_selector("#patches canvas")
    slider = page.get_by_role("slider", name=re.compile("Smoothing"))
    slider.focus()
    page.keyboard.press("ArrowRight")
    assert page.input_value("input[name=packets]") == "3"
    page.wait_for_url(re.compile("packets=3"))


def test_a_figure_out_of_bounds_is_told_and_the_last_answer_stays(watched: Any, site: Served) -> None:
    """In the words of the 400."""
    page = watched.page
    page.goto(site("/fade"))
    page.wait_for_selector("#patches canvas")
    page.fill("input[name=seconds]", "500")
    page.locator("#fade-problem", has_text="500").wait_for()
    assert page.locator(".case").count() == 2
    # The browser itself notes every answer of status 400.
    watched.complaints[:] = [said for said in watched.complaints if "400 (Bad Request)" not in said]


def test_patches_move_on_request_alone_and_once(watched: Any, site: Served) -> None:
    """The warning stands first; after the fade the patches rest, and no second start follows at once."""
    page = watched.page
    page.goto(site("/fade?seconds=0.5"))
    page.wait_for_selector("#patches canvas")
    assert page.locator("#patches canvas").count() == 4
    assert "Warning" in page.text_content("#play .caution")
    gray = """[...document.querySelectorAll('#patches canvas')].map(
        canvas => canvas.getContext('2d').getImageData(5, 5, 1, 1).data[0])"""
    still = page.evaluate(gray)
    page.wait_for_timeout(700)
    assert page.evaluate(gray) == still
    page.click("#play-start")
    assert page.is_disabled("#play-start")
    page.locator("#play-told", has_text="played once").wait_for()
    assert page.evaluate(gray)[0] < still[0]
    # The browser remarks on the test's own looks at the patches.
    watched.complaints[:] = [said for said in watched.complaints if "getImageData" not in said]


def test_flashes_are_counted_as_the_guideline_defines_them(page: Any, site: Served) -> None:
    """WCAG 2.2, general flash: pairs of opposing changes of 10 % of luminance, the darker below 0.80.

    Black and white at 10 Hz flash ten times a second, a fade not at all, bright grays not at all.
    """
    page.goto(site("/fade"))
    count = """async ([grays, step]) =>
      (await import('/static/patches.js')).flashesMost(grays, step)"""
    square = [255.0 * (index // 3 % 2) for index in range(180)]  # 60 a second, 3 pictures each: 10 Hz
    assert 9 <= page.evaluate(count, [square, 1 / 60]) <= 10
    assert page.evaluate(count, [[float(one) for one in range(256)], 1 / 60]) == 0
    bright = [255.0 - 20.0 * (index // 3 % 2) for index in range(180)]
    assert page.evaluate(count, [bright, 1 / 60]) == 0


def test_it_works_without_script(browser: Any, site: Served) -> None:
    """The form asks, the page answers."""
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    try:
        page.goto(site("/fade"))
        page.fill("input[name=packets]", "7")
        page.get_by_role("button", name="Answer").click()
        assert figures(page, 1)["smoothing adds"] == f"{1000 * engine(7.0, 4.0).added_s:.0f} ms"
    finally:
        context.close()
