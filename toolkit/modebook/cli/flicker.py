"""`modebook flicker`: what a camera sees of modulated light and of strobes."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Any

import typer

from modebook.cli.options import CatalogOption, JsonOption


class WaveformName(StrEnum):
    """How light is modulated."""

    pwm = "pwm"
    sine = "sine"


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("flicker")(flicker)


def flicker(
    frequency: Annotated[
        list[float] | None, typer.Option("--frequency", metavar="HZ", help="Modulation; repeat to compare.")
    ] = None,
    waveform: Annotated[
        WaveformName, typer.Option("--waveform", help="Pulses or a sine.")
    ] = WaveformName.pwm,
    duty: Annotated[
        float, typer.Option("--duty", help="Share of the period that pulses are on, 0 to 1.")
    ] = 0.5,
    depth: Annotated[float, typer.Option("--depth", help="How deep it is modulated, 0 to 1.")] = 1.0,
    strobe: Annotated[
        list[float] | None,
        typer.Option("--strobe", metavar="HZ", help="Flashes a second; repeat to compare."),
    ] = None,
    refresh: Annotated[float, typer.Option("--refresh", help="Packets a second, for --strobe.")] = 30.0,
    camera: Annotated[float, typer.Option("--camera", metavar="FPS", help="Frames a second.")] = 24.0,
    shutter: Annotated[float, typer.Option("--shutter", metavar="DEGREES", help="Shutter angle.")] = 180.0,
    readout_s: Annotated[
        float | None, typer.Option("--readout-s", help="Rolling readout, first to last row: tells the bands.")
    ] = None,
    fixture: Annotated[
        str | None, typer.Option("--fixture", metavar="MAKER/MODEL", help="Take its modulation frequencies.")
    ] = None,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """Answer what a camera sees of modulated light and of strobes, exactly for these waveforms."""
    from modebook.documents.flickering import modulations_of
    from modebook.response.flicker import flicker_answer, strobe_answer
    from modebook.response.modulation import Modulation

    lights = [(f"{hz:g} Hz", Modulation(waveform.value, hz, duty, depth)) for hz in frequency or ()]
    title = ""
    if fixture is not None:
        from modebook.shelf.catalog import find_catalog
        from modebook.shelf.errors import ShelfError
        from modebook.shelf.naming import named_fixture

        record = named_fixture(find_catalog(catalog), fixture)
        title = f"{record.maker} {record.model}"
        found = modulations_of(record, waveform.value, duty, depth)
        if not found:
            raise ShelfError(
                fixture, "no modulation frequency is recorded", remedy="give one with --frequency"
            )
        lights += found
    if not lights and not strobe:
        raise typer.BadParameter("give a --frequency, a --strobe or a --fixture")
    told: dict[str, Any] = {
        "camera_fps": camera,
        "shutter_deg": shutter,
        "modulations": [flicker_answer(label, light, camera, shutter, readout_s) for label, light in lights],
        "strobes": [strobe_answer(hz, refresh, camera) for hz in strobe or ()],
    }
    if as_json:
        from modebook.render.jsons import to_json

        typer.echo(to_json(told), nl=False)
        return
    from modebook.render.flicker_text import flicker_text

    typer.echo(flicker_text(told, title), nl=False)
