"""From a rule about one mode to the check of a whole document."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading

OfMode = Callable[[FixtureReading, ModeReading], Sequence[Fault]]


def in_every_mode(
    faults_in_mode: OfMode, about: Iterable[str] | None = None
) -> Callable[[FixtureReading], Sequence[Fault]]:
    """The check that finds the faults of each mode in turn.

    `about` names the facts (see FixtureReading.facts) of which a document must have one before the rule can
    find anything: one look for all its modes.
    """
    wanted = None if about is None else frozenset(about)

    def check(reading: FixtureReading) -> Sequence[Fault]:
        if wanted is not None and wanted.isdisjoint(reading.facts):
            return ()
        found: list[Fault] = []
        for mode in reading.modes:
            faults = faults_in_mode(reading, mode)
            if faults:
                found.extend(faults)
        return found

    return check
