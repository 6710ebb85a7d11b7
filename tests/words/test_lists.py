"""The closed lists: each word has a meaning, and the type of the list and the list itself agree."""

from __future__ import annotations

import importlib
import pkgutil
import typing
from collections.abc import Iterator

import pytest

import modebook.words
from modebook.words.e120 import CATEGORIES, CATEGORY_IDS, Edition
from modebook.words.families import FAMILIES
from modebook.words.lists import WORD_LISTS
from modebook.words.settings import SETTING_KINDS, SETTING_TITLES
from modebook.words.units import NATURAL_UNITS, UNITS

# What the design document promises, word for word.
PROMISED = {
    "Does": [
        "nothing",
        "open",
        "closed",
        "stop",
        "index",
        "rotate",
        "bounce",
        "random",
        "runs",
        "as-menu",
        "unchanged",
    ],
    "Hazard": [
        *("reset", "lamp off", "lamp on", "calibration", "address change"),
        *("movement", "blackout", "laser", "uv", "flame", "hoist"),
    ],
    "Kept": ["while sent", "until power off", "stored"],
    "Method": ["average", "interpolate", "lag", "limit", "restart"],
    "Way": ["slot", "rdm", "menu", "app", "page"],
    "Standing": ["draft", "transcribed", "second-read", "proved"],
    "Intent": ["smooth", "unseen", "snap", "pixels", "match", "any"],
    "Family": ["intensity", "movement", "color", "image", "beam", "control"],
}


def _closed_types() -> Iterator[tuple[str, tuple[str, ...]]]:
    """Name and words of every Literal that a module of the vocabulary defines."""
    seen: set[str] = set()
    for module in pkgutil.iter_modules(modebook.words.__path__, "modebook.words."):
        for name, value in vars(importlib.import_module(module.name)).items():
            if typing.get_origin(value) is typing.Literal and name not in seen:
                seen.add(name)
                yield name, typing.get_args(value)


CLOSED = dict(_closed_types())


@pytest.mark.parametrize("name", [name for name in CLOSED if CLOSED[name] != typing.get_args(Edition)])
def test_a_closed_type_has_a_list_with_the_same_words(name: str) -> None:
    """Each Literal's words are, in order, those of one printed list."""
    assert CLOSED[name] in {tuple(words) for words in WORD_LISTS.values()}


@pytest.mark.parametrize("title", WORD_LISTS)
def test_a_printed_list_has_a_closed_type(title: str) -> None:
    """Each printed list's words are, in order, those of one Literal."""
    assert tuple(WORD_LISTS[title]) in set(CLOSED.values())


@pytest.mark.parametrize("name", PROMISED)
def test_the_promised_words_are_there(name: str) -> None:
    """People's documents are written with exactly these words."""
    assert list(CLOSED[name]) == PROMISED[name]


@pytest.mark.parametrize("title", WORD_LISTS)
def test_every_word_has_a_meaning_of_its_own_in_one_line(title: str) -> None:
    """A words page prints them as they stand."""
    meanings = list(WORD_LISTS[title].values())
    assert all(meaning.strip() == meaning and meaning and "\n" not in meaning for meaning in meanings)
    assert len(set(meanings)) == len(meanings)


def test_a_caution_is_one_sentence() -> None:
    """Output puts a caution behind other words, so it ends in a full stop and has only one."""
    for caution in WORD_LISTS["Hazards and their cautions"].values():
        assert caution.endswith(".")
        assert ". " not in caution


def test_the_words_that_a_demo_category_uses_are_there() -> None:
    """The design document's examples of a product category."""
    assert {"fixed", "moving yoke", "moving mirror", "dimmer", "atmospheric", "other"} <= set(CATEGORIES)


def test_companion_tables_cover_their_lists() -> None:
    """Titles, ids and natural units exist for each word, and for no other."""
    assert list(SETTING_TITLES) == list(SETTING_KINDS)
    assert list(CATEGORY_IDS) == list(CATEGORIES)
    assert tuple(NATURAL_UNITS) == CLOSED["Quantity"]
    assert all(quantity in UNITS[unit].quantities for quantity, unit in NATURAL_UNITS.items())
    assert tuple(FAMILIES) == CLOSED["Family"]


@pytest.mark.parametrize(
    "word",
    ["smoothing", "dimmer-curve", "modulation-frequency", "fan", "movement-speed", "signal-loss", "other"],
)
def test_the_settings_that_fixtures_are_known_for_are_there(word: str) -> None:
    """The design document's examples of a setting, and the way out for all others."""
    assert word in SETTING_KINDS
