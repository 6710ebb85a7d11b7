"""What a parameter's ranges cover: the values that none has, and those that two have."""

from __future__ import annotations

from modebook.checks.rules._values import Intervals, merged, without
from modebook.documents.bits import full_scale
from modebook.documents.modes import Parameter


def covered(parameter: Parameter) -> Intervals:
    """The values that some range has, whatever its conditions."""
    return merged((piece.from_, piece.to) for piece in parameter.ranges)


def uncovered(parameter: Parameter) -> Intervals:
    """The values up to full scale that no range has; none for a parameter without ranges or slots."""
    if not parameter.ranges or not parameter.slots:
        return ()
    return without(((0, full_scale(parameter)),), covered(parameter))
