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
    ],
)
def test_a_modes_heading(printed, name, number, footprint):
    """Slots that a heading counts are no number of the mode; a section's number is no part of its name."""
    head = read_mode_head(printed)
    assert (head.name, head.number, head.footprint) == (name, number, footprint)
