"""The change list: what is sent, set over RDM or done by hand between setups, and what must stand in each."""

from __future__ import annotations

from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass, field

from modebook.rig.reading import PatchedRow, RigReading
from modebook.shots.change import ChangeList, PowerCut, SetupChanges, Stage
from modebook.shots.gathering import Done, gathered, seconds_by_way, standings
from modebook.shots.prep import prepare
from modebook.shots.route import Route
from modebook.shots.routes import routes
from modebook.shots.unit_state import UnitState

Known = Mapping[tuple[str, str], str | None]
"""(unit number, setting key) to choice key; None: not known."""


def change_list(
    reading: RigReading,
    rows: Mapping[str, Sequence[PatchedRow]],
    stages: Sequence[Stage],
    start: Known,
    prepared: bool,
    told: Container[tuple[str, str]] = (),
) -> ChangeList:
    """The change list for stages in shooting order.

    rows: by unit number, its start addresses. start: what the units are at, as far as known; of those `told`
    by a person nobody knows whether that is stored. prepared: they are set in the shop before the first
    stage, by the prep sheet that is part of the list. Between two days units are taken to be switched off:
    what is kept only until power off is sent again.
    """
    walk = Walk(reading, rows, start, told)
    prep = prepare(reading, walk.units, stages) if prepared else ()
    return ChangeList(tuple(walk.stage(stage) for stage in stages), tuple(prep))


def power_cut(
    reading: RigReading,
    rows: Mapping[str, Sequence[PatchedRow]],
    stages: Sequence[Stage],
    start: Known,
    prepared: bool,
    after: int,
    told: Container[tuple[str, str]] = (),
) -> PowerCut:
    """What a power cut during stage `after` (from 0) leaves to do, before that stage can go on."""
    walk = Walk(reading, rows, start, told)
    if prepared:
        prepare(reading, walk.units, stages)
    for stage in stages[: after + 1]:
        walk.stage(stage)
    return walk.cut(stages[after].name)


@dataclass
class Walk:
    """Goes through the stages and keeps what every unit is at."""

    reading: RigReading
    rows: Mapping[str, Sequence[PatchedRow]]
    start: Known
    told: Container[tuple[str, str]] = ()
    units: dict[str, UnitState] = field(default_factory=dict)
    day: str | None = None

    def __post_init__(self) -> None:
        for number, rows in self.rows.items():
            self.units[number] = UnitState.of(number, rows, routes(self.reading, rows), self.start, self.told)

    def stage(self, stage: Stage) -> SetupChanges:
        """One setup: what to change before it, in the order of steps."""
        checks: list[Done] = []
        if self.day is not None and stage.day and stage.day != self.day:
            checks = self._night()
        self.day = stage.day or self.day
        done: list[Done] = []
        faults: list[str] = []
        by_unit: dict[str, dict[str, str]] = {}
        for (unit, setting), choice in stage.wanted.items():
            if choice is not None:
                by_unit.setdefault(unit, {})[setting] = choice
        for number, wanted in by_unit.items():
            if number not in self.units:
                faults.append(f"unit {number} is not patched, or its record is not known")
                continue
            done += self._unit(self.units[number], wanted, faults)
        kept = [
            one for one in checks if not any(d.unit is one.unit and d.setting == one.setting for d in done)
        ]
        changes = gathered(done)
        return SetupChanges(
            stage.name,
            stage.day,
            changes,
            standings(self.units.values()),
            gathered(kept),
            tuple(dict.fromkeys(faults)),
            seconds_by_way(done),
        )

    def _unit(self, unit: UnitState, wanted: Mapping[str, str], faults: list[str]) -> list[Done]:
        """The changes of one unit; those that another must come before are of a later step."""
        open_ = {key: choice for key, choice in wanted.items() if not unit.is_at(key, choice)}
        took: list[tuple[int, Route, str | None]] = []
        step = 0
        while open_:
            went = False
            for setting, choice in list(open_.items()):
                road, why = self._road(unit, setting, choice)
                if road is None:
                    continue
                del open_[setting]
                before = unit.now.get(setting)
                unit.take(road)
                if road.by != "slot" or road.bytes:
                    took.append((step, road, before.choice if before else None))
                went = True
            step += 1
            if not went:
                for setting, choice in open_.items():
                    _, why = self._road(unit, setting, choice)
                    faults.append(f"{unit.number}: {setting} cannot be set to {choice}: {why}")
                break
        # A slot that several settings share goes back to what stands there in the end, in whatever order.
        return [Done(when, unit, road, from_, unit.resting(road)) for when, road, from_ in took]

    def _road(self, unit: UnitState, setting: str, choice: str) -> tuple[Route | None, str]:
        """The cheapest road that can be gone now, or why there is none."""
        some = unit.roads.get(setting, {}).get(choice)
        if some is None:
            return None, "its record knows no such choice"
        policy = self.reading.policy
        held = unit.held(setting, choice, policy["change-cost-slot"].value, policy["change-time-slot"].value)
        why = "no way reaches it"
        if against := unit.over(setting).against(choice):
            why = f"{against} overrules it at its printed default, and no value that leaves it is printed"
        if unit.now[setting].choice == choice and not some and not held:
            why = "it is there, but a slot that may overrule it has no known rest"
        for road in (*some, *([held] if held else [])):
            blocked = unit.blocked(road)
            if not blocked:
                return road, ""
            why = blocked
        return None, why

    def _night(self) -> list[Done]:
        """Units are switched off: forget what that loses, and tell what nobody knows."""
        found: list[Done] = []
        for unit in self.units.values():
            found += [one for setting in unit.power_off() if (one := _again(unit, setting))]
        return found

    def cut(self, setup: str) -> PowerCut:
        """A power cut now."""
        again: list[Done] = []
        check: list[Done] = []
        stored = 0
        stands = standings(self.units.values())
        for unit in self.units.values():
            before = dict(unit.now)
            unknown = unit.power_off()
            for setting, now in before.items():
                if setting in unknown:
                    check += [one] if (one := _again(unit, setting)) else []
                elif now.choice is not None and unit.now[setting].choice != now.choice and now.route:
                    again.append(Done(0, unit, now.route, unit.now[setting].choice, unit.resting(now.route)))
                elif now.choice is not None and now.kept == "stored":
                    stored += 1
        return PowerCut(setup, gathered(again), gathered(check), stands, stored, seconds_by_way(again))


def _again(unit: UnitState, setting: str) -> Done | None:
    """How a setting is brought again to what it should be at: by the cheapest road that the day has."""
    now = unit.now[setting]
    some = unit.roads[setting].get(now.choice or "", ())
    route = next((one for one in some if not unit.blocked(one)), now.route)
    if route is None:
        return None
    return Done(0, unit, route, now.choice, unit.resting(route))
