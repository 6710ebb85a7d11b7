"""A map shows each slot once: taken, free, or taken twice; checked against a plain count over 512 slots."""

from __future__ import annotations

from xml.etree import ElementTree

from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.render.sheets.universe_map import (
    CELL,
    COLUMNS,
    HIGH,
    LEFT,
    TOP,
    clashes,
    free_runs,
    stretches,
    universe_svg,
)
from modebook.rig.examples import rig_of

SIZES = (1, 7, 33, 60)
FIXTURES = [
    {"model": f"S{size}", "modes": [{"name": "M", "footprint": size, "parameters": []}]} for size in SIZES
]
LONG = {"model": "Long", "modes": [{"name": "M", "footprint": 600, "continues": True, "parameters": []}]}


def rig(*lines: str):
    patch = "unit,fixture,mode,address\n" + "\n".join(lines) + "\n"
    return rig_of({"fixtures": [*FIXTURES, LONG], "patch": patch})


@settings(max_examples=60)
@given(st.lists(st.tuples(st.sampled_from(SIZES), st.integers(1, 512)), max_size=14))
def test_free_taken_and_taken_twice_are_a_plain_count(units):
    reading = rig(*(f"{place},S{size},M,1/{at}" for place, (size, at) in enumerate(units, 1)))
    count = [0] * 513
    for size, at in units:
        for slot in range(at, min(at + size, 513)):
            count[slot] += 1
    taken = stretches(reading).get(1, [])
    assert [s for first, last in free_runs(taken) for s in range(first, last + 1)] == [
        slot for slot in range(1, 513) if not count[slot]
    ]
    assert [s for first, last in clashes(taken) for s in range(first, last + 1)] == [
        slot for slot in range(1, 513) if count[slot] > 1
    ]


def cells(path: str) -> set[int]:
    """The slots that a drawn path covers, read back from its coordinates."""
    found: set[int] = set()
    for piece in path.split("M")[1:]:
        start, rest = piece.split("h")
        x, y = map(float, start.split())
        wide = float(rest.split("v")[0])
        row = int((y - TOP) // HIGH)
        first = int((x - LEFT) // CELL)
        last = int((x + wide - LEFT) // CELL)
        found |= {row * COLUMNS + column + 1 for column in range(first, last + 1)}
    return found


def drawn(svg: str, kind: str) -> list[set[int]]:
    picture = ElementTree.fromstring(svg)
    return [cells(each.get("d", "")) for each in picture.iter() if kind in (each.get("class") or "").split()]


def test_a_unit_is_drawn_over_its_own_cells_across_the_rows_of_the_map():
    reading = rig("1,S33,M,1/20", "2,S7,M,1/60", "3,S7,M,1/64")
    svg = universe_svg(1, stretches(reading)[1])
    assert drawn(svg, "taken") == [set(range(20, 53)), set(range(60, 67)), set(range(64, 71))]
    assert drawn(svg, "clash") == [{64}, {65, 66}], "hatched, and cut where the map's row ends at 64"


def test_a_mode_that_runs_on_stands_in_both_universes():
    found = stretches(rig("1,Long,M,1/500"))
    assert [(n, one.first, one.last, one.begins) for n, some in found.items() for one in some] == [
        (1, 500, 512, True),
        (2, 1, 512, False),
        (3, 1, 75, False),
    ]


def test_twins_on_purpose_are_dashed_and_not_hatched():
    reading = rig("1,S7,M,1/1", "2,S7,M,1/1")
    twins = frozenset(row.unit.row for row in reading.rows)
    svg = universe_svg(1, stretches(reading)[1], twins)
    assert drawn(svg, "clash") == []
    assert drawn(svg, "twin") == [set(range(1, 8))]
    assert "1+2" in svg


def test_hostile_text_is_text():
    reading = rig('"<script>alert(1)</script>",S60,M,1/1', '"\u202eevil""&",S60,M,1/101')
    picture = ElementTree.fromstring(universe_svg(1, stretches(reading)[1]))
    titles = [each.text or "" for each in picture.iter("title")]
    assert any("<script>alert(1)</script>" in title for title in titles)
    assert not list(picture.iter("script"))
