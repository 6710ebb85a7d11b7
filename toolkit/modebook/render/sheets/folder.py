"""All sheets of a rig as files by name: pages that link to each other, and a CSV beside each list."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from modebook.documents.base import slug
from modebook.render.csv_guard import csv_text
from modebook.render.sheets import cautions
from modebook.render.sheets.control_cards import CARD_TITLES, card_cells, control_cards
from modebook.render.sheets.crew import (
    LINE_TITLES,
    START_TITLES,
    by_position,
    by_universe,
    crew_lines,
    line_cells,
    start_cells,
)
from modebook.render.sheets.findings import findings_csv, findings_page
from modebook.render.sheets.page import page
from modebook.render.sheets.spare import spare
from modebook.rig.audit import audit
from modebook.rig.reading import RigReading

PAGES = (
    ("index.html", "All sheets"),
    ("by-position.html", "By position"),
    ("by-universe.html", "By universe"),
    ("control-cards.html", "Control cards"),
    ("findings.html", "Findings"),
)


@dataclass(frozen=True, slots=True)
class _Listed:
    name: str
    title: str
    use: str
    csv: str = ""


def sheets(reading: RigReading, spares: Sequence[str] = ()) -> dict[str, bytes]:
    """The files by name; the same rig gives the same bytes. Raises ShelfError for a spare's unknown unit."""
    swapped = {_spare_name(number): spare(reading, number) for number in spares}
    found = audit(reading)
    lines = crew_lines(reading, found.findings)
    places, universes = by_position(reading, lines), by_universe(reading, lines)
    cards = control_cards(reading)
    listed = [
        _Listed(
            "by-position.html", "By position", "for who hangs, sets and checks the units", "by-position.csv"
        ),
        _Listed(
            "by-universe.html",
            "By universe",
            "maps of 512 slots: who sits where, what is free",
            "by-universe.csv",
        ),
        _Listed(
            "control-cards.html",
            "Control cards",
            "what to send to change a setting, and what not to",
            "control-cards.csv",
        ),
        _Listed("findings.html", "Findings", "what is wrong with the patch, and the cure", "findings.csv"),
        *(
            _Listed(name, f"Spare for unit {one.line.unit}", "everything to set on it, on one page")
            for name, one in swapped.items()
        ),
    ]
    name, rig = reading.name, reading.rig
    texts = {
        "index.html": page(
            "index.html",
            name,
            f"{found.units} units, {len(universes)} universes, "
            f"{rig.refresh_hz:g} packets a second from the desk",
            about=rig.about or "",
            sheets=listed,
            loads=found.universes,
            links={sheet.number: sheet.link for sheet in universes},
            words=cautions.CREW,
        ),
        "by-position.html": page(
            "by_position.html", f"{name}: by position", pages=PAGES, places=places, words=cautions.CREW
        ),
        "by-universe.html": page(
            "by_universe.html", f"{name}: by universe", pages=PAGES, universes=universes
        ),
        "control-cards.html": page(
            "control_cards.html", f"{name}: control cards", pages=PAGES, cards=cards, words=cautions.CONTROL
        ),
        "findings.html": findings_page(found, PAGES),
        "by-position.csv": csv_text(
            (*START_TITLES, *LINE_TITLES),
            (
                (*start, *line_cells(line))
                for place in places
                for line in place.lines
                for start in start_cells(line)
            ),
        ),
        "by-universe.csv": csv_text(
            ("Universe", "First slot", "Last slot", *LINE_TITLES),
            (
                (sheet.number, *bounds, *line_cells(line))
                for sheet in universes
                for bounds, (_, line) in zip(sheet.bounds, sheet.rows, strict=True)
            ),
        ),
        "control-cards.csv": csv_text(CARD_TITLES, (cells for card in cards for cells in card_cells(card))),
        "findings.csv": findings_csv(found.findings),
    }
    for file, one in swapped.items():
        title = f"Spare for unit {one.line.unit}"
        texts[file] = page("spare.html", title, name, spare=one, words=cautions.SPARE)
    return {file: _bytes(file, text) for file, text in texts.items()}


def _spare_name(number: str) -> str:
    plain = slug(number) or "-".join(f"{ord(letter):x}" for letter in number[:8]) or "unit"
    return f"spare-{re.sub(r'[^a-z0-9-]', '', plain)}.html"


def _bytes(name: str, text: str) -> bytes:
    # A byte order mark tells a spreadsheet that a CSV is UTF-8.
    return text.encode("utf-8-sig" if name.endswith(".csv") else "utf-8", errors="replace")


def written(files: dict[str, bytes]) -> Iterable[tuple[str, bytes]]:
    """The files in the order in which they are to be written: the index last, so that its links hold."""
    return sorted(files.items(), key=lambda item: item[0] == "index.html")
