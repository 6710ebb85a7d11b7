"""Paper: a chart and a plan as PDF, with every row whole and every word of the page in it."""

from __future__ import annotations

import io
from typing import Any

import pytest

from support.site import Served


def printed(page: Any) -> list[Any]:
    """The pages of a printed PDF on A4."""
    import pdfplumber

    pdf = page.pdf(format="A4", print_background=False)
    with pdfplumber.open(io.BytesIO(pdf)) as told:
        return [(one.height, one.extract_words()) for one in told.pages]


@pytest.mark.parametrize("path", ["/fixtures/pelluwick/torvane-40/print", "/fixtures/pelluwick/torvane-40"])
def test_no_row_is_cut(page: Any, site: Served, path: str) -> None:
    """Each table row lies whole on one page: every meaning of the chart is in the text of a single page."""
    page.goto(site(path))
    page.emulate_media(media="print")
    cells = page.evaluate(
        """() => [...document.querySelectorAll('table tbody tr')].filter(r => r.offsetParent !== null)
        .map(r => r.innerText.replace(/\\s+/g, '')).filter(t => t.length > 3 && t.length < 60)"""
    )
    assert cells
    sheets = ["".join(word["text"] for word in words) for _, words in printed(page)]
    whole = "".join(sheets)
    for cell in cells:
        if cell in whole:
            assert any(cell in sheet for sheet in sheets), cell


def test_words_stay_on_the_sheet(page: Any, site: Served) -> None:
    """No word of the printed chart lies outside the paper."""
    page.goto(site("/fixtures/pelluwick/torvane-40"))
    for height, words in printed(page):
        assert all(word["x0"] >= 0 and word["x1"] <= 596 and word["bottom"] <= height for word in words)
