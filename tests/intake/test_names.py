"""The trade's names in five languages: word, byte, number; and how sure each reading is."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.drafted import drafted, slots, whys
from modebook.intake.folding import bare
from modebook.intake.lexicon import SURE
from modebook.intake.names import read_name
from modebook.intake.wording import LANGUAGES, all_wording, wording
from modebook.words.parameters import PARAMETERS
from modebook.words.ranges import DOES, HAZARDS, KEPT


@pytest.mark.parametrize(
    ("printed", "word"),
    [
        ("Intensity", "dimmer"),
        ("Colour temperature", "color-temperature"),
        ("Pan/Tilt speed", "movement-speed"),
        ("Shutter / Strobe", "shutter"),
        ("Green/Magenta", "tint"),
        ("CCT", "color-temperature"),
        ("CIE x", "cie-x"),
        ("Helligkeit", "dimmer"),
        ("Farbtemperatur", "color-temperature"),
        ("Farbrad", "color-wheel"),
        ("Rotierende Gobos", "rotating-gobo-wheel"),
        ("Sättigung", "saturation"),
        ("Lüfter", "fan"),
        ("Gradateur", "dimmer"),
        ("Température de couleur", "color-temperature"),
        ("Roue de gobos", "gobo-wheel"),
        ("Mise au point", "focus"),
        ("Obturateur", "shutter"),
        ("Lissage", "smoothing"),
        ("Atenuador", "dimmer"),
        ("Rueda de colores", "color-wheel"),
        ("Blanco cálido", "warm-white"),
        ("Enfoque", "focus"),
        ("Funciones especiales", "control"),
        ("Luminosità", "dimmer"),
        ("Ruota gobo rotanti", "rotating-gobo-wheel"),
        ("Messa a fuoco", "focus"),
        ("Temperatura colore", "color-temperature"),
        ("Velocità pan/tilt", "movement-speed"),
        ("No function", "reserved"),
        ("Sonderfunktionen", "control"),
        ("Zoom (wide to narrow)", "zoom"),
        ("Strobe slow to fast", "strobe"),
        ("Dimmer 0-100%", "dimmer"),
    ],
)
def test_names_that_the_trade_uses_are_sure(printed: str, word: str) -> None:
    name = read_name(printed)
    assert (name.word, name.sure) == (word, True)


@pytest.mark.parametrize(
    ("printed", "word", "level", "label"),
    [
        ("Pan fine", "pan", 1, "Pan"),
        ("Pan (16 bit)", "pan", 1, "Pan"),
        ("Pan 8 bit", "pan", 0, "Pan"),
        ("Dimmer MSB", "dimmer", 0, "Dimmer"),
        ("Dimmer LSB", "dimmer", 1, "Dimmer"),
        ("Tilt fein", "tilt", 1, "Tilt"),
        ("Zoom fin", "zoom", 1, "Zoom"),
        ("Enfoque fino", "focus", 1, "Enfoque"),
        ("Fuoco fine", "focus", 1, "Fuoco"),
        ("Red ultra fine", "red", 2, "Red"),
        ("Rot grob", "red", 0, "Rot"),
        ("Fine pan", "pan", 1, "pan"),
    ],
)
def test_bytes_are_told_by_their_marks(printed: str, word: str, level: int, label: str) -> None:
    name = read_name(printed)
    assert (name.word, name.level, name.label) == (word, level, label)


def test_numbers_cells_and_sides_are_taken_apart() -> None:
    assert (read_name("Gobo wheel 2").word, read_name("Gobo wheel 2").number) == ("gobo-wheel", 2)
    assert (read_name("Pixel 3 Red").number, read_name("Pixel 3 Red").cell) == (3, True)
    assert (read_name("Red 12").number, read_name("Red 12").cell) == (12, False)
    assert (read_name("Left blade angle").word, read_name("Left blade angle").side) == ("blade-angle", "left")


def test_one_color_temperature_names_a_white_and_two_are_what_it_can_be_set_to() -> None:
    emitter, tunable = read_name("Weiß 5600 K"), read_name("White 2800 K - 6000 K")
    assert (emitter.word, emitter.label, emitter.sure) == ("white", "Weiß 5600 K", True)
    assert tunable.word == "color-temperature"


@pytest.mark.parametrize(
    ("printed", "word"),
    [
        ("Dimmer right", "dimmer"),
        ("Intensité gauche", "dimmer"),
        ("Anello blu", "blue"),
        ("Inner ring amber", "amber"),
        ("Lampe 2 Helligkeit", "dimmer"),
        ("Lampe", "lamp-control"),
    ],
)
def test_parts_of_a_fixture_light_up_apart(printed: str, word: str) -> None:
    """A side, a ring or a lamp of several has a dimmer or an emitter of its own."""
    name = read_name(printed)
    assert (name.word, name.sure) == (word, True)


@pytest.mark.parametrize("printed", ["Swing", "Nod", "Hyperflux", "Zweite Ebene", "Speed", "R", "Kanal"])
def test_what_says_too_little_is_never_sure(printed: str) -> None:
    assert not read_name(printed).sure


def test_a_slip_of_spelling_in_a_long_name_is_read_and_in_a_short_one_doubted() -> None:
    assert (read_name("Color temperatur").word, read_name("Color temperatur").sure) == (
        "color-temperature",
        True,
    )
    assert (read_name("Dimer").word, read_name("Dimer").sure) == ("dimmer", False)
    assert read_name("Fna").sure is False


def test_every_phrase_of_the_lists_means_one_thing_in_its_language() -> None:
    for language in LANGUAGES:
        seen: dict[str, str] = {}
        for key, phrases in wording("parameters", language):
            assert key in PARAMETERS, f"{language}: {key}"
            for phrase in phrases:
                form = bare(phrase.rstrip("?"))
                assert seen.setdefault(form, key) == key, (
                    f"{language}: {phrase!r} stands under {seen[form]} and {key}"
                )


def test_every_sure_phrase_of_the_lists_is_read_as_what_it_stands_for() -> None:
    """Unless another language uses it for something else: then it may not be sure."""
    meanings: dict[str, set[str]] = {}
    for key, phrase, _ in all_wording("parameters"):
        meanings.setdefault(bare(phrase.rstrip("?")), set()).add(key)
    for key, phrase, language in all_wording("parameters"):
        name = read_name(phrase.rstrip("?"))
        if name.score >= SURE:
            assert name.word == key, f"{language}: {phrase}"
        else:
            assert phrase.endswith("?") or len(meanings[bare(phrase)]) > 1 or _also_doubted(phrase), (
                f"{language}: {phrase}"
            )


def _also_doubted(phrase: str) -> bool:
    return any(
        bare(other.rstrip("?")) == bare(phrase)
        for _, other, _ in all_wording("parameters")
        if other.endswith("?")
    )


def test_the_phrases_use_the_vocabulary() -> None:
    for key, _, _ in all_wording("phrases"):
        head, _, word = key.partition(".")
        if word and head == "does":
            assert word in DOES
        if head == "hazard":
            assert word in HAZARDS
        if head == "kept":
            assert word in KEPT
        if key.startswith("does~"):
            assert key.removeprefix("does~") in DOES


@given(st.text(max_size=40))
def test_any_text_is_a_name_or_not_but_never_fails(text: str) -> None:
    name = read_name(text)
    assert (name.word is None) == (name.score == 0)


def test_what_is_denied_is_named_as_well():
    """`No strobe` beside `Strobe slow to fast`: the slot is one of a strobe, for sure."""
    document = drafted(
        "CH\tValue\tFunction\n1\t0-255\tDimmer\n2\t0-5\tNo strobe\n\t6-255\tStrobe slow to fast\n"
    )
    assert [parameter.parameter for parameter in document.modes[0].parameters] == ["dimmer", "strobe"]
    assert not document.doubts


def test_programs_are_no_wheel():
    """`Color jump` beside `Auto run` is of a slot of programs: a color wheel is told as a guess."""
    text = (
        "CH\tValue\tFunction\n1\t0-255\tRed\n2\t0-99\tColor jump\n\t100-199\tColor fade\n\t200-255\tAuto run"
    )
    assert len(drafted(text).doubts) == 1


def test_indexed_below_and_turning_above():
    """Both uses are printed: the slot is of both."""
    text = "CH\tValue\tFunction\n1\t0-255\tGobos\n2\t0-127\tGobo index\n\t128-255\tGobo rotation slow-fast"
    document = drafted(text)
    assert document.modes[0].parameters[1].parameter == "gobo-index-rotation"


def test_a_rate_and_a_duration_are_of_the_flashes_where_hertz_say_so():
    """Behind an effect, a rate in hertz may be the effect's: doubted."""
    titles = "Slot\tFunction\tValue\tMeaning\n1\tIntensity\t0-255\t0-100%\n"
    rate = "3\tRate\t0-255\t1 Hz to 25 Hz\n"
    document = drafted(f"{titles}2\tDuration\t0-255\t0 ms to 650 ms\n{rate}")
    assert slots(document.modes[0]) == [("dimmer", [1]), ("strobe-duration", [2]), ("strobe", [3])]
    assert not document.doubts
    other = drafted(f"{titles}2\tEffect\t0-127\tCandle\n\t\t128-255\tTV\n{rate}")
    assert whys(other, "/modes/0/parameters/2")


