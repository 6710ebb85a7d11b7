"""What differs in meaning between two documents or modes: slots, ranges, spans, settings; not key order."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Any

from modebook.intake.folding import fold
from modebook.intake.meaning import PLACE, Reader
from modebook.intake.picking import of_firmware

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture
    from modebook.documents.modes import Mode

Json = dict[str, Any]
Difference = Json
"""`pointer` (into the first document; into the second for what only that has), `a` and `b`."""


def compare(a: Fixture, b: Fixture) -> list[Difference]:
    """The differences in meaning between two documents; empty where they say the same.

    Sources, places, notes, labels, standing and doubts are not compared, nor is how cells are written down.
    """
    left, right = Reader(a), Reader(b)
    found = list(_values("/category", a.category, b.category))
    found += _values("/rdm", _plain(a.rdm), _plain(b.rdm))
    found += _named("/settings", left.settings(), right.settings())
    found += _named("/wheels", left.wheels(), right.wheels())
    found += _named("/emitters", left.emitters(), right.emitters())
    pairs = mode_pairs(a, b)
    for index, mode in enumerate(a.modes):
        if index in pairs:
            found += _modes(left, index, right, pairs[index])
        else:
            found.append({"pointer": f"/modes/{index}", "a": mode.name, "b": None})
    taken = set(pairs.values())
    found += [
        {"pointer": f"/modes/{i}", "a": None, "b": m.name} for i, m in enumerate(b.modes) if i not in taken
    ]
    return found


def mode_pairs(a: Fixture, b: Fixture) -> dict[int, int]:
    """Which mode of the second document each mode of the first is compared with, by their places from 0."""
    pairs: dict[int, int] = {}
    for index, mode in enumerate(a.modes):
        other = _twin(mode, index, a.modes, b.modes, set(pairs.values()))
        if other is not None:
            pairs[index] = other
    return pairs


def compare_modes(a: Fixture, mode_a: int, b: Fixture, mode_b: int) -> list[Difference]:
    """The differences between two modes, of one document or of two; by their places in the lists, from 0."""
    return _modes(Reader(a), mode_a, Reader(b), mode_b, names=False)


def compare_firmware(a: Fixture, of_a: str, b: Fixture, of_b: str) -> list[Difference]:
    """The differences between what the sources for two firmware versions tell, of one document or of two.

    Raises PickError where no source describes a version.
    """
    left, right = of_firmware(a, of_a), of_firmware(b, of_b)
    return [
        {**one, "pointer": (right if only_in_b(one) else left).pointer(one["pointer"])}
        for one in compare(left.fixture, right.fixture)
    ]


_ENTRY = re.compile(r".*/(?:modes|parameters|ranges|settings|wheels|emitters)/\d+")


def only_in_b(difference: Difference) -> bool:
    """Whether a difference is about something that the second document alone has: there its pointer leads."""
    return difference["a"] is None and _ENTRY.fullmatch(difference["pointer"]) is not None


def _plain(part: Any) -> Any:
    return None if part is None else part.model_dump(mode="json", by_alias=True)


def _twin(
    mode: Mode, index: int, mine: Sequence[Mode], theirs: Sequence[Mode], taken: set[int]
) -> int | None:
    """The mode of the other document that is meant by one: by name, then by number, footprint counting
    last.
    """
    free = [i for i in range(len(theirs)) if i not in taken]
    same = [i for i in free if fold(theirs[i].name) == fold(mode.name)]
    if len(same) > 1:
        exact = [i for i in same if theirs[i].footprint == mode.footprint and theirs[i].number == mode.number]
        same = exact or same
    if same:
        return same[0]
    names = {fold(m.name) for m in mine}
    others = [i for i in free if fold(theirs[i].name) not in names]
    if mode.number is not None:
        numbered = [i for i in others if theirs[i].number == mode.number]
        if numbered:
            return numbered[0]
    sized = [i for i in others if theirs[i].footprint == mode.footprint]
    return sized[0] if len(sized) == 1 else None


def _modes(left: Reader, a: int, right: Reader, b: int, *, names: bool = True) -> list[Difference]:
    one, other = left.fixture.modes[a], right.fixture.modes[b]
    pointer = f"/modes/{a}"
    found: list[Difference] = []
    if names:
        if fold(one.name) != fold(other.name):
            found.append({"pointer": f"{pointer}/name", "a": one.name, "b": other.name})
        found += _values(f"{pointer}/number", one.number, other.number)
        found += _values(f"{pointer}/given", _folded(one.given), _folded(other.given))
    found += _values(f"{pointer}/footprint", one.footprint, other.footprint)
    found += _values(f"{pointer}/continues", one.continues, other.continues)
    mine, theirs = left.parameters(a), right.parameters(b)
    said: set[tuple[str, bool]] = set()
    for key in [*mine, *(k for k in theirs if k not in mine)]:
        x, y = mine.get(key), theirs.get(key)
        at = (x or y or ("", {}))[0]
        differences: Iterable[Difference]
        if x is None or y is None:
            differences = [
                {
                    "pointer": at,
                    "a": None if x is None else x[1]["slots"],
                    "b": None if y is None else y[1]["slots"],
                }
            ]
        else:
            differences = list(_parameters(at, y[0], x[1], y[1]))
        for difference in differences:
            # The cells of a block share one pointer: what differs in all of them is said once.
            place = (difference["pointer"], only_in_b(difference))
            if place not in said:
                said.add(place)
                found.append(difference)
    return found


def _parameters(pointer: str, other: str, a: Json, b: Json) -> Iterator[Difference]:
    """Differences between two parameters at their pointers in the first and in the other document."""
    for key in sorted({*a, *b} - {"ranges"}):
        yield from _values(f"{pointer}/{key}", a.get(key), b.get(key))
    mine = {(r["from"], i): r for i, r in _numbered(a.get("ranges", []))}
    theirs = {(r["from"], i): r for i, r in _numbered(b.get("ranges", []))}
    for start in [*mine, *(k for k in theirs if k not in mine)]:
        x, y = mine.get(start), theirs.get(start)
        if x is None:
            yield {"pointer": f"{other}/ranges/{theirs[start][PLACE]}", "a": None, "b": _told(y)}
            continue
        at = f"{pointer}/ranges/{x[PLACE]}"
        if y is None:
            yield {"pointer": at, "a": _told(x), "b": None}
            continue
        for name in sorted({*x, *y} - {PLACE}):
            yield from _values(f"{at}/{name}", x.get(name), y.get(name))


def _told(entry: Json | None) -> Json | None:
    return None if entry is None else {key: value for key, value in entry.items() if key != PLACE}


def _numbered(ranges: Sequence[Json]) -> Iterator[tuple[int, Json]]:
    """Ranges with a count among those that begin at the same value."""
    seen: dict[int, int] = {}
    for entry in ranges:
        count = seen.get(entry["from"], 0)
        seen[entry["from"]] = count + 1
        yield count, entry


def _values(pointer: str, a: Any, b: Any) -> Iterator[Difference]:
    if a != b:
        yield {"pointer": pointer, "a": a, "b": b}


def _folded(text: str | None) -> str | None:
    return None if text is None else fold(text)


def _named(pointer: str, a: dict[str, tuple[int, Json]], b: dict[str, tuple[int, Json]]) -> list[Difference]:
    """Differences between two lists of named things."""
    found: list[Difference] = []
    for key in [*a, *(k for k in b if k not in a)]:
        x, y = a.get(key), b.get(key)
        index = (x or y or (0, {}))[0]
        at = f"{pointer}/{index}"
        if x is None or y is None:
            found.append({"pointer": at, "a": None if x is None else x[1], "b": None if y is None else y[1]})
            continue
        for name in sorted({*x[1], *y[1]}):
            found += _values(f"{at}/{name}", x[1].get(name), y[1].get(name))
    return found
