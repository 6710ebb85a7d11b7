"""The parameters: enough of them, the promised keys, and each consistent with its family and its unit."""

from __future__ import annotations

import dataclasses
import re

import pytest

from modebook.words.beam import BEAM
from modebook.words.color import COLOR
from modebook.words.control import CONTROL
from modebook.words.e120 import SD_UNDEFINED, SLOT_LABELS, SLOT_TYPES
from modebook.words.families import FAMILIES
from modebook.words.image import IMAGE
from modebook.words.intensity import INTENSITY
from modebook.words.movement import MOVEMENT
from modebook.words.parameters import PARAMETERS, Parameter
from modebook.words.quantities import QUANTITIES
from modebook.words.units import UNITS

PROMISED = [
    "dimmer",
    "pan",
    "tilt",
    "red",
    "green",
    "blue",
    "white",
    "amber",
    "lime",
    "uv",
    "warm-white",
    "cool-white",
    "cyan",
    "magenta",
    "yellow",
    "hue",
    "saturation",
    "cie-x",
    "cie-y",
    "color-temperature",
    "tint",
    "color-wheel",
    "gobo-wheel",
    "zoom",
    "focus",
    "iris",
    "frost",
    "strobe",
    "control",
    "macro",
    "fan",
]

BY_FAMILY = {
    "intensity": INTENSITY,
    "movement": MOVEMENT,
    "color": COLOR,
    "image": IMAGE,
    "beam": BEAM,
    "control": CONTROL,
}


def test_there_are_at_least_eighty_and_none_hides_another() -> None:
    """A key that two rows share would silently lose one of them."""
    rows = [row for family in BY_FAMILY.values() for row in family]
    assert len(rows) == len(PARAMETERS) >= 80


@pytest.mark.parametrize("key", PROMISED)
def test_the_promised_keys_are_there(key: str) -> None:
    """People's documents are written with exactly these keys."""
    assert key in PARAMETERS


def test_all_six_families_have_parameters_of_their_own() -> None:
    """Each family's file holds that family's parameters and no other's."""
    assert tuple(BY_FAMILY) == FAMILIES
    for family, rows in BY_FAMILY.items():
        assert {row.family for row in rows} == {family}


def test_names_and_meanings_are_unique() -> None:
    """Two parameters that print alike cannot be told apart in a table."""
    assert len({row.name.casefold() for row in PARAMETERS.values()}) == len(PARAMETERS)
    assert len({row.about for row in PARAMETERS.values()}) == len(PARAMETERS)


@pytest.mark.parametrize("row", PARAMETERS.values(), ids=PARAMETERS)
def test_a_parameter_is_consistent(row: Parameter) -> None:
    """Key, label, family, quantity, unit, slot type and meaning fit each other."""
    assert re.fullmatch(r"[a-z]+(-[a-z]+)*", row.key)
    assert row.slot_label in SLOT_LABELS
    if row.slot_label != SD_UNDEFINED:
        assert row.family == SLOT_LABELS[row.slot_label].family
    assert row.quantity in QUANTITIES
    assert row.quantity in UNITS[row.unit].quantities
    assert row.continuous is (row.quantity != "selector")
    assert row.slot_type in SLOT_TYPES
    assert re.fullmatch(r"[A-Zxyuv][^\n]*\.", row.about)
    assert len(row.about) <= 100


def test_every_slot_label_of_the_standard_has_a_parameter() -> None:
    """What RDM can report about a slot can be said in a document."""
    assert {row.slot_label for row in PARAMETERS.values()} == set(SLOT_LABELS)


def test_a_parameter_cannot_be_changed() -> None:
    """The vocabulary is shared by all rooms, so nobody may alter it under the others."""
    with pytest.raises(dataclasses.FrozenInstanceError):
        PARAMETERS["pan"].unit = "rpm"  # type: ignore[misc]
    with pytest.raises(TypeError):
        PARAMETERS["swing"] = PARAMETERS["pan"]  # type: ignore[index]
