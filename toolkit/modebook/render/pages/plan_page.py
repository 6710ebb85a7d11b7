"""The plan of a rig's day: worked out once in the background, shown setup by setup, with boxes to tick."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from threading import Lock

from modebook.render.pages.links import Link, rig_href
from modebook.render.pages.reply import Drawn, Place, Query, known_only, nothing_there
from modebook.render.plan_words import (
    BY_WORDS,
    SAFETY,
    candidate_figures,
    head_words,
    standing_words,
    step_words,
    units_words,
    ways_words,
)
from modebook.shots.change import Change, Standing
from modebook.shots.day import Day, day_of

AGAIN_S = 4
"""How soon the page looks again while the plan is being worked out."""


@dataclass(frozen=True, slots=True)
class Tick:
    """A line with a box: something to do."""

    key: str
    """The same for the same work in every copy of the plan: what the browser remembers."""
    units: str
    head: str
    by: str
    steps: tuple[tuple[str, str], ...]
    position: str
    kept: str


@dataclass(frozen=True, slots=True)
class SetupPart:
    """One setup of the day."""

    anchor: str
    name: str
    day: str
    scene: str
    shots: str
    takes: str
    changes: tuple[Tick, ...]
    checks: tuple[Tick, ...]
    stands: tuple[tuple[str, str, str], ...]
    """Units, setting and choice, what to keep sending and why."""
    settings: tuple[tuple[str, str, str, str], ...]
    """Units, setting and choice, figures, why."""
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PlanPage:
    """All that the page draws; while it is worked out, only its head."""

    rig: Link
    ready: bool
    again_s: int
    problem: str
    total: str
    prep: tuple[tuple[str, str, str, str, str], ...]
    """Key, units, setting and choice, how, doubts."""
    conflicts: tuple[tuple[str, str, str, str], ...]
    """Setup, units, why, cures."""
    setups: tuple[SetupPart, ...]
    faults: tuple[str, ...]
    safety: str


_POOL = ThreadPoolExecutor(1, thread_name_prefix="plan")
_ASKED: dict[tuple[str, str], Future[PlanPage]] = {}
_LOCK = Lock()


def plan(connection: sqlite3.Connection, place: Place, query: Query) -> Drawn:
    """The page; it is worked out at the first request, and until then says so and looks again."""
    known_only(query)
    name = place["rig"]
    if not _has_shots(connection, name):
        raise nothing_there(f"There is no rig {name[:80]} with shots here.")
    file = connection.execute("PRAGMA database_list").fetchone()[2]
    with _LOCK:
        asked = _ASKED.get((file, name))
        if asked is None:
            asked = _ASKED[file, name] = _POOL.submit(worked_out, file, name)
    return Drawn("plan.html", asked.result() if asked.done() else waiting(name))


def _has_shots(connection: sqlite3.Connection, name: str) -> bool:
    from modebook.store.documents import text_of

    known = connection.execute("SELECT 1 FROM rigs WHERE id = ?", (name,)).fetchone()
    return known is not None and text_of(connection, f"rigs/{name}/shots.csv") is not None


def waiting(name: str) -> PlanPage:
    """The page while the plan is not ready."""
    return PlanPage(Link(name, rig_href(name)), False, AGAIN_S, "", "", (), (), (), (), SAFETY)


def worked_out(file: str, name: str) -> PlanPage:
    """The page of a rig of a database file; what cannot be planned is told on it."""
    from modebook.response.errors import ResponseError
    from modebook.shelf.errors import ShelfError
    from modebook.shots.planning import plan as made
    from modebook.shots.reading import shots_from_text
    from modebook.store.documents import rig_of, text_of
    from modebook.store.opening import open_database

    connection = open_database(Path(file))
    try:
        reading = rig_of(connection, name)
        content = text_of(connection, f"rigs/{name}/shots.csv")
        assert reading is not None
        assert content is not None
        try:
            shots = shots_from_text(content.decode("utf-8-sig"), reading)
            return plan_page(name, day_of(reading, made(reading, shots)))
        except (ShelfError, ResponseError, UnicodeDecodeError) as error:
            page = waiting(name)
            return PlanPage(page.rig, True, 0, str(error), "", (), (), (), (), SAFETY)
    finally:
        connection.close()


def plan_page(name: str, day: Day) -> PlanPage:
    """The page of a day."""
    plan = day.plan
    setups = []
    for place, (one, changes) in enumerate(zip(plan.setups, day.changes.setups, strict=True)):
        setup = one.setup
        setups.append(
            SetupPart(
                anchor=f"setup-{place + 1}",
                name=setup.name,
                day=setup.day,
                scene=setup.scene,
                shots=", ".join(shot.name for shot in setup.shots if shot.name),
                takes=ways_words(changes.seconds_by_way),
                changes=tuple(_ticks(setup.name, changes.changes)),
                checks=tuple(_ticks(f"{setup.name} night", changes.checks)),
                stands=tuple(_stands(changes.stands)),
                settings=tuple(
                    (
                        units_words(taken.units),
                        f"{taken.setting}: {taken.taken.label}",
                        candidate_figures(taken.taken),
                        taken.why,
                    )
                    for taken in one.settings
                ),
                notes=(*one.warnings, *one.unjudged, *changes.faults),
            )
        )
    return PlanPage(
        rig=Link(name, rig_href(name)),
        ready=True,
        again_s=0,
        problem="",
        total=ways_words(day.total_seconds_by_way),
        prep=tuple(
            (
                _key("prep", units_words(line.units), line.setting, line.choice),
                units_words(line.units),
                f"{line.setting_label}: {line.choice_label}",
                line.road,
                "; ".join(line.doubts),
            )
            for line in day.changes.prep
        ),
        conflicts=tuple(
            (one.setup, units_words(one.units), one.why, "; ".join(one.cures)) for one in plan.conflicts
        ),
        setups=tuple(setups),
        faults=tuple(f"row {one.row}: {one.why}" for one in plan.faults)
        + tuple(plan.notes)
        + tuple(day.disagreements),
        safety=SAFETY,
    )


def _ticks(setup: str, changes: Iterable[Change]) -> Iterable[Tick]:
    for change in changes:
        units = units_words(change.units)
        yield Tick(
            _key(setup, units, change.setting, change.to, change.by, str(change.step)),
            units,
            head_words(change),
            BY_WORDS[change.by],
            tuple(step_words(change)),
            change.position,
            change.kept,
        )


def _stands(stands: Iterable[Standing]) -> Iterable[tuple[str, str, str]]:
    for one in stands:
        yield units_words(one.units), f"{one.setting_label}: {one.choice_label}", standing_words(one)


def _key(*parts: str) -> str:
    return sha256("\n".join(parts).encode()).hexdigest()[:16]
