"""One invented fixture in many layouts: each reading gives the same slots, ranges and spans, undoubted."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, short, slots, spans

SHUTTER = [(0, 9, "Closed"), (10, 199, "Slow to fast"), (200, 255, "Open")]
CONTROL = [(0, 9, "No function"), (10, 249, "Reserved"), (250, 255, "Reset")]

COLUMNS = """\
Mode 2: Tour (7 channels)

Channel   Function    Value      Description
1         Dimmer      0-255      0-100 %
2         Pan         0-255      -270° to +270°
3         Pan fine    0-255
4         Shutter     0-9        Closed
                      10-199     Slow to fast (1-20 Hz)
                      200-255    Open
5         Red         0-255
6         Zoom        0-255      6-58°
7         Control     0-9        No function
                      10-249     Reserved
                      250-255    Reset (hold 5 s)
"""

VALUES_FIRST = """\
Mode 2: Tour (7 channels)
DMX channel\tDMX value\tFunction
1\t000–255\tDimmer 0–100 %
2\t000–255\tPan -270° … +270°
3\t000–255\tPan fine
4\t\tShutter
\t000–009\tClosed
\t010–199\tSlow to fast (1–20 Hz)
\t200–255\tOpen
5\t000–255\tRed
6\t000–255\tZoom 6–58°
7\t\tControl
\t000–009\tNo function
\t010–249\tReserved
\t250–255\tReset (hold 5 s)
"""

FUNCTION_FIRST = """\
Mode 2: Tour (7 channels)
| Slot | Function                  | Value      |
|------|---------------------------|------------|
| 1    | Dimmer (0-100 %)          | 0 to 255   |
| 2    | Pan (-270° to +270°)      | 0 to 255   |
| 3    | Pan LSB                   | 0 to 255   |
| 4    | Shutter                   |            |
|      | Closed                    | 0 to 9     |
|      | Slow to fast (1-20 Hz)    | 10 to 199  |
|      | Open                      | 200 to 255 |
| 5    | Red                       | 0 to 255   |
| 6    | Zoom (6-58°)              | 0 to 255   |
| 7    | Control                   |            |
|      | No function               | 0 to 9     |
|      | Reserved                  | 10 to 249  |
|      | Reset (hold 5 s)          | 250 to 255 |
"""

BLOCKS = """\
Mode 2: Tour (7 channels)

Channel 1: Dimmer
0-255    0-100 %

Channels 2+3: Pan
0-65535  -270° to +270°

Channel 4: Shutter
Value      Function
0-9        Closed
10-199     Slow to fast (1-20 Hz)
200-255    Open

Channel 5: Red
0-255

Channel 6: Zoom
0-255      6-58°

Channel 7: Control
0-9        No function
10-249     Reserved
250-255    Reset (hold 5 s)
"""

FROM_TO = """\
Mode 2: Tour (7 channels);;;;
Slot;Parameter;From;To;Details
1;Dimmer;0;255;0-100 %
2/3;Pan;0;65535;-270° to +270°
4;Shutter;0;9;Closed
;;10;199;Slow to fast (1-20 Hz)
;;200;255;Open
5;Red;0;255;
6;Zoom;0;255;6-58°
7;Control;0;9;No function
;;10;249;Reserved
;;250;255;Reset (hold 5 s)
"""

PERCENT_AND_HEX = """\
Mode 2: Tour (7 channels)
Ch   Function    Decimal   Percent   Hex     Description
1    Dimmer      0-255     0-100%    00-FF   0-100 %
2    Pan         0-255     0-100%    00-FF   -270° to +270°
3    Pan fine    0-255     0-100%    00-FF
4    Shutter     0-9       0-4%      00-09   Closed
                 10-199    4-78%     0A-C7   Slow to fast (1-20 Hz)
                 200-255   78-100%   C8-FF   Open
5    Red         0-255     0-100%    00-FF
6    Zoom        0-255     0-100%    00-FF   6-58°
7    Control     0-9       0-4%      00-09   No function
                 10-249    4-98%     0A-F9   Reserved
                 250-255   98-100%   FA-FF   Reset (hold 5 s)
