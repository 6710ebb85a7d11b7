"""What two plans of the same setups set otherwise: another desk, another camera, another order."""

from __future__ import annotations

from dataclasses import dataclass

from modebook.shots.plan import Plan


@dataclass(frozen=True, slots=True)
class Differing:
    """One setting of some units in one setup that two plans see otherwise."""

    setup: str
    units: tuple[str, ...]
    setting: str
    before: str
    after: str


def differing(before: Plan, after: Plan) -> list[Differing]:
    """Where the second plan sets otherwise what a setup uses; setups are paired by name, day and scene."""
    states = {
        (one.setup.day, one.setup.scene, one.setup.name): state
        for one, state in zip(before.setups, before.states, strict=True)
    }
    found: list[Differing] = []
    for one, state in zip(after.setups, after.states, strict=True):
        was = states.get((one.setup.day, one.setup.scene, one.setup.name))
        if was is None:
            continue
        for taken in one.settings:
            some: dict[tuple[str, str], list[str]] = {}
            for unit in taken.units:
                old, new = was.get((unit, taken.setting)), state.get((unit, taken.setting))
                if old is not None and new is not None and old != new:
                    some.setdefault((old, new), []).append(unit)
            found += [
                Differing(one.setup.name, tuple(units), taken.setting, old, new)
                for (old, new), units in some.items()
            ]
    return found
