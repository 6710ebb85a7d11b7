"""From a choice of columns to the addresses of every unit: moved units get places of their size or larger."""

from __future__ import annotations

from collections import defaultdict

from modebook.documents.address import Address
from modebook.rig.repatch.master import Choice
from modebook.rig.repatch.problem import Option, Placing
from modebook.rig.repatch.rows import Family, Item, Rows


def placings_of(rows: Rows, choice: Choice) -> dict[str, Placing]:
    """Where each unit sits. A moved block stays in its universe where there is a place for it."""
    problem = rows.problem
    option = {
        unit: place for (unit, place), variable in rows.option_of.items() if choice.variables[variable] > 0.5
    }
    kept: set[int] = set()
    free: dict[Family, list[tuple[int, Address]]] = defaultdict(list)
    for column in choice.columns:
        number = problem.universes[column.universe].number
        for start, label in column.filled:
            if label < len(rows.items):
                kept.add(label)
            else:
                slot = rows.places[label - len(rows.items)]
                free[slot.family].append((slot.footprint, Address(number, start + 1)))
    at: dict[int, dict[str, Address]] = {unit: {} for unit in option}
    moved: list[Item] = []
    for label, item in enumerate(rows.items):
        if option[item.unit] != item.option:
            continue
        if label in kept:
            at[item.unit][item.key] = problem.units[item.unit].at[item.key]
        else:
            moved.append(item)
    # Widest first: whatever fits one of them fits every block after it.
    for item in sorted(moved, key=lambda one: -one.footprint):
        before = problem.units[item.unit].at.get(item.key)
        fitting = [place for place in free[item.family] if place[0] >= item.footprint]
        chosen = min(
            fitting,
            key=lambda place: (
                place[1] != before,
                before is not None and place[1].universe != before.universe,
                place[0],
                place[1],
            ),
        )
        free[item.family].remove(chosen)
        at[item.unit][item.key] = chosen[1]
    return {
        unit.id: _placing(unit.options[option[place]], at[place]) for place, unit in enumerate(problem.units)
    }


def _placing(option: Option, at: dict[str, Address]) -> Placing:
    return Placing(option, {key: at[key] for key, _ in option.blocks})
