"""A run of slots with as many names in one row is a row for each; other runs stay what they are."""

from __future__ import annotations

from intake.drafted import drafted
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
