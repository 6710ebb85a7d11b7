"""The trade's names in five languages: word, byte, number; and how sure each reading is."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.drafted import drafted
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
    assert not document.doubts


@pytest.mark.parametrize(
    "part", ["Sezione", "Sección", "Section", "Sektion", "Panel", "Streifen", "Tubo", "Bloc"]
)
def test_parts_that_light_up_apart_are_cells_in_every_language(part: str) -> None:
    name = read_name(f"{part} 3 blue")
    assert (name.word, name.number, name.cell, name.sure) == ("blue", 3, True, True)
