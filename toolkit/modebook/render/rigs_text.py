"""What rigs leave open, and which of them use a fixture, for people."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from modebook.render.terminal import Justify, paint, printed, table, width
from modebook.rig.across import RigDemands, UsingMode
from modebook.rig.grouping import unit_ranges


def demands_text(rigs: Sequence[tuple[str, RigDemands]]) -> str:
    """Units that are too coarse, and units without a record: counts, then which."""
    rows = [(rig, str(len(left.unmet)), str(len(left.without_record))) for rig, left in rigs]
    columns: list[tuple[str, Justify]] = [
        ("rig", "left"),
        ("too coarse", "right"),
        ("without a record", "right"),
    ]
    out = [paint("Units whose mode is too coarse, or whose fixture has no record", "bold")]
    out.append(printed(table(columns, rows)))
    for rig, left in rigs:
        if not left.unmet and not left.without_record:
            continue
        out.append(paint(rig, "bold"))
        by_rules: dict[str, list[str]] = {}
        for unit in left.unmet:
            rules = ", ".join(sorted({finding.rule for finding in unit.findings}))
            by_rules.setdefault(rules, []).append(unit.row.unit.number)
        out += [_wrapped(f"{rules}: {unit_ranges(units)}") for rules, units in by_rules.items()]
        names: dict[str, list[str]] = {}
        for row in left.without_record:
            names.setdefault(row.unit.fixture or "no fixture written", []).append(row.unit.number)
        out += [_wrapped(f"no record of {name}: {unit_ranges(units)}") for name, units in names.items()]
        out.append("")
    return "\n".join(out).rstrip() + "\n"


def using_text(identity: str, rigs: Sequence[tuple[str, Sequence[UsingMode]]]) -> str:
    """The rigs that use a fixture, with its modes and units."""
    if not rigs:
        return f"No rig uses {identity}.\n"
    rows = [
        (rig, _mode(mode), str(len(mode.units)), unit_ranges(mode.units))
        for rig, modes in rigs
        for mode in modes
    ]
    columns: list[tuple[str, Justify]] = [
        ("rig", "left"),
        ("mode", "left"),
        ("units", "right"),
        ("which", "left"),
    ]
    return f"{paint(f'Rigs that use {identity}', 'bold')}\n{printed(table(columns, rows))}"


def _mode(mode: UsingMode) -> str:
    if not mode.known:
        return f"{mode.mode} (no such mode)"
    return mode.mode if mode.number is None else f"{mode.mode} ({mode.number})"


def _wrapped(words: str) -> str:
    return textwrap.fill(
        words, width=width(), initial_indent="  ", subsequent_indent="    ", break_on_hyphens=False
    )
