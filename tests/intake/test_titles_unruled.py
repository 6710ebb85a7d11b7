"""Unruled tables: headings that look like titles, titles under a title, headings between small tables."""

from __future__ import annotations

from intake.drafted import drafted, short, slots, spans, whys
from modebook.intake.titles import title_roles


def test_a_heading_made_of_titles_is_none():
    """`DMX channel functions` says what the table is; the titles stand below it."""
    text = (
        "DMX channel functions\n"
        "Low   High   Feature   DMX value   Effect\n"
        "1     1      Dimmer    0-255       0-100 %\n"
        "-     2      Zoom      0-255\n"
        "2     3      Strobe    0-9         Off\n"
        "                       10-255      Slow to fast\n"
    )
    one, two = drafted(text).modes
    assert slots(one) == [("dimmer", [1]), ("strobe", [2])]
    assert slots(two) == [("dimmer", [1]), ("zoom", [2]), ("strobe", [3])]


def test_a_heading_above_titles_said_again_ends_the_table():
    """Each slot has a numbered heading and a small table with the same titles."""
    blocks = []
    for number, name in enumerate(["Dimmer", "Color wheel", "Gobo wheel", "Zoom"], start=1):
        blocks += [f"{number}. {name}", "Range      Meaning", "0-127      Open", "128-255    Rotation", ""]
    (mode,) = drafted("\n".join(blocks)).modes
    assert [short(p)[1] for p in mode.parameters] == [[1], [2], [3], [4]]
    assert all([r[:2] for r in short(p)[2]] == [(0, 127), (128, 255)] for p in mode.parameters)


def test_narrow_columns_break_titles():
    """`Default val ue` is the title `Default value`, wherever it broke."""
    assert title_roles("Default val ue") == title_roles("Default value") == title_roles("Def ault value")
    assert title_roles("Default value")


def test_a_cell_a_line_by_turns():
    """Number, name, and then values and words by turns are paired without a doubt."""
    cells = ["Channel", "Function", "Value", "Effect", "1", "Dimmer", "0-255", "0-100 %"]
    cells += ["2", "Shutter", "0-9", "Closed", "10-255", "Open", "3", "Zoom", "0-255", "Wide to narrow"]
    document = drafted("\n".join(cells))
    (mode,) = document.modes
    assert short(mode.parameters[1]) == ("shutter", [2], [(0, 9, "Closed"), (10, 255, "Open")])
    assert not [why for why in whys(document) if "apart" in why]


def test_columns_that_came_apart_are_not_paired_in_silence():
    """All values first and all words after them: said, whatever is done with them."""
    cells = [
        "1",
        "Dimmer",
        "0-255",
        "0-100 %",
        "2",
        "Shutter",
        "0-9",
        "10-19",
        "20-255",
        "Closed",
        "Open",
        "Pulse",
    ]
    assert any("apart" in why for why in whys(drafted("\n".join(cells))))


def test_a_fine_byte_with_the_short_name():
    """`X axis fine`, two slots on, is the fine byte of `X axis (Pan)`: nothing to ask."""
    rows = ["1 | X axis (Pan)", "2 | Y axis (Tilt)", "3 | X axis fine", "4 | Y axis fine", "5 | Dimmer"]
    text = "\n".join("\t".join([*row.split(" | "), "0-255"]) for row in ["Ch | Function", *rows])
    text = text.replace("Function\t0-255", "Function\tValue")
    document = drafted(text)
    assert slots(document.modes[0]) == [("pan", [1, 3]), ("tilt", [2, 4]), ("dimmer", [5])]
    assert not document.doubts


def test_notes_by_numbers_in_brackets():
    """`Haze 1)` is explained below as `1) ...`; a mark without such a line is asked about."""
    head = "Channel\tFunction\tValue\tEffect\n"
    rows = "1\tHaze output 1)\t0-255\t0-100 %\n2\tFan speed\t0-255\tslow to fast\n"
    assert not drafted(head + rows + "\n1) No output until the heater is ready.\n").doubts


def test_sentences_about_slots_are_no_headings():
    """Prose stays prose: a slot's sentence is read whole."""
    text = (
        "Channel 1 controls Dimmer (0-100 %).\n"
        "Channel 2 controls Strobe. Values 0 to 9: Off. Values 10 to 255: Slow to fast.\n"
    )
    (mode,) = drafted(text).modes
    assert slots(mode) == [("dimmer", [1]), ("strobe", [2])]


