"""`modebook verify`: whether the fixtures were really set as planned."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption, RigArgument
from modebook.cli.paper import CsvOption, HtmlOption, OverwriteOption, print_csv, write_paper


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("verify")(verify)


def verify(
    rig: RigArgument,
    as_found: Annotated[
        Path,
        typer.Argument(
            metavar="AS_FOUND",
            help="What was read off the fixtures (CSV, XLSX, ODS): unit or UID, model id, personality, "
            "start address, response time, curve, firmware, whatever of it there is.",
        ),
    ],
    sheet: Annotated[
        str | None,
        typer.Option("--sheet", help="The sheet of the as-found workbook. Default: the first that fits."),
    ] = None,
    html: HtmlOption = None,
    as_csv: CsvOption = False,
    overwrite: OverwriteOption = False,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """Compare a list read off the fixtures with the plan: modes, addresses, choices, firmware, units."""
    from modebook.rig.found_reading import read_as_found
    from modebook.rig.open_rig import open_rig
    from modebook.rig.verify import verify as run
    from modebook.shelf.catalog import find_catalog

    reading = open_rig(rig, find_catalog(catalog))
    result = run(reading, read_as_found(as_found, sheet=sheet))
    if html is not None:
        from modebook.render.sheets.verified import verify_csv, verify_page

        write_paper(html, overwrite, lambda: verify_page(result), lambda: verify_csv(result))
    if as_json:
        from modebook.render.jsons import to_json

        typer.echo(to_json(result.to_json()), nl=False)
    elif as_csv:
        from modebook.render.sheets.verified import verify_csv

        print_csv(verify_csv(result))
    else:
        from modebook.render.verify_text import verify_text

        typer.echo(verify_text(result), nl=False)
    if result.summary["error"]:
        raise typer.Exit(1)
