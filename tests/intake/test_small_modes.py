"""Modes of a slot or two are read as larger ones are; one that is titled and not read is missed."""

from __future__ import annotations

from intake.drafted import drafted, slots, spans

LARGE = "Mode 3: Wide (4 slots)\n" + "".join(
    f"{n}. {name} | 0-255 | {told}\n"
    for n, (name, told) in enumerate(
        [("Dimmer", "0-100 %"), ("Red", "0-100 %"), ("Green", "0-100 %"), ("Blue", "0-100 %")], 1
    )
)


def test_a_mode_of_one_slot_or_two_is_read_without_titles():
    """Few numbers count where each stands before a known name."""
    document = drafted(
        "Mode 1: Level (1 slot)\n1. Dimmer | 0-255 | 0-100 %\n\n"
        "Mode 2: Tunable (2 slots)\n1. Dimmer | 0-255 | 0-100 %\n2. CCT | 0-255 | 2700 K - 6500 K\n\n" + LARGE
    )
    assert [(mode.name, mode.number, mode.footprint) for mode in document.modes] == [
        ("Level", 1, 1),
        ("Tunable", 2, 2),
        ("Wide", 3, 4),
    ]
    assert slots(document.modes[1]) == [("dimmer", [1]), ("color-temperature", [2])]
    assert spans(document.modes[0]) == {"dimmer": [(0, 100, "%")]}
    assert not document.doubts


def test_a_titled_mode_that_was_not_read_is_doubted():
    """What stands below the title are values of nobody knows whom; the draft says that a mode is missing."""
    document = drafted("Mode 1: Level (2 slots)\n1. Qua | 0-255 | up\n2. Vex | 0-255 | down\n\n" + LARGE)
    assert [mode.name for mode in document.modes] == ["Wide"]
    assert [(doubt.pointer, doubt.printed) for doubt in document.doubts] == [
        ("/modes", "Mode 1: Level (2 slots)")
    ]


def test_measures_among_words_beside_values_are_meanings_without_titles_too():
    """`0-100 %` four times and `off` once are what the values beside them mean."""
    document = drafted(
        "Mode 1: Hue (5 slots)\n1. Dimmer | 0-255 | 0-100 %\n2. Strobe | 0-9 | off\n| 10-255 | slow to fast\n"
        "3. Red | 0-255 | 0-100 %\n4. Green | 0-255 | 0-100 %\n5. Blue | 0-255 | 0-100 %\n"
    )
    (mode,) = document.modes
    assert [r.meaning for r in mode.parameters[1].ranges] == ["off", "slow to fast"]
    assert spans(mode)["red"] == [(0, 100, "%")]
    assert not document.doubts
