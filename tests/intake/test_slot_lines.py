"""Lines of pasted charts that read as headings, titles or slots by their words, and are none."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, named, short, slots, whys

BEGUN = "Channel Function Value Description\n1 Dimmer 0-255 0-100%\n2 Strobe 0-19 Off\n20-255 1 Hz-25 Hz\n"


def test_a_slot_whose_name_ends_in_mode_is_no_mode():
    """`3 Fan mode` comes next behind slot 2; so does `Fan mode` below a 3 of its own."""
    for lines in ("3 Fan mode\n0-127 Auto\n128-255 Silent\n", "3\nFan mode\n0-127 Auto\n128-255 Silent\n"):
        document = drafted(BEGUN + lines)
        assert len(document.modes) == 1
        assert short(named(document.modes[0], "fan-mode"))[1:] == (
            [3],
            [(0, 127, "Auto"), (128, 255, "Silent")],
        )
        assert not document.doubts


def test_a_mode_called_as_a_parameter_stays_one():
    """`Color mode` above titles, with no slot before it that it could follow."""
    colors = "Channel Function Value\n1 Red 0-255\n2 Green 0-255\n3 Blue 0-255\n"
    text = f"Dimmer mode\n{BEGUN}\nColor mode\n{colors}"
    assert [mode.name for mode in drafted(text).modes] == ["Dimmer", "Color"]


def test_a_figure_with_its_unit_is_no_slot():
    """`1 Hz - 25 Hz` on a line of its own is a rate."""
    document = drafted(
        "CH Function Value Description\n1 Dimmer 0-255\n2 Strobe\n0-19\n20-255\n"
        "Off\n1 Hz - 25 Hz\n3 Red 0-255\n"
    )
    assert slots(document.modes[0]) == [("dimmer", [1]), ("strobe", [2]), ("red", [3])]
    assert whys(document) == ["values and words stand apart; as many of both were paired in order"]


def test_a_meaning_made_of_titles_is_no_line_of_titles():
    """`No` titles slots and `effect` functions; `No effect` is a meaning."""
    document = drafted(
        "CH Function Value\n1 Dimmer 0-255\n2 Tint\n0-19\n20-255\nNo effect\nGreen to magenta\n"
    )
    assert short(named(document.modes[0], "tint"))[2] == [(0, 19, "No effect"), (20, 255, "Green to magenta")]


def test_a_numbered_section_ends_a_chart():
    """`6.3 Error codes` and what stands below it is of no slot."""
    text = f"{BEGUN}6.3 Error codes\nCode Meaning Remedy\nE01 Fan failure Check the fan\n"
    assert not drafted(text).doubts


def test_the_exact_part_of_a_slot_of_two_uses_has_its_fine_byte():
    """`Gobo indexing fine` right behind `Gobo indexing / rotation`."""
    rows = "1 Gobo wheel 0-255\n2 Gobo indexing / rotation 0-127 Indexing\n128-255 Rotation\n"
    document = drafted(f"CH Function Value Description\n{rows}3 Gobo indexing fine 0-255\n")
    assert slots(document.modes[0])[1] == ("gobo-index-rotation", [2, 3])
    assert not document.doubts


def test_a_chart_called_by_its_slots_alone():
    """`DMX chart - 9 CH` names nothing else."""
    assert drafted(f"DMX chart - 2 CH\n{BEGUN}").modes[0].name == "2 CH"


def test_a_note_among_the_rows_is_no_part_of_a_meaning():
    """`Note: ...` in a row of its own; one that tells a hold stays where somebody sees it."""
    rows = "1\tShutter\t0-9\tOpen\n\t\t10-255\t1 - 30 Hz\n{note}\n2\tDimmer\t0-255\t\n"
    head = "Channel\tFunction\tValue\tDescription\n"
    document = drafted(head + rows.format(note="Note: send 0 when the lamp is cold.\t\t\t"))
    assert [r.meaning for r in named(document.modes[0], "shutter").ranges] == ["Open", "1 - 30 Hz"]


def test_colors_to_choose_among_name_no_emitter():
    """White, Red, Green: the slot is no white; what it is, is asked."""
    text = "CH\tValue\tFunction\n1\t0-255\tDimmer\n2\t0-9\tWhite\n\t10-19\tRed\n\t20-255\tGreen\n"
    document = drafted(text)
    assert slots(document.modes[0])[1] == ("other", [2])
    assert len(document.doubts) == 1


@pytest.mark.parametrize("sign", ["", ",", ":", " -"])
def test_all_values_in_brackets_behind_a_name_leave_what_they_do(sign):
    """The slot runs over all values; from where to where is behind them."""
    text = f"4-channel mode\n\nChannel 1: Dimmer (0-255)\nChannel 2: Iris (0-255){sign} open to closed\n"
    document = drafted(f"{text}Channel 3: Velocidad pan/tilt (0-255){sign} lenta a rápida\nChannel 4: Zoom\n")
    _, iris, speed, _ = document.modes[0].parameters
    assert short(iris) == ("iris", [2], [(0, 255, "open to closed")])
    assert short(speed) == ("movement-speed", [3], [(0, 255, "lenta a rápida")])
    assert document.doubts == []
