"""Pictures of the pages at 390 and 1440 px, in both schemes: none runs out of its window.

With $MODEBOOK_PICTURES naming a folder the pictures stay there, for a person to look at; the README's two are
written with MODEBOOK_PICTURES=site/static (see README_PICTURES).
"""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

import pytest

from support.site import KINDS, Served

WIDTHS = (390, 1440)
README_PICTURES = {"page-find": ("find", "light"), "page-fixture": ("fixture-mode", "dark")}
"""The README's pictures: the kind of page and the scheme of each."""


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_page_runs_out_of_its_window(
    browser: Any, site: Served, tmp_path: Path, scheme: str, width: int
) -> None:
    """What is wide scrolls by itself; the page does not."""
    context = browser.new_context(viewport={"width": width, "height": 900}, color_scheme=scheme)
    page = context.new_page()
    page.set_default_timeout(60_000)
    folder = Path(os.environ.get("MODEBOOK_PICTURES", tmp_path))
    folder.mkdir(parents=True, exist_ok=True)
    out = {}
    try:
        for kind, address in KINDS.items():
            page.goto(site(address))
            wide = page.evaluate("document.documentElement.scrollWidth")
            if wide > width:
                out[kind] = wide
            if folder == tmp_path or folder.name != "static":
                page.screenshot(path=folder / f"{kind}-{width}-{scheme}.png")
    finally:
        context.close()
    assert out == {}


@pytest.mark.parametrize("name", README_PICTURES)
def test_the_readmes_pictures_can_be_made(browser: Any, site: Served, tmp_path: Path, name: str) -> None:
    """They show the pages as they are now: 1200 px wide, small enough for a README."""
    kind, scheme = README_PICTURES[name]
    context = browser.new_context(viewport={"width": 1200, "height": 760}, color_scheme=scheme)
    page = context.new_page()
    page.set_default_timeout(60_000)
    told = os.environ.get("MODEBOOK_PICTURES")
    folder = Path(told) if told else tmp_path
    try:
        page.goto(site(KINDS[kind]))
        page.screenshot(path=folder / f"{name}.png")
    finally:
        context.close()
    assert (folder / f"{name}.png").stat().st_size < 300_000
