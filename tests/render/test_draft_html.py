"""The review page: rows that were read are marked, all is shown, each doubt is numbered once."""

from __future__ import annotations

import base64
import re
from collections import Counter
from html.parser import HTMLParser
from pathlib import Path

import pytest

from modebook.intake.draft import Draft, draft, draft_text
from modebook.intake.settling import accepted
from modebook.render.chart_rows import chart_lines
from modebook.render.draft_html import draft_html

DEMO = Path(__file__).parents[2] / "catalog" / "charts" / "snorrigand-quindle-30.pdf"
TEXT = """\
Read <i>this</i> first
Mode 1: Basic (3 channels)
Slot  Function    Value    Meaning
1     Dimmer      0-255
2     Strobe      0-9      Open
                  8-255    Slow <b>to</b> fast & back
3     Hyperflux   0-255
"""


class Page(HTMLParser):
    """Ids, goals of links, frames and texts of a page."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: Counter[str] = Counter()
        self.ids: list[str] = []
        self.goals: set[str] = set()
        self.frames: list[dict[str, str]] = []
        self.words = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        told = {key: value or "" for key, value in attrs}
        self.tags[tag] += 1
        if "id" in told:
            self.ids.append(told["id"])
        if told.get("href", "").startswith("#"):
            self.goals.add(told["href"][1:])
        if "frame" in told.get("class", "").split():
            self.frames.append(told)

    def handle_data(self, data: str) -> None:
        self.words += data


@pytest.fixture(scope="module")
def demo() -> Draft:
    """The demo's chart."""
    return draft(DEMO)


def test_every_link_leads_somewhere_and_every_id_is_once(demo: Draft) -> None:
    """Marks lead to rows, places lead back."""
    for read in (demo, draft_text(TEXT)):
        page = Page(draft_html(read))
        assert [one for one, count in Counter(page.ids).items() if count > 1] == []
        assert page.goals - set(page.ids) == set()
        assert "" not in page.ids


def test_everything_that_was_read_is_shown(demo: Draft) -> None:
    """Each parameter and each range has its row, the ranges with their values."""
    for read in (demo, draft_text(TEXT)):
        page = Page(draft_html(read))
        lines = [
            line for index in range(len(read.document.modes)) for line in chart_lines(read.document, index)
        ]
        assert {"at" + line.pointer.replace("/", "-") for line in lines} <= set(page.ids)


def test_each_open_doubt_is_there_once_with_its_number(demo: Draft) -> None:
    """And its row of the source bears the number; one that is settled is not shown."""
    page = Page(draft_html(demo))
    assert [one for one in page.ids if one.startswith("doubt-")] == ["doubt-1", "doubt-2"]
    assert [one["aria-label"] for one in page.frames if "doubtful" in one["class"]] == ["doubt 1", "doubt 2"]
    assert "One figure is printed: where it begins is not." in page.words
    one = Draft(accepted(demo.document, 0, "A", "2026"), demo.source, demo.notes, demo.readings)
    page = Page(draft_html(one))
    assert [name for name in page.ids if name.startswith("doubt-")] == ["doubt-1"]
    assert "15-29 overlaps 10-19." in page.words


def test_frames_lie_on_the_rows_of_the_picture(demo: Draft) -> None:
    """Basic's pan stands in the sixth row of its table: 163 to 180 of 842 points (the chart is drawn
    so), and the frame is a point wider all around.
    """
    page = Page(draft_html(demo))
    first = next(one for one in page.frames if one.get("aria-label") == "doubt 1")
    found = {key: float(value) for key, value in re.findall(r"(\w+):([\d.]+)%", first["style"])}
    assert found["top"] == pytest.approx(162 / 842 * 100, abs=0.1)
    assert found["height"] == pytest.approx(19 / 842 * 100, abs=0.1)
    assert found["left"] == pytest.approx(55 / 595 * 100, abs=0.1)
    assert found["width"] == pytest.approx(486 / 595 * 100, abs=0.1)


def test_the_page_is_whole_in_itself(demo: Draft) -> None:
    """Pictures are in it, nothing is fetched, nothing is run."""
    page = draft_html(demo)
    pictures = re.findall(r'src="data:image/png;base64,([^"]+)"', page)
    assert len(pictures) == 2, "the page of words has no chart"
    assert all(base64.b64decode(one).startswith(b"\x89PNG") for one in pictures)
    assert "http" not in page.split("<body>")[1].replace("data:image", "")
    assert Page(page).tags["script"] == 0
    assert "Pages on which no chart was found: 1." in page


def test_words_of_the_source_stay_words() -> None:
    """Markup in a chart is shown, not obeyed."""
    page = draft_html(draft_text(TEXT))
    assert "<b>to</b>" not in page
    assert "&lt;b&gt;to&lt;/b&gt;" in page
    assert "<i>this</i>" not in page
    assert "&lt;i&gt;this&lt;/i&gt;" in page


def test_a_source_without_pages_is_shown_as_its_cells() -> None:
    """Each row with its number, the doubtful ones with the doubt's."""
    page = Page(draft_html(draft_text(TEXT)))
    assert page.tags["img"] == 0
    assert "Hyperflux" in page.words
    assert "Mode 1: Basic (3 channels)" in page.words


def test_a_pdf_that_cannot_be_drawn_is_shown_as_its_cells(
    demo: Draft, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The review says so, and loses nothing of what was read."""
    import pdfplumber.page
    from pypdfium2 import PdfiumError

    def refuse(*_: object, **__: object) -> None:
        raise PdfiumError("no page")

    monkeypatch.setattr(pdfplumber.page.Page, "to_image", refuse)
    page = Page(draft_html(demo))
    assert page.tags["img"] == 0
    assert "its cells are shown instead" in page.words
    assert page.goals - set(page.ids) == set()
    assert "Response: smooth (hold 3 s)" in page.words


def test_a_cell_merged_over_rows_leaves_each_row_its_own_mark() -> None:
    """HTML with rowspans: three rows of one slot are three marks."""
    rows = (
        "<tr><td>Slot</td><td>Function</td><td>Value</td><td>Meaning</td></tr>"
        "<tr><td>1</td><td>Dimmer</td><td>0-255</td><td></td></tr>"
        '<tr><td rowspan="3">2</td><td rowspan="3">Shutter</td><td>0-9</td><td>Closed</td></tr>'
        "<tr><td>10-19</td><td>Open</td></tr><tr><td>20-255</td><td>Closed</td></tr>"
    )
    page = Page(draft_html(draft_text(f"<html><body><table>{rows}</table></body></html>")))
    marks = [one for one in page.ids if one.startswith("mark-")]
    assert len(marks) == len(set(marks)) == 4
    assert page.goals - set(page.ids) == set()
