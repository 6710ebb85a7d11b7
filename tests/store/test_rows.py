"""Rows say what documents say: E1.20 types and labels, ids that do not move, ways that are derived."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from modebook.shelf.catalog import Catalog
from modebook.store.build import build
from modebook.store.ids import row_number, told_apart

Ask = Callable[..., list[tuple[Any, ...]]]

DOCUMENT: dict[str, Any] = {
    "maker": "Wobbly Works",
    "model": "Öl 2",
    "category": "moving yoke",
    "standing": "transcribed",
    "sources": [{"key": "guide", "title": "Guide", "date": "2024-05"}],
    "settings": [
        {
            "key": "smoothing",
            "setting": "smoothing",
            "choices": [
                {"key": "off", "length": {"packets": 0}},
                {"key": "on", "length": {"rise": {"packets": 3}, "fall": {"seconds": 0.5}}},
            ],
            "ways": [{"by": "rdm", "pid": "0x8001", "size": 1, "values": {"on": 2}, "locked": True}],
        }
    ],
    "modes": [
        {
            "name": "Long",
            "footprint": 14,
            "parameters": [
                {"parameter": "pan", "slots": [3, 5], "span": {"from": -270, "to": 270, "unit": "deg"}},
                {"parameter": "pan-speed", "slots": [4], "for": ["pan"]},
                {"parameter": "dimmer", "slots": [2, 1]},
                {
                    "parameter": "control",
                    "slots": [6],
                    "ranges": [
                        {"from": 0, "to": 9, "meaning": "Nothing"},
                        {
                            "from": 10,
                            "to": 19,
                            "meaning": "Fast",
                            "sets": {"smoothing": "off"},
                            "needs": [{"parameter": "dimmer", "from": 0, "to": 5}],
                        },
                        {
                            "from": 10,
                            "to": 19,
                            "meaning": "Fast, printed twice",
                            "sets": {"smoothing": "off"},
                        },
                        {"from": 20, "to": 255, "meaning": "Nowhere", "sets": {"unheard-of": "off"}},
                    ],
                },
            ],
            "cells": [
                {
                    "count": 2,
                    "first": 7,
                    "stride": 2,
                    "parameters": [{"parameter": "red", "slots": [1, 2]}],
                },
                {
                    "count": 2,
                    "first": 11,
                    "stride": 2,
                    "cells": [
                        {
                            "count": 2,
                            "first": 1,
                            "stride": 1,
                            "parameters": [{"parameter": "red", "slots": [1]}],
                        }
                    ],
                },
            ],
        },
        {"name": "Twin", "number": 2, "footprint": 1, "parameters": [{"parameter": "dimmer", "slots": [1]}]},
        {"name": "Twin", "number": 3, "footprint": 1, "parameters": [{"parameter": "dimmer", "slots": [1]}]},
    ],
}
ID = "wobbly-works/ol-2"


def _catalog(root: Path, document: dict[str, Any]) -> Catalog:
    path = root / "fixtures" / f"{ID}.json"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(json.dumps(document), encoding="utf-8")
    return Catalog(root)


@pytest.fixture
def ask(tmp_path: Path) -> Ask:
    """A function that asks the database of the document above."""
    build(_catalog(tmp_path, DOCUMENT), tmp_path / "db.sqlite")

    def asked(query: str, *values: object) -> list[tuple[Any, ...]]:
        connection = sqlite3.connect(tmp_path / "db.sqlite")
        try:
            return connection.execute(query, values).fetchall()
        finally:
            connection.close()

    return asked


def test_each_byte_has_the_type_and_label_that_slot_info_reports(ask: Ask) -> None:
    """E1.20, SLOT_INFO: a primary slot has its label id (table C-2); a secondary one its type (table C-1)
    and, in the label's place, the offset from 0 of its primary: pan's speed and fine byte point at pan."""
    rows = ask("SELECT slot, slot_type, slot_label FROM slots WHERE mode = ? AND cell = ''", f"{ID}#long")
    assert rows == [
        (1, 0x01, 1),  # ST_SEC_FINE of the dimmer, whose coarse byte is slot 2, offset 1
        (2, 0x00, 0x0001),  # ST_PRIMARY, SD_INTENSITY
        (3, 0x00, 0x0101),  # SD_PAN
        (4, 0x03, 2),  # ST_SEC_SPEED, for pan at offset 2
        (5, 0x01, 2),  # ST_SEC_FINE of pan
        (6, 0x00, 0x0502),  # SD_FIXTURE_CONTROL
    ]


def test_cells_are_repeated_and_nested_ones_numbered_from_outside(ask: Ask) -> None:
    """Two cells of two bytes from slot 7, then two of two pixels from slot 11."""
    query = "SELECT slot, parameter, cell, byte FROM slots WHERE mode = ? AND cell <> ''"
    assert ask(query, f"{ID}#long") == [
        (7, "cells/red", "1", 1),
        (8, "cells/red", "1", 2),
        (9, "cells/red", "2", 1),
        (10, "cells/red", "2", 2),
        (11, "cells/cells/red", "1.1", 1),
        (12, "cells/cells/red", "1.2", 1),
        (13, "cells/cells/red", "2.1", 1),
        (14, "cells/cells/red", "2.2", 1),
    ]
    assert ask("SELECT name, cells FROM parameters WHERE word = 'red' ORDER BY name") == [
        ("cells/cells/red", 4),
        ("cells/red", 2),
    ]


def test_ways_by_slot_come_from_what_ranges_set(ask: Ask) -> None:
    """A range that sets a choice is a way; one that sets what the document does not have is none."""
    query = (
        "SELECT way, choice, mode, parameter, from_value, to_value, nth, needs, pid, value, locked FROM ways"
    )
    assert ask(query) == [
        ("slot", "off", f"{ID}#long", "control", 10, 19, 1, "dimmer 0 to 5", None, None, None),
        ("slot", "off", f"{ID}#long", "control", 10, 19, 2, None, None, None, None),
        ("rdm", "on", None, None, None, None, 1, None, "0x8001", 2, "yes"),
    ]
    assert ask("SELECT mode, smoothing_by, remote FROM modes ORDER BY id") == [
        ("Long", "slot rdm", 1),
        ("Twin", "rdm", 1),
        ("Twin", "rdm", 1),
    ]


def test_lengths_stand_as_printed(ask: Ask) -> None:
    """Rise and fall apart, packets and seconds apart; at 30 packets a second half a second is 15."""
    query = (
        "SELECT key, length_packets, rise_packets, fall_seconds, assumed_packets FROM choices ORDER BY key"
    )
    assert ask(query) == [("off", 0, None, None, 0), ("on", None, 3, 0.5, 15)]


def test_conditions_stand_in_rows_and_in_words(ask: Ask) -> None:
    """What a range needs can be asked for by parameter."""
    query = "SELECT parameter, on_parameter, from_value, to_value FROM conditions"
    assert ask(query) == [("control", "dimmer", 0, 5)]


def test_two_of_a_name_both_stay(ask: Ask) -> None:
    """Two modes of a name are told apart by their personality numbers."""
    assert ask("SELECT id FROM modes ORDER BY id") == [(f"{ID}#long",), (f"{ID}#twin-2",), (f"{ID}#twin-3",)]


def test_ids_do_not_depend_on_places_in_lists(ask: Ask, tmp_path: Path) -> None:
    """A mode put in before the others, and parameters turned round, leave every other id as it was."""
    ids = "SELECT rowid, id FROM modes ORDER BY id"
    names = "SELECT mode, name FROM parameters ORDER BY mode, name"
    before = (ask(ids), ask(names))
    new = {"name": "New", "footprint": 1, "parameters": [{"parameter": "dimmer", "slots": [1]}]}
    modes = [new, *DOCUMENT["modes"]]
    modes[1] = {**modes[1], "parameters": modes[1]["parameters"][::-1]}
    build(_catalog(tmp_path, {**DOCUMENT, "modes": modes}), tmp_path / "db.sqlite")
    assert [row for row in ask(ids) if not row[1].endswith("#new")] == before[0]
    assert [row for row in ask(names) if not row[0].endswith("#new")] == before[1]


def test_row_numbers_are_exact_in_javascript() -> None:
    """Numbers up to 2^53 - 1 are exact there (ECMA-262, Number.MAX_SAFE_INTEGER)."""
    numbers = {row_number(f"maker/model-{n}") for n in range(5000)}
    assert len(numbers) == 5000
    assert max(numbers) <= 2**53 - 1


def test_names_are_told_apart_without_taking_one_that_is_there() -> None:
    """The second of a kind gets -2, unless something else is called that."""
    assert told_apart(["a", "a-2", "a", "a", "b"]) == ["a", "a-2", "a-3", "a-4", "b"]
    assert len(set(told_apart(["a", "a", "a-2", "a-2", "a"]))) == 5