def test_a_lamp_of_several_from_dark_to_full_is_a_dimmer():
    document = drafted(
        "Slot\tFunction\tValue\tMeaning\n1\tLamp 1\t0-255\t0-100%\n2\tLamp 2\t0-255\t0-100%\n"
        "3\tLamp control\t0-127\tLamp off\n\t\t128-255\tLamp on\n"
    )
    assert slots(document.modes[0]) == [("dimmer", [1]), ("dimmer", [2]), ("lamp-control", [3])]


@pytest.mark.parametrize(("said", "doubted"), [("Auto speed slow to fast", False), ("slow to fast", True)])
def test_a_bare_speed_needs_no_doubt_where_its_values_say_whose_it_is(said: str, doubted: bool):
    """Beside a head that turns it may be the head's, if nothing more is printed."""
    titles = "Slot\tFunction\tValue\tMeaning\n1\tDimmer\t0-255\t0-100%\n"
    chart = f"{titles}2\tAuto mode\t0-10\tOff\n\t\t11-255\tAuto jump\n3\tSpeed\t0-255\t{said}\n"
    chart += "4\tPan\t0-255\t0-540 deg\n5\tTilt\t0-255\t0-270 deg\n"
    document = drafted(chart)
    assert slots(document.modes[0])[2] == ("macro-speed", [3])
    assert bool(document.doubts) == doubted


