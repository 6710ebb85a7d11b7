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
    """Every row is kept together and fits a sheet; those whose words stand in the PDF one after the other,
    as rows do of which no cell wraps, are there in one piece."""
    page.goto(site(path))
    page.emulate_media(media="print")
    rows = page.evaluate(
        """() => [...document.querySelectorAll('table tbody tr')].filter(r => r.offsetParent !== null)
        .map(r => ({text: r.innerText.replace(/\\s+/g, ''), kept: getComputedStyle(r).breakInside,
                    high: r.getBoundingClientRect().height}))"""
    )
    assert len(rows) > 20
    assert {row["kept"] for row in rows} == {"avoid"}
    assert max(row["high"] for row in rows) < 900, "a sheet of A4 has 1122 CSS pixels, margins included"
    sheets = ["".join(word["text"] for word in words) for _, words in printed(page)]
    assert len(sheets) > 1
    whole = [row["text"] for row in rows if len(row["text"]) > 3 and row["text"] in "".join(sheets)]
    assert len(whole) > 0.3 * len(rows)
    assert [text for text in whole if not any(text in sheet for sheet in sheets)] == []


def test_words_stay_on_the_sheet(page: Any, site: Served) -> None:
    """No word of the printed chart lies outside the paper."""
    page.goto(site("/fixtures/pelluwick/torvane-40"))
    for height, words in printed(page):
        assert all(word["x0"] >= 0 and word["x1"] <= 596 and word["bottom"] <= height for word in words)
