"""Bare numbers under one title are footprints of modes; columns that class ranges say nothing of them."""

from __future__ import annotations

from intake.drafted import drafted, named, short
from modebook.intake.draft import About, draft
from modebook.intake.footprint_titles import with_footprints_told
from modebook.intake.grid import grid_of

PAGE = """<table><tr><th rowspan=2>Funktion</th><th colspan=2>Kanal im Modus</th><th rowspan=2>Wert</th></tr>
<tr><th>2</th><th>3</th></tr>
<tr><td>Dimmer</td><td>1</td><td>1</td><td>0-255</td></tr>
<tr><td>Dimmer fein</td><td>-</td><td>2</td><td>0-255</td></tr>
<tr><td>Rot</td><td>2</td><td>3</td><td>0-255</td></tr></table>"""


def test_numbers_under_a_title_of_slots_are_footprints(tmp_path):
    path = tmp_path / "page.html"
    path.write_text(PAGE, encoding="utf-8")
    document = draft(path, About(maker="Quimber", model="Sill 4")).document
    assert [(mode.name, mode.footprint) for mode in document.modes] == [("2 Kanal", 2), ("3 Kanal", 3)]
    assert [[(p.parameter, p.slots) for p in mode.parameters] for mode in document.modes] == [
        [("dimmer", [1]), ("red", [2])],
        [("dimmer", [1, 2]), ("red", [3])],
    ]
    assert not document.doubts


def test_a_row_of_slots_is_no_title():
    """No title reaches over the columns: 6 and 9 are slots."""
    grid = grid_of([["Function", "Basic", "Full"], ["Zoom", "6", "9"], ["Iris", "7", "10"]])
    assert with_footprints_told(grid) is grid


def test_a_column_that_classes_ranges_is_no_part_of_what_they_mean():
    document = drafted(
        "Channel;Function;DMX;Description;Type of control\n"
        "1;Dimmer;0-255;0 to 100 %;proportional\n"
        "2;Shutter;0-9;Closed;step\n"
        ";;10-255;Open;step"
    )
    (mode,) = document.modes
    assert short(named(mode, "shutter"))[2] == [(0, 9, "Closed"), (10, 255, "Open")]


def test_what_is_counted_from_one_to_twenty_is_no_condition():
    document = drafted("1 Macro colore\n0-9 Nessuna funzione\n10-255 Macro da 1 a 20\n2 Rosso\n3 Verde\n")
    assert short(named(document.modes[0], "color-macro"))[2] == [
        (0, 9, "Nessuna funzione"),
        (10, 255, "Macro da 1 a 20"),
    ]
    assert not document.doubts


def test_degrees_from_end_to_end_are_an_angle_and_no_turning():
    document = drafted("Slot;Function;Value;Meaning\n1;Red;0-255;\n2-3;Gobo rotation;0-65535;0-360°")
    assert named(document.modes[0], "gobo-index").slots == [2, 3]


def test_one_two_three_under_a_title_of_modes_number_them():
    """The row holds nothing else; the slots begin below it."""
    document = drafted(
        "Mode\t\tFunction\tValue\n1\t2\t\t\n1\t1\tDimmer\t0-255\n\t2\tDimmer fine\t0-255\n2\t3\tZoom\t0-255\n"
    )
    assert [(mode.name, mode.footprint) for mode in document.modes] == [("Mode 1", 2), ("Mode 2", 3)]
    assert not document.doubts
