"""`modebook plan`: the setting that each light needs in each setup, and what to change between them."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption, RigArgument
from modebook.cli.paper import CsvOption, HtmlOption, OverwriteOption, print_csv, write_paper

if TYPE_CHECKING:
    from modebook.shots.day import Day
    from modebook.shots.differing import Differing


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("plan")(plan)


def plan(
    rig: RigArgument,
    shots: Annotated[
        Path | None,
        typer.Option(
            "--shots", metavar="FILE", help="The list of shots (CSV, XLSX, ODS). Default: the rig's."
        ),
    ] = None,
    from_setup: Annotated[
        str | None, typer.Option("--from-setup", metavar="SETUP", help="Begin at this setup.")
    ] = None,
    state: Annotated[
        Path | None,
        typer.Option(
            "--state", metavar="FILE", help="What units are at now: a table of units, setting, choice."
        ),
    ] = None,
    order: Annotated[
        str | None,
        typer.Option(
            "--order",
            metavar="SETUPS|FILE",
            help="Shoot in this order: setups with commas between, or a file with one a line.",
        ),
    ] = None,
    power_cut: Annotated[
        str | None,
        typer.Option(
            "--power-cut", metavar="AFTER", help="Only what a power cut in this setup leaves to do."
        ),
    ] = None,
    explain: Annotated[
        tuple[str, str] | None,
        typer.Option("--explain", metavar="SETUP UNIT", help="Why a unit is set as it is in a setup."),
    ] = None,
    plot: Annotated[
        Path | None,
        typer.Option(
            "--plot", metavar="FILE", help="With --explain: draw the hardest cue (.svg, .png, .pdf)."
        ),
    ] = None,
    refresh: Annotated[
        float | None,
        typer.Option("--refresh", metavar="HZ", help="Plan for another desk rate, and tell what changes."),
    ] = None,
    camera: Annotated[
        float | None,
        typer.Option("--camera", metavar="FPS", help="Plan for another frame rate, and tell what changes."),
    ] = None,
    html: HtmlOption = None,
    as_csv: CsvOption = False,
    overwrite: OverwriteOption = False,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """Plan the settings of every setup from its cues, and list what to send, set and do between setups."""
    from modebook.cli.planning import Wish, explained_for, planned

    if plot is not None and explain is None:
        raise typer.BadParameter("--plot needs --explain SETUP UNIT")
    wish = Wish(rig, shots, from_setup, state, order, refresh, camera, catalog)
    result = planned(wish)
    for line in result.faults:
        typer.echo(f"modebook: {line}", err=True)
    if explain is not None:
        from modebook.render.plan_explain import explain_json, explain_page, explain_text

        found = explained_for(result, *explain)
        if plot is not None:
            from modebook.cli.planning import draw_hardest

            typer.echo(f"drawn into {plot}: {draw_hardest(found, plot)}", err=True)
        if html is not None:
            from modebook.cli.planning import write_page

            write_page(html, overwrite, lambda: explain_page(found, result.reading.name))
        if as_json:
            from modebook.render.jsons import to_json

            typer.echo(to_json(explain_json(found)), nl=False)
        else:
            typer.echo(explain_text(found), nl=False)
    elif power_cut is not None:
        from modebook.cli.planning import cut_for
        from modebook.render.plan_csv import cut_csv
        from modebook.render.plan_json import cut_json
        from modebook.render.plan_text import cut_text

        cut = cut_for(result, power_cut)
        if html is not None:
            from modebook.render.sheets.plan import cut_page

            write_paper(html, overwrite, lambda: cut_page(cut, result.reading.rig.name), lambda: cut_csv(cut))
        if as_json:
            from modebook.render.jsons import to_json

            typer.echo(to_json(cut_json(cut)), nl=False)
        elif as_csv:
            print_csv(cut_csv(cut))
        else:
            typer.echo(cut_text(cut, result.reading.name), nl=False)
    else:
        _whole(result.day, result.differing, result.reading.rig.name, html, as_csv, overwrite, as_json)
    if result.faults or (result.wrong and explain is None and power_cut is None):
        raise typer.Exit(1)


def _whole(
    day: Day,
    differing: list[Differing] | None,
    name: str,
    html: Path | None,
    as_csv: bool,
    overwrite: bool,
    as_json: bool,
) -> None:
    from modebook.render.plan_csv import plan_csv

    if html is not None:
        from modebook.render.sheets.plan import plan_page

        write_paper(html, overwrite, lambda: plan_page(day, name, differing), lambda: plan_csv(day))
    if as_json:
        from modebook.render.jsons import to_json
        from modebook.render.plan_json import plan_json

        typer.echo(to_json(plan_json(day, differing)), nl=False)
    elif as_csv:
        print_csv(plan_csv(day))
    else:
        from modebook.render.plan_text import plan_text

        typer.echo(plan_text(day, differing), nl=False)
