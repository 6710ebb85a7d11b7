"""An audit for people: each universe's load, then what is wrong by cause, worst first, with what to do."""

from __future__ import annotations

from itertools import groupby

from modebook.checks.finding import SEVERITIES, Finding
from modebook.render.findings_text import SEVERITY_STYLE, sentence, summary
from modebook.render.terminal import counted, paint, printed, table, wrapped
from modebook.rig.audit import Audit
from modebook.rig.grouping import Cause, by_cause, unit_ranges
from modebook.rig.in_use import TELL_PLACE

_TITLES = {"error": "Errors", "warning": "Warnings", "info": "To know"}


def audit_text(audit: Audit, *, full: bool = False, most: int | None = None) -> str:
    """The audit as text. `full`: every finding by itself; `most`: so many paragraphs, and how many more."""
    out = [paint(f"{audit.rig}: {counted(audit.units, 'unit')}, {audit.patch}", "bold")]
    out += [sentence(note) for note in audit.notes]
    out += ["", _universes(audit)]
    causes = (
        [Cause(f.rule, f.severity, "", "", (f,)) for f in _ordered(audit)]
        if full
        else by_cause(audit.findings)
    )
    shown = causes if most is None else causes[:most]
    for severity, group in groupby(shown, key=lambda cause: cause.severity):
        count = audit.summary[severity]
        out.append(paint(f"{_TITLES[severity]} ({count})", SEVERITY_STYLE[severity]))
        for rule, same in groupby(group, key=lambda cause: cause.rule):
            out.append(f"  {paint(rule, 'bold')}")
            out += _paragraphs(list(same), full)
        out.append("")
    if len(causes) > len(shown):
        hidden = causes[len(shown) :]
        rules = list(dict.fromkeys(cause.rule for cause in hidden))
        out += [
            wrapped(
                f"... and {len(hidden)} more causes of {sum(len(c.findings) for c in hidden)} findings: "
                f"{', '.join(rules)}.",
                "  ",
            ),
            "",
        ]
    out.append(summary(audit.findings, f"{counted(audit.units, 'unit')} audited"))
    if audit.findings:
        out.append("`modebook check --explain RULE` tells what a rule checks, and why.")
    return "\n".join(out) + "\n"


def _ordered(audit: Audit) -> list[Finding]:
    return sorted(audit.findings, key=lambda f: (SEVERITIES.index(f.severity), f.rule, f.row or 0))


def _universes(audit: Audit) -> str:
    rows = [
        (str(load.universe), str(load.slots_used), str(load.highest_address), f"{load.max_refresh_hz:.1f} Hz")
        for load in audit.universes
    ]
    return printed(
        table(
            [
                ("universe", "right"),
                ("slots used", "right"),
                ("highest address", "right"),
                ("greatest refresh", "right"),
            ],
            rows,
        )
    )


def _paragraphs(causes: list[Cause], full: bool) -> list[str]:
    """The causes of one rule. A sentence that holds for several is told once, above the units it is about."""
    out: list[str] = []
    by_message: dict[str, list[Cause]] = {}
    for cause in causes:
        by_message.setdefault(cause.message, []).append(cause)
    for message, same in by_message.items():
        shared = len(same) > 1
        if shared:
            out.append(wrapped(sentence(message), "    "))
        for index, cause in enumerate(same):
            out.append(_head(cause, "      " if shared else "    "))
            if not shared:
                out.append(wrapped(sentence(message), "      "))
            if cause.rule in TELL_PLACE:
                out.append(wrapped(_places(cause), "        " if shared else "      "))
            if len(cause.messages) > 1 and not full:
                more = f"({len(cause.messages) - 1} more like it, with other figures: `--full` tells each.)"
                out.append(wrapped(more, "      "))
            follows = same[index + 1].help if index + 1 < len(same) else None
            if cause.help and cause.help != follows:
                out.append(wrapped("→ " + sentence(cause.help), "        " if shared else "      "))
    return out


def _places(cause: Cause) -> str:
    """Where someone has to go, and how: ``Carousel (ladder): 531-533``."""
    places: dict[str, list[str | None]] = {}
    for finding in cause.findings:
        position = finding.figure.get("position") or "position unknown"
        reach = finding.figure.get("reach") or "reach unknown"
        places.setdefault(f"{position} ({reach})", []).append(finding.unit)
    return "; ".join(f"{place}: {unit_ranges(units)}" for place, units in places.items()) + "."


def _head(cause: Cause, indent: str) -> str:
    """Which units, which rows, which fixture and mode."""
    rows = cause.rows
    if len(rows) > 3:
        in_a_row = len(rows) == rows[-1] - rows[0] + 1
        place = f"rows {rows[0]} to {rows[-1]}" if in_a_row else f"{len(rows)} rows"
    else:
        place = f"row{'s' * (len(rows) != 1)} {', '.join(map(str, rows))}" if rows else ""
    what = f"{cause.fixture}, {cause.mode}" if cause.fixture and cause.mode else cause.fixture
    numbers = cause.units
    units = f"unit {paint(numbers or '-', 'bold')}"
    head = "  ".join(piece for piece in (units, place, paint(what, "dim") if what else "") if piece)
    return wrapped(head, indent) if len(numbers) > 60 else indent + head
