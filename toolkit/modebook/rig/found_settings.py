"""What a list says a setting is at, as a choice of the fixture's record."""

from __future__ import annotations

import re

from modebook.checks.reading import FixtureReading
from modebook.documents.settings import Choice, Setting
from modebook.rig.found_titles import FoundColumn
from modebook.shelf.numbers import number

_KIND = {"response": "smoothing", "curve": "dimmer-curve", "modulation": "modulation-frequency"}
_FIGURE = re.compile(r"(?P<figure>.*?[0-9.,])\s*(?P<unit>packets?|ms|s|sec|seconds?|k?hz)", re.IGNORECASE)
_DROPPED = re.compile(r"[\W_]+")


def setting_meant(fixture: FixtureReading, column: FoundColumn) -> Setting | None:
    """The setting that a column is about: of several smoothings the one that acts on intensity."""
    kind = _KIND.get(column)
    found = [one for one in fixture.fixture.settings if one.setting == kind and not one.none]
    acting = [one for one in found if not one.acts_on or "intensity" in one.acts_on]
    return next(iter(acting or found), None)


def choices_meant(setting: Setting, told: str) -> list[Choice]:
    """The choices that a cell may mean: one is sure, several are in doubt, none is unknown.

    By key or label, by the number that is sent for it over RDM, or by its length or frequency with a unit.
    A number that is one choice's label and another's RDM value may mean either.
    """
    bare = _bare(told)
    found = [one for one in setting.choices if bare and bare in (_bare(one.key), _bare(one.label or ""))]
    if told.isascii() and told.isdigit():
        value = int(told[:12])
        for way in setting.ways:
            for key, sent in (way.values or {}).items():
                found += [one for one in setting.choices if one.key == key and sent == value]
    if not found:
        found = [one for one in setting.choices if _is_figure(one, told)]
    return list({one.key: one for one in found}.values())


def _bare(words: str) -> str:
    return _DROPPED.sub("", words.casefold())


def _is_figure(choice: Choice, told: str) -> bool:
    match = _FIGURE.fullmatch(told.strip())
    if match is None:
        return False
    try:
        value = number(match["figure"])
    except ValueError:
        return False
    unit = match["unit"].casefold()
    if unit.endswith("hz"):
        return _close(choice.frequency_hz, value * (1000 if unit == "khz" else 1))
    length = choice.length
    if length is None:
        return False
    if unit.startswith("packet"):
        return _close(length.packets, value)
    return _close(length.seconds, value / 1000 if unit == "ms" else value)


def _close(known: float | None, value: float) -> bool:
    return known is not None and abs(known - value) <= 1e-6 * max(1.0, abs(value))
