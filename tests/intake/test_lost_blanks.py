"""Modes side by side in pasted lines: a number that stands alone is of the mode in which it comes next."""

from __future__ import annotations

from intake.drafted import drafted, named, short, slots, whys

TITLES = "Mode 1 Mode 2 Function Value Description\n"
ROWS = """\
1 1 Pan 0-255 0° to 540°
2 Pan fine 0-255
2 3 Tilt 0-255 0° to 270°
4 Tilt fine 0-255
3 5 Color wheel 0 Open
1-4 Red
5 Green
6 Blue
7-255 Rotation slow to fast
6 Gobo wheel 0-9 Open
10-255 Gobo 1
4 7 Dimmer 0-255 0-100%
"""


def test_numbers_find_their_modes():
    """`2 Pan fine` is the second mode's: the first mode's 2 is tilt. `5 Green` goes on with the values."""
    document = drafted(TITLES + ROWS)
    assert [mode.name for mode in document.modes] == ["Mode 1", "Mode 2"]
    assert slots(document.modes[0]) == [("pan", [1]), ("tilt", [2]), ("color-wheel", [3]), ("dimmer", [4])]
    assert slots(document.modes[1]) == [
        ("pan", [1, 2]),
        ("tilt", [3, 4]),
        ("color-wheel", [5]),
        ("gobo-wheel", [6]),
        ("dimmer", [7]),
    ]
    ranges = [
        (0, 0, "Open"),
        (1, 4, "Red"),
        (5, 5, "Green"),
        (6, 6, "Blue"),
        (7, 255, "Rotation slow to fast"),
    ]
    for mode in document.modes:
        assert short(named(mode, "color-wheel"))[2] == ranges
    assert not document.doubts


def test_a_number_that_fits_two_modes_is_told():
    """Nothing behind it says which mode has a zoom."""
    document = drafted(f"{TITLES}1 1 Red 0-255\n2 2 Green 0-255\n3 3 Blue 0-255\n4 Zoom 0-255\n")
    assert any("a blank was lost" in why for why in whys(document))


def test_a_footprint_in_the_title_says_where_a_mode_ends():
    """The mode of three slots has no fourth."""
    document = drafted(
        "3CH 4CH Function Value\n1 1 Red 0-255\n2 2 Green 0-255\n3 3 Blue 0-255\n4 Zoom 0-255\n"
    )
    assert [mode.footprint for mode in document.modes] == [3, 4]
    assert not document.doubts


def test_the_number_of_a_page_is_no_row():
    """`- 2 -` between rows is no dash beside slot 2."""
    lines = ROWS.splitlines()
    text = "\n".join([*lines[:9], "- 2 -", *lines[9:]])
    assert not drafted(TITLES + text).doubts


def test_one_numbered_mode_titles_no_column():
    """`Mode 1` alone before titles says whose chart it is."""
    document = drafted("Mode 1 Channel Function Value\n1 Red 0-255\n2 Green 0-255\n3 Blue 0-255\n")
    assert [slots(mode) for mode in document.modes] == [[("red", [1]), ("green", [2]), ("blue", [3])]]


def test_modes_named_on_a_line_beside_the_titles():
    """One title for all slots, and the modes' names, or their footprints, above or below it."""
    for names in ("Standard Extended", "4CH 7CH"):
        for head in (f"Channel Function Value Description\n{names}\n", f"{names}\nChannel Function Value\n"):
            document = drafted(head + ROWS)
            assert [mode.name for mode in document.modes] == names.split()
            assert [mode.footprint for mode in document.modes] == [4, 7]
            assert not document.doubts


def test_a_number_alone_at_the_end_of_a_page_is_the_pages():
    """A slot without a name or values, below an empty line, would be none."""
    rows = "1        Red       0-255\n2        Green     0-255\n3        Blue      0-255\n"
    text = f"Channel  Function  Value\n{rows}"
    for foot in ("\n\n12\n", "\n12\n\f"):
        document = drafted(text + foot)
        assert document.modes[0].footprint == 3
        assert not document.doubts
