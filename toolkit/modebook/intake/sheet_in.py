"""Reads a chart sheet of ours back into the document that it was made from, or that someone typed."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from modebook.intake.errors import IntakeError
from modebook.intake.grid import Source
from modebook.intake.sheet_layout import (
    BLOCKS,
    CELLS_KEYS,
    MORE,
    PARAMETER_KEYS,
    PART_KEYS,
    RANGE_KEYS,
    Json,
    read,
    read_cells,
)
from modebook.intake.sheet_typed import finish_typed

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture
    from modebook.intake.draft import About

_LISTS = {
    "source": "sources",
    "setting": "settings",
    "wheel": "wheels",
    "emitter": "emitters",
    "mode": "modes",
    "doubt": "doubts",
    "accepted": "accepted",
    "promotion": "promotions",
}
_INNER = {"choice": ("settings", "choices"), "way": ("settings", "ways"), "position": ("wheels", "positions")}


def document_of_sheet(source: Source, about: About) -> Fixture | None:
    """The document in a chart sheet; None if the source is no sheet of ours.

    What the sheet does not say comes from `about`. Raises IntakeError with sheet and row for a cell that
    cannot be understood.
    """
    if source.kind != "sheet":
        return None
    rows = [(leaf.sheet, number, row) for leaf in source.leaves for number, row in leaf.raw]
    if not any(_is_titles(row) and row[0].strip() == "chart" for _, _, row in rows):
        return None
    reading = _Reading(source.name)
    for sheet, number, row in rows:
        reading.take(row, f"sheet {sheet}, row {number}" if sheet else f"row {number}")
    return _validated(reading, about)


def _is_titles(row: list[str]) -> bool:
    return len(row) > 2 and row[0].strip() in BLOCKS and row[1].strip() == BLOCKS[row[0].strip()][0].title


class _Reading:
    """The document as it grows, row by row."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.document: Json = {}
        self.block = ""
        self.columns: list[tuple[int, str, str]] = []
        self.more_from = 0
        self.holders: list[Json] = []
        self.parameter: Json | None = None
        self.blocks: set[str] = set()
        self.places: dict[int, str] = {}

    def take(self, row: list[str], place: str) -> None:
        if not any(cell.strip() for cell in row):
            return
        if _is_titles(row):
            self._begin(row, place)
            return
        if not self.block:
            raise IntakeError(
                self.name,
                "stands above the first row of titles",
                place=place,
                remedy="begin with the titles of a blank chart sheet",
            )
        try:
            self._row(row, place)
        except (ValueError, KeyError) as error:
            raise IntakeError(
                self.name, str(error), place=place, remedy="see the worked example of a blank chart sheet"
            ) from error

    def _begin(self, row: list[str], place: str) -> None:
        self.block = row[0].strip()
        self.blocks.add(self.block)
        known = {column.title: column for column in BLOCKS[self.block]}
        self.columns = []
        self.more_from = len(row)
        for index, cell in enumerate(row[1:], start=1):
            title = cell.strip()
            if title == MORE:
                self.more_from = index
                break
            if title in known:
                self.columns.append((index, known[title].key, known[title].form))
            elif title:
                raise IntakeError(
                    self.name,
                    f"the title {title!r} is unknown in the block {self.block}",
                    place=place,
                    remedy=f"the titles are {', '.join(known)}, {MORE}",
                )

    def _row(self, row: list[str], place: str) -> None:
        kind = row[0].strip()
        if self.block == "chart":
            self._chart(kind, row, place)
            return
        entry = self._entry(row)
        self.places[id(entry)] = place
        if self.block == "fixture":
            self.document.update(entry)
        elif self.block in _INNER:
            outer, inner = _INNER[self.block]
            if not self.document.get(outer):
                raise ValueError(f"a {self.block} stands before the first {outer.removesuffix('s')}")
            self.document[outer][-1].setdefault(inner, []).append(entry)
        else:
            self.document.setdefault(_LISTS[self.block], []).append(entry)
            if self.block == "mode":
                self.holders = [entry]
                self.parameter = None

    def _chart(self, kind: str, row: list[str], place: str) -> None:
        if not self.holders:
            mode: Json = {}
            self.document.setdefault("modes", []).append(mode)
            self.holders = [mode]
        slots = row[1].strip() if len(row) > 1 else ""
        if kind.startswith("cells"):
            depth = int(kind.removeprefix("cells").strip() or 1)
            if depth > self._depth() + 1:
                raise ValueError(f"{kind}: cells stand one level too deep")
            del self.holders[self._base() + depth - 1 :]
            entry = {**self._entry(row, CELLS_KEYS, skip=1), **read_cells(slots)}
            self.holders[-1].setdefault("cells", []).append(entry)
            self.holders.append(entry)
            self.parameter = None
            return
        if kind == "part":
            footprint = slots.removesuffix("slots").strip()
            if not footprint.isdigit():
                raise ValueError(f"{slots!r}: write how many slots the part has, such as 12 slots")
            entry = {**self._entry(row, PART_KEYS, skip=1), "footprint": int(footprint)}
            del self.holders[1:]
            self.holders[0].setdefault("parts", []).append(entry)
            self.holders.append(entry)
            self.parameter = None
            return
        if kind:
            raise ValueError(
                f"{kind!r} begins a row of a chart: write cells or part, or leave the cell blank"
            )
        self._parameter_or_range(row, place, slots)

    def _base(self) -> int:
        """How many of the holders are the mode and, if there is one, its part."""
        return (
            2
            if len(self.holders) > 1 and "footprint" in self.holders[1] and "count" not in self.holders[1]
            else 1
        )

    def _depth(self) -> int:
        return len(self.holders) - self._base()

    def _parameter_or_range(self, row: list[str], place: str, slots: str) -> None:
        more = self._more(row)
        filled = {
            key: row[index].strip()
            for index, key, _ in self.columns
            if index < len(row) and row[index].strip()
        }
        if slots or "slots" in more:
            keys = PARAMETER_KEYS
            both = "from" in filled and "to" in filled
            stray = [key for key in filled if key not in keys]
            if stray and not both:
                raise ValueError(f"{', '.join(stray)} speak of values: fill in from and to as well")
            entry = self._entry(row, keys)
            self.places[id(entry)] = place
            self.holders[-1].setdefault("parameters", []).append(entry)
            self.parameter = entry
            if both:
                # Typed on one line: what speaks of the values belongs to the range.
                piece = self._entry(row, [k for k in RANGE_KEYS if k not in keys], more=False)
                for key in (
                    "does",
                    "sets",
                    "hold_s",
                    "kept",
                    "hazard",
                    "needs",
                    "from",
                    "to",
                    "meaning",
                    "position",
                ):
                    entry.pop(key, None)
                entry["ranges"] = [piece]
            return
        if self.parameter is None:
            raise ValueError("a row without slots stands before the first parameter")
        entry = self._entry(row, RANGE_KEYS)
        self.places[id(entry)] = place
        self.parameter.setdefault("ranges", []).append(entry)

    def _more(self, row: list[str]) -> Json:
        text = "".join(cell.strip("\r\n") for cell in row[self.more_from :])
        if not text.strip():
            return {}
        try:
            found = json.loads(text)
        except json.JSONDecodeError as error:
            raise ValueError(f"the cell {MORE!r} is no JSON: {error.msg}") from error
        if not isinstance(found, dict):
            raise ValueError(f"the cell {MORE!r} holds no JSON object")
        return found

    def _entry(self, row: list[str], keys: Any = None, *, skip: int = 0, more: bool = True) -> Json:
        made: Json = {}
        for index, key, form in self.columns:
            text = row[index].strip() if index < len(row) and index != skip else ""
            if text and (keys is None or key in keys):
                made[key] = read(text, form)
        if more:
            made.update(self._more(row))
        return made


def _validated(reading: _Reading, about: About) -> Fixture:
    from pydantic import ValidationError

    from modebook.documents.fixture import Fixture

    document = finish_typed(reading.document, reading.blocks, about, reading.places)
    try:
        return Fixture.model_validate_json(json.dumps(document), by_alias=True, by_name=False)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        pointer = "".join(f"/{step}" for step in first["loc"] if step not in ("one", "several", "[key]"))
        raise IntakeError(
            reading.name, f"{pointer}: {first['msg']}", remedy="look at that row of the sheet"
        ) from error
