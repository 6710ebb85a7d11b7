"""Applies a change list to a model of each unit, and tells where a setup does not end as planned."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from modebook.rig.reading import PatchedRow
from modebook.shots.change import Change, ChangeList, PowerCut, Stage, Standing
from modebook.shots.fixture_state import A_MOMENT_S, FixtureState, Keeping
from modebook.shots.route import Byte

ALL_DAY_S = 3600.0
"""What stands is sent longer than any hold."""


def models(
    rows: Mapping[str, Sequence[PatchedRow]],
    start: Mapping[tuple[str, str], str | None],
    unsaid: Keeping = "while sent",
    unsaid_way: Keeping = "stored",
) -> dict[str, FixtureState]:
    """A model of each unit as it starts: what is known is stored."""
    return {
        number: FixtureState(
            some,
            {setting: choice for (unit, setting), choice in start.items() if unit == number},
            unsaid,
            unsaid_way,
        )
        for number, some in rows.items()
    }


def replay(changes: ChangeList, stages: Sequence[Stage], units: Mapping[str, FixtureState]) -> list[str]:
    """Do all that the list says, in order; each sentence returned is a setting that is not as planned.

    Between days the units are switched off. What the list itself says it cannot bring about is not told
    again.
    """
    wrong: list[str] = []
    for line in changes.prep:
        for number in line.units:
            if number in units and line.by is not None:
                units[number].stored[line.setting] = line.choice
    day = None
    for stage, told in zip(stages, changes.setups, strict=True):
        if day is not None and stage.day and stage.day != day:
            for unit in units.values():
                unit.power_off()
        day = stage.day or day
        apply((*told.checks, *told.changes), units)
        stand(told.stands, units)
        play(told.changes, told.stands, units)
        wrong += [
            f"{stage.name}: {number} has its {setting} at {has or 'nothing known'}, not {choice}"
            for (number, setting), choice in stage.wanted.items()
            if choice is not None
            and number in units
            and (has := units[number].now(setting)) != choice
            and not any(fault.startswith(f"{number}: {setting} ") for fault in told.faults)
        ]
    return wrong


def restore(cut: PowerCut, units: Mapping[str, FixtureState]) -> None:
    """A power cut, and all that its list says; what is to be checked is set again."""
    for unit in units.values():
        unit.power_off()
    apply((*cut.again, *cut.check), units)
    stand(cut.stands, units)


def apply(lines: Iterable[Change], units: Mapping[str, FixtureState]) -> None:
    """Do changes, line after line, on the units that they name."""
    for line in lines:
        some = [units[number] for number in line.units if number in units]
        for unit in some:
            if line.by == "slot":
                hold_s = line.hold_s if line.hold_s is not None else A_MOMENT_S
                if line.needs_bytes:
                    unit.send(_wire(line.needs_bytes), A_MOMENT_S)
                unit.send(_wire(line.bytes), hold_s)
                if line.then_bytes:
                    unit.send(_wire(line.then_bytes), A_MOMENT_S)
            elif line.by == "rdm":
                unit.rdm(line.pid or "", line.data or "0")
            else:
                unit.by_hand(line.path)


def stand(stands: Iterable[Standing], units: Mapping[str, FixtureState]) -> None:
    """Send what must stand in every cue."""
    for one in stands:
        for number in one.units:
            if number in units:
                units[number].send(_wire(one.bytes), ALL_DAY_S)


def play(changes: Iterable[Change], stands: Iterable[Standing], units: Mapping[str, FixtureState]) -> None:
    """Cues that move what a change had asked to stay where it was, but for what must stand."""
    fixed = {(byte.universe, byte.address) for one in stands for byte in one.bytes}
    moved = {
        (byte.universe, byte.address): 255 - byte.value
        for line in changes
        for byte in line.needs_bytes
        if (byte.universe, byte.address) not in fixed
    }
    for unit in units.values():
        mine = [(*place, value) for place, value in moved.items() if place in unit.addresses]
        if mine:
            unit.send(mine, A_MOMENT_S)


def _wire(bytes_: Iterable[Byte]) -> list[tuple[int, int, int]]:
    return [(byte.universe, byte.address, byte.value) for byte in bytes_]
