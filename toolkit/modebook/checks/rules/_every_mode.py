"""From a rule about one mode to the check of a whole document."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading

OfMode = Callable[[FixtureReading, ModeReading], Sequence[Fault]]


def in_every_mode(faults_in_mode: OfMode) -> Callable[[FixtureReading], Sequence[Fault]]:
    """The check that finds the faults of each mode in turn."""

    def check(reading: FixtureReading) -> Sequence[Fault]:
        found: list[Fault] = []
        for mode in reading.modes:
            faults = faults_in_mode(reading, mode)
            if faults:
                found.extend(faults)
        return found

    return check