"""

LINES = """\
Mode 2: Tour (7 channels)
Channel Function Value Description
1 Dimmer 0-255 0-100 %
2 Pan 0-255 -270° to +270°
3 Pan fine 0-255
4 Shutter 0-9 Closed
10-199 Slow to fast (1-20 Hz)
200-255 Open
5 Red 0-255
6 Zoom 0-255 6-58°
7 Control 0-9 No function
10-249 Reserved
250-255 Reset (hold 5 s)
"""

TWO_SETS = """\
Mode 2: Tour (7 channels)
Ch   Function   Value     Description               Ch   Function   Value     Description
1    Dimmer     0-255     0-100 %                   5    Red        0-255
2    Pan        0-255     -270° to +270°            6    Zoom       0-255     6-58°
3    Pan fine   0-255                               7    Control    0-9       No function
4    Shutter    0-9       Closed                                    10-249    Reserved
                10-199    Slow to fast (1-20 Hz)                    250-255   Reset (hold 5 s)
                200-255   Open
"""

BYTES_APART = """\
Mode 2: Tour (7 channels)
MSB | LSB | Function | Value    | Description
1   |     | Dimmer   | 0-255    | 0-100 %
2   | 3   | Pan      | 0-65,535 | -270° to +270°
4   |     | Shutter  | 0-9      | Closed
    |     |          | 10-199   | Slow to fast (1-20 Hz)
    |     |          | 200-255  | Open
5   |     | Red      | 0-255    |
6   |     | Zoom     | 0-255    | 6-58°
7   |     | Control  | 0-9      | No function
    |     |          | 10-249   | Reserved
    |     |          | 250-255  | Reset (hold 5 s)
