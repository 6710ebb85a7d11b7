"""`modebook repatch`: the smallest change of modes and addresses that gives a rig what it demands."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption, RigArgument
from modebook.cli.paper import CsvOption, HtmlOption, print_csv, write_paper

if TYPE_CHECKING:
    from modebook.rig.repatch.solve import Progress


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("repatch")(repatch)


def repatch(
    rig: RigArgument,
    output: Annotated[
        Path | None, typer.Option("--output", "-o", help="Write the new patch here; columns and notes stay.")
    ] = None,
    overwrite: Annotated[
        bool, typer.Option("--overwrite", help="Let --output and --html replace files.")
    ] = False,
    seconds: Annotated[float, typer.Option("--seconds", min=1, help="How long the solver may take.")] = 30.0,
    sheet: Annotated[str | None, typer.Option("--sheet", help="The sheet of a workbook.")] = None,
    html: HtmlOption = None,
    as_csv: CsvOption = False,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """Plan a repatch: what the rig demands, with the fewest moves; then fewest universes, fewest slots."""
    from modebook.render.extras import needs
    from modebook.rig.open_rig import open_rig
    from modebook.rig.repatch.build import repatch as plan_of
    from modebook.rig.repatch.rewrite import rewritten
    from modebook.shelf.catalog import find_catalog
    from modebook.shelf.reading import read_bytes
    from modebook.shelf.writing import write_whole

    needs("highspy", "repatch", "a repatch")
    reading = open_rig(rig, find_catalog(catalog), sheet=sheet)
    plan = plan_of(reading, seconds=seconds, told=_told if sys.stderr.isatty() else None)
    if output is not None:
        content = rewritten(read_bytes(reading.patch.path), reading, plan, sheet=sheet)
        write_whole(output, content, overwrite=overwrite)
        typer.echo(f"written: {output}", err=True)
    if html is not None:
        from modebook.render.sheets.repatched import repatch_csv, repatch_page
        from modebook.rig.repatch.after import patched_after

        after = patched_after(reading, plan)
        write_paper(html, overwrite, lambda: repatch_page(plan, after), lambda: repatch_csv(plan))
    if as_csv:
        from modebook.render.sheets.repatched import repatch_csv

        print_csv(repatch_csv(plan))
        return
    if as_json:
        from modebook.render.jsons import to_json

        typer.echo(to_json(plan.to_json()), nl=False)
        return
    from modebook.render.repatch_text import repatch_text

    typer.echo(repatch_text(plan), nl=False)


def _told(progress: Progress) -> None:
    value = "-" if progress.value is None else f"{progress.value:g}"
    bound = "-" if progress.bound is None else f"{progress.bound:g}"
    typer.echo(f"{progress.seconds:5.1f} s  {progress.wish}: best {value}, bound {bound}", err=True)
