"""What units are at now, out of a table: by key or label, by ranges, faults row by row."""

from __future__ import annotations

import pytest

from modebook.shelf.errors import ShelfError
from modebook.shots.state_reading import read_state


def test_units_settings_and_choices_as_people_write_them(rig, tmp_path):
    """A range of units, a label for a setting, a label for a choice, and a choice that nobody knows."""
    path = tmp_path / "now.csv"
    path.write_text("Unit,Setting,Is at\n1-2,Response,Long\n2,smoothing,?\n")
    found, faults = read_state(path, rig())
    assert found == {("1", "smoothing"): "long", ("2", "smoothing"): None}
    assert faults == []


def test_each_bad_row_is_one_line_and_the_others_are_taken(rig, tmp_path):
    """Row, unit, what is wrong, what there is."""
    path = tmp_path / "now.csv"
    path.write_text("units,setting,choice\n1,fan,quiet\n1,smoothing,slow\n9,smoothing,off\n2,smoothing,off\n")
    found, faults = read_state(path, rig())
    assert found == {("2", "smoothing"): "off"}
    assert faults[0] == f"{path}: row 2: unit 1: it has no setting 'fan'; there are smoothing"
    assert faults[1] == f"{path}: row 3: unit 1: smoothing has no choice 'slow'; there are off, short, long"
    assert faults[2].startswith(f"{path}: row 4: ")
    assert len(faults) == 3


def test_a_table_without_a_column_is_refused(rig, tmp_path):
    """The column that is missing is named."""
    path = tmp_path / "now.csv"
    path.write_text("units,setting\n1,smoothing\n")
    with pytest.raises(ShelfError, match="'choice'"):
        read_state(path, rig())
