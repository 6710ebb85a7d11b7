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

from modebook.checks.finding import Fault, Figure, Finding
from modebook.checks.registry import FIXTURE_RULES
from modebook.checks.rule import Rule
from modebook.checks.runner import crash
from modebook.rig.cure_costs import with_cost
from modebook.rig.gathered import units_once
from modebook.rig.known_settings import SLOW, with_known
from modebook.rig.own_spans import as_in_menu
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.rules._text import place_figure, record_figure

OfMode = Callable[..., Sequence[Fault] | None]

FAMILIES = ("coarse_", "smoothing_", "slow_")
"""How the names of the rules begin that judge what a mode in use can do."""

TELL_PLACE = frozenset({"smoothing-by-hand-only", "smoothing-unknown"})
"""The rules whose findings someone has to walk to: they always tell position and reach, None if unknown."""


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


def findings_in_use(reading: RigReading, families: tuple[str, ...] = FAMILIES) -> Iterable[Finding]:
    """What the rules say of each unit's mode, at its throw; one unit over several rows is judged once.

    A unit of which rig.json tells menu states or settings is judged by them. `families`: only the rules
    whose modules begin so.
    """
    judged: dict[_Alike, list[Finding]] = {}
    at_any_throw: dict[tuple[str, int, _Known], list[Finding]] = {}
    figures: dict[tuple[int, str, str | None], Figure] = {}
    for row in units_once(reading):
        mode = row.mode
        if mode is None:
            continue
        alike = (id(mode), row.unit.throw_m, _known(row))
        findings = judged.get(alike)
        if findings is None:
            findings = judged[alike] = list(_judge(row, reading.patch.path, families, at_any_throw))
        position, reach = row.unit.position, row.reach
        number, line = row.unit.number, row.unit.row
        for finding in findings:
            at = (id(finding), position, reach)
            figure = figures.get(at)
            if figure is None:
                figure = figures[at] = _placed(finding, row)
            yield Finding(
                finding.rule,
                finding.severity,
                finding.file,
                finding.pointer,
                finding.message,
                figure,
                finding.help,
                number,
                line,
            )


_Known = tuple[tuple[str, str], ...]
_Alike = tuple[int, float | None, _Known]
"""What units have in common that are judged alike: mode, throw, and what rig.json knows of them."""


def _known(row: PatchedRow) -> _Known:
    if row.known is None or not (row.known.menu or row.known.settings):
        return ()
    return (*sorted(row.known.menu.items()), ("", ""), *sorted(row.known.settings.items()))


def _placed(finding: Finding, row: PatchedRow) -> Figure:
    """A finding's figure with the unit's place; a rule that sends someone there says also what is unknown."""
    if finding.rule in TELL_PLACE:
        return {**finding.figure, "position": row.unit.position or None, "reach": row.reach}
    return {**finding.figure, **place_figure(row)}


def _judge(
    row: PatchedRow,
    file: str,
    families: tuple[str, ...],
    at_any_throw: dict[tuple[str, int, _Known], list[Finding]],
) -> Iterable[Finding]:
    """The findings of a row's mode. `at_any_throw` keeps those to which the throw makes no difference."""
    for name in rules_in_use():
        if not name.replace("-", "_").startswith(families):
            continue
        key = (name, id(row.mode), _known(row))
        found = at_any_throw.get(key)
        if found is None:
            found = list(_by_rule(name, row, file))
            # A rule that looks at the throw tells it in its figures.
            if not any("throw_m" in finding.figure for finding in found):
                at_any_throw[key] = found
        yield from found


def _by_rule(name: str, row: PatchedRow, file: str) -> Iterable[Finding]:
    fixture, mode = row.fixture, row.mode
    if fixture is None or mode is None:
        return
    rule, judge = rules_in_use()[name]
    told = record_figure(row)
    known = row.known.settings if row.known else {}
    try:
        own = as_in_menu(mode, row.known.menu) if row.known else mode
        faults = list(judge(fixture, own, throw_m=row.unit.throw_m) or ())
        if name == SLOW and known:
            faults = with_known(fixture, known, faults)
        faults = [with_cost(name, fault, fixture, own) for fault in faults]
    except Exception as error:  # noqa: BLE001 - one rule's own fault must not cost the others' findings
        yield crash(name, fixture.file, error)
        return
    for fault in faults:
        figure = {**told, "pointer": fault.pointer, **fault.figure}
        yield Finding.of(replace(fault, pointer="mode", figure=figure), name, rule.severity, file)
