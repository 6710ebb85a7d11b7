"""Options that several commands share, with one name, one type and one help text each."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

CatalogOption = Annotated[
    Path | None,
    typer.Option(
        "--catalog",
        envvar="MODEBOOK_CATALOG",
        show_envvar=True,
        help="The catalog's folder (with fixtures/ and rigs/). Default: the folder catalog here or above, "
        "else the demo that comes with the program.",
    ),
]
RigArgument = Annotated[
    str,
    typer.Argument(
        metavar="RIG|PATCH",
        help="A rig's name in the catalog, its folder, or a patch file (CSV, XLSX, ODS).",
    ),
]
JsonOption = Annotated[bool, typer.Option("--json", help="Print one JSON object instead of a table.")]
DatabaseOption = Annotated[
    Path | None,
    typer.Option("--db", help="The database file. Default: one for each catalog in the user's cache folder."),
]
