"""A run of slots with as many names in one row is a row for each; other runs stay what they are."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, whys
from modebook.documents.fixture import Fixture
from modebook.intake.draft import draft_bytes
from modebook.intake.grid import grid_of
from modebook.intake.listed_slots import with_listed_slots


def test_each_slot_has_its_name_and_the_number_of_its_group():
    document = drafted(
        "Slots;Part;Colors;Value\n1-3;Cell 1;Red, Green, Blue;0-255\n4-6;Cell 2;Red, Green, Blue;0-255"
    )
    (mode,) = document.modes
    (block,) = mode.cells
    assert (mode.footprint, block.count) == (6, 2)
    assert [p.parameter for p in block.parameters] == ["red", "green", "blue"]
    assert not document.doubts


def test_a_list_of_another_length_is_left_alone():
    """Four slots and three names: nobody knows which is which."""
    grid = grid_of([["Slots", "Colors"], ["1-4", "Red, Green, Blue"], ["5", "Strobe"]])
    assert with_listed_slots(grid) is grid


def test_one_parameter_over_several_slots_is_no_list():
    grid = grid_of([["Slots", "Function"], ["1-2", "Pan"], ["3-4", "Pan, tilt"], ["5", "Strobe"]])
    assert with_listed_slots(grid) is grid


def test_slots_that_are_said_to_be_as_those_above():
    """`4-21 | Segments 2 to 7, same as 1-3` between segments 1 and 8: eight segments of three slots."""
    segment = "{}\tRed, segment {s}\t0-255\n{}\tGreen, segment {s}\t0-255\n{}\tBlue, segment {s}\t0-255\n"
    first, last = segment.format(1, 2, 3, s=1), segment.format(22, 23, 24, s=8)
    for row in ("4-21\tSegments 2 to 7, same as 1-3\t\n", "4…21\t…\t…\n"):
        document = drafted(f"Channel\tFunction\tValue\n{first}{row}{last}")
        (cells,) = document.modes[0].cells
        assert (cells.count, cells.first, cells.stride) == (8, 1, 3)
        assert cells.note is not None
        assert not document.doubts


def test_slots_that_nothing_tells_are_missing():
    """Without a last segment the numbers fit nothing: one doubt names the slots."""
    rows = "1\tRed, segment 1\t0-255\n2\tGreen, segment 1\t0-255\n3-16\tas above\t\n17\tStrobe\t0-255\n"
    document = drafted(f"Channel\tFunction\tValue\n{rows}")
    assert whys(document) == ["nothing was read for slots 3-16"]


def block(document: Fixture) -> tuple[int, int, int, list[tuple[str, list[int]]]]:
    """Count, first slot and step of the one block of cells, and what its first cell holds."""
    (cells,) = document.modes[0].cells
    return cells.count, cells.first, cells.stride, [(p.parameter, p.slots) for p in cells.parameters]


PIXEL = [("red", [1]), ("green", [2]), ("blue", [3])]


@pytest.mark.parametrize(
    "names",
    [
        ["Pixel 1 RGB", "Pixel 2 RGB", "Pixel 3 RGB"],
        ["RGB pixel 1", "RGB pixel 2", "RGB pixel 3"],
        ["Segment 1: RGB", "Segment 2: RGB", "Segment 3: RGB"],
        ["Pixel 1 (R, G, B)", "Pixel 2 (R, G, B)", "Pixel 3 (R, G, B)"],
        ["Pixel 1 red/green/blue", "Pixel 2 red/green/blue", "Pixel 3 red/green/blue"],
    ],
)
def test_a_run_of_slots_beside_a_mix_of_a_cell_is_a_slot_for_each_letter(names: list[str]):
    rows = [f'{3 * n + 1}-{3 * n + 3},"{name}",0-255' for n, name in enumerate(names)]
    chart = "\n".join(["Channel,Function,Value", *rows, "10,Strobe,0-255"])
    document = draft_bytes(chart.encode(), name="chart.csv").document
    assert block(document) == (3, 1, 3, PIXEL)
    assert not document.doubts


def test_cells_left_out_in_print_are_filled_in_where_the_numbers_fit():
    """Cells 1 and 2 give the step, the last one their number; where it does not fit, rows are missing."""
    chart = (
        "Channel,Function,Value\n1-3,Pixel 1 RGB,0-255\n4-6,Pixel 2 RGB,0-255\n...,,\n{},Pixel 12 RGB,0-255\n"
    )
    document = draft_bytes(chart.format("34-36").encode(), name="chart.csv").document
    assert block(document) == (12, 1, 3, PIXEL)
    assert "Derived" in (document.modes[0].cells[0].note or "")
    other = draft_bytes(chart.format("37-39").encode(), name="chart.csv").document
    assert any("left out in print" in doubt.why for doubt in other.doubts)


@pytest.mark.parametrize("name", ["Lamp 1 - Lamp 5", "Lamp 1–5", "Lamp 1 to 5"])
def test_a_run_of_names_as_long_as_that_of_slots_is_a_slot_for_each(name: str):
    """Five lamps on slots 2 to 6; each runs from dark to full, as the row says of all."""
    document = drafted(f"Slot;Name;Value;Meaning\n1;Strobe;0-255;slow to fast\n2-6;{name};0-255;0-100 %\n")
    (mode,) = document.modes
    (block,) = mode.cells
    assert (mode.footprint, block.count, block.first) == (6, 5, 2)
    assert [p.parameter for p in block.parameters] == ["dimmer"]
    assert not document.doubts


def test_a_run_of_names_of_another_length_is_not_taken_apart():
    document = drafted("Slot;Name;Value\n1;Strobe;0-255\n2-7;Lamp 1 - Lamp 5;0-255\n")
    assert "6 slots beside one name are not taken apart" in whys(document)


def test_a_dash_beside_rows_left_out_says_that_a_mode_has_none_of_them():
    """Five cells of two slots, the first and the last in print, beside a mode that has but two slots."""
    document = drafted(
        "Small;Large;Name;Value\n1;-;Red;0-255\n2;-;Blue;0-255\n-;1;Red cell 1;0-255\n-;2;Blue cell 1;0-255\n"
        "-;...;...;\n-;9;Red cell 5;0-255\n-;10;Blue cell 5;0-255\n"
    )
    assert [(mode.footprint, [block.count for block in mode.cells]) for mode in document.modes] == [
        (2, []),
        (10, [5]),
    ]
