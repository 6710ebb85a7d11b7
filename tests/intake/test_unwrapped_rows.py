"""Words on lines of their own go to the row that they belong to, by where values stand beside their lines."""

from __future__ import annotations

from intake.drafted import drafted, named


def chart(control: str) -> str:
    return (
        "Ch   Function   Value     Effect\n"
        "1    Dimmer     0-255     0-100 %\n"
        "2    Red        0-255     0-100 %\n"
        "3    Control    0-9       No function\n" + control
    )


def meanings(text: str) -> list[str | None]:
    (mode,) = drafted(text).modes
    return [r.meaning for r in named(mode, "control").ranges]


def test_values_beside_the_first_line():
    """A lone line below one row only, and none below the next: nothing but `first line` fits all rows, though
    `Pan/Tilt, now` had room beside `Restart`.
    """
    text = chart(
        "                10-99     Restart\n"
        "                          Pan/Tilt, at once\n"
        "                100-149   Restart colors at\n"
        "                          once\n"
        "                150-199   Idle\n"
        "                200-255   No function\n"
    )
    assert meanings(text) == [
        "No function",
        "Restart Pan/Tilt, at once",
        "Restart colors at once",
        "Idle",
        "No function",
    ]
    assert not drafted(text).doubts


def test_values_in_the_middle_stay_doubtful_or_right():
    """A line above and a line below each row: never given to the wrong one without a word."""
    text = chart(
        "                          Restart pan and\n"
        "                10-99     tilt, at once, after\n"
        "                          a pause\n"
        "                          Restart all the\n"
        "                100-255   colors, at once, after\n"
        "                          a pause\n"
    )
    said = meanings(text)
    right = said[1:] == [
        "Restart pan and tilt, at once, after a pause",
        "Restart all the colors, at once, after a pause",
    ]
    assert right or drafted(text).doubts
