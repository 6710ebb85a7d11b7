"""What a column holds is told by its title and its contents together; contents decide."""

from __future__ import annotations

import pytest

from modebook.intake.column_roles import roles_of
from modebook.intake.column_stats import stats_of
from modebook.intake.grid import grid_of

SLOTS = ["1", "2", "3", "4"]
NAMES = ["Dimmer", "Red", "Green", "Blue"]
RANGES = ["0-255"] * 4
TEXTS = ["Closed to open", "Dark to full", "Dark to full", "Dark to full"]


def roles(titles: list[str], *columns: list[str]) -> list[str]:
    grid = grid_of(list(map(list, zip(*columns, strict=True))))
    return list(roles_of(titles, [stats_of([row[c] for row in grid.rows]) for c in range(len(columns))]))


def test_titles_and_contents_agree():
    assert roles(["Channel", "Function", "Value", "Description"], SLOTS, NAMES, RANGES, TEXTS) == [
        "slot",
        "function",
        "value",
        "meaning",
    ]


def test_a_title_that_its_column_contradicts_does_not_count():
    """`DMX` heads slots in one chart and values in the next; ranges under `Channel` are no slots."""
    assert roles(["DMX", "Function"], SLOTS, NAMES)[0] == "slot"
    assert roles(["Channel", "Function", "DMX"], SLOTS, NAMES, RANGES)[2] == "value"


@pytest.mark.parametrize("title", ["", "Kanava"])
def test_numbers_that_count_are_slots_whatever_their_title(title):
    assert roles([title, "Function", "Value"], SLOTS, NAMES, RANGES)[0] == "slot"


def test_a_mode_called_standard_is_no_column_of_defaults():
    """In two languages `Standard` means default: numbers that count as slots do are a mode's slots."""
    found = roles(["Basic", "Standard", "Function", "Value"], ["1", "2", "-", "3"], SLOTS, NAMES, RANGES)
    assert found[:2] == ["slot", "slot"]
    assert "default" in roles(["Kanal", "Funktion", "Standard"], SLOTS, NAMES, ["0", "255", "255", "255"])


def test_what_counts_on_while_one_slot_stays_is_no_column_of_slots():
    """The positions of a wheel are numbered beside their ranges; a second mode's slots change with slots."""
    slots = ["1", "1", "1", "1", "2"]
    names = [*["Gobo wheel"] * 4, "Focus"]
    ranges = ["0-63", "64-127", "128-191", "192-255", "0-255"]
    texts = ["Open", "Leaves", "Bars", "Dots", "Near to far"]
    titles = ["Channel", "Function", "Place", "Value", "Description"]
    found = roles(titles, slots, names, ["1", "2", "3", "4", ""], ranges, texts)
    assert found == ["slot", "function", "foreign", "value", "meaning"]
    second = roles(["Channel", "Function", "Large", "Value"], SLOTS, NAMES, ["1", "2", "3", "-"], RANGES)
    assert second[2] == "slot"


def test_percents_under_range_are_what_the_values_mean():
    """Beside a column of values, `Range` over percents, kelvins and words is no second column of values."""
    titles = ["Slot", "Function", "DMX", "Range"]
    mixed = ["0-100%", "2700-6500 K", "Off", "1-20 Hz"]
    assert roles(titles, SLOTS, NAMES, RANGES, mixed)[3] == "meaning"
    assert roles(titles, SLOTS, NAMES, RANGES, ["0-100%"] * 4)[3] == "meaning"
    parted = ["0-63", "64-127", "128-191", "192-255"]
    percents = ["0-24%", "25-49%", "50-74%", "75-100%"]
    assert roles(titles, SLOTS, NAMES, parted, percents)[3] == "percent"
    assert roles([*titles[:3], "%"], SLOTS, NAMES, RANGES, ["0-100%"] * 4)[3] == "percent"
