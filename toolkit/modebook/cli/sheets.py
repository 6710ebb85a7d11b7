"""`modebook sheets`: the rig on paper: by position, by universe with maps, control cards, a swapped spare."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from modebook.cli.options import CatalogOption, RigArgument


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("sheets")(sheets)


def sheets(
    rig: RigArgument,
    output: Annotated[
        Path,
        typer.Option("--output", "-o", metavar="FOLDER", help="Where the sheets go; it is made if missing."),
    ],
    spares: Annotated[
        list[str] | None,
        typer.Option("--spare", metavar="UNIT", help="Also a page for a spare swapped in for this unit."),
    ] = None,
    overwrite: Annotated[
        bool, typer.Option("--overwrite", help="Let sheets in the folder be replaced by new ones.")
    ] = False,
    sheet: Annotated[str | None, typer.Option("--sheet", help="The sheet of a workbook.")] = None,
    catalog: CatalogOption = None,
) -> None:
    """Write a rig's printable sheets into a folder; open index.html there."""
    from modebook.render.sheets.folder import sheets as files_of
    from modebook.render.sheets.folder import written
    from modebook.rig.open_rig import open_rig
    from modebook.shelf.catalog import find_catalog
    from modebook.shelf.errors import ShelfError
    from modebook.shelf.writing import write_whole

    reading = open_rig(rig, find_catalog(catalog), sheet=sheet)
    files = files_of(reading, spares or ())
    there = [name for name in files if (output / name).exists()]
    if there and not overwrite:
        raise ShelfError(
            output / there[0],
            "this file exists already, and nothing was written",
            remedy="name another folder, or add --overwrite",
        )
    for name, content in written(files):
        write_whole(output / name, content)
    typer.echo(f"{len(files)} files written; open {output / 'index.html'}")
