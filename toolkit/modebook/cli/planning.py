"""What `modebook plan` asks for, put together: the files found, the plan made, names turned into places."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING

import typer

if TYPE_CHECKING:
    from modebook.documents.shots import Shots
    from modebook.rig.reading import RigReading
    from modebook.shots.change import PowerCut
    from modebook.shots.day import Day
    from modebook.shots.differing import Differing
    from modebook.shots.explaining import Explained
    from modebook.shots.plan import Plan

SHOTS = ("shots.csv", "shots.xlsx", "shots.ods")


@dataclass(frozen=True)
class Wish:
    """The options."""

    rig: str
    shots: Path | None
    from_setup: str | None
    state: Path | None
    order: str | None
    refresh_hz: float | None
    camera_fps: float | None
    catalog: Path | None


@dataclass
class Planned:
    """The plan, and what it was made of."""

    reading: RigReading
    shots: Shots
    plan: Plan
    day: Day
    told: frozenset[tuple[str, str]]
    """What a person said that units are at."""
    differing: list[Differing] | None
    faults: list[str] = field(default_factory=list)
    """Lines for people about what could not be taken as it is."""

    @property
    def wrong(self) -> bool:
        """Whether something that was asked for is not given."""
        return bool(self.faults or self.plan.conflicts or self.day.changes.faults or self.day.disagreements)


def planned(wish: Wish) -> Planned:
    """Open everything and plan. Raises ShelfError for what cannot be read, BadParameter for bad options."""
    from modebook.rig.open_rig import open_rig
    from modebook.shelf.catalog import find_catalog
    from modebook.shots.day import day_of
    from modebook.shots.differing import differing
    from modebook.shots.planning import plan as make
    from modebook.shots.reading import read_shots
    from modebook.shots.state_reading import read_state

    base = open_rig(wish.rig, find_catalog(wish.catalog))
    reading = _under(base, wish)
    shots = read_shots(wish.shots or _shots_of(base), reading)
    faults = [f"{shots.path}: row {one.row}: {one.column}: {one.why}" for one in shots.faults]
    if not shots.setups:
        from modebook.shelf.errors import ShelfError

        raise ShelfError(shots.path, "no cue could be read", remedy="; ".join(faults[:3]) or "add cues")
    if wish.order:
        shots = _ordered(shots, wish.order)
    first = _place(shots, wish.from_setup) if wish.from_setup else 0
    state = None
    if wish.state is not None:
        state, bad = read_state(wish.state, reading)
        faults += bad
    # Without a state the day is planned from its beginning, and the units are where that plan leaves them.
    begin = first if state is not None else 0
    made = make(reading, shots, state=state, from_setup=begin)
    told = frozenset(state or {})
    day = day_of(reading, made, told, first - begin)
    changed = None
    if reading is not base:
        before = make(base, shots, state=state, from_setup=begin)
        changed = differing(before, made)
    return Planned(reading, shots, made, day, told, changed, faults)


def _under(base: RigReading, wish: Wish) -> RigReading:
    """The rig under another desk or camera; itself where neither is told."""
    from modebook.documents.rig import Camera
    from modebook.rig.reading import RigReading, policy_of

    change: dict[str, object] = {}
    if wish.refresh_hz is not None:
        if not 0 < wish.refresh_hz <= 100_000:
            raise typer.BadParameter(f"--refresh {wish.refresh_hz:g}: a rate is above 0, such as 44")
        change["refresh_hz"] = wish.refresh_hz
    if wish.camera_fps is not None:
        if not 0 < wish.camera_fps <= 100_000:
            raise typer.BadParameter(f"--camera {wish.camera_fps:g}: a rate is above 0, such as 48")
        old = base.rig.camera
        shutter = {} if old is None else {"shutter_deg": old.shutter_deg}
        change["camera"] = Camera(fps=wish.camera_fps, **shutter)
    if not change:
        return base
    rig = base.rig.model_copy(update=change)
    return RigReading(base.name, rig, base.patch, base.fixtures, policy_of(rig))


def _shots_of(reading: RigReading) -> Path:
    from modebook.shelf.errors import ShelfError

    folder = Path(reading.patch.path).parent
    for name in SHOTS:
        if (folder / name).is_file():
            return folder / name
    raise ShelfError(folder, "no list of shots is here", remedy="add shots.csv, or name one with --shots")


def _ordered(shots: Shots, order: str) -> Shots:
    from modebook.cli.usage import unknown
    from modebook.shots.planning import in_order

    names = [piece.strip() for piece in order.split(",") if piece.strip()]
    path = Path(order)
    if path.is_file():
        lines = path.read_text(encoding="utf-8-sig", errors="replace").splitlines()
        names = [line.strip() for line in lines if line.strip() and not line.startswith("#")]
    if not names:
        raise typer.BadParameter("--order names no setup: write such as 3,1,2, or a file with one a line")
    if twice := next((name for name in names if names.count(name) > 1), None):
        raise typer.BadParameter(f"--order names setup {twice!r} twice")
    setups, missing = in_order(shots, names)
    if missing:
        raise unknown("setup", missing[0], [setup.name for setup in shots.setups])
    return replace(shots, setups=setups)


def _place(shots: Shots, name: str) -> int:
    from modebook.cli.usage import unknown
    from modebook.shots.planning import setup_named

    place = setup_named(shots, name)
    if place < 0:
        raise unknown("setup", name, [setup.name for setup in shots.setups])
    return place


def _in_plan(result: Planned, name: str) -> int:
    """The place of a setup in the plan, which may begin later than the list of shots."""
    place = _place(result.shots, name) - (len(result.shots.setups) - len(result.plan.setups))
    if place < 0:
        raise typer.BadParameter(f"setup {name!r} lies before --from-setup, and is not planned")
    return place


def cut_for(result: Planned, name: str) -> PowerCut:
    """What a power cut during a setup leaves to do."""
    from modebook.shots.day import cut_of

    return cut_of(result.reading, result.plan, _in_plan(result, name), result.told)


def explained_for(result: Planned, setup: str, unit: str) -> list[Explained]:
    """Why a unit is set as it is. Raises BadParameter for a setup or unit that is not known or used."""
    from modebook.cli.usage import unknown
    from modebook.shots.explaining import explained

    if unit.casefold() not in result.reading.by_unit:
        raise unknown("unit", unit, [row.unit.number for row in result.reading.rows if row.unit.number])
    place = _in_plan(result, setup)
    found = explained(result.reading, result.plan, place, unit)
    if not found:
        name = result.plan.setups[place].setup.name
        raise typer.BadParameter(f"setup {name!r} asks nothing of a setting of unit {unit}")
    return found


def draw_hardest(found: Sequence[Explained], path: Path) -> str:
    """Draw the cue that steps most under the choice taken, or the first; returns its name."""
    from modebook.render.fade_plot import draw
    from modebook.shelf.errors import ShelfError

    fades = [(one, cue, cases) for one in found for cue, cases in one.fades]
    if not fades:
        raise ShelfError(path, "no cue of this setup can be drawn", remedy="name another setup or unit")

    def steps(entry: tuple[Explained, object, object]) -> float:
        one, cue, _ = entry
        return max(
            (
                verdict.figures.worst_stepping_jnd
                for verdict in one.taken.taken.verdicts
                if verdict.cue is cue and verdict.figures
            ),
            default=0.0,
        )

    one, cue, cases = max(fades, key=steps)
    draw(cases, f"{one.setup}, unit {one.unit}: {cue.name}", path)
    return cue.name


def write_page(html: Path, overwrite: bool, page: Callable[[], str]) -> None:
    """Write a page that has no table beside it. Raises ShelfError where the file is there already."""
    from modebook.shelf.errors import ShelfError
    from modebook.shelf.writing import write_whole

    if html.exists() and not overwrite:
        raise ShelfError(html, "this file exists already", remedy="name another one, or --overwrite it")
    write_whole(html, page().encode("utf-8", errors="replace"))
    typer.echo(f"written: {html}", err=True)
