"""`modebook measure`: how long does this fixture really smooth? From a filmed or a logged light."""

from __future__ import annotations

import os
import sys
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption

if TYPE_CHECKING:
    from modebook.measure.answer import Answer
    from modebook.measure.judgement import Judgement
    from modebook.measure.setup import Box, Setup


class ToneName(StrEnum):
    """Curves from light to code values, by name."""

    srgb = "srgb"
    bt709 = "bt709"
    linear = "linear"


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("measure")(measure)


def measure(
    files: Annotated[
        list[Path] | None,
        typer.Argument(
            metavar="CLIP|TRACE...",
            help="A clip, or a table with time_s, level and perhaps sent; several are repeats.",
        ),
    ] = None,
    refresh: Annotated[
        float | None, typer.Option("--refresh", help="Packets a second from the desk.")
    ] = None,
    gateway_hz: Annotated[
        float | None, typer.Option("--gateway-hz", help="Packets a second out of a gateway or radio.")
    ] = None,
    box: Annotated[
        str | None, typer.Option("--box", metavar="X,Y,W,H", help="The light in the picture; else found.")
    ] = None,
    reference: Annotated[
        str | None,
        typer.Option(
            "--reference", metavar="X,Y,W,H", help="A lamp without smoothing that is sent the same."
        ),
    ] = None,
    shutter: Annotated[
        float | None, typer.Option("--shutter", metavar="DEGREES", help="Shutter angle; fitted unless given.")
    ] = None,
    shutter_s: Annotated[
        float | None, typer.Option("--shutter-s", help="Shutter time, or a meter's, in seconds.")
    ] = None,
    readout_s: Annotated[
        float, typer.Option("--readout-s", help="Rolling readout, first to last row.")
    ] = 0.0,
    delay_s: Annotated[
        float, typer.Option("--delay-s", help="Known wait between the time of sending and the fixture.")
    ] = 0.0,
    transfer: Annotated[
        ToneName | None,
        typer.Option("--transfer", help="The camera's curve. Default: sRGB in full range, else BT.709."),
    ] = None,
    gray: Annotated[
        Path | None,
        typer.Option(
            "--gray", metavar="TABLE", help="A gray scale shot with the camera: columns code, light."
        ),
    ] = None,
    start_s: Annotated[float, typer.Option("--start-s", help="Leave out what comes before.")] = 0.0,
    end_s: Annotated[float | None, typer.Option("--end-s", help="Leave out what comes after.")] = None,
    plot: Annotated[
        Path | None, typer.Option("--plot", help="Draw trace, fit and what is left (.svg, .png, .pdf).")
    ] = None,
    report: Annotated[
        Path | None, typer.Option("--report", metavar="FILE", help="Write one HTML page to keep.")
    ] = None,
    into: Annotated[
        str | None,
        typer.Option("--into", metavar="MAKER/MODEL", help="Write it into this record, as `measured`."),
    ] = None,
    choice: Annotated[
        str | None, typer.Option("--choice", metavar="KEY", help="The smoothing choice that was measured.")
    ] = None,
    setting: Annotated[
        str | None,
        typer.Option("--setting", metavar="KEY", help="Its setting, where several have the choice."),
    ] = None,
    by: Annotated[str | None, typer.Option("--by", help="Who measured it.")] = None,
    date: Annotated[
        str | None, typer.Option("--date", help="When, as 2026-05-31. Default: today.", show_default=False)
    ] = None,
    how: Annotated[
        str | None,
        typer.Option(
            "--how", metavar="MAKER/MODEL", help="Print the recipe for this fixture, and cue values."
        ),
    ] = None,
    mode: Annotated[str | None, typer.Option("--mode", help="For --how: the fixture's mode.")] = None,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """Measure a smoothing from a filmed or logged light: length, method, or why it cannot be told."""
    if how is not None:
        _print_recipe(how, mode, refresh, catalog, as_json)
        return
    if not files:
        raise typer.BadParameter("give a clip or a trace, or --how with a fixture")
    if (into is None) != (choice is None):
        raise typer.BadParameter("--into and --choice belong together")
    if into is not None and not by:
        raise typer.BadParameter("--into needs --by: who measured it")
    # Many small matrices: threads for each would wait for each other.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    from modebook.measure.combine import combine
    from modebook.measure.setup import Setup

    setup = Setup(
        refresh_hz=refresh,
        gateway_hz=gateway_hz,
        shutter_deg=shutter,
        shutter_s=shutter_s,
        readout_s=readout_s,
        delay_s=delay_s,
        box=_box(box, "--box"),
        reference=_box(reference, "--reference"),
        tone=transfer.value if transfer else None,
        gray=_gray(gray),
        start_s=start_s,
        end_s=end_s,
    )
    answers = [_answer(file, setup) for file in files]
    judgement = combine(answers)
    _render(answers, judgement, plot, report, as_json)
    if into is not None and choice is not None and by is not None:
        _record(answers, judgement, into, setting, choice, by, date, catalog)


def _answer(file: Path, setup: Setup) -> Answer:
    from modebook.measure.answer import measure as run
    from modebook.measure.files import is_clip, read
    from modebook.render.extras import needs

    told = False
    if is_clip(file):
        needs("av", "measure", "a clip")

        def progress(at_s: float) -> None:
            nonlocal told
            if sys.stderr.isatty():
                told = True
                typer.echo(f"\r{file.name}: {at_s:.1f} s read (Ctrl-C stops)", err=True, nl=False)

        trace = read(file, setup, progress)
    else:
        trace = read(file, setup)
    if told:
        typer.echo("", err=True)
    return run(trace, setup)


def _render(
    answers: list[Answer], judgement: Judgement, plot: Path | None, report: Path | None, as_json: bool
) -> None:
    from modebook.render.measure_json import measure_json

    if plot is not None:
        from modebook.render.measure_plot import draw

        draw(answers, judgement, plot)
        typer.echo(f"drawn into {plot}", err=True)
    if report is not None:
        from modebook.render.sheets.measured import write_report

        write_report(answers, judgement, report)
        typer.echo(f"written to {report}", err=True)
    if as_json:
        from modebook.render.jsons import to_json

        typer.echo(to_json(measure_json(answers, judgement)), nl=False)
    else:
        from modebook.render.measure_text import measure_text

        typer.echo(measure_text(answers, judgement), nl=False)


def _record(
    answers: list[Answer],
    judgement: Judgement,
    into: str,
    setting: str | None,
    choice: str,
    by: str,
    date: str | None,
    catalog: Path | None,
) -> None:
    import datetime

    from modebook.measure.record import measured_of, write_measured
    from modebook.shelf.catalog import find_catalog
    from modebook.shelf.naming import named_fixture

    found = find_catalog(catalog)
    fixture = named_fixture(found, into)
    measured = measured_of(answers, judgement, by, date or datetime.date.today().isoformat())
    path = write_measured(found.fixture_file(fixture.id), setting, choice, measured)
    typer.echo(f"measured: written into {path}, choice {choice}", err=True)


def _print_recipe(
    name: str, mode: str | None, refresh: float | None, catalog: Path | None, as_json: bool
) -> None:
    from modebook.documents.cases import mode_named
    from modebook.measure.recipe import recipe
    from modebook.shelf.catalog import find_catalog
    from modebook.shelf.naming import named_fixture

    fixture = named_fixture(find_catalog(catalog), name)
    told = recipe(fixture, mode_named(fixture, mode), refresh)
    if as_json:
        from modebook.render.jsons import to_json

        typer.echo(to_json(told.as_json()), nl=False)
    else:
        from modebook.render.recipe_text import recipe_text

        typer.echo(recipe_text(told), nl=False)


def _box(text: str | None, option: str) -> Box | None:
    from modebook.measure.setup import Box

    if text is None:
        return None
    try:
        x, y, width, height = (int(part) for part in text.split(","))
    except ValueError:
        raise typer.BadParameter(f"{option} {text!r} is no box: give x,y,w,h in pixels") from None
    return Box(x, y, width, height)


def _gray(path: Path | None) -> tuple[tuple[float, float], ...] | None:
    from modebook.measure.grayscale import read_gray

    return None if path is None else read_gray(path)
