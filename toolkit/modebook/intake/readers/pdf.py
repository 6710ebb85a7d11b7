"""Reads PDF pages with a text layer: words with their boxes, ruled tables, columns of unruled ones."""

from __future__ import annotations

import struct
import zlib
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from modebook.intake.errors import IntakeError, MissingExtraError
from modebook.intake.grid import Leaf, Source
from modebook.intake.readers.pdf_page import Word, page_items, page_words
from modebook.intake.readers.pdf_scan import likely_pages
from modebook.intake.readers.running_heads import without_running_heads

MOST_PAGES_UNASKED = 200
_MOST_ASKED = 400
_MOST_BYTES = 500_000_000
Progress = Callable[[str], None]


def read_pdf(path: Path, pages: Sequence[int] | None = None, progress: Progress | None = None) -> Source:
    """The pages of a PDF as lines and grids with boxes. Only the asked pages are read; numbers count from 1.

    Raises IntakeError for a file that is no PDF, locked, cut off, without a text layer, or too long to be
    read whole.
    """
    name = str(path)
    try:
        import pdfplumber
    except ImportError as error:
        raise MissingExtraError(
            name, "reading PDF needs pdfplumber", remedy="install modebook[draft]"
        ) from error
    if path.stat().st_size > _MOST_BYTES:
        raise IntakeError(
            name,
            f"is larger than {_MOST_BYTES / 1e6:.0f} MB",
            remedy="print the chart's pages into a file of their own",
        )
    with _told(name):
        total = _count(path)
        asked = list(pages) if pages is not None else None
        if asked is not None and (not asked or min(asked) < 1 or max(asked) > total):
            raise IntakeError(
                name,
                f"has {total} pages, and pages {_shown(asked)} are asked for",
                remedy="name pages that it has",
            )
        if asked is None and total > MOST_PAGES_UNASKED:
            raise IntakeError(name, f"has {total} pages", remedy="name the chart's pages, such as 31-34")
        if asked is not None and len(asked) > _MOST_ASKED:
            raise IntakeError(
                name,
                f"{len(asked)} pages are asked for, and {_MOST_ASKED} is the most",
                remedy="name the chart's pages only",
            )
        leaves: list[Leaf] = []
        silent: list[int] = []
        wanted = asked or likely_pages(path, total) or [1]
        with pdfplumber.open(path, pages=wanted) as pdf:
            said = _told_pages(pdf, progress, len(wanted), silent)
            for page, words in without_running_heads(said):
                items = page_items(page, words)
                leaves.append(Leaf(page.page_number, items, float(page.width), float(page.height)))
                page.close()
    if len(silent) == len(leaves) and leaves:
        raise IntakeError(
            name,
            f"no text is on page{'s' if len(silent) > 1 else ''} {_shown(silent)}: this is a scan or a "
            f"picture",
            remedy=(
                "run it through text recognition first (the result needs a careful look), or type it into a "
                "blank chart sheet"
            ),
        )
    notes = (
        [f"page {number} has no text: if it holds a chart, that was not read" for number in silent]
        if asked
        else []
    )
    return Source(name, "pdf", leaves, total, notes)


def _told_pages(
    pdf: Any, progress: Progress | None, count: int, silent: list[int]
) -> Iterator[tuple[Any, list[Word]]]:
    """The pages with their words, each told before it is read; `silent` takes those without any."""
    for done, page in enumerate(pdf.pages, start=1):
        if progress is not None:
            progress(f"page {page.page_number} ({done} of {count})")
        words = page_words(page)
        if not words:
            silent.append(page.page_number)
        yield page, words


def _count(path: Path) -> int:
    """How many pages the file has, without reading them."""
    from pdfminer.pdfdocument import PDFDocument
    from pdfminer.pdfpage import PDFPage
    from pdfminer.pdfparser import PDFParser
    from pdfminer.pdftypes import resolve1

    with path.open("rb") as file:
        document = PDFDocument(PDFParser(file))
        tree = resolve1(document.catalog.get("Pages")) if document.catalog else None
        told = resolve1(tree.get("Count")) if isinstance(tree, dict) else None
        if isinstance(told, int) and 0 < told < 100_000:
            return told
        count = 0
        for count, _ in enumerate(PDFPage.create_pages(document), start=1):
            if count > 100_000:
                break
        return count


@contextmanager
def _told(name: str) -> Iterator[None]:
    from pdfminer.pdfdocument import PDFEncryptionError, PDFPasswordIncorrect, PDFTextExtractionNotAllowed
    from pdfminer.pdfexceptions import PDFException
    from pdfminer.psexceptions import PSException
    from pdfplumber.utils.exceptions import PdfminerException

    locked = (PDFEncryptionError, PDFPasswordIncorrect, PDFTextExtractionNotAllowed)
    try:
        yield
    except IntakeError:
        raise
    except locked as error:
        raise IntakeError(name, "is locked with a password", remedy="save it without one") from error
    except (
        PdfminerException,
        PDFException,
        PSException,
        ValueError,
        KeyError,
        TypeError,
        IndexError,
        AttributeError,
        AssertionError,
        RecursionError,
        struct.error,
        zlib.error,
        OSError,
        OverflowError,
        MemoryError,
    ) as error:
        inner = error.args[0] if error.args and isinstance(error.args[0], BaseException) else error
        if isinstance(inner, locked):
            raise IntakeError(name, "is locked with a password", remedy="save it without one") from error
        reason = " ".join(str(inner).split())[:120] or type(inner).__name__
        raise IntakeError(
            name, f"is damaged or cut off ({reason})", remedy="get the file again, or print it to PDF anew"
        ) from error


def _shown(pages: Sequence[int]) -> str:
    if len(pages) > 6:
        return f"{pages[0]} to {pages[-1]}"
    return ", ".join(str(page) for page in pages)