WHEEL = """Channel #\tFeature\tRange\tDescription
1\tGobo 1 Position\t0-31\tOpen
\t\t32-63\tDots
\t\t64-255\tDots shake
2\tGobo 1 Index/Rotate\t0-127\tIndex 0-360 degrees
\t\t128-255\tRotation
3\tGobo 1 Fine\t0-255\t
4\tCTO\t0-255\t6500 K to 2700 K
"""


def test_places_of_a_wheel_and_the_turn_of_its_gobo_keep_their_fine_byte():
    """A fine byte right below the index is the index's; a correction in kelvin is a temperature."""
    document = drafted(WHEEL)
    (mode,) = document.modes
    assert mode.name == "4 slots"
    assert slots(mode) == [
        ("gobo-wheel", [1]),
        ("gobo-index-rotation", [2, 3]),
        ("color-temperature", [4]),
    ]
    (why,) = whys(document, "/modes/0/parameters/1")
    assert why.startswith("the fine byte is called 'Gobo 1'")


def test_what_is_denied_in_one_range_and_done_in_the_next_names_a_slot():
    document = drafted(
        "Ch\tValue\tFunction\n1\t0-255\tDimmer\n2\t0-20\tNo strobe\n\t21-255\tStrobe slow to fast\n"
    )
    strobe = document.modes[0].parameters[1]
    assert (strobe.parameter, strobe.label) == ("strobe", "Strobe")
    assert not document.doubts


@pytest.mark.parametrize(
    "part", ["Sezione", "Sección", "Section", "Sektion", "Panel", "Streifen", "Tubo", "Bloc"]
)
def test_parts_that_light_up_apart_are_cells_in_every_language(part: str) -> None:
    name = read_name(f"{part} 3 blue")
    assert (name.word, name.number, name.cell, name.sure) == ("blue", 3, True, True)


def test_preheating_is_of_a_lamp_or_of_a_fog_machine():
    titles = "Slot\tFunction\tValue\tMeaning\n"
    lamp = drafted(f"{titles}1\tDimmer\t0-255\t0-100%\n2\tPreheat\t0-255\t0-10%\n")
    assert slots(lamp.modes[0])[1] == ("minimum-level", [2])
    fog = drafted(f"{titles}1\tFog\t0-255\t0-100%\n2\tPreheat\t0-127\tOff\n\t\t128-255\tOn\n")
    assert slots(fog.modes[0])[1] == ("heater", [2])
