"""How people write the cells of a list of shots: units, levels, times, intents, cameras."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import get_args

from modebook.rig.reading import PatchedRow, RigReading
from modebook.shelf.numbers import number
from modebook.words.intents import INTENTS, Intent

_RANGE = re.compile(
    r"(?P<first>\w+?)\s*(?:-|\u2013|\u2014|\bto\b|\bthru\b|\bthrough\b)\s*(?P<last>\w+)", re.IGNORECASE
)
_NUMBERED = re.compile(r"(?P<before>[^0-9]*)(?P<number>[0-9]{1,12})(?P<after>[^0-9]*)")
_CLOCK = re.compile(
    r"(?:(?P<hours>[0-9]{1,2}):)?(?P<minutes>[0-9]{1,3}):(?P<seconds>[0-5]?[0-9](?:[.,][0-9]+)?)"
)
_SECONDS = re.compile(
    r"(?P<figure>[0-9.,]+)\s*(?:(?P<thousandths>ms|milliseconds?)|s|secs?|seconds?|\")?", re.IGNORECASE
)
_SPELLED = re.compile(
    r"(?:(?P<minutes>[0-9]{1,2})\s*(?:m|min|mins|minutes?|')\s*)"
    r"(?:(?P<seconds>[0-9]{1,2}(?:[.,][0-9]+)?)\s*(?:s|secs?|seconds?|\")?)?",
    re.IGNORECASE,
)
_SHUTTER_TIME = re.compile(r"1\s*/\s*(?P<part>[0-9]+(?:[.,][0-9]+)?)\s*s?", re.IGNORECASE)
_IN_UNITS = re.compile(r"[0-9.,]+\s*(?:k|kelvin|deg|degrees?|\u00b0|hz)", re.IGNORECASE)
LONGEST_S = 3600.0

LEVELS: Mapping[str, float] = MappingProxyType(
    {
        "full": 100.0,
        "on": 100.0,
        "open": 100.0,
        "out": 0.0,
        "off": 0.0,
        "zero": 0.0,
        "black": 0.0,
    }
)
AS_BEFORE = frozenset({"", "-", "as before", "before", "same", "as it is", "where it is", "current"})
"""What people write for the level at which the lights stand already."""
INTENT_WORDS: Mapping[str, Intent] = MappingProxyType(
    {
        **dict(zip(get_args(Intent), get_args(Intent), strict=True)),
        "smoothly": "smooth",
        "not seen": "unseen",
        "invisible": "unseen",
        "not noticed": "unseen",
        "kill": "snap",
        "bump": "snap",
        "cut": "snap",
        "instant": "snap",
        "pixel": "pixels",
        "chase": "pixels",
        "together": "match",
        "matched": "match",
        "": "any",
    }
)


class UnitNames:
    """Finds the units that a cell means, in a rig's patch."""

    def __init__(self, reading: RigReading) -> None:
        self.numbers = list(dict.fromkeys(row.unit.number for row in reading.rows if row.unit.number))
        self._by_number = {number.casefold(): number for number in self.numbers}
        self._named: dict[tuple[str, str], list[str]] = {}
        for row in reading.rows:
            for kind, name in _names(row):
                self._named.setdefault((kind, name), []).append(row.unit.number)

    def meant(self, text: str) -> list[str]:
        """The unit numbers that a cell means, each once, in the order told.

        Numbers, ranges (``101-108``: the patched units whose numbers lie between), ``group:key``,
        ``position:Lift A``, ``purpose:water``, ``all``, and ``not 103`` to leave one out. Raises ValueError,
        with what would be right, for what the patch does not have.
        """
        found: dict[str, None] = {}
        for piece in re.split(r"[,;\n]|\band\b", text):
            told = " ".join(piece.split())
            if not told:
                continue
            without = re.match(r"(?:not|except|but not|without)\s+", told, re.IGNORECASE)
            units = self._piece(told[without.end() :] if without else told)
            for unit in units:
                if without:
                    found.pop(unit, None)
                else:
                    found[unit] = None
        if not found:
            raise ValueError("no units: write numbers, a range such as 101-108, group:key or position:Lift A")
        return list(found)

    def _piece(self, told: str) -> list[str]:
        if told.casefold() == "all":
            return list(self.numbers)
        if told.casefold() in self._by_number:
            return [self._by_number[told.casefold()]]
        kind, colon, name = told.partition(":")
        if colon and kind.strip().casefold() in ("group", "position", "purpose"):
            return self._of(kind.strip().casefold(), name)
        match = _RANGE.fullmatch(told)
        if match:
            between = self._between(match["first"], match["last"])
            if between:
                return between
        for kind in ("group", "position"):
            if (kind, told.casefold()) in self._named:
                return self._of(kind, told)
        if match:
            back = self._between(match["last"], match["first"])
            hint = f": it runs backwards, is {match['last']}-{match['first']} meant?" if back else ""
            raise ValueError(f"no unit of the patch lies in {told!r}{hint}")
        raise ValueError(f"the patch has no unit, group or position {told!r}{self._near(told)}")

    def _of(self, kind: str, name: str) -> list[str]:
        units = self._named.get((kind, " ".join(name.casefold().split())))
        if not units:
            known = sorted({name for of, name in self._named if of == kind})
            raise ValueError(
                f"the patch has no {kind} {name.strip()!r}: it has {', '.join(known[:12]) or 'none'}"
            )
        return list(dict.fromkeys(units))

    def _between(self, first: str, last: str) -> list[str]:
        one, two = _NUMBERED.fullmatch(first), _NUMBERED.fullmatch(last)
        if one is None or two is None or one["before"].casefold() != two["before"].casefold():
            return []
        low, high = int(one["number"]), int(two["number"])
        return [
            unit
            for unit in self.numbers
            if (match := _NUMBERED.fullmatch(unit))
            and match["before"].casefold() == one["before"].casefold()
            and low <= int(match["number"]) <= high
        ]

    def _near(self, told: str) -> str:
        from rapidfuzz import fuzz, process

        names = [*self.numbers, *(name for kind, name in self._named if kind != "purpose")]
        near = [
            str(name)
            for name, _, _ in process.extract(told, names, scorer=fuzz.ratio, limit=3, score_cutoff=60)
        ]
        return f": is {' or '.join(dict.fromkeys(near))} meant?" if near else ""


