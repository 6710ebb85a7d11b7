"""Why a unit is set as it is in a setup: every choice cue by cue, the roads to it, the fades behind it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from modebook.documents.cases import Case, smoothing_told
from modebook.documents.responding import smoothing_of
from modebook.documents.shots import Cue
from modebook.rig.reading import RigReading
from modebook.shots.judging import Judge
from modebook.shots.patched import patched_units
from modebook.shots.plan import Plan, Taken
from modebook.shots.route import Route
from modebook.shots.routes import routes


@dataclass(frozen=True)
class Explained:
    """One setting of one unit in one setup."""

    setup: str
    unit: str
    taken: Taken
    roads: dict[str, tuple[Route, ...]]
    """By choice, the cheapest first."""
    fades: tuple[tuple[Cue, tuple[Case, ...]], ...]
    """For each cue that is judged, its fade under every choice; none for a modulation frequency."""


def explained(reading: RigReading, plan: Plan, setup: int, unit: str) -> list[Explained]:
    """The settings of a unit in a setup (from 0); none where the setup does not use the unit."""
    patched = patched_units(reading)
    if unit not in patched:
        return []
    row = patched[unit]
    assert row.fixture is not None
    number = row.unit.number
    roads = routes(reading, patched.rows[unit.casefold()])
    judge = Judge(reading)
    found: list[Explained] = []
    for taken in plan.setups[setup].settings:
        if number not in taken.units:
            continue
        setting = next(one for one in row.fixture.fixture.settings if one.key == taken.setting)
        choices = {one.key: one for one in setting.choices}
        fades: list[tuple[Cue, tuple[Case, ...]]] = []
        for verdict in taken.taken.verdicts if taken.kind == "smoothing" else ():
            parameter = patched.parameter(number, verdict.cue.parameter)
            case = judge.case(row, parameter, verdict.cue) if parameter else None
            if not verdict.judged or case is None or case.fade is None:
                continue
            made = []
            for one in taken.candidates:
                told = smoothing_of(choices[one.choice])
                label = f"{one.label} ({smoothing_told(told.smoothing)})"
                made.append(Case(label, replace(case.fade, smoothing=told.smoothing), known=told.known))
            fades.append((verdict.cue, tuple(made)))
        found.append(
            Explained(plan.setups[setup].setup.name, number, taken, roads[taken.setting], tuple(fades))
        )
    return found
