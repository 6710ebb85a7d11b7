"""The mode of the same fixture that does better: enough bits, in the fewest slots."""

from __future__ import annotations

from modebook.checks.reading import FixtureReading, ModeReading
from modebook.documents.bits import bits
from modebook.documents.modes import Mode


def better_mode(
    reading: FixtureReading, mode: ModeReading, words: tuple[str, ...], needed: int | None
) -> tuple[Mode, int] | None:
    """The mode with the smallest footprint in which all these parameters have `needed` bits, and its bits.

    None where the fixture has no such mode, or where no number of bits would do.
    """
    if needed is None:
        return None
    found: list[tuple[Mode, int]] = []
    for other in reading.modes:
        if other is mode:
            continue
        each = [_least(other, word) for word in words]
        if min(each) >= needed:
            found.append((other.mode, min(each)))
    return min(found, key=lambda entry: entry[0].footprint, default=None)


def _least(mode: ModeReading, word: str) -> int:
    carrying = [mode.written[index] for index in mode.survey.words.get(word, ())]
    carrying += [
        parameter
        for parameter in (mode.written[index] for index in mode.survey.ranged)
        if any(piece.parameter == word for piece in parameter.ranges)
    ]
    return min((bits(parameter) for parameter in carrying), default=0)
