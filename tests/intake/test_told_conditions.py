"""Sentences below a chart tell when a slot works: its parameter gets the condition, or a doubt."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, named, whys
from modebook.intake.told_conditions import tells_when

TABLE = """\
Slot\tFunction\tValue\tDescription
1\tDimmer\t0-255\t0-100%
2\tStrobe\t0-9\tOff
\t\t10-255\tSlow to fast
3\tEffect\t0-49\tNone
\t\t50-255\tCandle
4\tEffect speed\t0-255\tSlow to fast

"""


def conditions(text: str, word: str = "effect-speed") -> list[tuple[str | None, int | None, int | None]]:
    """The conditions of a parameter of the first mode: on what, from, to."""
    return [(c.parameter, c.from_, c.to) for c in named(drafted(text).modes[0], word).when]


@pytest.mark.parametrize(
    "sentence",
    [
        "Slot 4 works only while slot 3 is at 50-255.",
        "Slot 4 has an effect only when slot 3 is at 50 to 255.",
        "Kanal 4 wirkt nur, wenn Kanal 3 auf 50-255 steht.",
        "Le canal 4 agit seulement quand le canal 3 est entre 50-255.",
        "Slot 4 is active only with slot 3 at 50 or more.",
        "Note: slot 4 works only while slot 3 is at 50-255.",
        "Only when slot 3 is at 50-255, slot 4 has an effect.",
    ],
)
def test_a_sentence_below_the_chart_gives_its_slot_the_condition(sentence):
    assert conditions(TABLE + sentence) == [("effect", 50, 255)]
    assert whys(drafted(TABLE + sentence)) == []


def test_one_sentence_may_speak_of_several_slots():
    text = TABLE + "Slots 2 and 4 work only while slot 3 is at 50-255."
    assert conditions(text) == conditions(text, "strobe") == [("effect", 50, 255)]


def test_a_state_of_the_menu_is_kept_in_its_words():
    document = drafted(TABLE + "Slot 4 works only while the menu entry Speed is set to DMX.")
    (condition,) = named(document.modes[0], "effect-speed").when
    assert condition.given == "only while the menu entry Speed is set to DMX"


@pytest.mark.parametrize(
    "sentence",
    [
        "Slot 4 has no effect while slot 3 is at 0-49.",
        "While slot 3 is at 0-49, slot 4 does not work.",
        "Slot 4 works only while a candle is chosen.",
        "Note: Slot 4 is active only if slot 3 is above 49.",
    ],
)
def test_what_is_denied_or_not_understood_is_doubted_and_not_lost(sentence):
    document = drafted(TABLE + sentence)
    assert not named(document.modes[0], "effect-speed").when
    assert any("below the chart" in why for why in whys(document))


def test_below_the_last_of_several_charts_the_mode_is_not_sure():
    two = f"Mode 1\n{TABLE}Mode 2\n{TABLE}Slot 4 works only while slot 3 is at 50-255."
    document = drafted(two)
    assert all(not p.when for mode in document.modes for p in mode.parameters)
    assert any("below the chart" in why for why in whys(document))


def test_sentences_about_slots_that_tell_no_condition_are_none():
    assert not tells_when("Slots 1 to 4 are used in every mode.")
    assert not tells_when("Slot 4 Effect speed")
    assert not tells_when("Slot 4 is used only in the long mode of the fixture.")


def test_a_word_before_the_sentence_and_two_ends_of_values_are_understood():
    """`Note: slot 3 works only if slot 2 is between 20 and 99`: both ends count."""
    document = drafted(
        "Channel 1: Dimmer\nChannel 2: Effect\n0-19 off\n20-255 on\nChannel 3: Effect speed\n\n"
        "Note: channel 3 works only if channel 2 is between 20 and 99.\n"
    )
    (speed,) = [p for p in document.modes[0].parameters if p.parameter == "effect-speed"]
    assert [(c.parameter, c.from_, c.to) for c in speed.when or []] == [("effect", 20, 99)]


def test_so_many_of_a_kind_are_no_condition():
    """`Gobos 1 à 5` are five gobos; with a word for a condition gobo 1 would have to stand at 5."""
    text = "Canal\tFonction\tValeur\tEffet\n1\tGradateur\t0-255\t\n2\tGobos\t0-9\tOuvert\n"
    document = drafted(f"{text}\t\t10-127\tGobos 1 à 5\n\t\t128-255\tTremblement des gobos 1 à 5\n")
    assert whys(document) == []
    assert document.modes[0].parameters[1].ranges[1].meaning == "Gobos 1 à 5"
