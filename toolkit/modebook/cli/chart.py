"""`modebook chart`: a mode's chart in the terminal, as a sheet that `draft` reads back, or for printing."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("chart")(chart)


def chart(
    fixture: Annotated[
        str | None,
        typer.Argument(
            metavar="[MAKER/MODEL|FILE]", help="A fixture of the catalog, or a document.", show_default=False
        ),
    ] = None,
    mode: Annotated[
        str | None, typer.Option("--mode", help="One mode, by its name or number. Default: all of them.")
    ] = None,
    as_csv: Annotated[bool, typer.Option("--csv", help="Print the chart sheet as CSV.")] = False,
    xlsx: Annotated[
        Path | None, typer.Option("--xlsx", metavar="FILE", help="Write the chart sheet as a workbook.")
    ] = None,
    html: Annotated[
        Path | None, typer.Option("--html", metavar="FILE", help="Write a page for printing.")
    ] = None,
    blank: Annotated[
        bool,
        typer.Option(
            "--blank", help="An empty chart sheet with its titles and one worked example, as CSV or --xlsx."
        ),
    ] = False,
    overwrite: Annotated[
        bool, typer.Option("--overwrite", help="Let --xlsx and --html replace a file.")
    ] = False,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """Print a mode's chart, or give it as a chart sheet that `draft` reads back without loss."""
    if blank:
        if fixture is not None or mode is not None or html is not None or as_json:
            raise typer.BadParameter("--blank is a sheet of its own: only --csv or --xlsx FILE goes with it")
        _blank(xlsx, overwrite)
        return
    if fixture is None:
        raise typer.BadParameter("name a fixture such as maker/model, or ask for a --blank sheet")
    document = _document(fixture, catalog)
    if mode is not None:
        document = _only(document, mode)
    if xlsx is not None:
        from modebook.intake.sheet_out import sheet_rows, xlsx_bytes

        _write(xlsx, xlsx_bytes(sheet_rows(document)), overwrite)
    if html is not None:
        from modebook.render.chart_html import chart_html

        _write(html, chart_html(document).encode(), overwrite)
    if as_json:
        from modebook.render.jsons import to_json
        from modebook.shelf.canonical import as_written

        typer.echo(to_json({"document": as_written(document)}), nl=False)
    elif as_csv:
        from modebook.intake.sheet_out import csv_text, sheet_rows

        _print_csv(csv_text(sheet_rows(document)))
    elif xlsx is None and html is None:
        from modebook.render.chart_text import chart_text

        typer.echo(chart_text(document, range(len(document.modes))), nl=False)


def _document(name: str, catalog: Path | None) -> Fixture:
    """A document by its file, or by the name of a fixture of the catalog."""
    if name.casefold().endswith(".json"):
        from modebook.shelf.reading import read_fixture

        return read_fixture(name)
    from modebook.shelf.catalog import find_catalog
    from modebook.shelf.naming import named_fixture

    return named_fixture(find_catalog(catalog), name)


def _only(document: Fixture, mode: str) -> Fixture:
    from modebook.intake.picking import modes_named, with_modes

    return with_modes(document, modes_named(document, mode))


def _blank(xlsx: Path | None, overwrite: bool) -> None:
    from modebook.intake.sheet_out import blank_rows, csv_text, xlsx_bytes

    if xlsx is not None:
        _write(xlsx, xlsx_bytes(blank_rows()), overwrite)
    else:
        _print_csv(csv_text(blank_rows()))


def _print_csv(text: str) -> None:
    # Bytes, so that line ends stay as CSV has them.
    import sys

    sys.stdout.flush()
    sys.stdout.buffer.write(text.encode())
    sys.stdout.buffer.flush()


def _write(path: Path, content: bytes, overwrite: bool) -> None:
    from modebook.shelf.errors import ShelfError
    from modebook.shelf.writing import write_whole

    if path.exists() and not overwrite:
        raise ShelfError(path, "this file exists already", remedy="name another one, or --overwrite it")
    write_whole(path, content, overwrite=overwrite)
    typer.echo(f"written: {path}", err=True)
