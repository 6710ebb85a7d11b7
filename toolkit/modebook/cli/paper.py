"""Writing an answer on paper: the page, and a CSV of the same beside it; both or none."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Annotated

import typer

HtmlOption = Annotated[
    Path | None,
    typer.Option(
        "--html", metavar="FILE", help="Write it as a page for printing, and a CSV of the same beside it."
    ),
]
CsvOption = Annotated[bool, typer.Option("--csv", help="Print it as CSV, safe to open in a spreadsheet.")]
OverwriteOption = Annotated[bool, typer.Option("--overwrite", help="Let --html replace files.")]


def write_paper(html: Path, overwrite: bool, page: Callable[[], str], csv: Callable[[], str]) -> None:
    """Write both files. Raises ShelfError where one is there already and `overwrite` is off."""
    from modebook.shelf.errors import ShelfError
    from modebook.shelf.writing import write_whole

    beside = html.with_suffix(".csv")
    if beside == html:
        raise ShelfError(html, "the page cannot end in .csv", remedy="end it in .html")
    for path in (html, beside):
        if path.exists() and not overwrite:
            raise ShelfError(path, "this file exists already", remedy="name another one, or --overwrite it")
    content = page().encode("utf-8", errors="replace")
    # A byte order mark tells a spreadsheet that it is UTF-8.
    rows = csv().encode("utf-8-sig", errors="replace")
    write_whole(html, content)
    write_whole(beside, rows)
    typer.echo(f"written: {html}, {beside}", err=True)


def print_csv(text: str) -> None:
    """Print a CSV as bytes, so that its line ends stay as RFC 4180 has them."""
    import sys

    sys.stdout.flush()
    sys.stdout.buffer.write(text.encode("utf-8", errors="replace"))
    sys.stdout.buffer.flush()
