"""`modebook audit`: what is wrong with a patch, before the truck is unloaded."""

from __future__ import annotations

from typing import Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption, RigArgument
from modebook.cli.paper import CsvOption, HtmlOption, OverwriteOption, print_csv, write_paper


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("audit")(audit)


def audit(
    rig: RigArgument,
    sheet: Annotated[
        str | None,
        typer.Option("--sheet", help="The sheet of a workbook. Default: the first that has a patch."),
    ] = None,
    full: Annotated[bool, typer.Option("--full", help="Tell every finding by itself, not by cause.")] = False,
    html: HtmlOption = None,
    as_csv: CsvOption = False,
    overwrite: OverwriteOption = False,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """Audit a patch: collisions, unknown modes, low resolution and what it means at the throw, smoothing."""
    from modebook.shelf.memory import collector_at_rest

    # One question, one answer, and then the program ends: the collector would only look on.
    with collector_at_rest():
        from modebook.rig.audit import audit as run
        from modebook.rig.open_rig import open_rig
        from modebook.shelf.catalog import find_catalog

        reading = open_rig(rig, find_catalog(catalog), sheet=sheet)
        result = run(reading)
        if html is not None:
            from modebook.render.sheets.findings import findings_csv, findings_page

            write_paper(html, overwrite, lambda: findings_page(result), lambda: findings_csv(result.findings))
        if as_json:
            from modebook.render.audit_json import audit_json

            typer.echo(audit_json(result), nl=False)
        elif as_csv:
            from modebook.render.sheets.findings import findings_csv

            print_csv(findings_csv(result.findings))
        else:
            from modebook.render.audit_text import audit_text

            typer.echo(audit_text(result, full=full), nl=False)
    if result.summary["error"]:
        raise typer.Exit(1)