"""

MERGED_HTML = """\
<html><body><h2>DMX</h2><h3>Mode 2: Tour (7 channels)</h3><table>
<tr><th>Channel</th><th>Function</th><th>Value</th><th>Description</th></tr>
<tr><td>1</td><td>Dimmer</td><td>0&ndash;255</td><td>0&ndash;100 %</td></tr>
<tr><td>2</td><td>Pan</td><td>0-255</td><td>-270&deg; to +270&deg;</td></tr>
<tr><td>3</td><td>Pan fine</td><td>0-255</td><td></td></tr>
<tr><td rowspan="3">4</td><td rowspan="3">Shutter</td><td>0-9</td><td>Closed</td></tr>
<tr><td>10-199</td><td>Slow to fast (1-20 Hz)</td></tr><tr><td>200-255</td><td>Open</td></tr>
<tr><td>5</td><td>Red</td><td>0-255</td><td></td></tr>
<tr><td>6</td><td>Zoom</td><td>0-255</td><td>6-58&deg;</td></tr>
<tr><td>7</td><td>Control</td><td>0-9<br>10-249<br>250-255</td>
<td>No function<br>Reserved<br>Reset (hold 5 s)</td></tr>
</table></body></html>
"""

CHARTS = {
    "columns": COLUMNS,
    "values first, tabs, en dashes": VALUES_FIRST,
    "function before value": FUNCTION_FIRST,
    "a block a slot": BLOCKS,
    "from and to": FROM_TO,
    "percent and hex": PERCENT_AND_HEX,
    "lines without columns": LINES,
    "two column sets": TWO_SETS,
    "bytes apart": BYTES_APART,
    "merged cells in HTML": MERGED_HTML,
}


@pytest.mark.parametrize("layout", CHARTS)
def test_every_layout_gives_the_same_mode_without_a_doubt(layout: str) -> None:
    document = drafted(CHARTS[layout])
    assert document.doubts == []
    (mode,) = document.modes
    assert (mode.name, mode.number, mode.footprint) == ("Tour", 2, 7)
    assert [short(p) for p in mode.parameters] == [
        ("dimmer", [1], []),
        ("pan", [2, 3], []),
        ("shutter", [4], SHUTTER),
        ("red", [5], []),
        ("zoom", [6], []),
        ("control", [7], CONTROL),
    ]
    assert spans(mode) == {"dimmer": [(0, 100, "%")], "pan": [(-270, 270, "deg")], "zoom": [(6, 58, "deg")]}
    shutter, control = mode.parameters[2], mode.parameters[5]
    flashes = shutter.ranges[1].span
    assert flashes is not None
    assert not isinstance(flashes, list)
    assert (flashes.from_, flashes.to, flashes.unit) == (1, 20, "Hz")
    assert [r.does for r in shutter.ranges] == ["closed", None, "open"]
    assert [(r.does, r.hold_s, r.hazard) for r in control.ranges] == [
        ("nothing", None, None),
        ("nothing", None, None),
        (None, 5, "reset"),
    ]
    assert [p.default for p in mode.parameters] == [None] * 6
    assert document.standing == "draft"


def test_modes_side_by_side_take_their_own_slots() -> None:
    """Blank, hyphen and dash say that a mode has no such slot; the fine byte is missing from the
    short one.
    """
    document = drafted(
        "8ch  10ch  Function      Value    Description\n"
        "1    1     Pan           0-255    0 to 540°\n"
        "-    2     Pan fine      0-255\n"
        "2    3     Dimmer        0-255    0-100%\n"
        "–    4     Dimmer fine\n"
        "3    5     Color wheel   0-9      Open\n"
        "                         10-255   Blue\n"
        "4    6     Red           0-255\n"
        "     7     Control       0-249    No function\n"
        "                         250-255  Reset (5 s)\n"
    )
    short_mode, long_mode = document.modes
    assert slots(short_mode) == [("pan", [1]), ("dimmer", [2]), ("color-wheel", [3]), ("red", [4])]
    assert slots(long_mode) == [
        ("pan", [1, 2]),
        ("dimmer", [3, 4]),
        ("color-wheel", [5]),
        ("red", [6]),
        ("control", [7]),
    ]
    assert [(m.name, m.footprint) for m in document.modes] == [("8ch", 8), ("10ch", 10)]
    # The titles promise more slots than are printed: that is said, for both.
    assert [d.slots for d in document.doubts] == [[5, 6, 7, 8], [8, 9, 10]]


def test_a_matrix_of_slots_and_modes() -> None:
    document = drafted(
        "Channel | Basic | Extended\n1 | Dimmer | Dimmer\n2 | Red | Dimmer fine\n"
        "3 | Green | Red\n4 | - | Green\n5 | | Blue\n"
    )
    basic, extended = document.modes
    assert (basic.name, slots(basic)) == ("Basic", [("dimmer", [1]), ("red", [2]), ("green", [3])])
    assert slots(extended) == [("dimmer", [1, 2]), ("red", [3]), ("green", [4]), ("blue", [5])]
    assert document.doubts == []


def test_a_matrix_with_the_slots_across() -> None:
    page = (
        "<table><tr><td>Mode</td><td>1</td><td>2</td><td>3</td></tr><tr><td>Basic</td><td>"
        "Dimmer</td><td>Red</td><td>-</td></tr><tr><td>Full</td><td>Dimmer</td><td>Dimmer fine</td>"
        "<td>Red</td></tr></table>"
    )
    basic, full = drafted(page).modes
    assert (slots(basic), slots(full)) == (
        [("dimmer", [1]), ("red", [2])],
        [("dimmer", [1, 2]), ("red", [3])],
    )


def test_cells_written_out_become_one_block() -> None:
    rows = "".join(
        f"{2 + 3 * i + j}  {color} {i + 1}  0-255\n"
        for i in range(4)
        for j, color in enumerate(("Red", "Green", "Blue"))
    )
    document = drafted("Slot  Function  Value\n1  Dimmer  0-255\n" + rows)
    (mode,) = document.modes
    (cells,) = mode.cells
    assert (cells.count, cells.first, cells.stride) == (4, 2, 3)
    assert [(p.parameter, p.label, p.slots) for p in cells.parameters] == [
        ("red", "Red", [1]),
        ("green", "Green", [2]),
        ("blue", "Blue", [3]),
    ]
    assert slots(mode) == [("dimmer", [1])]
    assert document.doubts == []


def test_a_group_label_beside_rows_numbers_the_cells() -> None:
    page = (
        "<table><tr><th>Pixel</th><th>Slot</th><th>Function</th></tr>"
        "<tr><td rowspan=2>Pixel 1</td><td>1</td><td>Red</td></tr><tr><td>2</td><td>Red fine</td></tr>"
        "<tr><td rowspan=2>Pixel 2</td><td>3</td><td>Red</td></tr><tr><td>4</td><td>Red fine</td>"
        "</tr></table>"
    )
    document = drafted(page)
    (cells,) = document.modes[0].cells
    assert (cells.count, cells.first, cells.stride, [p.slots for p in cells.parameters]) == (
        2,
        1,
        2,
        [[1, 2]],
    )
    assert document.doubts == []


def test_two_wheels_of_a_kind_get_keys_and_stay_apart() -> None:
    document = drafted(
        "Slot  Function       Value\n1     Gobo wheel 1   0-255\n2     Gobo wheel 2   0-255\n"
        "3     Dimmer         0-255\n"
    )
    assert [(p.parameter, p.key, p.slots) for p in document.modes[0].parameters] == [
        ("gobo-wheel", "gobo-wheel-1", [1]),
        ("gobo-wheel", "gobo-wheel-2", [2]),
        ("dimmer", None, [3]),
    ]
    assert document.doubts == []


def test_values_in_a_table_of_their_own_reach_their_function() -> None:
    """A matrix says where functions are; a second table says what their values do."""
    document = drafted(
        "Channel | Basic | Full\n1 | Dimmer | Dimmer\n2 | Shutter | Red\n3 | - | Shutter\n\n"
        "Shutter\nValue  Description\n0-9    Closed\n10-255 Open\n"
    )
    for mode in document.modes:
        (shutter,) = [p for p in mode.parameters if p.parameter == "shutter"]
        assert [(r.from_, r.to, r.meaning) for r in shutter.ranges] == [(0, 9, "Closed"), (10, 255, "Open")]


def test_prose_whose_slots_count_from_one_is_read_as_a_chart() -> None:
    document = drafted(
        "Channel 1 controls the dimmer from 0 to 100 %. Channels 2 and 3 set pan over 540 degrees. "
        "Channel 4 is for the red color."
    )
    (mode,) = document.modes
    assert slots(mode) == [("dimmer", [1]), ("pan", [2, 3]), ("red", [4])]


def test_prose_that_leaves_slots_out_is_marked_in_every_bit() -> None:
    document = drafted("Channel 1 controls the dimmer. Channel 4 is for the red color.")
    (mode,) = document.modes
    for index in range(len(mode.parameters)):
        assert any(
            "sentence" in d.why for d in document.doubts if d.pointer == f"/modes/0/parameters/{index}"
        )


def test_values_in_prose_that_are_not_understood_are_marked() -> None:
    """`values 0-9 are open` has no sign between: the ranges may be lost, but not silently."""
    document = drafted("Channel 1 is the dimmer. Channel 2 is the strobe: values 0-9 are open, 10-255 flash.")
    assert any(d.slots == [2] for d in document.doubts)


def test_a_default_is_read_only_where_it_is_printed() -> None:
    document = drafted(
        "Slot  Function                  Value\n1     Pan (128 = default)       0-255\n"
        "2     Tilt                      0-255\n"
    )
    assert [(p.label, p.default) for p in document.modes[0].parameters] == [("Pan", 128), ("Tilt", None)]


def test_a_smoothing_slot_of_its_own_sets_the_choices_that_it_names() -> None:
    document = drafted(
        "Slot  Function            Value     Description\n"
        "1     Dimmer smoothing    0-9       As the menu\n"
        "                          10-19     Keep\n"
        "                          20-127    Immediate\n"
        "                          128-255   2 packets\n"
    )
    (parameter,) = document.modes[0].parameters
    assert parameter.parameter == "smoothing"
    assert [(r.does, r.sets) for r in parameter.ranges] == [
        ("as-menu", None),
        ("unchanged", None),
        (None, {"smoothing": "immediate"}),
        (None, {"smoothing": "2-packets"}),
    ]
    (setting,) = document.settings
    lengths = {c.key: c.length.packets if c.length else None for c in setting.choices}
    assert lengths == {"immediate": None, "2-packets": 2}
    assert document.doubts == []
