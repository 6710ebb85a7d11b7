"""A repatch on paper: who changes mode, who moves where, by position; then the maps of the new patch."""

from __future__ import annotations

from collections.abc import Iterator

from modebook.documents.address import Address
from modebook.render.csv_guard import Cell, csv_text
from modebook.render.findings_text import sentence
from modebook.render.sheets import cautions
from modebook.render.sheets.crew import by_universe, crew_lines
from modebook.render.sheets.listing import Section, listing
from modebook.render.verify_text import natural
from modebook.rig.reading import RigReading
from modebook.rig.repatch.plan import Change, Plan

CHANGE_TITLES = (
    "Position",
    "Unit",
    "Part",
    "Row",
    "Fixture",
    "Mode from",
    "Mode to",
    "Universe from",
    "Address from",
    "Universe to",
    "Address to",
    "Slots from",
    "Slots to",
    "See to",
)


def repatch_csv(plan: Plan) -> str:
    """The changes as CSV, in the order of the patch."""
    return csv_text(CHANGE_TITLES, _cells(plan))


def repatch_page(plan: Plan, after: RigReading) -> str:
    """The plan as a page; `after` is the rig read with the new patch."""
    places: dict[str, list[Change]] = {}
    for change in plan.changes:
        places.setdefault(change.position or "no position written", []).append(change)
    sections = [
        Section(
            "Before and after",
            ("", "Before", "After"),
            [
                ("universes", plan.universes_before, plan.universes_after),
                ("slots", plan.slots_before, plan.slots_after),
                ("units that change mode", "", plan.remoded),
                ("units that move", "", plan.moved),
            ],
            numbers=frozenset({1, 2}),
            notes=(_proof(plan),),
        )
    ]
    for place, changes in sorted(places.items(), key=lambda pair: natural(pair[0])):
        rows = [_row(change) for change in sorted(changes, key=lambda one: natural(one.unit))]
        titles = ("Unit", "Fixture", "Set mode", "Set address", "Slots", "See to")
        sections.append(
            Section(place, titles, rows, small=f"{len(rows)} to set", tick=True, numbers=frozenset({4}))
        )
    if plan.unmet:
        rows = [(one.unit, one.demand, one.parameter, sentence(one.why)) for one in plan.unmet]
        sections.append(Section("Stays unmet", ("Unit", "Demand", "Parameter", "Why"), rows))
    if plan.aside:
        sections.append(Section("Left alone", ("Unit", "Row", "Why"), plan.aside, numbers=frozenset({1})))
    for sheet in by_universe(after, crew_lines(after)):
        taken = f"Taken twice: {sheet.clashes}." if sheet.clashes else ""
        told = (f"Free: {sheet.free or 'nothing'}.", taken)
        small = f"{sheet.used} of 512 slots, after the change"
        sections.append(
            Section(f"Universe {sheet.number}", small=small, notes=tuple(filter(None, told)), svg=sheet.svg)
        )
    return listing(f"{plan.rig}: repatch", f"planned for {plan.patch}", sections, (), cautions.CREW)


def _proof(plan: Plan) -> str:
    if plan.proved:
        return "Every pass is proved: no plan does better, in the order of the wishes."
    told = [
        f"{one.wish} {one.value:g} against a bound of {one.bound:g}" for one in plan.passes if not one.proved
    ]
    return f"Not proved in the time given: {'; '.join(told)}."


def _row(change: Change) -> tuple[Cell, ...]:
    mode = f"{change.mode_to} (was {change.mode_from})" if change.changes_mode else f"stays {change.mode_to}"
    at, was = change.address_to, change.address_from
    address = f"{at or 'nowhere'} (was {was or 'nowhere'})" if change.moves else f"stays {at}"
    part = f"{address}, part {change.part}" if change.part else address
    return (change.unit, change.fixture, mode, part, change.slots_to, change.note)


def _numbers(address: Address | None) -> tuple[int | None, int | None]:
    """Two columns, for a spreadsheet takes ``1/11`` for a date."""
    return (address.universe, address.address) if address else (None, None)


def _cells(plan: Plan) -> Iterator[tuple[Cell, ...]]:
    for one in plan.changes:
        yield (
            one.position,
            one.unit,
            one.part,
            one.row,
            one.fixture,
            one.mode_from,
            one.mode_to,
            *_numbers(one.address_from),
            *_numbers(one.address_to),
            one.slots_from,
            one.slots_to,
            one.note,
        )
