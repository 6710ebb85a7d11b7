"""Modes whose title is but a name get that name, only where every chart has one of its own."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, slots

CHART = "1 Dimmer 0-255\n2 Red 0-255\n3 Strobe 0-9 Off\n10-255 Slow to fast\n"


def modes(text: str) -> list[str]:
    return [mode.name for mode in drafted(text).modes]


@pytest.mark.parametrize(
    "titles", [("Basic", "Extended"), ("Einfach", "Erweitert"), ("Compact", "Full RGBW")]
)
def test_a_name_above_every_slot_1_is_the_modes(titles):
    """The second name stands right below the last range of the first mode, and is not its meaning."""
    document = drafted("\n".join(f"{title}\n{CHART}" for title in titles))
    assert [mode.name for mode in document.modes] == list(titles)
    assert [slots(mode) for mode in document.modes] == [[("dimmer", [1]), ("red", [2]), ("strobe", [3])]] * 2
    assert [r.meaning for r in document.modes[0].parameters[2].ranges] == ["Off", "Slow to fast"]
    assert document.doubts == []


def test_a_line_that_stands_once_names_nothing():
    """A heading above one chart may be the fixture's name or a chapter's."""
    assert modes("Wash light\n" + CHART) == ["3 slots"]


@pytest.mark.parametrize("line", ["Mind the order of slots when you set the address", "0-100 %", "Dimmer"])
def test_other_lines_above_two_charts_name_nothing(line):
    """A sentence, a span and a parameter's name are no names of modes."""
    assert line not in modes(f"Basic\n{CHART}\n{line}\n{CHART}")


def test_titles_that_say_mode_stand_beside_bare_ones():
    assert modes(f"Mode Basic\n{CHART}\nExtended\n{CHART}") == ["Basic", "Extended"]
