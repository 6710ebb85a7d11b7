"""control-slot-missing: another mode would let smoothing be changed by a slot, and this one does not."""

from __future__ import annotations

from collections.abc import Iterable

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.documents.policy import Severity
from modebook.documents.ways import smoothing_by
from modebook.rig.gathered import units_once
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.rules._costs import cost_of, cost_told, nearest_mode
from modebook.rig.rules._text import about, fixture_told


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each unit in a mode without the slot that another mode of its fixture has."""
    known: dict[int, ModeReading | None] = {}
    for row in units_once(reading):
        if row.fixture is None or row.mode is None:
            continue
        if id(row.mode) not in known:
            known[id(row.mode)] = _better(row.fixture, row.mode)
        better = known[id(row.mode)]
        if better is not None:
            yield _fault(reading, row, row.fixture, row.mode, better)


def _better(fixture: FixtureReading, mode: ModeReading) -> ModeReading | None:
    keys = {setting.key for setting, _ in fixture.smoothings}
    if not keys or _has_slot(mode, keys):
        return None
    return nearest_mode(mode, [one for one in fixture.modes if _has_slot(one, keys)])


def _has_slot(mode: ModeReading, keys: set[str]) -> bool:
    return not keys.isdisjoint(mode.survey.sets)


def _fault(
    reading: RigReading, row: PatchedRow, fixture: FixtureReading, mode: ModeReading, better: ModeReading
) -> Fault:
    by = smoothing_by(fixture.fixture, mode.mode)
    address = row.unit.address
    rdm = reading.link(address.universe).rdm if address else "unknown"
    remote = "rdm" in by and rdm == "yes"
    severity: Severity = "info" if remote else "warning"
    if remote:
        left = "RDM, which passes here, is what is left"
    elif "rdm" in by:
        left = "RDM is left, " + ("and does not pass here" if rdm == "no" else "if it passes here")
    else:
        left = f"what is left is {' or '.join(one for one in by if one != 'unknown') or 'unknown'}"
    cost = cost_of(mode.mode, better.mode)
    lost = sorted(mode.survey.words.keys() - better.survey.words.keys())
    figure: dict[str, object] = {
        **about(row),
        "mode_with_slot": better.mode.name,
        "footprint": mode.mode.footprint,
        "footprint_with_slot": better.mode.footprint,
        "cost_slots": cost,
        "by": list(by),
        "rdm_reaches": rdm,
        "parameters_lost": lost,
    }
    without = f", without {', '.join(lost)}" if lost else ""
    return Fault(
        "mode",
        f"mode {mode.mode.name} of {fixture_told(row)} has no slot that changes smoothing; {left}",
        figure,
        f"mode {better.mode.name} has one, in {better.mode.footprint} slots: {cost_told(cost)}{without}",
        severity=severity,
        unit=row.unit.number,
        row=row.unit.row,
    )


_CONTROL = {
    "parameter": "control",
    "slots": [3],
    "ranges": [
        {"from": 0, "to": 127, "meaning": "Response: off", "sets": {"smoothing": "off"}},
        {"from": 128, "to": 255, "meaning": "Response: on", "sets": {"smoothing": "on"}},
    ],
}
_DIMMER = {"parameter": "dimmer", "slots": [1, 2]}
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
            "ways": [{"by": "menu", "path": ["Setup", "Response"]}],
        }
    ],
    "modes": [
        {"name": "Short", "parameters": [_DIMMER]},
        {"name": "With control", "parameters": [_DIMMER, _CONTROL]},
    ],
}

RULE = Rule(
    name="control-slot-missing",
    severity="warning",
    summary="Another mode would let smoothing be changed by a slot, and the one patched does not.",
    checks=(
        "Units in a mode without a range that changes smoothing, whose fixture has a mode with one. Of "
        "several such modes the one is named that lacks the fewest of the patched mode's cells, then of its "
        "parameters, then the smallest; the cost is the difference of the two footprints. Where RDM passes "
        "and leads there too, it is for information."
    ),
    why=(
        "A slot is the one way that needs neither a hand nor RDM, and it can be had for a slot or two while "
        "the patch is still a list."
    ),
    bad=Example(
        "The short mode.", {"fixtures": [_PAR], "patch": "unit,fixture,mode,address\n1,Par,Short,1/1\n"}
    ),
    good=Example(
        "The mode that has the slot.",
        {"fixtures": [_PAR], "patch": "unit,fixture,mode,address\n1,Par,With control,1/1\n"},
    ),
    references=("common practice, no source",),
    check=check,
)
