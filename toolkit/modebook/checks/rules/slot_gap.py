"""slot-gap: bytes within the footprint that nothing uses."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import INEXACT, FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._text import plural, slots_told
from modebook.checks.rules._values import Intervals, count, listed, merged, without
from modebook.documents.layout import BlockLayout


def faults_in_mode(reading: FixtureReading, mode: ModeReading) -> Sequence[Fault]:
    """The blocks of a mode with bytes that nothing uses."""
    if mode.bytes_are_exact:
        return ()
    found: list[Fault] = []
    for block in mode.blocks:
        # Slots of its own that a mode of parts never lists are told by footprint-mismatch.
        if block.key is None and mode.mode.parts and not (mode.mode.parameters or mode.mode.cells):
            continue
        free = unused(block)
        if free:
            found.append(_fault(block, free))
    return found


def unused(block: BlockLayout) -> Intervals:
    """The slots of a block within its footprint that no parameter uses."""
    if block.footprint < 1:
        return ()
    used = merged((slot, slot) for placed in block.placed for slot in placed.slots)
    return without(((1, block.footprint),), used)


def _fault(block: BlockLayout, free: Intervals) -> Fault:
    slots = slots_told(slot for low, high in free for slot in range(low, high + 1))
    verb = "is" if count(free) == 1 else "are"
    return Fault(
        f"{block.pointer}/footprint",
        f"{slots} {verb} used by no parameter, of a footprint of {plural(block.footprint, 'slot')}",
        {"slots": listed(free), "unused": count(free), "footprint": block.footprint},
        f"read {slots} in the source again; a slot that its maker gives no function is `reserved`",
    )


RULE: Rule[FixtureReading] = Rule(
    name="slot-gap",
    severity="error",
    summary="Bytes within the footprint are used by nothing.",
    checks=(
        "Every byte from 1 to the footprint behind each start address, cells repeated. A byte counts as used "
        "if any parameter uses it, whatever its conditions; where conditions leave one without a meaning at "
        "times, condition-hole says so."
    ),
    why=(
        "A line of the chart was left out, or the slots after it are one off. A slot without a function is "
        "worth recording too, as `reserved`: the next reader then knows that nobody forgot it."
    ),
    bad=Example(
        "The chart's second line is missing.",
        {
            "modes": [
                {"parameters": [{"parameter": "red", "slots": [1]}, {"parameter": "blue", "slots": [3]}]}
            ]
        },
    ),
    good=Example(
        "The maker gives slot 2 no function, and the record says so.",
        {
            "modes": [
                {
                    "parameters": [
                        {"parameter": "red", "slots": [1]},
                        {"parameter": "reserved", "slots": [2]},
                        {"parameter": "blue", "slots": [3]},
                    ]
                }
            ]
        },
    ),
    references=("ANSI E1.20, DMX_PERSONALITY_DESCRIPTION: the slots that a personality requires",),
    check=in_every_mode(faults_in_mode, about=[INEXACT]),
)
