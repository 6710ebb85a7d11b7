"""A mode's heading: its name without the manual's numbering, its number, and how many slots it says."""

from __future__ import annotations

import pytest

from modebook.intake.headings import read_mode_head


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
        ("Canaux DMX – mode standard", "standard", None),
        ("Channel assignments in 12-channel mode", "12-channel", 12),
        ("Modo 16 bit - 14 canali", "16 bit", 14),
    ],
)
def test_words_of_every_chart_are_no_part_of_a_modes_name(heading: str, name: str, footprint: int | None):
    head = read_mode_head(heading)
    assert head is not None
    assert (head.name, head.footprint) == (name, footprint)


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
        ("The 6CH mode", "6CH mode", None, 6),
        ("DMX chart – 9 CH", "9 CH", None, 9),
    ],
)
def test_a_name_beside_its_number_and_its_slots(heading, name, number, footprint):
    """Before, behind, in brackets or not: the name is what is left, with whole brackets."""
    head = read_mode_head(heading)
    assert (head.name, head.number, head.footprint) == (name, number, footprint)
