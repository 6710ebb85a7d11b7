"""What a column holds is told by its title and its contents together; contents decide."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, spans
from modebook.intake.column_roles import roles_of
from modebook.intake.column_stats import stats_of
from modebook.intake.columns import plan_columns
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


def test_percents_under_range_are_what_the_values_mean():
    """Beside a column of values, `Range` over percents, kelvins and words is no second column of values."""
    titles = ["Slot", "Function", "DMX", "Range"]
    mixed = ["0-100%", "2700-6500 K", "Off", "1-20 Hz"]
    assert roles(titles, SLOTS, NAMES, RANGES, mixed)[3] == "meaning"
    assert roles(titles, SLOTS, NAMES, RANGES, ["0-100%"] * 4)[3] == "meaning"
    parted = ["0-63", "64-127", "128-191", "192-255"]
    percents = ["0-24%", "25-49%", "50-74%", "75-100%"]
    assert roles(titles, SLOTS, NAMES, parted, percents)[3] == "percent"


def test_percents_over_whole_slots_are_what_a_slot_measures_and_no_second_values():
    """Percents that restate values run in steps as those do; beside kelvins they are measures as these."""
    measures = ["0-100%", "2700 K to 6500 K", "0-100%", "0-100%"]
    assert roles(["Slot", "Control", "Decimal", "Value"], SLOTS, NAMES, RANGES, measures)[3] == "meaning"
    words = ["0-100%", "0-10%", "Linear", "Square"]
    assert roles(["Slot", "Control", "Decimal", "Range"], SLOTS, NAMES, RANGES, words)[3] == "meaning"
    stepped, percents = ["0-127", "128-255", "0-255", "0-255"], ["0-50%", "50-100%", "0-100%", "0-100%"]
    assert roles(["Slot", "Control", "Decimal", "Value"], SLOTS, NAMES, stepped, percents)[3] == "percent"


def test_groups_may_be_called_as_parameters_are():
    """`Color` beside the first of four emitters, with a name for each of them, is the name of a group."""
    groups = ["Dimmer", "Color", "", ""]
    found = roles(["Group", "Slot", "Control", "Value"], ["", "Color", "", ""], SLOTS, NAMES, RANGES)
    assert found == ["group", "slot", "function", "value"]
    several = roles(
        ["Group", "Slot", "Control", "Value"], ["Dimmer", "Color", "", "Fan"], SLOTS, NAMES, RANGES
    )
    assert several == found
    assert roles(["Slot", "Group", "Value"], SLOTS, groups, RANGES)[1] == "function"


def test_numbers_of_frames_beside_one_slot_are_no_second_mode():
    """They count on while the slot stays and its values go on; a mode's slots count with the slots."""
    frames = [["Slot", "Function", "Place", "Value", "Result"]]
    frames += [["1", "Scroller", str(n), f"{16 * n - 16}-{16 * n - 1}", f"Film {n}"] for n in range(1, 17)]
    plan = plan_columns(grid_of([*frames, ["2", "Fan", "", "0-255", "Slow to fast"]]))
    assert plan is not None
    assert [column.role for column in plan.columns] == ["slot", "function", "foreign", "value", "meaning"]
    modes = [
        ["Long", "Short", "Function", "Value"],
        ["1", "1", "Dimmer", "0-255"],
        ["2", "-", "Red", "0-255"],
    ]
    modes += [["3", "2", "Gobo", "0-9"], ["", "", "", "10-19"], ["4", "3", "Zoom", "0-255"]]
    plan = plan_columns(grid_of(modes))
    assert plan is not None
    assert [column.role for column in plan.columns][:2] == ["slot", "slot"]


def test_percents_where_ranges_begin_and_end_restate_the_values():
    low, high = ["0%", "50%", "0%", "0%"], ["50%", "100%", "100%", "100%"]
    found = roles(["Slot", "Function", "Value", "% min", "% max"], SLOTS, NAMES, RANGES, low, high)
    assert found[3:] == ["percent", "percent"]


def test_units_in_a_column_of_their_own_belong_to_the_figures_before_them():
    """`0..100` beside `%` is what a slot measures, and no second column of values."""
    document = drafted(
        "Slot\tFunction\tDMX\tRange\tUnit\n1\tDimmer\t0..255\t0..100\t%\n2\tCCT\t0..255\t2800..5600\tK\n"
        "3\tStrobe\t0..9\toff\t\n\t\t10..255\t2..20\tHz\n4\tFan\t0..127\tquiet\t\n\t\t128..255\tfull\t\n"
    )
    assert not document.doubts
    assert spans(document.modes[0]) == {
        "dimmer": [(0, 100, "%")],
        "color-temperature": [(2800, 5600, "K")],
    }
    assert [r.meaning for r in document.modes[0].parameters[2].ranges] == ["off", "2..20 Hz"]


