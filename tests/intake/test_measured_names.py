"""Names that say too little are settled by what is measured or chosen beside them."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, named, short
from modebook.intake.names import read_name


@pytest.mark.parametrize("load", ["Output", "Lamp", "Lampe", "Lámpara", "Uscita", "Ausgang"])
def test_a_lamp_or_an_output_that_runs_from_0_to_100_is_dimmed(load):
    """Without a percent it stays what it was: nobody knows what an output does."""
    rows = "".join(f"{n}\t{load} {n}\t0-255\t0-100 %\n" for n in (1, 2))
    document = drafted(f"Slot\tFunction\tValue\tDescription\n{rows}3\tFan\t0-255\tSlow to fast\n")
    assert not document.doubts
    mode = document.modes[0]
    members = [p for block in mode.cells for p in block.parameters]
    fed = {p.parameter for p in (*members, *mode.parameters)}
    assert fed == {"dimmer", "fan"}
    switched = drafted(
        "Slot\tFunction\tValue\tDescription\n1\tDimmer\t0-255\t0-100 %\n"
        f"2\t{load}\t0-127\tOff\n\t\t128-255\tOn\n"
    )
    dimmed = [p.slots for p in switched.modes[0].parameters if p.parameter == "dimmer"]
    assert dimmed == [[1]] or any(doubt.slots == [2] for doubt in switched.doubts)


def test_none_is_a_choice_of_a_setting_and_no_range_without_a_function():
    """Of a slot for smoothing `None` sets that there is none."""
    document = drafted(
        "Slot\tFunction\tValue\tDescription\n1\tDimmer\t0-255\t0-100 %\n"
        "2\tSmoothing\t0-85\tNone\n\t\t86-170\tShort\n\t\t171-255\tLong\n"
    )
    smoothing = named(document.modes[0], "smoothing")
    assert [one.sets for one in smoothing.ranges] == [
        {"smoothing": "none"},
        {"smoothing": "short"},
        {"smoothing": "long"},
    ]
    assert all(one.does is None for one in smoothing.ranges)


def test_a_program_that_goes_to_and_fro_runs():
    """In a slot of effects nothing turns or bounces but the program."""
    document = drafted(
        "Slot\tFunction\tValue\tDescription\n1\tDimmer\t0-255\t0-100 %\n"
        "2\tEffect\t0-85\tNo effect\n\t\t86-170\tRainbow\n\t\t171-255\tTo and fro\n"
    )
    effect = named(document.modes[0], "effect")
    assert short(effect)[2] == [(0, 85, "No effect"), (86, 170, "Rainbow"), (171, 255, "To and fro")]
    assert not {"rotate", "bounce"} & {one.does for one in effect.ranges}


def test_what_is_measured_in_kelvins_is_a_color_temperature():
    """Whatever the slot is called; a time keeps its doubt."""
    titles = "Slot\tFunction\tValue\tDescription\n1\tDimmer\t0-255\t0-100 %\n"
    document = drafted(f"{titles}2\tBackground tone\t0-255\t2700 to 6500 K\n")
    assert named(document.modes[0], "color-temperature").slots == [2]
    assert not document.doubts
    assert drafted(f"{titles}2\tBackground tone\t0-255\t0 to 10 s\n").doubts


def test_flicker_of_several_kinds_is_an_effect():
    """Alone it may be what is done against it."""
    titles = "Slot\tFunction\tValue\tDescription\n1\tDimmer\t0-255\t0-100 %\n"
    several = drafted(f"{titles}2\tFlicker\t0-9\tNone\n\t\t10-127\tTorch\n\t\t128-255\tTube\n")
    assert named(several.modes[0], "effect").slots == [2]
    assert not several.doubts
    assert drafted(f"{titles}2\tFlicker\t0-255\tLow to high\n").doubts


def test_green_from_minus_to_plus_is_a_tint():
    """An emitter runs from nothing to full."""
    titles = "Slot\tFunction\tValue\tDescription\n1\tDimmer\t0-255\t0-100 %\n"
    assert named(drafted(f"{titles}2\tGreen\t0-255\t-Green to +Green\n").modes[0], "tint").slots == [2]
    assert named(drafted(f"{titles}2\tGreen\t0-255\tNo green to full green\n").modes[0], "green").slots == [2]


def test_degrees_typed_with_the_sign_of_an_ordinal_are_degrees():
    text = "Canal,Valor,Función\n1,0-255,DIMMER 0-100%\n2,0-255,PAN 0-540º\n3,0-255,TILT 0-230 º\n"
    document = drafted(text)
    assert [p.parameter for p in document.modes[0].parameters] == ["dimmer", "pan", "tilt"]
    assert document.doubts == []


@pytest.mark.parametrize(
    ("printed", "word", "number"),
    [("Par 2 red", "red", 2), ("Pod 3 dimmer", "dimmer", 3), ("Amber strobe", "strobe", None)],
)
def test_parts_of_a_bar_and_flashes_of_one_color_are_known(printed, word, number):
    name = read_name(printed)
    assert (name.word, name.number, name.sure) == (word, number, True)
