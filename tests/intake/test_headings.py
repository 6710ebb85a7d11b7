"""A mode's heading: its name without the manual's numbering, its number, and how many slots it says."""

from __future__ import annotations

import pytest

from modebook.intake.headings import numbered_mode, own_titles, read_mode_head


@pytest.mark.parametrize(
    ("printed", "name", "number", "footprint"),
    [
        ("Modo 7 canales", "7 canales", None, 7),
        ("Mode 1 : 11 canaux", "Mode 1", 1, 11),
        ("3.2 DMX protocol – 18-channel mode", "18-channel", None, 18),
        ("4.1 Mode 2 (9 channels)", "Mode 2", 2, 9),
        ("Mode 2: Tour (7 channels)", "Tour", 2, 7),
        ("Betriebsart 2 – Erweitert", "Erweitert", 2, None),
        ("Basic mode", "Basic", None, None),
        ("Modo C", "Modo C", None, None),
        ("Betriebsart B: 6 Kanäle", "Betriebsart B", None, 6),
    ],
)
def test_a_modes_heading(printed, name, number, footprint):
    """Slots that a heading counts are no number of the mode; a section's number is no part of its name."""
    head = read_mode_head(printed)
    assert (head.name, head.number, head.footprint) == (name, number, footprint)


@pytest.mark.parametrize(
    ("heading", "name", "footprint"),
    [
        ("DMX Channel Table - 10 Channel Mode", "10 Channel", 10),
        ("DMX map, 7-slot mode", "7-slot", 7),
        ("Modus „Breit“", "Breit", None),
        ("RGB mode (takes 3 slots)", "RGB", 3),
        ("Kanäle im 11-Kanal-Modus", "11-Kanal-Modus", 11),
        ("Tableau des canaux (mode de 4 canaux)", "4 canaux", 4),
        ("Canaux DMX – mode standard", "standard", None),
        ("Channel assignments in 12-channel mode", "12-channel", 12),
        ("Modo 16 bit - 14 canali", "16 bit", 14),
        ("DMX Mode: 2 channels", "2 channels", 2),
        ("Mode DMX : 5 canaux", "5 canaux", 5),
        ("DMX Chart - 16 channels", "16 channels", 16),
        ("14-channel mode (Basic)", "Basic", 14),
        ("Personality 3 (CCT + RGB, 8 ch)", "CCT + RGB", 8),
        ("Profile 2: HSI", "HSI", None),
        ("Panel 60 – Mode 1: CCT", "CCT", None),
    ],
)
def test_words_of_every_chart_are_no_part_of_a_modes_name(heading: str, name: str, footprint: int | None):
    head = read_mode_head(heading)
    assert head is not None
    assert (head.name, head.footprint) == (name, footprint)


@pytest.mark.parametrize("heading", ["DMX personality", "DMX Modes", "Available DMX modes"])
def test_a_heading_over_all_modes_names_none(heading: str):
    assert read_mode_head(heading) is None


@pytest.mark.parametrize(
    ("titles", "names"),
    [
        (["Canale 14CH", "", "Canale 20CH"], ["14CH", "", "20CH"]),
        (["Channel (Basic)", "Channel (Full)"], ["Basic", "Full"]),
        (["Channel 1", "Channel 2"], ["Channel 1", "Channel 2"]),
        (
            ["Channels in Tour mode", "Channels in Studio mode"],
            ["Channels in Tour mode", "Channels in Studio mode"],
        ),
    ],
)
def test_columns_of_modes_are_called_without_the_word_for_slots(titles: list[str], names: list[str]):
    """What all of them begin with is no part of a name; a number alone would be none."""
    assert own_titles(titles) == names


@pytest.mark.parametrize(
    ("cell", "name", "number", "footprint"),
    [("2: HSI", "HSI", 2, None), ("3 - Full (12 ch)", "Full", 3, 12), ("RGB 8", "RGB 8", None, None)],
)
def test_a_number_before_a_modes_name_in_a_column_of_modes_is_its_own(cell, name, number, footprint):
    head = numbered_mode(cell)
    assert (head.name, head.number, head.footprint) == (name, number, footprint)


@pytest.mark.parametrize("sentence", ["This mode uses 12 channels.", "Ce mode occupe 5 canaux."])
def test_a_sentence_that_counts_slots_names_no_mode(sentence: str):
    assert read_mode_head(sentence) is None


@pytest.mark.parametrize(
    ("heading", "name", "number", "footprint"),
    [
        ("22-channel mode (Extended)", "Extended", None, 22),
        ("14CH mode: Standard", "Standard", None, 14),
        ("9.1 Profile 1 – CCT (5 channels)", "CCT", 1, 5),
        ("Profile 2 – RGBWW (8 channels, 16 bit)", "RGBWW (16 bit)", 2, 8),
        ("Mode 1 (Standard) 14 channels", "Standard", 1, 14),
        ("The 6CH mode", "6CH", None, 6),
        ("DMX chart – 9 CH", "9 CH", None, 9),
    ],
)
def test_a_name_beside_its_number_and_its_slots(heading, name, number, footprint):
    """Before, behind, in brackets or not: the name is what is left, with whole brackets."""
    head = read_mode_head(heading)
    assert (head.name, head.number, head.footprint) == (name, number, footprint)


def test_a_range_that_speaks_of_a_mode_heads_none():
    """`111-255: music mode` is what values do; a footprint of two numbers is still one."""
    assert read_mode_head("111-255 : mode musical") is None
    assert read_mode_head("16-bit mode, 12 channels") is not None


def test_sentences_with_a_count_of_slots_give_the_count_and_no_name():
    head = read_mode_head("Lantern 40. 7 slots, 8 bit.")
    assert (head.name, head.footprint) == ("7 slots", 7)
