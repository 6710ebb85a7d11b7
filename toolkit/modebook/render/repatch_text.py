"""A repatch plan for people: who changes mode, who moves where, what stays unmet and why."""

from __future__ import annotations

import textwrap

from modebook.render.terminal import counted, paint, printed, table, width, wrapped
from modebook.rig.grouping import unit_ranges
from modebook.rig.repatch.plan import Plan


def repatch_text(plan: Plan) -> str:
    """The plan as text."""
    out = [paint(f"{plan.rig}: {plan.patch}", "bold"), "", _before_and_after(plan)]
    if plan.changes:
        out.append(_changes(plan))
    else:
        of = " Of the units that could be planned; those left alone are below." if plan.aside else ""
        out.append(f"Nothing to change: every demand that a mode can meet is met.{of}\n")
    if plan.unmet:
        out.append(paint("Stays unmet", "bold"))
        out += _unmet(plan)
        out.append("")
    if plan.aside:
        out.append(paint("Left alone", "bold"))
        out += [_item(f"unit {unit or '-'}, row {row}: {why}") for unit, row, why in plan.aside]
        out.append("")
    out.append(_proof(plan))
    if plan.changes:
        out.append(
            wrapped(
                "Set the new modes and addresses on the fixtures before the patch is loaded; a fixture may "
                "reset and move when its mode changes: people clear of it. Then: modebook audit, on the new "
                "patch."
            )
        )
    return "\n".join(out) + "\n"


def _before_and_after(plan: Plan) -> str:
    rows = [
        ("universes", str(plan.universes_before), str(plan.universes_after)),
        ("slots", str(plan.slots_before), str(plan.slots_after)),
    ]
    made = printed(table([("", "left"), ("before", "right"), ("after", "right")], rows))
    return made + (
        f"\n{counted(plan.remoded, 'unit')} {'change' if plan.remoded != 1 else 'changes'} mode, "
        f"{counted(plan.moved, 'unit')} {'move' if plan.moved != 1 else 'moves'}.\n"
    )


def _changes(plan: Plan) -> str:
    rows = []
    for change in plan.changes:
        mode = change.mode_from if not change.changes_mode else f"{change.mode_from} → {change.mode_to}"
        before, after = change.address_from, change.address_to
        if not change.moves:
            at = f"{before}"
        else:
            at = f"{before or 'nowhere'} → {after or 'nowhere'}"
        slots = (
            f"{change.slots_to}"
            if change.slots_from == change.slots_to
            else (f"{change.slots_from} → {change.slots_to}")
        )
        note = f" ({change.note})" if change.note else ""
        rows.append((change.unit, change.fixture, mode + note, at, slots, change.position))
    columns = [
        ("unit", "left"),
        ("fixture", "left"),
        ("mode", "left"),
        ("address", "left"),
        ("slots", "right"),
    ]
    return printed(table([*columns, ("position", "left")], rows))  # type: ignore[list-item]


def _unmet(plan: Plan) -> list[str]:
    """By reason: units that lack the same thing for the same reason stand together."""
    groups: dict[tuple[str, str], list[str]] = {}
    for one in plan.unmet:
        what = f"{one.demand} ({one.parameter})" if one.parameter else one.demand
        groups.setdefault((what, one.why), []).append(one.unit)
    return [_item(f"{what}, unit {unit_ranges(units)}: {why}") for (what, why), units in groups.items()]


def _proof(plan: Plan) -> str:
    if plan.proved:
        return wrapped("Every pass is proved: no plan does better, in the order of the wishes.")
    told = [
        f"{one.wish}: {one.value:g}, no plan betters {one.bound:g} (gap {one.gap:.1%})"
        for one in plan.passes
        if not one.proved
    ]
    return wrapped("Not proved in the time given: " + "; ".join(told) + ".")


def _item(words: str) -> str:
    return textwrap.fill(
        words, width=width(), initial_indent="- ", subsequent_indent="  ", break_on_hyphens=False
    )
