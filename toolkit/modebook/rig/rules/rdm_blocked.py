"""rdm-blocked: smoothing could be changed over RDM, but RDM does not pass in the unit's universe."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.documents.policy import Severity
from modebook.rig.grouping import unit_ranges
from modebook.rig.reading import RigReading
from modebook.rig.remote import UnitRemote, remote
from modebook.rig.rules._text import place_figure

_HANDS = {"menu": "at the menu", "app": "with the app", "page": "on the network page"}


def check(reading: RigReading) -> Iterable[Fault]:
    """One fault a universe: what RDM would do there for forty units is told once, on the first of them."""
    universes: dict[int, list[UnitRemote]] = {}
    for unit in remote(reading).units:
        address = unit.row.unit.address
        if address is not None and "rdm" in unit.by and unit.rdm_reaches != "yes":
            universes.setdefault(address.universe, []).append(unit)
    for universe, units in sorted(universes.items()):
        yield _fault(reading, universe, units)


def _fault(reading: RigReading, universe: int, units: list[UnitRemote]) -> Fault:
    only = [unit for unit in units if unit.answer == "rdm"]
    blocked = units[0].rdm_reaches == "no"
    severity: Severity = "warning" if blocked and only else "info"
    about = reading.link(universe).about
    link = f"universe {universe} ({about})" if about else f"universe {universe}"
    passes = "RDM does not pass" if blocked else "whether RDM passes is not known"
    said = f"in {link} {passes}: "
    count = len(only)
    if only:
        said += (
            f"smoothing of {unit_ranges(_numbers(only))} ({count} unit{'s' * (count != 1)}) has no other way "
            "without a hand on the fixture"
        )
    else:
        said += f"smoothing of {unit_ranges(_numbers(units))} is changed by a slot alone"
    hands = Counter(unit.row.reach or "unknown" for unit in only)
    if hands:
        said += f"; reached: {', '.join(f'{reach} {n}' for reach, n in hands.items())}"
    first = (only or units)[0].row
    figure: dict[str, object] = {
        "cause": f"universe {universe}",
        "universe": universe,
        "rdm": units[0].rdm_reaches,
        "units": _numbers(units),
        "units_only_rdm": _numbers(only),
        "reached": dict(hands),
        "cost_slots": 0,
    }
    return Fault(
        "address",
        said,
        figure | place_figure(first),
        _help(blocked, only),
        severity=severity,
        unit=first.unit.number,
        row=first.unit.row,
    )


def _numbers(units: list[UnitRemote]) -> list[str]:
    return list(dict.fromkeys(unit.row.unit.number or f"row {unit.row.unit.row}" for unit in units))


def _help(blocked: bool, only: list[UnitRemote]) -> str:
    if not only:
        return "nothing, as long as the modes keep their control slots"
    hands = list(dict.fromkeys(_HANDS[by] for unit in only for by in unit.by if by in _HANDS))
    by_hand = f"set them {' or '.join(hands)}" if hands else "find another way to set them"
    first = (
        "put in splitters and gateways that pass RDM" if blocked else "try it, and write `rdm` into the link"
    )
    return f"{first}, or {by_hand} before they are out of reach: no more slots"


_PAR = {
    "model": "Par",
    "settings": [
        {
            "key": "smoothing",
            "setting": "smoothing",
            "source": "guide",
            "choices": [
                {"key": "off", "length": {"packets": 0}},
                {"key": "on", "length": {"packets": 4}},
            ],
            "ways": [
                {"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "on": 1}},
                {"by": "menu", "path": ["Setup", "Response"]},
            ],
        }
    ],
}
_PATCH = "unit,fixture,mode,address\n1,Par,Mode 1,3/1\n2,Par,Mode 1,3/3\n"

RULE = Rule(
    name="rdm-blocked",
    severity="warning",
    summary="Smoothing could be changed over RDM, but RDM does not pass in that universe.",
    checks=(
        "Units whose smoothing has a way over RDM with its values, against `rdm` of their universe's link in "
        "rig.json. One finding a universe, on the first of its units for which no slot does it too. Where "
        "the rig does not say whether RDM passes, or all units have a slot for it, it is for information. "
        "Units without an address are left out."
    ),
    why=(
        "A plan that changes smoothing between setups over RDM fails at the first splitter that drops it, "
        "and then somebody climbs, unit after unit."
    ),
    bad=Example(
        "The splitter of universe 3 passes no RDM.",
        {"fixtures": [_PAR], "patch": _PATCH, "rig": {"links": {"3": {"rdm": "no"}}}},
    ),
    good=Example(
        "It does.",
        {"fixtures": [_PAR], "patch": _PATCH, "rig": {"links": {"3": {"rdm": "yes"}}}},
    ),
    references=("ANSI E1.20: RDM needs splitters that carry it both ways",),
    check=check,
)
