"""How patch rules write fixtures, addresses and unit numbers in their sentences."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from modebook.documents.address import Address
from modebook.rig.reading import PatchedRow


def fixture_told(row: PatchedRow) -> str:
    """The fixture as its record writes it, else as the patch does."""
    if row.fixture is None:
        return row.unit.fixture
    return f"{row.fixture.fixture.maker} {row.fixture.fixture.model}"


def unit_told(row: PatchedRow) -> str:
    """A unit with its row: ``unit 12A (row 14)``."""
    return f"unit {row.unit.number} (row {row.unit.row})" if row.unit.number else f"row {row.unit.row}"


def stretch_told(first: int, last: int) -> str:
    """Absolute addresses for people: ``2/101 to 2/108``."""
    start, end = Address.from_absolute(first), Address.from_absolute(last)
    return str(start) if first == last else f"{start} to {end}"


def address_figure(absolute: int) -> dict[str, int]:
    """An address for JSON."""
    at = Address.from_absolute(absolute)
    return {"universe": at.universe, "address": at.address}


def either(words: Sequence[str]) -> str:
    """Words to choose from: ``a``, ``a or b``, ``a, b or c``."""
    return f"{', '.join(words[:-1])} or {words[-1]}" if len(words) > 1 else "".join(words)


def perhaps(names: Iterable[str]) -> str:
    """A question after the nearest names; empty where there are none."""
    told = list(names)
    return f"is {either(told)} meant?" if told else ""


def about(row: PatchedRow) -> dict[str, object]:
    """What every figure about a unit says: its record and mode, as far as they are known, and its place."""
    return record_figure(row) | place_figure(row)


def record_figure(row: PatchedRow) -> dict[str, object]:
    """Which record and mode a unit has; as the patch writes them where they are not known."""
    return {
        "fixture": row.identity or row.unit.fixture,
        "mode": row.mode.mode.name if row.mode else row.unit.mode,
    }


def place_figure(row: PatchedRow) -> dict[str, object]:
    """Where a unit hangs and how it is reached, as far as that is known."""
    told: dict[str, object] = {}
    if row.unit.position:
        told["position"] = row.unit.position
    if row.reach:
        told["reach"] = row.reach
    return told
