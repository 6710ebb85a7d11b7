"""What a cure costs: the slots that a rig takes more, or fewer, once it is done."""

from __future__ import annotations

from modebook.checks.reading import ModeReading
from modebook.documents.modes import Mode


def cost_told(slots: int) -> str:
    """A cost in words, as help ends with it: ``28 slots more``, ``3 slots fewer``, ``no more slots``."""
    if slots == 0:
        return "no more slots"
    count = abs(slots)
    return f"{count} slot{'' if count == 1 else 's'} {'more' if slots > 0 else 'fewer'}"


def cost_of(mode: Mode, other: Mode) -> int:
    """What the other mode of a fixture costs beyond this one."""
    return other.footprint - mode.footprint


def nearest_mode(mode: ModeReading, candidates: list[ModeReading]) -> ModeReading | None:
    """Of some modes the one that loses the fewest cells, then parameters; of those the smallest."""
    cells = _cells(mode)
    return min(
        (one for one in candidates if one.mode is not mode.mode),
        key=lambda one: (
            max(cells - _cells(one), 0),
            len(mode.survey.words.keys() - one.survey.words.keys()),
            one.mode.footprint,
        ),
        default=None,
    )


def _cells(mode: ModeReading) -> int:
    """How many cells a mode has, the innermost where they nest."""
    if mode.plain:
        return 0
    found = {(block.key, placed.cell) for block in mode.blocks for placed in block.placed if placed.cell}
    deepest = max((len(cell) for _, cell in found), default=0)
    return sum(len(cell) == deepest for _, cell in found)
