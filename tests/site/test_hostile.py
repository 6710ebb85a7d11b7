"""A catalog full of hostile text shows it as text everywhere: pages, JSON, CSV, print; no script runs."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from support.site import Served, serve

HOSTILE = {
    "script": "<script>window.caught = 1</script>",
    "image": '<img src=x onerror="window.caught = 1">',
    "quotes": "\"'><svg/onload=window.caught=1>",
    "template": "{{ 7 * 7 }}{% raw %}",
    "link": "javascript:window.caught=1",
    "turned": "abc\u202egpj.exe\u2066\u200f",
    "formula": '=HYPERLINK("http://example.invalid","x")',
    "formula-at": "@SUM(1+1)",
    "end": "</title></textarea></style><x-caught>more",
    "long": "L" * 10_000,
    "comment": "<!-- --><!--",
}
"""What somebody might write into a manual, or into a label."""

PAGES = (
    "/",
    "/find?drafts=1",
    "/find?q=hostile&drafts=1",
    "/low",
    "/rigs",
    "/words",
    "/modebook",
    "/modebook/fixtures",
    "/modebook/modes",
    "/modebook/parameters",
    "/modebook/ranges",
    "/modebook/settings",
    "/modebook/choices",
    "/modebook/sources",
    "/modebook/findings",
    "/fixtures/hostile/hostile-1",
    "/fixtures/hostile/hostile-1/print",
    "/compare?a=hostile/hostile-1&b=hostile/hostile-1",
    "/fade?fixture=hostile/hostile-1",
    "/modebook/what-a-modes-slots-do?words=hostile",
)


def document() -> dict[str, Any]:
    """A fixture whose every text is hostile; its names make a path that is plain."""
    texts = list(HOSTILE.values())
    ranges = [
        {"from": 20 * place, "to": 20 * place + 19, "meaning": text, "note": text}
        for place, text in enumerate(texts)
    ]
    return {
        "maker": "Hostile",
        "model": "Hostile 1",
        "category": "other",
        "standing": "draft",
        "about": " ".join(texts),
        "sources": [
            {"key": f"s{place}", "title": text, "revision": text, "note": text}
            for place, text in enumerate(texts)
        ],
        "settings": [
            {
                "key": "smoothing",
                "setting": "smoothing",
                "label": HOSTILE["script"],
                "choices": [
                    {"key": f"c{place}", "label": text, "length": {"packets": place}, "note": text}
                    for place, text in enumerate(texts)
                ],
                "ways": [{"by": "menu", "path": texts, "note": HOSTILE["image"]}],
            }
        ],
        "modes": [
            {
                "name": text,
                "footprint": 2,
                "note": text,
                "parameters": [
                    {"parameter": "dimmer", "label": text, "slots": [1], "note": text},
                    {"parameter": "control", "label": text, "slots": [2], "ranges": ranges},
                ],
            }
            for text in texts
        ],
        "doubts": [{"pointer": "/modes/0", "why": text, "printed": text, "read": text} for text in texts],
    }


@pytest.fixture(scope="module")
def hostile(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """A site over that fixture and nothing else."""
    root: Path = tmp_path_factory.mktemp("hostile")
    folder = root / "fixtures" / "hostile"
    folder.mkdir(parents=True)
    (folder / "hostile-1.json").write_text(json.dumps(document()), encoding="utf-8")
    yield from serve(root, root / "modebook.sqlite")


@pytest.mark.parametrize("path", PAGES)
def test_it_is_shown_and_never_run(browser: Any, hostile: Served, path: str) -> None:
    """No script of the text runs, no element of it is made, no sign of it turns a line around."""
    context = browser.new_context()
    page = context.new_page()
    try:
        answer = page.goto(hostile(path), wait_until="load")
        assert answer.status == 200
        assert page.evaluate("window.caught") is None
        made = "main img, x-caught, svg[onload], [onerror], a[href^='javascript']"
        assert page.locator(made).count() == 0
        text = page.evaluate("document.documentElement.textContent")
        assert "\u202e" not in text
        assert "\u2066" not in text
        assert "49" not in page.title()
    finally:
        context.close()


def test_the_texts_are_really_there(browser: Any, hostile: Served) -> None:
    """The fixture's page shows each text, letter by letter."""
    context = browser.new_context()
    page = context.new_page()
    try:
        page.goto(hostile("/fixtures/hostile/hostile-1"))
        text = page.evaluate("document.body.textContent")
        for name, told in HOSTILE.items():
            if name != "turned":
                assert told in text, name
    finally:
        context.close()


def test_a_page_of_10_kb_labels_stays_in_its_width(browser: Any, hostile: Served) -> None:
    """Nothing runs out of a window of 390 px but what scrolls by itself."""
    context = browser.new_context(viewport={"width": 390, "height": 800})
    page = context.new_page()
    try:
        page.goto(hostile("/fixtures/hostile/hostile-1"))
        assert page.evaluate("document.documentElement.scrollWidth") <= 390
    finally:
        context.close()


@pytest.mark.parametrize(
    "path",
    [
        "/modebook/ranges.csv?_size=max",
        "/modebook/sources.csv?_stream=on",
        "/fixtures/hostile/hostile-1/chart.csv",
    ],
)
def test_no_cell_of_a_csv_is_a_formula(hostile: Served, path: str) -> None:
    """A spreadsheet that opens it computes nothing (OWASP, CSV injection)."""
    import urllib.request

    with urllib.request.urlopen(hostile(path), timeout=30) as found:
        text = found.read().decode()
    cells = [cell for row in csv.reader(io.StringIO(text)) for cell in row]
    assert any("HYPERLINK" in cell for cell in cells)
    starts = [cell for cell in cells if cell.startswith(("=", "@", "\t", "\r"))]
    assert starts == []


def test_json_holds_the_texts_unchanged(hostile: Served) -> None:
    """Scripts get every sign as it was written."""
    import urllib.request

    with urllib.request.urlopen(hostile("/modebook/sources.json?_shape=array"), timeout=30) as found:
        assert found.headers.get_content_type() == "application/json"
        titles = {row["title"] for row in json.load(found)}
    assert set(HOSTILE.values()) <= titles
