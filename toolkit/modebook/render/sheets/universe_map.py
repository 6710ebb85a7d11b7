"""A universe drawn: 512 cells, who sits where, what is free, where two take one slot; for black and white."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

from modebook.documents.address import SLOTS_PER_UNIVERSE
from modebook.rig.reading import PatchedRow, RigReading

COLUMNS, ROWS = 32, 16
CELL, HIGH, LEFT, TOP = 30, 27, 34, 6
DIGIT = 7.7
"""Width of a digit of a unit's number in the map."""
WIDTH, HEIGHT = LEFT + COLUMNS * CELL + 4, TOP + ROWS * HIGH + 6


@dataclass(frozen=True, slots=True)
class Stretch:
    """The slots that one row of the patch takes in one universe, counted from 1."""

    row: PatchedRow
    first: int
    last: int
    begins: bool
    """Whether the unit's own first slot is here, not a continuation from the universe before."""


def stretches(reading: RigReading) -> dict[int, list[Stretch]]:
    """Who sits where, by universe, in the order of addresses."""
    found: dict[int, list[Stretch]] = defaultdict(list)
    for row in reading.rows:
        at = row.first
        while at and at <= row.last:
            universe, slot = divmod(at - 1, SLOTS_PER_UNIVERSE)
            count = min(SLOTS_PER_UNIVERSE - slot, row.last - at + 1)
            found[universe + 1].append(Stretch(row, slot + 1, slot + count, at == row.first))
            at += count
    for taken in found.values():
        taken.sort(key=lambda one: (one.first, one.row.unit.row))
    return {number: found[number] for number in sorted(found)}


def free_runs(taken: list[Stretch]) -> list[tuple[int, int]]:
    """The free stretches of a universe, first and last slot, in order."""
    runs: list[tuple[int, int]] = []
    next_free = 1
    for one in taken:
        if one.first > next_free:
            runs.append((next_free, one.first - 1))
        next_free = max(next_free, one.last + 1)
    if next_free <= SLOTS_PER_UNIVERSE:
        runs.append((next_free, SLOTS_PER_UNIVERSE))
    return runs


def universe_svg(number: int, taken: list[Stretch], twins: frozenset[int] = frozenset()) -> str:
    """The map of a universe as SVG, its texts escaped; `twins`: rows of the file that share on purpose."""
    used = sum(last - first + 1 for first, last in _union(taken))
    label = f"Universe {number}: {used} of 512 slots taken, by {len(taken)} rows of the patch"
    hatch = f"hatch-{number}"
    parts = [
        f'<svg class="map" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" aria-label="{escape(label)}">',
        f'<defs><pattern id="{hatch}" width="6" height="6" patternUnits="userSpaceOnUse" '
        'patternTransform="rotate(45)"><path class="hatch-line" d="M0 0V6"/></pattern></defs>',
        f'<path class="cell" d="{_grid()}"/>',
    ]
    for row in range(ROWS):
        y = TOP + row * HIGH + HIGH * 0.62
        parts.append(f'<text class="row-number" x="{LEFT - 5}" y="{y:.0f}">{row * COLUMNS + 1}</text>')
    names: list[str] = []
    for place, one in enumerate(taken):
        kind = "taken odd" if place % 2 else "taken"
        words = _words(one)
        if one.row.unit.row in twins and any(
            other is not one and other.first == one.first and other.last == one.last
            for other in taken[:place]
        ):
            parts += [f'<path class="twin" d="{_box(a, b, 3)}"/>' for a, b in _pieces(one.first, one.last)]
            continue
        parts.append(f'<g><title>{escape(words, quote=False)}</title><path class="{kind}" d="')
        parts.append("".join(_box(a, b, 1) for a, b in _pieces(one.first, one.last)) + '"/></g>')
        names.append(_name(one, taken))
    for first, last in clashes(taken, twins):
        parts += [
            f'<path class="clash" fill="url(#{hatch})" d="{_box(a, b, 1)}"/>' for a, b in _pieces(first, last)
        ]
    return "".join([*parts, *names, "</svg>"])


def clashes(taken: list[Stretch], twins: frozenset[int] = frozenset()) -> list[tuple[int, int]]:
    """The slots that two take who do not share on purpose, as stretches in order."""
    count = bytearray(SLOTS_PER_UNIVERSE + 2)
    seen: set[tuple[int, int]] = set()
    for one in taken:
        if one.row.unit.row in twins:
            if (one.first, one.last) in seen:
                continue
            seen.add((one.first, one.last))
        for slot in range(one.first, one.last + 1):
            count[slot] = min(count[slot] + 1, 2)
    runs: list[tuple[int, int]] = []
    for slot in range(1, SLOTS_PER_UNIVERSE + 1):
        if count[slot] > 1:
            if runs and runs[-1][1] == slot - 1:
                runs[-1] = (runs[-1][0], slot)
            else:
                runs.append((slot, slot))
    return runs


def _union(taken: list[Stretch]) -> Iterator[tuple[int, int]]:
    first, last = 0, -1
    for one in taken:
        if one.first > last:
            if last >= first > 0:
                yield first, last
            first, last = one.first, one.last
        else:
            last = max(last, one.last)
    if last >= first > 0:
        yield first, last


def _grid() -> str:
    across = "".join(f"M{LEFT} {TOP + row * HIGH}H{LEFT + COLUMNS * CELL}" for row in range(ROWS + 1))
    return across + "".join(
        f"M{LEFT + column * CELL} {TOP}V{TOP + ROWS * HIGH}" for column in range(COLUMNS + 1)
    )


def _pieces(first: int, last: int) -> Iterator[tuple[int, int]]:
    """A stretch cut where the map's rows end."""
    while first <= last:
        end = min(last, ((first - 1) // COLUMNS + 1) * COLUMNS)
        yield first, end
        first = end + 1


def _box(first: int, last: int, inset: int) -> str:
    row, column = divmod(first - 1, COLUMNS)
    x, y = LEFT + column * CELL + inset, TOP + row * HIGH + inset
    return f"M{x} {y}h{(last - first + 1) * CELL - 2 * inset}v{HIGH - 2 * inset}H{x}z"


def _name(one: Stretch, taken: list[Stretch]) -> str:
    """The unit number in its longest piece, cut to what fits there."""
    same = [other for other in taken if (other.first, other.last) == (one.first, one.last)]
    words = "+".join(other.row.unit.number or "?" for other in same)
    first, last = max(_pieces(one.first, one.last), key=lambda piece: piece[1] - piece[0])
    row, column = divmod(first - 1, COLUMNS)
    x, y = LEFT + column * CELL, TOP + row * HIGH
    wide = (last - first + 1) * CELL - 6
    if len(words) * DIGIT <= wide:
        return f'<text class="name" x="{x + 4}" y="{y + 17}">{escape(words)}</text>'
    # Letters are of many widths: what is cut is also clipped, for a picture within the picture does that.
    words = words[: max(int(wide / DIGIT) - 1, 1)] + ("…" if wide > CELL else "")
    return (
        f'<svg x="{x + 2}" y="{y}" width="{wide + 3}" height="{HIGH}">'
        f'<text class="name" x="2" y="17">{escape(words)}</text></svg>'
    )


def _words(one: Stretch) -> str:
    unit = one.row.unit
    mode = one.row.mode.mode.name if one.row.mode else unit.mode
    return f"{one.first}-{one.last}: unit {unit.number or '?'}, {unit.fixture}, {mode}"
