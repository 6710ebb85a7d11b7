"""Modes side by side in text: titles over two lines, columns that collapsed, modes called as titles are."""

from __future__ import annotations

from intake.drafted import drafted, slots

BODY = """\
1     1     Pan         0-255    0-540°
-     2     Pan fine    0-255
2     3     Dimmer      0-255    0-100 %
3     4     Shutter     0-9      Closed
                        10-255   Open
"""
TRUE = [
    [("pan", [1]), ("dimmer", [2]), ("shutter", [3])],
    [("pan", [1, 2]), ("dimmer", [3]), ("shutter", [4])],
]


def test_names_above_a_row_of_slots():
    """Basic and Full, each over `Ch.`"""
    document = drafted(f"Base  Full  Function    Value    Effect\nCh.   Ch.\n{BODY}")
    assert [slots(mode) for mode in document.modes] == TRUE
    assert [mode.name for mode in document.modes] == ["Base", "Full"]
    assert not document.doubts


def test_columns_that_collapsed():
    """Single spaces: as many numbers or dashes at a line's start as the titles name modes."""
    lines = "\n".join(" ".join(line.split()) for line in BODY.splitlines())
    document = drafted(f"3 ch. 4 ch. Function Value Effect\n{lines}\n")
    assert [slots(mode) for mode in document.modes] == TRUE
    assert [mode.name for mode in document.modes] == ["3 ch.", "4 ch."]


def test_a_mode_called_as_a_known_title():
    """Standard may title defaults, Pixel cells; over slots they are modes."""
    rows = [
        "Standard\tPixel\tFunction\tValue",
        "1\t1\tDimmer\t0-255",
        "2\t2\tRed\t0-255",
        "3\t-\tGreen\t0-255",
    ]
    rows += ["4\t3\tBlue\t0-255", "-\t4\tZoom\t0-255"]
    document = drafted("\n".join(rows))
    assert [(mode.name, mode.footprint) for mode in document.modes] == [("Standard", 4), ("Pixel", 4)]
    assert not document.doubts
