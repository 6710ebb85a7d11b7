"""The mode of the same fixture that does better: enough bits, and little lost."""

from __future__ import annotations

from modebook.checks.reading import FixtureReading, ModeReading
from modebook.documents.bits import bits
from modebook.documents.modes import Mode


def better_mode(
    reading: FixtureReading, mode: ModeReading, words: tuple[str, ...], needed: int | None
) -> tuple[Mode, int] | None:
    """The mode in which all these parameters have `needed` bits, and its bits.

    Of several, the one that lacks the fewest of this mode's other parameters, and of those the smallest. None
    where the fixture has no such mode, or where no number of bits would do.
    """
    if needed is None:
        return None
    found: list[tuple[int, int, Mode, int]] = []
    for other in reading.modes:
        if other is mode:
            continue
        least = min(_least(other, word) for word in words)
        if least >= needed:
            lost = len(mode.survey.words.keys() - other.survey.words.keys())
            found.append((lost, other.mode.footprint, other.mode, least))
    if not found:
        return None
    best = min(found, key=lambda entry: entry[:2])
    return best[2], best[3]


def _least(mode: ModeReading, word: str) -> int:
    carrying = [mode.written[index] for index in mode.survey.words.get(word, ())]
    carrying += [
        parameter
        for parameter in (mode.written[index] for index in mode.survey.ranged)
        if any(piece.parameter == word for piece in parameter.ranges)
    ]
    return min((bits(parameter) for parameter in carrying), default=0)
