"""Charts as lines: names before slots, heads in brackets, what follows a chart; lines inside a cell."""

from __future__ import annotations

from intake.drafted import drafted, named, short, slots
from modebook.intake.draft import About, draft

NAME_FIRST = """6-Kanal-Modus
Funktion Kanal Wert Bedeutung
Rot 1 0 – 255 0–100 %
Grün 2 0 – 255 0–100 %
Stroboskop 3 0 – 15 kein Stroboskop
16 – 255 zunehmende Blitzfrequenz

Technische Daten
Leistungsaufnahme 90 W
"""


def test_titles_tell_that_the_name_comes_before_the_slot():
    document = drafted(NAME_FIRST)
    (mode,) = document.modes
    assert slots(mode) == [("red", [1]), ("green", [2]), ("strobe", [3])]
    assert short(named(mode, "strobe"))[2] == [
        (0, 15, "kein Stroboskop"),
        (16, 255, "zunehmende Blitzfrequenz"),
    ]
    assert not any("words without values" in doubt.why for doubt in document.doubts)


def test_slots_in_brackets_head_their_values():
    document = drafted(
        "Mode A (2 channels)\n\n[1] Dimmer\n• 0 to 255: 0 – 100 %\n\n[2] Hue\n• 0 to 255: 0° – 360°\n"
    )
    (mode,) = document.modes
    assert slots(mode) == [("dimmer", [1]), ("hue", [2])]


def test_lines_of_a_cell_that_begin_with_values_are_rows(tmp_path):
    """The words may begin with a figure themselves, and hold a comma and a unit."""
    path = tmp_path / "chart.csv"
    path.write_text(
        'Slot,Function,Values\n1,Strobe,"0-5 Off\n6-255 1-25 Hz"\n'
        '2,Shutter,"0-9: Closed\n10-255: Strobe, 1 to 20 Hz"\n',
        encoding="utf-8",
    )
    (mode,) = draft(path, About(maker="Quimber", model="Sill 3")).document.modes
    assert [(r.from_, r.to) for r in named(mode, "strobe").ranges] == [(0, 5), (6, 255)]
    assert [(r.from_, r.to) for r in named(mode, "shutter").ranges] == [(0, 9), (10, 255)]


def test_two_languages_in_columns_of_their_own_are_read_once():
    """German and English titles side by side: the first language counts, and what it holds is read."""
    document = drafted(
        "Kanal;Funktion;Function;Wert;Bedeutung;Meaning\n"
        "1;Dimmer;Dimmer;0-255;0-100 %;0-100 %\n"
        "2;Verschluss;Shutter;0-9;Geschlossen;Closed\n"
        ";;;10-255;Offen;Open"
    )
    (mode,) = document.modes
    assert short(named(mode, "shutter"))[2] == [(0, 9, "Geschlossen"), (10, 255, "Offen")]


def test_two_languages_that_contradict_each_other_are_doubted():
    document = drafted(
        "Kanal;Funktion;Function;Wert;Bedeutung;Meaning\n"
        "1;Dimmer;Dimmer;0-255;0-100 %;0-100 %\n"
        "2;Strobe;Strobe;0-255;langsam bis schnell;fast to slow"
    )
    assert any("contradict" in doubt.why for doubt in document.doubts)


def test_a_program_switched_off_does_not_run():
    document = drafted(
        "Slot;Function;Value;Meaning\n1;Red;0-255;\n2;Auto programs;0-10;Programs off\n;;11-255;Program 1"
    )
    off, on = named(document.modes[0], "macro").ranges
    assert (off.does, on.does) == (None, "runs")


def test_the_word_for_values_is_no_part_of_a_meaning():
    document = drafted(
        "Channel assignments in 2-channel mode\n\nChannel 1 – Red\nChannel 2 – Strobe\n"
        "   DMX 0–7: off\n   DMX 8–255: 1 Hz to 20 Hz\n"
    )
    (mode,) = document.modes
    assert mode.name == "2-channel"
    assert [r.meaning for r in named(mode, "strobe").ranges] == ["off", "1 Hz to 20 Hz"]


def test_a_section_of_the_manual_above_a_chart_is_no_row_of_it():
    """`3.1` numbers a section; it was no slot that nobody understood."""
    document = drafted(
        "3.1 DMX channels\n\nChannel Function Value\n1 Dimmer 0-255\n2 Red 0-255\n3 Green 0-255\n"
    )
    assert slots(document.modes[0]) == [("dimmer", [1]), ("red", [2]), ("green", [3])]
    assert not document.doubts


def test_a_page_turned_in_a_pasted_chart_is_no_row_of_it():
    """The foot with the page's number, the section said again and the titles said again go; words go on."""
    document = drafted(
        "5   DMX TABLE\n\n"
        "Channel   Function       Value       Meaning\n"
        "1         Dimmer         0 - 255     Dark to full\n"
        "2         Effect         0 - 127     No effect\n"
        "                         128 - 255   Slow pulse that ends\n"
        "                                     at full\n\n"
        "Owner's guide                                  Page 7\n"
        "5   DMX TABLE\n\n"
        "Channel   Function       Value       Meaning\n"
        "3         Red            0 - 255     Dark to full\n"
        "4         Green          0 - 255     Dark to full\n"
    )
    assert [mode.footprint for mode in document.modes] == [4]
    assert document.modes[0].parameters[1].ranges[1].meaning == "Slow pulse that ends at full"
    assert not document.doubts


