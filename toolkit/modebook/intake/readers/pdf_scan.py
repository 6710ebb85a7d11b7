"""Looks over a PDF's pages quickly, to leave out those that cannot hold a chart where no pages were named."""

from __future__ import annotations

import re
from pathlib import Path

_RANGE = re.compile(r"\b\d{1,5}\s*(?:[-–—−~]|\.{2,}|…|to|bis|à|a|hasta)\s*\d{1,5}\b")
_ROW = re.compile(r"^\s*\d{1,3}(?:\s*[-–+/&,]\s*\d{1,3})?\*?(?:\s+\S|\s*$)")
_PAIR = re.compile(r"(?<![\d.,])(?P<low>\d{1,3})\s+(?P<high>\d{1,3})(?![\d.,]|\s*[°%])")
"""Where a range begins and ends, in two columns."""
_LEAST = 2


def likely_pages(path: Path, total: int) -> list[int]:
    """The pages that may hold a chart, and their neighbors; all of them where that cannot be told.

    A page is left out only if hardly a line of it begins with a number and hardly a range of values stands
    on it.
    """
    try:
        import pypdfium2  # type: ignore[import-untyped]
    except ImportError:
        return list(range(1, total + 1))
    try:
        document = pypdfium2.PdfDocument(path)
    except pypdfium2.PdfiumError:
        return list(range(1, total + 1))
    kept: set[int] = set()
    try:
        if len(document) != total:
            return list(range(1, total + 1))
        for index in range(total):
            page = document[index]
            text_page = page.get_textpage()
            text = text_page.get_text_bounded()
            text_page.close()
            page.close()
            if not text.strip() or may_hold_chart(text):
                kept.update((index, index + 1, index + 2))
    except pypdfium2.PdfiumError:
        return list(range(1, total + 1))
    finally:
        document.close()
    return sorted(page for page in kept if 1 <= page <= total)


def may_hold_chart(text: str) -> bool:
    """Whether a page's text has rows that begin with a number, or ranges of values."""
    rows = sum(bool(_ROW.match(line)) for line in text.splitlines())
    pairs = sum(int(found["low"]) < int(found["high"]) <= 255 for found in _PAIR.finditer(text))
    return rows >= _LEAST or len(_RANGE.findall(text)) >= _LEAST or pairs >= _LEAST
