"""Small PDFs for tests of what cannot be read: pages of words, scans without text, locked files."""

from __future__ import annotations

from pathlib import Path

import fpdf


def simple_pdf(path: Path, pages: int = 1, *, text: bool = True, password: str | None = None) -> Path:
    """A PDF of so many pages: with a line of words each, or with a black square as a scan would have."""
    document = fpdf.FPDF()
    for number in range(pages):
        document.add_page()
        document.set_font("helvetica", size=10)
        if text:
            document.cell(text=f"Page {number + 1} of words")
        else:
            document.rect(20, 20, 100, 100, style="F")
    if password:
        document.set_encryption(owner_password=password, user_password=password)
    document.output(str(path))
    return path
