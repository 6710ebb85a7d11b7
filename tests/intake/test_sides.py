"""Charts that stand side by side without rules are read one by one, wherever each of them begins."""

from __future__ import annotations

from intake.drafted import drafted, slots

LEFT = """\
3-CH mode
CH   Value    Function
1    0-255    Dimmer
2    0-5      No strobe
     6-255    Strobe slow to fast
3    0-255    Red
""".splitlines()
RIGHT = """\
4-CH mode
CH   Value    Function
1    0-255    Dimmer
2    0-5      No strobe
     6-255    Strobe slow to fast
3    0-255    Red
4    0-255    Green
""".splitlines()
THREE = [("dimmer", [1]), ("strobe", [2]), ("red", [3])]
FOUR = [*THREE, ("green", [4])]


def beside(left: list[str], right: list[str]) -> str:
    """Two texts as the columns of one page."""
    count = max(len(left), len(right))
    rows = zip(left + [""] * (count - len(left)), right + [""] * (count - len(right)), strict=True)
    return "\n".join(f"{a:<44}{b}".rstrip() for a, b in rows)


def read(text: str) -> list[tuple[str, list[tuple[str, list[int]]]]]:
    document = drafted(text)
    assert not document.doubts
    return [(mode.name, slots(mode)) for mode in document.modes]


def test_two_that_begin_on_one_line():
    """Each has the heading above it."""
    assert read(beside(LEFT, RIGHT)) == [("3-CH", THREE), ("4-CH", FOUR)]


def test_two_that_begin_at_different_heights():
    """The right one's titles stand beside a row of the left one, or beside nothing."""
    for down in (1, 2, 3, 6):
        assert read(beside(LEFT, [""] * down + RIGHT)) == [("3-CH", THREE), ("4-CH", FOUR)]
        assert read(beside([""] * down + RIGHT, LEFT)) == [("4-CH", FOUR), ("3-CH", THREE)]


def test_what_goes_on_in_the_right_column():
    """One mode whose titles are said again over its further slots."""
    more = ["CH   Value    Function", "4    0-255    Green", "5    0-255    Blue", "6    0-255    White"]
    six = [*FOUR, ("blue", [5]), ("white", [6])]
    assert read(beside(["6-CH mode", *LEFT[1:]], more)) == [("6-CH", six)]


def test_a_wide_chart_above_and_one_below_stay_whole():
    """Their cells stand on both sides of the gutter by chance."""
    names = ("Dimmer", "Red", "Green", "Blue", "White")
    wide = [f"{n:<5}0-255        {name:<31}0-100 %" for n, name in enumerate(names, 1)]
    above = ["5-CH mode", "CH   Value        Function                       Remarks", *wide, ""]
    below = ["", "2-CH mode", above[1], *wide[:2]]
    text = "\n".join([*above, beside(LEFT, RIGHT), *below])
    assert [name for name, _ in read(text)] == ["5-CH", "3-CH", "4-CH", "2-CH"]


def test_modes_in_columns_of_one_chart_are_no_two_charts():
    """A column of slots to the right of the names begins no chart: no titles of one follow it."""
    rows = [
        "Function          Value      Ch. 3-CH mode      Ch. 4-CH mode",
        "Dimmer            0-255      1                  1",
    ]
    rows += [
        "Strobe            0-255      2                  2",
        "Red               0-255      3                  3",
    ]
    rows += ["Green             0-255      -                  4"]
    assert [part for _, part in read("\n".join(rows))] == [THREE, FOUR]
