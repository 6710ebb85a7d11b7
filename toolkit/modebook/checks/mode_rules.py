"""The rules that a rig asks about the one mode a unit is patched in: what is coarse, and how it smooths."""

from __future__ import annotations

from collections.abc import Iterator

from modebook.checks.finding import Finding
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Rule
from modebook.checks.rules import (
    coarse_angle,
    coarse_chromaticity,
    coarse_color_temperature,
    coarse_dimmer,
    coarse_hue,
    slow_by_default,
    smoothing_by_hand_only,
    smoothing_unknown,
    smoothing_unreachable,
    smoothing_without_off,
)

_MODULES = (
    coarse_angle,
    coarse_chromaticity,
    coarse_color_temperature,
    coarse_dimmer,
    coarse_hue,
    slow_by_default,
    smoothing_by_hand_only,
    smoothing_unknown,
    smoothing_unreachable,
    smoothing_without_off,
)

MODE_RULES: tuple[Rule[FixtureReading], ...] = tuple(module.RULE for module in _MODULES)
"""The coarse and the smoothing rules."""


def findings_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Iterator[Finding]:
    """What the coarse and smoothing rules find in one mode of a fixture, at a unit's throw in meters.

    Without a throw the policy's is assumed, and figures say so. `file` and `pointer` are the fixture
    document's. What the document accepts is not left out: a rig may not want to live with it.
    """
    for module in _MODULES:
        rule = module.RULE
        for fault in module.faults_in_mode(reading, mode, throw_m):
            yield Finding.of(fault, rule.name, rule.severity, reading.file)