def _names(row: PatchedRow) -> Sequence[tuple[str, str]]:
    unit = row.unit
    pairs = (("group", unit.group), ("position", unit.position), ("purpose", unit.purpose))
    return [(kind, " ".join(name.casefold().split())) for kind, name in pairs if name.strip() and unit.number]


def level(text: str) -> float:
    """A level in percent: ``20``, ``20 %``, ``full``, ``out``. Raises ValueError for others."""
    told = text.strip().rstrip("%").strip()
    if told.casefold() in LEVELS:
        return LEVELS[told.casefold()]
    if _IN_UNITS.fullmatch(told):
        raise ValueError(f"{text!r}: levels are percent of a parameter's whole span, 0 to 100, not its unit")
    value = number(told)
    if not 0.0 <= value <= 100.0:
        raise ValueError(f"{text!r} is no level: levels are percent, 0 to 100")
    return value


def seconds(text: str) -> float:
    """A time in s: ``3``, ``3.5 s``, ``250 ms``, ``1:30``, ``1m30``, ``0:01:02.5``. ValueError for others."""
    told = text.strip()
    match = _CLOCK.fullmatch(told)
    if match:
        value = 3600.0 * int(match["hours"] or 0) + 60.0 * int(match["minutes"]) + number(match["seconds"])
    elif spelled := _SPELLED.fullmatch(told):
        value = 60.0 * int(spelled["minutes"]) + number(spelled["seconds"] or "0")
    elif plain := _SECONDS.fullmatch(told):
        value = number(plain["figure"]) / (1000.0 if plain["thousandths"] else 1.0)
    else:
        raise ValueError(f"{text!r} is no time: write seconds such as 12 or 12.5, or 1:30, 1m30, 250 ms")
    if not 0.0 <= value <= LONGEST_S:
        raise ValueError(f"{text!r} is no time: give seconds, 0 to {LONGEST_S:g}")
    return value


def intent(text: str) -> Intent:
    """An intent by its word or a plain synonym. Raises ValueError with the words that there are."""
    told = " ".join(text.casefold().split())
    if told not in INTENT_WORDS:
        raise ValueError(f"{text!r} is no intent: write one of {', '.join(INTENTS)}")
    return INTENT_WORDS[told]


def frames(text: str) -> float:
    """A camera's frames a second: ``24``, ``23.976 fps``. Raises ValueError for others."""
    value = number(re.sub(r"\s*(?:fps|p|f/s)$", "", text.strip(), flags=re.IGNORECASE))
    if not 0.0 < value <= 100_000.0:
        raise ValueError(f"{text!r} is no frame rate: give frames a second, such as 24")
    return value


def shutter(text: str, fps: float | None) -> float:
    """A shutter in degrees: ``180``, ``172.8 deg``, or a time, ``1/48``, with the camera's rate known."""
    told = text.strip()
    match = _SHUTTER_TIME.fullmatch(told)
    if match:
        if fps is None:
            raise ValueError(f"{text!r} is a time, and no camera's rate is known: give the angle in degrees")
        value = 360.0 * fps / number(match["part"])
    else:
        value = number(re.sub(r"\s*(?:deg(?:rees)?|\u00b0)$", "", told, flags=re.IGNORECASE))
    if not 0.0 < value <= 360.0 + 1e-6:
        raise ValueError(f"{text!r} is no shutter: give an angle, above 0 to 360 degrees")
    return min(value, 360.0)
