"""The fixture rules that also judge a mode in use: coarse control and smoothing, unit by unit.

A module of the fixture rules takes part by offering ``faults_in_mode(reading, mode_reading, throw_m=None)``.
Its name and severity stay; the same mode at the same throw is judged once, whatever the number of units.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

from modebook.checks.finding import Fault, Finding
from modebook.checks.registry import FIXTURE_RULES
from modebook.checks.rule import Rule
from modebook.checks.runner import crash
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.rules._text import place_figure, record_figure

OfMode = Callable[..., Sequence[Fault] | None]

FAMILIES = ("coarse_", "smoothing_", "slow_")
"""How the names of the rules begin that judge what a mode in use can do."""


@cache
def rules_in_use() -> Mapping[str, tuple[Rule[Any], OfMode]]:
    """The fixture rules that judge a mode in use, with the function that does, by name.

    Only the modules of these families are imported: an audit has no use for the others.
    """
    found: dict[str, tuple[Rule[Any], OfMode]] = {}
    for about_module in iter_modules(import_module(FIXTURE_RULES).__path__):
        if about_module.name.startswith(FAMILIES):
            module = import_module(f"{FIXTURE_RULES}.{about_module.name}")
            judge = getattr(module, "faults_in_mode", None)
            if judge is not None:
                found[module.RULE.name] = (module.RULE, judge)
    return dict(sorted(found.items()))


def findings_in_use(reading: RigReading) -> Iterable[Finding]:
    """What the rules say of each unit's mode, at its throw; one unit over several rows is judged once."""
    judged: dict[tuple[int, float | None], list[Finding]] = {}
    seen: set[tuple[str, int]] = set()
    for row in reading.rows:
        if row.mode is None:
            continue
        key = (row.unit.number.casefold(), id(row.mode))
        if row.unit.number and len(row.mode.blocks) > 1 and key in seen:
            continue
        seen.add(key)
        at = (id(row.mode), row.unit.throw_m)
        if at not in judged:
            judged[at] = list(_judge(row, reading.patch.path))
        for finding in judged[at]:
            figure = finding.figure
            if row.unit.position or row.reach:
                figure = {**figure, **place_figure(row)}
            yield Finding(
                finding.rule,
                finding.severity,
                finding.file,
                finding.pointer,
                finding.message,
                figure,
                finding.help,
                row.unit.number,
                row.unit.row,
            )


def _judge(row: PatchedRow, file: str) -> Iterable[Finding]:
    if row.fixture is None or row.mode is None:
        return
    told = record_figure(row)
    for name, (rule, judge) in rules_in_use().items():
        try:
            faults = judge(row.fixture, row.mode, throw_m=row.unit.throw_m) or ()
        except Exception as error:  # noqa: BLE001 - one rule's own fault must not cost the others' findings
            yield crash(name, row.fixture.file, error)
            continue
        for fault in faults:
            figure = {**told, "pointer": fault.pointer, **fault.figure}
            yield Finding.of(replace(fault, pointer="mode", figure=figure), name, rule.severity, file)
