"""Pictures of a PDF's pages, for a review: PNG, and where on the page they begin and end."""

from __future__ import annotations

import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from modebook.intake.errors import IntakeError
from modebook.intake.grid import Box

DOTS_PER_INCH = 110.0
"""Enough to read a footnote by; a page takes about 60 kB."""
LONGEST_PX = 2000
"""No edge is longer, however large the page says that it is."""
COLORS = 64


@dataclass(frozen=True, slots=True)
class PagePicture:
    """One page as a picture."""

    number: int
    png: bytes
    box: Box
    """What of the page it shows, in points from the page's upper left corner, as boxes of rows count."""
    width_px: int
    height_px: int


def page_pictures(path: Path, pages: Sequence[int]) -> Iterator[PagePicture]:
    """The pictures of some pages (from 1) of a PDF that was read before, one at a time.

    Raises IntakeError where a page cannot be drawn: what draws is more particular than what reads.
    """
    import pdfplumber
    from pdfplumber.utils.exceptions import MalformedPDFException
    from PIL import Image
    from pypdfium2 import PdfiumError  # type: ignore[import-untyped]

    if not pages:
        return
    try:
        yield from _drawn(pdfplumber.open(path, pages=list(pages)), Image)
    except (PdfiumError, MalformedPDFException) as error:
        raise IntakeError(path, f"cannot be drawn ({error})", remedy="print it to PDF anew") from error


def _drawn(opened: Any, image: Any) -> Iterator[PagePicture]:
    with opened as pdf:
        for page in pdf.pages:
            longest = max(float(page.width), float(page.height), 1.0)
            resolution = min(DOTS_PER_INCH, LONGEST_PX * 72.0 / longest)
            shown = page.to_image(resolution=resolution, antialias=True)
            few = shown.original.quantize(COLORS, method=image.Quantize.MEDIANCUT)
            out = io.BytesIO()
            few.save(out, "PNG", optimize=True)
            x0, top, x1, bottom = (float(edge) for edge in shown.bbox)
            yield PagePicture(page.page_number, out.getvalue(), (x0, top, x1, bottom), *few.size)
            page.close()