def test_text_two_spaces_apart():
    """Cells that stand below nothing of their own are placed by what they say, over several tables."""
    text = (
        "CH  Function  Value  Description\n"
        "1  Dimmer  0-255  0-100%\n"
        "2  Shutter  0-9  Closed\n"
        "  10-255  Open\n"
        "3  Color temperature  0-255\n"
        "4  Zoom  0-255  Wide to narrow\n"
        "Mode 2\n"
        "CH  Function  Value  Description\n"
        "1  Shutter  0-9  Closed\n"
        "  10-255  Open\n"
        "2  Color temperature  0-255  Warm to cold\n"
        "3  Zoom  0-255  Wide to narrow\n"
    )
    one, two = drafted(text).modes
    assert short(one.parameters[1]) == ("shutter", [2], [(0, 9, "Closed"), (10, 255, "Open")])
    assert slots(one)[2:] == [("color-temperature", [3]), ("zoom", [4])]
    assert slots(two) == [("shutter", [1]), ("color-temperature", [2]), ("zoom", [3])]


def test_tables_drawn_with_letters():
    """Lines of box letters and bars are a frame, and headings may begin with #."""
    text = (
        "# 2 channel mode\n"
        "┌────┬──────────┬─────────┐\n"
        "│ CH │ Function │ Value   │\n"
        "├────┼──────────┼─────────┤\n"
        "│ 1  │ Dimmer   │ 0-255   │\n"
        "│ 2  │ Zoom     │ 0-255   │\n"
        "└────┴──────────┴─────────┘\n"
    )
    (mode,) = drafted(text).modes
    assert (mode.name, slots(mode)) == ("2 channel", [("dimmer", [1]), ("zoom", [2])])


def test_a_column_of_bits_beside_fine_bytes():
    """16 beside both bytes is the parameter's resolution, not a mark of its fine byte."""
    rows = ["Channel\tBits\tParameter\tRange", "1\t8\tDimmer\t0-255", "2\t16\tPan\t0-255"]
    text = "\n".join([*rows, "3\t16\tPan fine\t0-255", "4\t8\tRed\t0-255"])
    document = drafted(text)
    assert slots(document.modes[0]) == [("dimmer", [1]), ("pan", [2, 3]), ("red", [4])]
    assert not document.doubts


def test_a_name_above_titles_said_again_is_a_mode():
    """`Basic` and `Extended`, alone in their rows of one sheet, name the modes below them."""
    titles = "Ch,Function,DMX,Note\n"
    text = f"Basic,,,\n{titles}1,Dimmer,0-255,\n2,Red,0-255,\n3,Green,0-255,\nExtended,,,\n{titles}"
    text += "1,Dimmer,0-255,\n2,Zoom,0-255,\n3,Red,0-255,\n4,Green,0-255,\n"
    assert [(m.name, m.footprint) for m in drafted(text).modes] == [("Basic", 3), ("Extended", 4)]


def test_heads_and_feet_of_pasted_pages():
    """A line with the page's number, again on each page, is no row."""
    page = "TITLE OF A MANUAL      page {}\n"
    titles = "CH   FUNCTION     VALUE     EFFECT\n"
    text = (
        page.format(12) + titles + "1    Dimmer       0-255     0-100%\n2    Shutter      0-9       Closed\n"
        "                  10-19     Open\n"
        + page.format(13)
        + titles
        + "                  20-255    Pulse\n"
        "3    Red          0-255     0-100%\n4    Green        0-255     0-100%\n"
    )
    document = drafted(text)
    (mode,) = document.modes
    assert short(mode.parameters[1]) == (
        "shutter",
        [2],
        [(0, 9, "Closed"), (10, 19, "Open"), (20, 255, "Pulse")],
    )
    assert not document.doubts


def test_the_same_names_in_two_languages():
    """A second column of the same names is no part of the meanings."""
    text = "Ch,Funzione,Function,Value,Effect\n1,Dimmer,Dimmer,0-255,\n2,Otturatore,Shutter,0-9,Closed\n"
    text += ",,,10-255,Open\n3,Rosso,Red,0-255,\n4,Verde,Green,0-255,\n"
    (mode,) = drafted(text).modes
    assert short(mode.parameters[1]) == ("shutter", [2], [(0, 9, "Closed"), (10, 255, "Open")])


def test_values_called_values():
    """`Value 0-9: Closed` means Closed."""
    text = (
        "Channel 1 - Shutter\nValue 0-9: Closed\nValue 10-255: Open\n\nChannel 2 - Red\nValue 0-255: 0-100%\n"
    )
    (mode,) = drafted(text).modes
    assert short(mode.parameters[0]) == ("shutter", [1], [(0, 9, "Closed"), (10, 255, "Open")])