def test_the_number_and_the_name_of_a_mode_may_stand_in_two_cells():
    """Each table has the mode that stands above it, though all tables have the same titles."""
    text = "".join(
        f"Mode {number}\t{name}\t\t\nSlot\tFunction\tValue\tDescription\n"
        + "".join(f"{slot}\t{word}\t0-255\t0-100%\n" for slot, word in enumerate(words, 1))
        + "\n"
        for number, name, words in (
            (1, "Warm and cool", ["Warm white", "Cool white"]),
            (2, "Color temperature", ["Dimmer", "Red", "Green"]),
        )
    )
    document = drafted(text)
    assert [(mode.number, mode.name, mode.footprint) for mode in document.modes] == [
        (1, "Warm and cool", 2),
        (2, "Color temperature", 3),
    ]
    assert not document.doubts


def test_a_long_name_that_reaches_over_the_next_column_is_one_cell():
    """Each line has a piece for each column, wherever the columns of shorter names stand."""
    document = drafted(
        "1  Dimmer      0-255  0-100%\n2  Strobe      0-255  1-20 Hz\n"
        + "".join(f"{n}  Dimmer segment {n - 2}  0-255  0-100%\n" for n in range(3, 7))
    )
    (mode,) = document.modes
    assert slots(mode) == [("dimmer", [1]), ("strobe", [2])]
    assert [(block.first, block.count) for block in mode.cells] == [(3, 4)]
    assert not document.doubts


def test_a_heading_of_a_slot_may_begin_its_values():
    """`CH 1 Strobe 0-5 off` names the slot and says what its first values do; an S is no unit of seconds."""
    document = drafted(
        "CH 1 Strobe 0-5 off\n6-255 slow to fast\nCH 2 Dimmer curve 0-127 linear\n128-255 S-curve\n"
    )
    (mode,) = document.modes
    assert short(named(mode, "strobe")) == ("strobe", [1], [(0, 5, "off"), (6, 255, "slow to fast")])
    assert short(named(mode, "dimmer-curve"))[2] == [(0, 127, "linear"), (128, 255, "S-curve")]
    assert not document.doubts


def test_a_column_of_names_may_say_what_the_values_do():
    """Where the rows of one slot have names of their own and no meaning, the names are the meanings."""
    document = drafted(
        "Kanal\tWert\tFunktion\tBemerkung\n1\t0-255\tDimmer\t0-100 %\n"
        "2\t0-9\tStrobe aus\t\n2\t10-255\tStrobe langsam bis schnell\t\n3\t0-255\tRot\t0-100 %\n"
    )
    (mode,) = document.modes
    assert short(named(mode, "strobe"))[2] == [(0, 9, "Strobe aus"), (10, 255, "Strobe langsam bis schnell")]
    assert named(mode, "strobe").label == "Strobe"
    assert not document.doubts


def test_a_value_may_run_over_the_gutter_of_its_column():
    """The longest value pushes its words aside by a letter; what is drawn around a heading is no name."""
    document = drafted(
        "--- MODE C (2 ch) ---\n1  Dimmer  0-255  0-100%\n2  Fan     0-63   auto\n"
        "           64-127 low\n           128-191 high\n           192-255 off\n"
    )
    (mode,) = document.modes
    assert (mode.name, mode.footprint) == ("MODE C", 2)
    assert short(named(mode, "fan"))[2] == [
        (0, 63, "auto"),
        (64, 127, "low"),
        (128, 191, "high"),
        (192, 255, "off"),
    ]
    assert not document.doubts


def test_dots_that_lead_to_the_next_column_are_no_part_of_names():
    """Four dots and more lead the eye; three are a run, as in 0 ... 255."""
    text = (
        "Modus 1 (2 Kanäle)\n 1 ..... Zoom ......... 0 ... 255 ..... eng bis weit\n"
        " 2 ..... Fokus ........ 0 ... 255 ..... nah bis fern\n"
    )
    (mode,) = drafted(text).modes
    assert [(p.label, [(r.from_, r.to, r.meaning) for r in p.ranges]) for p in mode.parameters] == [
        ("Zoom", [(0, 255, "eng bis weit")]),
        ("Fokus", [(0, 255, "nah bis fern")]),
    ]


def test_two_bytes_of_a_cell_with_values_and_words_beside_them_have_one_name():
    html = (
        "<table><tr><th>Slot</th><th>Name</th><th>Values</th></tr><tr><td>1<br>2</td><td>Zoom<br>Zoom fine"
        "</td><td>0-65535: tight to wide</td></tr><tr><td>3</td><td>Iris</td><td>0-255: open</td></tr>"
        "</table>"
    )
    (mode,) = drafted(html).modes
    assert [(p.label, p.slots) for p in mode.parameters] == [("Zoom", [1, 2]), ("Iris", [3])]
