"""slot-overlap: two parameters use one byte at the same time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from modebook.checks.finding import Fault
from modebook.checks.reading import INEXACT, FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._conditions import Box, can_meet, existence
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._text import slots_told
from modebook.checks.rules._values import listed, merged
from modebook.documents.layout import BlockLayout, Placed


@dataclass(slots=True)
class _Pair:
    first: Placed
    second: Placed
    slots: set[int] = field(default_factory=set)


def faults_in_mode(reading: FixtureReading, mode: ModeReading) -> Sequence[Fault]:
    """The pairs of parameters of a mode that use one byte at the same time."""
    if mode.bytes_are_exact:
        return ()
    found: list[Fault] = []
    for block in mode.blocks:
        found += [_fault(pair) for pair in _pairs(block, mode)]
    return found


def _pairs(block: BlockLayout, mode: ModeReading) -> list[_Pair]:
    """Each parameter with the first other one that takes a byte from it; cells are told once."""
    at: dict[int, list[Placed]] = {}
    for placed in block.placed:
        for slot in placed.slots:
            at.setdefault(slot, []).append(placed)
    boxes: dict[str, Box] = {}
    pairs: dict[tuple[str, str], _Pair] = {}
    for slot, users in at.items():
        # The first user of each place in the document stands for its cells.
        seen: dict[str, Placed] = {}
        for user in users:
            box = _box(user, boxes, mode)
            for pointer, other in seen.items():
                if can_meet(boxes[pointer], box):
                    pairs.setdefault((pointer, user.pointer), _Pair(other, user)).slots.add(slot)
                    break
            seen.setdefault(user.pointer, user)
    return list(pairs.values())


def _box(user: Placed, boxes: dict[str, Box], mode: ModeReading) -> Box:
    if user.pointer not in boxes:
        boxes[user.pointer] = existence(user.parameter, mode.by_name) if user.parameter.when else {}
    return boxes[user.pointer]


def _fault(pair: _Pair) -> Fault:
    first, second = pair.first, pair.second
    slots = slots_told(pair.slots)
    verb = "is" if slots.startswith("slot ") else "are"
    if first.pointer == second.pointer:
        said = f"{slots} {verb} used by {first.parameter.name} of more than one cell"
        help_ = "correct the stride or the slots within the cell: each cell has bytes of its own"
    else:
        said = f"{slots} {verb} used by {first.parameter.name} and by {second.parameter.name}"
        help_ = "correct the slots of one of them"
        if first.parameter.when or second.parameter.when:
            help_ += ", or the conditions in `when`, which can hold at once"
        else:
            help_ += ", or give both a `when` whose conditions never hold at once"
    figure = {
        "slots": sorted(pair.slots),
        "slot_ranges": listed(merged((slot, slot) for slot in pair.slots)),
        "first": first.pointer,
        "second": second.pointer,
    }
    return Fault(f"{second.pointer}/slots", said, figure, help_)


RULE: Rule[FixtureReading] = Rule(
    name="slot-overlap",
    severity="error",
    summary="Two parameters use one byte at the same time.",
    checks=(
        "Every byte behind each start address, cells repeated, so that interleaved cells pass. Parameters "
        "may share a byte if their conditions in `when` never hold at once: conditions on values of a "
        "parameter are compared as values, those on a setting as choices, and two different states in "
        "words are taken never to hold together. The conditions of the deciding parameter count as well. A "
        "parameter is reported with the first other one that it collides with."
    ),
    why=(
        "One byte cannot hold two values. One of the two was read from the wrong line, and on the day a fade "
        "of the one jerks the other."
    ),
    bad=Example(
        "Pan's fine byte sits where tilt begins.",
        {
            "modes": [
                {
                    "parameters": [
                        {"parameter": "pan", "slots": [1, 2], "span": {"from": 0, "to": 540, "unit": "deg"}},
                        {"parameter": "tilt", "slots": [2, 3], "span": {"from": 0, "to": 270, "unit": "deg"}},
                    ]
                }
            ]
        },
    ),
    good=Example(
        "Red and cyan share a byte, and the slot before it decides which of them it is.",
        {
            "modes": [
                {
                    "parameters": [
                        {
                            "parameter": "color-mode",
                            "slots": [1],
                            "ranges": [
                                {"from": 0, "to": 127, "meaning": "Emitters"},
                                {"from": 128, "to": 255, "meaning": "Filters"},
                            ],
                        },
                        {
                            "parameter": "red",
                            "slots": [2],
                            "when": [{"parameter": "color-mode", "from": 0, "to": 127}],
                        },
                        {
                            "parameter": "cyan",
                            "slots": [2],
                            "when": [{"parameter": "color-mode", "from": 128, "to": 255}],
                        },
                    ]
                }
            ]
        },
    ),
    references=("ANSI E1.11: each slot of a packet carries one value of 8 bits",),
    check=in_every_mode(faults_in_mode, about=[INEXACT]),
)