def test_a_mode_of_few_slots_called_pixel():
    """Two slots among dashes beside other modes' slots are a mode, though its name may head groups."""
    text = "Function,Full,Pixel,DMX\nDimmer,1,-,0-255\nStrobe,2,-,0-255\nZoom,3,-,0-255\n"
    text += "Red,4,1,0-255\nGreen,5,2,0-255\n"
    assert [(m.name, m.footprint) for m in drafted(text).modes] == [("Full", 5), ("Pixel", 2)]


def test_a_heading_over_the_next_titles_ends_a_table():
    """Set wide, so that its words stand where cells would; with an empty line below it; over other titles."""
    colors = ("Red", "Green", "Blue", "White")
    rows = [f"{n:<11}{color:<12}0-255    0-100 %" for n, color in enumerate(colors, 1)]
    titles = "Channel    Function    Value    Description"
    for heading in ("Advanced   - 4 channels", "Advanced - 4 channels DMX\n"):
        for other in (titles, "Ch. no.    Parameter   Range    Effect"):
            lines = ["Basic - 3 channels", titles, *rows[:3], heading, other, *rows]
            document = drafted("\n".join(lines))
            assert [(mode.name, mode.footprint) for mode in document.modes] == [("Basic", 3), ("Advanced", 4)]
            assert not document.doubts


def test_values_and_what_they_mean_stand_apart_under_one_title():
    """Both are under `Range`; a minus before a figure is its own, and none of the values before it."""
    text = "Personality 2 (3 slots)\nSlots     Parameter            Range\n"
    text += "1 + 2     Intensity            0 - 65535   Black to full\n"
    text += "3         Green / Magenta      0 - 255     -50 % to 50 %\n"
    text += (
        "4         Strobe               0 - 19      Off\n                               20 - 255    2-30 Hz\n"
    )
    (mode,) = drafted(text).modes
    assert spans(mode)["tint"] == [(-50, 50, "%")]
    assert short(mode.parameters[2]) == ("strobe", [4], [(0, 19, "Off"), (20, 255, "2-30 Hz")])


def test_values_before_figures_in_one_cell_are_not_measured():
    text = "Slot,Name,Values\n1,Dimmer,0-255 Out to full\n2,Green/Magenta,0 - 255 -80 % to 80 %\n"
    (mode,) = drafted(text).modes
    assert spans(mode)["tint"] == [(-80, 80, "%")]


def test_the_number_of_a_page_between_rows_is_of_no_slot():
    rows = [f"{slot} 0-255 {name}" for slot, name in enumerate(("Red 1", "Blue 1", "Red 2", "Blue 2"), 1)]
    document = drafted(
        "\n".join(["4-channel mode", "Channel Value Function", *rows[:2], "Page 8", *rows[2:]])
    )
    assert document.doubts == []
    assert document.modes[0].footprint == 4


def test_modes_that_a_plus_tells_apart_have_different_titles():
    text = "Compact  Compact+  Function    Value    Description\n"
    text += "1        1         Dimmer      0-255    0-100 %\n2        2         Zoom        0-255    7-30°\n"
    text += "-        3         Focus       0-255    near to far\n"
    document = drafted(text)
    assert [(mode.name, mode.footprint) for mode in document.modes] == [("Compact", 2), ("Compact+", 3)]
    assert document.doubts == []


def test_words_that_head_groups_of_slots_title_no_mode():
    """The first of several lone words in the column of slots is a group as the others are."""
    text = "Channel  Function    Value    Description\nOUTPUT\n1        Dimmer      0-255    0-100 %\n"
    text += "2        Strobe      0-255    1-20 Hz\nMIXING\n3        Red         0-255    0-100 %\n"
    text += "4        Lime        0-255    0-100 %\n"
    document = drafted(text)
    assert [used for _, used in slots(document.modes[0])] == [[1], [2], [3], [4]]
    assert "OUTPUT" not in document.modes[0].name


def test_a_section_below_lines_in_columns_is_no_row_of_them():
    text = "Small mode (3 slots)\n1  Dimmer     0-255   Black to full\n2  Fan speed  0-255   Low to high\n"
    text += (
        "3  Control    0-99    Idle\n              100-255 Reset (hold 4 s)\n\n7.4 Storage\nKeep it dry.\n"
    )
    document = drafted(text)
    assert [used for _, used in slots(document.modes[0])] == [[1], [2], [3]]
    assert document.doubts == []
