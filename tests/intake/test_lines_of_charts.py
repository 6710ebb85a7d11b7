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
