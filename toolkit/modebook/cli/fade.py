"""`modebook fade`: will this fade be seen to step, will this snap be late, and what would cure it?"""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption

if TYPE_CHECKING:
    from modebook.documents.cases import Case
    from modebook.documents.fixture import Fixture
    from modebook.response.camera import Camera
    from modebook.response.link import Link
    from modebook.response.losses import Losses
    from modebook.response.smoothing import Method, Smoothing


class CurveName(StrEnum):
    """Dimmer curves by name."""

    linear = "linear"
    square = "square"
    s = "s"
    inverse_square = "inverse-square"


class MethodName(StrEnum):
    """Smoothing methods by name."""

    average = "average"
    interpolate = "interpolate"
    lag = "lag"
    limit = "limit"
    restart = "restart"


class LineName(StrEnum):
    """What carries the packets from the desk."""

    dmx = "dmx"
    network = "network"


class LossKind(StrEnum):
    """What a link does with a packet that it loses."""

    missing = "missing"
    repeat = "repeat"


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("fade")(fade)


def fade(
    from_percent: Annotated[float, typer.Option("--from", help="Level at the start, in percent.")] = 100.0,
    to_percent: Annotated[float, typer.Option("--to", help="Level at the end, in percent.")] = 0.0,
    seconds: Annotated[float, typer.Option("--seconds", help="Length of the fade.")] = 1.0,
    snap: Annotated[bool, typer.Option("--snap", help="A snap: a fade of no time.")] = False,
    curve: Annotated[CurveName | None, typer.Option("--curve", help="Dimmer curve.")] = None,
    refresh: Annotated[float, typer.Option("--refresh", help="Packets a second from the desk.")] = 30.0,
    gateway_hz: Annotated[
        float | None, typer.Option("--gateway-hz", help="Packets a second out of a gateway or radio.")
    ] = None,
    delay_s: Annotated[float, typer.Option("--delay-s", help="Fixed delay of the link.")] = 0.0,
    line: Annotated[
        LineName, typer.Option("--line", help="DMX512, or a network stream of any rate.")
    ] = LineName.dmx,
    slots: Annotated[
        int, typer.Option("--slots", help="Slots that the desk sends (many send all 512).")
    ] = 512,
    bits: Annotated[
        list[int] | None, typer.Option("--bits", help="Resolution: 8 (default), 16, 24; repeat to compare.")
    ] = None,
    smoothing: Annotated[
        list[float] | None,
        typer.Option("--smoothing", metavar="PACKETS", help="Smoothing length; repeat to compare; 0 is off."),
    ] = None,
    length_s: Annotated[
        list[float] | None, typer.Option("--length-s", help="Smoothing length in seconds; repeat to compare.")
    ] = None,
    lag_s: Annotated[
        list[float] | None,
        typer.Option("--lag-s", help="A lag's time constant in seconds; repeat to compare."),
    ] = None,
    method: Annotated[
        MethodName | None,
        typer.Option("--method", help="How it smooths; average unless said; alone: length unknown."),
    ] = None,
    lose: Annotated[
        str | None, typer.Option("--lose", metavar="3,4", help="Lost packets by number, counted from 0.")
    ] = None,
    loss: Annotated[float | None, typer.Option("--loss", help="Share of packets lost, such as 0.02.")] = None,
    burst: Annotated[
        float | None,
        typer.Option("--burst", metavar="PACKETS", help="Mean number lost in a row, with --loss."),
    ] = None,
    loss_kind: Annotated[
        LossKind, typer.Option("--loss-kind", help="A lost packet is missing, or the last one is repeated.")
    ] = LossKind.missing,
    log: Annotated[
        Path | None, typer.Option("--log", help="Arrival times in seconds, one a line, instead of losses.")
    ] = None,
    seed: Annotated[
        int, typer.Option("--seed", help="For --loss: the same seed loses the same packets.")
    ] = 0,
    trials: Annotated[int, typer.Option("--trials", help="For --loss: how often losses are drawn.")] = 1,
    camera: Annotated[float | None, typer.Option("--camera", metavar="FPS", help="Seen by a camera.")] = None,
    shutter: Annotated[
        float | None, typer.Option("--shutter", metavar="DEGREES", help="Shutter angle (180 unless said).")
    ] = None,
    shutter_s: Annotated[float | None, typer.Option("--shutter-s", help="Shutter time in seconds.")] = None,
    phase: Annotated[
        float | None, typer.Option("--phase", help="Camera against packets, 0 to 1; the worst unless said.")
    ] = None,
    readout_s: Annotated[
        float, typer.Option("--readout-s", help="Rolling readout, first to last row.")
    ] = 0.0,
    white: Annotated[float, typer.Option("--white", help="Luminance of white at full, in cd/m2.")] = 100.0,
    fill: Annotated[float, typer.Option("--fill", help="Share of that from other lights, 0 to 1.")] = 0.0,
    lowest: Annotated[float, typer.Option("--lowest", help="Lowest stable output in percent of full.")] = 0.0,
    fixture: Annotated[
        str | None,
        typer.Option("--fixture", metavar="MAKER/MODEL", help="Take bits, curve, smoothing from it."),
    ] = None,
    mode: Annotated[str | None, typer.Option("--mode", help="The fixture's mode.")] = None,
    parameter: Annotated[
        str, typer.Option("--parameter", help="The mode's parameter that fades.")
    ] = "dimmer",
    choice: Annotated[
        list[str] | None, typer.Option("--choice", metavar="KEY", help="Smoothing choice; all unless said.")
    ] = None,
    plot: Annotated[
        Path | None, typer.Option("--plot", help="Draw it into this file (.svg, .png, .pdf).")
    ] = None,
    as_csv: Annotated[bool, typer.Option("--csv", help="Print the packets and the light as CSV.")] = False,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """Answer a fade or a snap: will it be seen to step, how late is it, and what would cure it?"""
    from modebook.documents.cases import fixture_cases, mode_named, plain_cases
    from modebook.response.camera import Camera
    from modebook.response.curves import Curve
    from modebook.response.fade import Fade
    from modebook.response.seen import Viewing

    eye: Camera | None = None
    if camera is not None:
        eye = Camera(camera, shutter, shutter_s, phase, readout_s)
    elif shutter is not None or shutter_s is not None or phase is not None or readout_s:
        raise typer.BadParameter("a shutter, phase or readout needs a --camera")
    question = Fade(
        from_percent,
        to_percent,
        0.0 if snap else seconds,
        _link(refresh, gateway_hz, delay_s, line, slots, _losses(lose, loss, burst, seed, log), loss_kind),
        curve=Curve((curve or CurveName.linear).value),
        camera=eye,
        viewing=Viewing(white, fill),
        lowest=lowest / 100.0,
        trials=trials,
    )
    if fixture is None:
        if mode is not None or choice:
            raise typer.BadParameter("--mode and --choice need a --fixture")
        cases = plain_cases(question, bits or [8], _smoothings(smoothing, length_s, lag_s, method))
        title = ""
    else:
        if bits or smoothing or length_s or lag_s or method:
            raise typer.BadParameter("--fixture gives bits and smoothing: leave those options out")
        record = _fixture(fixture, catalog)
        chosen = mode_named(record, mode)
        cases = fixture_cases(question, record, chosen, parameter, choice or (), keep_curve=curve is not None)
        title = f"{record.maker} {record.model}, {chosen.name}, {parameter}"
    _render(cases, title, plot, as_csv, as_json)


def _render(cases: list[Case], title: str, plot: Path | None, as_csv: bool, as_json: bool) -> None:
    answers = [case.answered() for case in cases]
    if plot is not None:
        from modebook.render.fade_plot import draw

        draw(cases, title, plot)
        typer.echo(f"drawn into {plot}", err=True)
    if as_json:
        from modebook.render.jsons import to_json

        told = dict(answers[0])
        if len(answers) > 1:
            told["choices"] = answers
        typer.echo(to_json(told), nl=False)
    elif as_csv:
        from modebook.render.fade_csv import fade_csv

        typer.echo(fade_csv(cases), nl=False)
    else:
        from modebook.render.fade_text import fade_text

        typer.echo(fade_text(cases, answers, title), nl=False)


def _smoothings(
    packets: list[float] | None,
    lengths_s: list[float] | None,
    lags_s: list[float] | None,
    method: MethodName | None,
) -> list[Smoothing]:
    from modebook.response.smoothing import OFF, Smoothing

    name: Method = (method or MethodName.average).value
    found = [Smoothing(name, packets=n) if n else OFF for n in packets or ()]
    found += [Smoothing(name, length_s=s) if s else OFF for s in lengths_s or ()]
    found += [Smoothing("lag", length_s=s) if s else OFF for s in lags_s or ()]
    if not found:
        found = [OFF] if method is None else [Smoothing(name)]
    return found


def _losses(
    lose: str | None, loss: float | None, burst: float | None, seed: int, log: Path | None
) -> Losses | None:
    from modebook.response.losses import ArrivalLog, LostAtRandom, LostInBursts, LostNumbers

    if sum(each is not None for each in (lose, loss, log)) > 1:
        raise typer.BadParameter("give one of --lose, --loss and --log")
    if burst is not None and loss is None:
        raise typer.BadParameter("--burst needs a --loss")
    if lose is not None:
        try:
            return LostNumbers(tuple(int(number) for number in lose.replace(" ", "").split(",") if number))
        except ValueError:
            raise typer.BadParameter(f"{lose!r} is not a list of packet numbers such as 3,4") from None
    if loss is not None:
        return LostAtRandom(loss, seed) if burst is None else LostInBursts(loss, burst, seed)
    if log is not None:
        return ArrivalLog(_times(log))
    return None


def _times(log: Path) -> tuple[float, ...]:
    from modebook.shelf.errors import ShelfError
    from modebook.shelf.reading import read_bytes

    found: list[float] = []
    lines = read_bytes(log).decode("utf-8-sig", errors="replace").splitlines()
    for number, text in enumerate(lines, 1):
        word = text.split("#")[0].strip()
        if not word:
            continue
        try:
            found.append(float(word))
        except ValueError:
            raise ShelfError(
                log, f"{word[:40]!r} is not a time", place=f"line {number}", remedy="give seconds, one a line"
            ) from None
    return tuple(found)


def _link(
    refresh: float,
    gateway_hz: float | None,
    delay_s: float,
    line: LineName,
    slots: int,
    losses: Losses | None,
    kind: LossKind,
) -> Link:
    from modebook.response.link import Link

    return Link(refresh, gateway_hz, delay_s, losses=losses, loss=kind.value, slots=slots, line=line.value)


def _fixture(name: str, catalog: Path | None) -> Fixture:
    from modebook.shelf.catalog import find_catalog
    from modebook.shelf.naming import named_fixture

    return named_fixture(find_catalog(catalog), name)