def test_figures_that_never_reach_the_top_are_what_values_mean():
    """Of two columns of figures the one that fills slots holds values, the one among words does not."""
    parted = ["0-255", "0-100", "101-155", "156-255"]
    figures = ["0 - 100 %", "-8 to 0", "0", "0 to +8"]
    found = roles(
        ["Slot", "Function", "Value", "Range"],
        ["1", "2", "", ""],
        ["Dimmer", "Tint", "", ""],
        parted,
        figures,
    )
    assert found == ["slot", "function", "value", "meaning"]


def test_modes_called_as_defaults_and_bytes_are_stay_columns_of_slots():
    """`Std` may mean a default and `Hi` a coarse byte; columns that count side by side are modes'."""
    found = roles(
        ["Function", "Std", "Hi", "Value"], NAMES, ["1", "2", "3", "4"], ["1", "2", "4", "5"], RANGES
    )
    assert found[1] == "slot"
    assert found[2] in ("slot", "coarse")


@pytest.mark.parametrize("title", ["Output", "Ausgang", "Result"])
def test_measures_under_a_title_of_their_own_say_what_the_values_mean(title):
    """Each slot runs through all of its values: 0-100 % beside 0-255 is what the light does with them."""
    runs = ["0-100 %", "0-100 %", "0-6 s", "2000-9000 K"]
    assert roles(["Slot", "Name", "Values", title], SLOTS, NAMES, RANGES, runs)[3] == "meaning"
    assert roles(["Slot", "Name", "Values", title], SLOTS, NAMES, RANGES, ["0-100%"] * 4)[3] == "meaning"


def test_percents_that_run_in_steps_say_the_values_again():
    values, shares = ["0-9", "10-127", "128-255", "0-255"], ["0-3%", "4-49%", "50-100%", "0-100%"]
    assert roles(["Slot", "Name", "Values", "Output"], SLOTS, NAMES, values, shares)[3] == "percent"


@pytest.mark.parametrize("title", ["Nr.", "#", "Pos.", "N°"])
def test_numbers_of_rows_beside_slots_are_no_mode(title):
    """Row 2 tells of slots 2 and 3: what counts rows falls behind what counts slots."""
    counts, taken = ["1", "2", "3", "4"], ["1", "2-3", "4", "5"]
    assert roles([title, "Kanal", "Funktion", "Wert"], counts, taken, NAMES, RANGES)[:2] == [
        "foreign",
        "slot",
    ]


def test_numbers_alone_are_slots_of_their_own():
    assert roles(["Nr.", "Funktion", "Wert"], SLOTS, NAMES, RANGES)[0] == "slot"
    assert roles(["Nr.", "Kompakt", "Funktion"], SLOTS, ["1", "", "2", ""], NAMES)[:2] == ["slot", "slot"]


def test_ends_in_a_unit_are_what_a_slot_measures():
    """Minimum and maximum: 0 % to 100 %, 3000 K to 9000 K; percents of a part are values as before."""
    chart = "Slot;Name;Minimum;Maximum\n1;Dimmer;0 %;100 %\n2;Color temperature;3000 K;9000 K\n"
    (mode,) = drafted(chart).modes
    assert spans(mode) == {"dimmer": [(0, 100, "%")], "color-temperature": [(3000, 9000, "K")]}
    assert all(p.ranges == [] for p in mode.parameters)


def test_ends_with_their_unit_in_a_column_beside_them_are_measures():
    """The name of the device in every row tells of no slot."""
    chart = (
        "Gerät;Kanal;Attribut;Physikalisch von;Physikalisch bis;Einheit\n"
        "Nu 8;1;Zoom;12;48;°\nNu 8;2;Farbtemperatur;3000;9000;K\nNu 8;3;Dimmer;0;100;%\n"
    )
    document = drafted(chart)
    assert spans(document.modes[0]) == {
        "zoom": [(12, 48, "deg")],
        "color-temperature": [(3000, 9000, "K")],
        "dimmer": [(0, 100, "%")],
    }
    assert not document.doubts
    assert all(p.note is None for p in document.modes[0].parameters)
