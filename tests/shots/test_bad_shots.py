"""What is wrong in a list of shots is one line each, with its row and column; the rest is read."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.documents.shots import Shots
from modebook.rig.examples import rig_of
from modebook.shelf.errors import ShelfError
from modebook.shots.reading import shots_from_text

LAMP = {
    "model": "Lamp",
    "modes": [{"name": "M", "footprint": 2, "parameters": [{"parameter": "dimmer", "slots": [1, 2]}]}],
}
PATCH = """unit,fixture,mode,address,group,position
1,Lamp,M,1/1,key,Lift A
2,Lamp,M,1/3,key,Lift A
3,Lamp,M,1/5,back,Truss 1
4,Lamp,Other,1/7,back,Truss 1
12A,Lamp,M,1/9,,Truss 1
"""
TITLES = "setup,shot,cue,time,units,parameter,from,to,seconds,intent,fps\n"
GOOD = "one,1A,good,0,1,,0,50,3,smooth,\n"


def read(rows: str, titles: str = TITLES) -> Shots:
    return shots_from_text(titles + rows, rig_of({"fixtures": [LAMP], "patch": PATCH}))


@pytest.mark.parametrize(
    ("row", "column", "words"),
    [
        ("one,1A,b,9,99,,0,50,3,smooth,", "units", "'99'"),
        ("one,1A,b,9,group:sky,,0,50,3,smooth,", "units", "no group 'sky'"),
        ("one,1A,b,9,2,zoomed,0,50,3,smooth,", "parameter", "'zoomed'"),
        ("one,1A,b,9,2,zoom,0,50,3,smooth,", "parameter", "no zoom"),
        ("one,1A,b,9,2,,0,50,3,lovely,", "intent", "'lovely'"),
        ("one,1A,b,9,2,,0,150,3,smooth,", "to", "0 to 100"),
        ("one,1A,b,9,2,,0,50,soon,smooth,", "seconds", "'soon'"),
        ("one,1A,b,9,2,,0,50,1:75,smooth,", "seconds", "'1:75' is no time"),
        ("one,1A,b,9,2,,3200K,5600K,3,smooth,", "to", "percent of a parameter's whole span"),
        ("one,1A,b,9,3-1,,0,50,3,smooth,", "units", "is 1-3 meant?"),
        ("one,1A,b,9,2,,0,50,,unseen,", "seconds", "takes time"),
        ("one,1A,b,9,2,,0,50,3,smooth,film", "fps", "'film'"),
        ("one,1A,b,9,4,,0,50,3,smooth,", "units", "its mode 'Other'"),
        ("one,1A,b,1,1,,50,80,3,smooth,", "time", "still moving"),
    ],
)
def test_each_fault_is_one_line_with_its_row(row: str, column: str, words: str) -> None:
    """Unknown unit, group, parameter, intent; no level, no time; not patched; two cues on one parameter."""
    told = read(GOOD + row + "\n")
    (fault,) = told.faults
    assert (fault.row, fault.column) == (3, column)
    assert words in fault.why
    assert next(cue.name for setup in told.setups for cue in setup.cues) == "good", "the rest is read"


def test_times_that_go_backward_are_told_and_put_in_order() -> None:
    """The later row starts before the one above it."""
    told = read("one,1A,late,20,1,,0,50,3,smooth,\none,1A,early,5,2,,0,50,3,smooth,\n")
    (fault,) = told.faults
    assert (fault.row, fault.column) == (3, "time")
    assert [cue.name for cue in told.setups[0].cues] == ["early", "late"]


def test_a_shot_twice_is_told_once_and_left_out() -> None:
    """A shot that comes back after another one; its rows are one fault."""
    rows = GOOD + "one,1B,x,0,2,,0,50,3,smooth,\none,1A,again,0,2,,0,9,3,any,\none,1A,more,9,2,,9,0,3,any,\n"
    told = read(rows)
    (fault,) = told.faults
    assert (fault.row, fault.column, fault.found) == (4, "shot", "1A")
    assert [cue.name for cue in told.setups[0].cues] == ["good", "x"]


def test_missing_columns_have_a_meaning() -> None:
    """No times: cues follow each other. No setups: each shot is one. No parameter: the dimmer."""
    told = read("1A,1,50,3\n,1,20,2\n1B,2,10,1\n", titles="shot,units,to,seconds\n")
    assert not told.faults
    assert [setup.name for setup in told.setups] == ["shot 1A", "shot 1B"]
    first = list(told.setups[0].cues)
    assert [cue.start_s for cue in first] == [0.0, 3.0]
    assert [cue.from_percent for cue in first] == [0.0, 50.0], "from where the cue before left it"
    assert {cue.parameter for cue in first} == {"dimmer"}


@pytest.mark.parametrize(
    ("written", "units"),
    [
        ("1-3", ("1", "2", "3")),
        ("group:key, 12a", ("1", "2", "12A")),
        ("position:Lift A", ("1", "2")),
        ("Lift A; 3", ("1", "2", "3")),
        ("1-3 not 2", None),
        ("1-3, not 2", ("1", "3")),
    ],
)
def test_units_as_people_write_them(written: str, units: tuple[str, ...] | None) -> None:
    """Numbers, ranges, groups, positions, and one left out; what cannot be read is a fault."""
    told = read(f'one,1A,c,0,"{written}",,0,50,3,smooth,\n')
    if units is None:
        assert told.faults
    else:
        assert not told.faults
        assert next(iter(told.setups[0].cues)).units == units


@pytest.mark.parametrize("titles", ["setup,cue,to\n", "setup,units,cue\n"])
def test_a_list_without_units_or_levels_is_refused(titles: str) -> None:
    """It says which column is missing."""
    with pytest.raises(ShelfError, match="none says"):
        read("a,b,c\n", titles=titles)


@given(st.lists(st.text(st.characters(exclude_categories=["Cs", "Cc"], exclude_characters='"'), max_size=9)))
def test_no_cell_makes_the_reader_stumble(cells: list[str]) -> None:
    """Whatever stands in a row, it becomes a cue, a fault or a heading, and the good row stays."""
    row = ",".join(f'"{cell}"' for cell in cells[:11])
    told = read(GOOD + row + "\n")
    assert any(cue.name == "good" for setup in told.setups for cue in setup.cues)


@pytest.mark.parametrize(
    ("written", "seconds"), [("1m30", 90.0), ("1 min", 60.0), ("250ms", 0.25), ("1:30", 90.0), ("2.5 s", 2.5)]
)
def test_times_as_people_write_them(written: str, seconds: float) -> None:
    """Minutes and seconds, thousandths, with and without a space."""
    found = read(f"one,1A,b,9,2,,0,50,{written},smooth,\n")
    assert not found.faults
    assert found.setups[0].shots[0].cues[0].seconds_s == pytest.approx(seconds)


def test_time_beside_at_is_how_long_the_cue_takes() -> None:
    """At says when it starts: the other title that may mean either is the fade's."""
    found = read("one,1A,b,9,2,0,50,3,smooth\n", "setup,shot,cue,at,units,from,to,time,intent\n")
    (cue,) = found.setups[0].shots[0].cues
    assert (cue.start_s, cue.seconds_s) == (9.0, 3.0)
    assert not found.faults


def test_time_alone_is_when_it_starts_and_that_is_told() -> None:
    """No column of seconds: a note says how Time was read."""
    found = read("one,1A,b,3,2,0,50,any\n", "setup,shot,cue,time,units,from,to,intent\n")
    assert found.setups[0].shots[0].cues[0].start_s == 3.0
    assert any("'time' was read as when they start" in note for note in found.notes)


def test_a_cue_without_a_level_to_start_from_is_told() -> None:
    """Up from 0, or down from full: taken, and said for all rows at once."""
    found = read("one,1A,b,0,1,,,50,3,smooth,\none,1A,c,0,2,,,0,3,smooth,\n")
    assert [cue.from_percent for cue in found.setups[0].shots[0].cues] == [0.0, 100.0]
    assert any(note.startswith("row 2, 3: no level to start from") for note in found.notes)
