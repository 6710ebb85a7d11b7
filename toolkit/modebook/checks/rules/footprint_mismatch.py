"""footprint-mismatch: the footprint does not fit the slots, the parts, or a universe."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import INEXACT, LONG, FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._text import plural
from modebook.documents.address import SLOTS_PER_UNIVERSE
from modebook.documents.layout import BlockLayout


def faults_in_mode(reading: FixtureReading, mode: ModeReading) -> Sequence[Fault]:
    """Where a mode's footprint does not fit its slots, its parts, or a universe."""
    record = mode.mode
    if mode.bytes_are_exact and (record.footprint <= SLOTS_PER_UNIVERSE) and not record.continues:
        return ()
    return list(_faults(mode))


def _faults(mode: ModeReading) -> Iterator[Fault]:
    record = mode.mode
    parts = sum(part.footprint for part in record.parts)
    bare = record.parts and not (record.parameters or record.cells)
    if record.parts and (record.footprint < parts or (bare and record.footprint > parts)):
        yield Fault(
            f"{mode.pointer}/footprint",
            f"the mode has a footprint of {plural(record.footprint, 'slot')}, but its parts come to {parts}",
            {"footprint": record.footprint, "parts": parts},
            "the mode's footprint counts its parts and the slots of its own",
        )
    longest = 0
    for block in mode.blocks:
        longest = max(longest, block.footprint)
        if block.footprint >= 0:
            yield from _past_the_end(block)
        if block.footprint > SLOTS_PER_UNIVERSE and not record.continues:
            yield Fault(
                f"{block.pointer}/footprint",
                f"{block.footprint} slots behind one start address are more than a universe has "
                f"({SLOTS_PER_UNIVERSE})",
                {"footprint": block.footprint, "universe": SLOTS_PER_UNIVERSE},
                "say `continues` if it runs into the next universe, or record its parts with their own "
                "addresses",
            )
    if record.continues and longest <= SLOTS_PER_UNIVERSE:
        yield Fault(
            f"{mode.pointer}/continues",
            f"the mode is said to run past {SLOTS_PER_UNIVERSE} slots, but takes {longest}",
            {"footprint": longest, "universe": SLOTS_PER_UNIVERSE},
            "take `continues` out, or correct the footprint",
        )


def _past_the_end(block: BlockLayout) -> Iterator[Fault]:
    highest, pointer = 0, ""
    for placed in block.placed:
        if placed.slots and max(placed.slots) > highest:
            highest, pointer = max(placed.slots), placed.pointer
    if highest > block.footprint:
        yield Fault(
            f"{block.pointer}/footprint",
            f"slot {highest} lies beyond the footprint of {plural(block.footprint, 'slot')}",
            {"footprint": block.footprint, "highest_slot": highest, "parameter": pointer},
            f"correct the footprint to {highest}, or the slots of {pointer}",
        )


RULE: Rule[FixtureReading] = Rule(
    name="footprint-mismatch",
    severity="error",
    summary="The footprint does not fit the slots, the parts, or a universe.",
    checks=(
        "The highest slot behind each start address against the footprint; the footprint of a mode against "
        "those of its parts; a footprint past 512 slots that does not say `continues`, and a `continues` "
        "without need. A footprint that is greater than the highest slot is told by slot-gap."
    ),
    why=(
        "The patch steps from fixture to fixture by the footprint. One that is too small lets two units "
        "answer to the same slots."
    ),
    bad=Example(
        "Three slots in a footprint of two.",
        {
            "modes": [
                {
                    "footprint": 2,
                    "parameters": [
                        {"parameter": "red", "slots": [1]},
                        {"parameter": "green", "slots": [2]},
                        {"parameter": "blue", "slots": [3]},
                    ],
                }
            ]
        },
    ),
    good=Example(
        "A mode of two parts, each with a start address of its own.",
        {
            "modes": [
                {
                    "footprint": 3,
                    "parts": [
                        {
                            "key": "head",
                            "footprint": 2,
                            "parameters": [{"parameter": "dimmer", "slots": [1, 2]}],
                        },
                        {"key": "fan", "footprint": 1, "parameters": [{"parameter": "fan", "slots": [1]}]},
                    ],
                }
            ]
        },
    ),
    references=(
        "ANSI E1.11: a packet carries at most 512 data slots",
        "ANSI E1.20, DEVICE_INFO: the DMX512 footprint",
    ),
    check=in_every_mode(faults_in_mode, about=[INEXACT, LONG]),
)
