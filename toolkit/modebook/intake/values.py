"""Reads printed values: 0-9, 000 to 009, hex, percent, thousands, coarse.fine pairs, a lost dash."""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

Form = Literal["dec", "hex", "percent", "dotted"]

_DASH = (
    r"(?:\s*(?:\.{2,}|…|<[-–=]+>|[-‐‑‒–—−~÷→⇒↔⇔]+>?|>{1,2})\s*"
    r"|\s+(?:to|bis|à|a|al|au|hasta|thru|through|until|fino\s+a|jusqu['’]?\s?[aà])\s+)"
)
_DEC = r"\d{1,3}(?:[,.'’ \u00a0\u202f]\d{3})+|\d+"
_TIGHT = r"\d{1,3}(?:[,.'’]\d{3})+|\d+"
"""Without spaces: two numbers apart are no number of thousands."""
_HEX = r"0[xX][0-9A-Fa-f]{1,4}|\$[0-9A-Fa-f]{1,4}|(?!\d+[cC][hH]\b)(?:[0-9A-Fa-f]{2}|[0-9A-Fa-f]{4})[hH]\b"
_PCT = r"\d{1,3}(?:[.,]\d{1,2})?\s*%"
_LEAD = r"(?:(?:dmx|value|wert|valeur|valor|valore|von|from|de|desde|da)\s+)?"
_TAIL = r"(?:\s*(?:dmx|dec|dez))?"

_RANGES: tuple[tuple[Form, re.Pattern[str]], ...] = (
    ("hex", re.compile(rf"{_LEAD}(?P<a>{_HEX}){_DASH}(?P<b>{_HEX})", re.IGNORECASE)),
    (
        "percent",
        re.compile(rf"{_LEAD}(?P<a>{_PCT}|\d{{1,3}}(?:[.,]\d{{1,2}})?){_DASH}(?P<b>{_PCT})", re.IGNORECASE),
    ),
    ("dec", re.compile(rf"{_LEAD}(?P<a>{_DEC}){_DASH}(?P<b>{_DEC})(?![\w%°]){_TAIL}", re.IGNORECASE)),
)
_SINGLES: tuple[tuple[Form, re.Pattern[str]], ...] = (
    ("hex", re.compile(rf"(?P<a>{_HEX})", re.IGNORECASE)),
    ("percent", re.compile(rf"(?P<a>{_PCT})")),
    ("dec", re.compile(rf"{_LEAD}(?P<a>{_TIGHT})(?![\w%°]){_TAIL}", re.IGNORECASE)),
)
_LOST_DASH = re.compile(r"(?P<a>\d{1,5})\s+(?P<b>\d{1,5})")
_BARE_HEX = re.compile(rf"(?P<a>[0-9A-Fa-f]{{2,4}})(?:{_DASH}(?P<b>[0-9A-Fa-f]{{2,4}}))?")
_BARE_PERCENT = re.compile(
    rf"(?P<a>\d{{1,3}}(?:[.,]\d{{1,2}})?)\s*%?(?:{_DASH}(?P<b>\d{{1,3}}(?:[.,]\d{{1,2}})?)\s*%?)?"
)
_PAIR = re.compile(r"(\d{1,3})[.,](\d{3})")
_JOIN = re.compile(r"\s*(?:;|,|&|/|\+|\bund\b|\band\b|\bet\b|\by\b|\be\b|\n)\s*", re.IGNORECASE)

ELISIONS = frozenset({":", "⋮", "...", "…", "..", "::", "etc", "etc.", "usw.", "usw", ". . .", '-"-', "|"})
"""Rows that stand for rows left out."""


@dataclass(frozen=True, slots=True)
class Values:
    """A stretch of values as printed; `why` says what is uncertain about it, empty if nothing."""

    start: int
    end: int
    form: Form = "dec"
    why: str = ""
    single: bool = False
    pairs: bool = False
    """Coarse.fine pairs, already counted as 16 bits."""

    @property
    def wide(self) -> bool:
        """Whether one byte cannot hold it."""
        return self.end > 255


@lru_cache(maxsize=20_000)
def read_values(text: str, expects: Form = "dec") -> tuple[Values, ...]:
    """The stretches that a cell of values prints; empty if the cell is anything else.

    `expects` is what the column's title promises: in a hex column `10-1F` needs no mark, in a percent
    column no sign.
    """
    told = " ".join(text.replace("\u00ad", "").split()).strip(" .:*")
    told = re.sub(r"^\((.*)\)$", r"\1", told)
    if not told or (not any(letter.isdigit() for letter in told) and expects != "hex"):
        return ()
    if expects == "hex":
        found = _BARE_HEX.fullmatch(re.sub(r"0x|[hH$]", "", told))
        return _made(found, "hex") if found else ()
    if expects == "percent":
        found = _BARE_PERCENT.fullmatch(told)
        return _made(found, "percent") if found else ()
    one = _one(told)
    if one:
        return one
    parts = [part for part in _JOIN.split(told) if part]
    if len(parts) > 1:
        pieces = [_one(part) for part in parts]
        if all(pieces):
            flat = [value for piece in pieces for value in piece]
            if all(a.end < b.start for a, b in itertools.pairwise(flat)) and flat[0].form == "dec":
                return tuple(flat)
    lead = re.match(r"^(?P<first>.+?)\s*(?:[(/|]|\s{1})\s*(?P<other>\S.*?)\)?$", told)
    # 000-009 (00-09h), 0-9 / 0-3 %: the decimal one counts, the other only repeats it.
    for match in re.finditer(r"\s*[(/|]\s*|\s+", told) if lead else ():
        first, other = _one(told[: match.start()]), told[match.end() :].strip(" )")
        second = _one(other)
        if first and second and first[0].form == "dec" and second[0].form in ("hex", "percent"):
            return first
        if first and second and second[0].form == "dec" and first[0].form in ("hex", "percent"):
            return second
    lost = _LOST_DASH.fullmatch(told)
    if lost:
        a, b = int(lost["a"]), int(lost["b"])
        if a < b:
            return (Values(a, b, "dec", "the dash between the two numbers is not printed"),)
    return ()


def _one(told: str) -> tuple[Values, ...]:
    for form, pattern in _RANGES:
        found = pattern.fullmatch(told)
        if found:
            made = _made(found, form)
            if made:
                return made
    for form, pattern in _SINGLES:
        found = pattern.fullmatch(told)
        if found:
            made = _made(found, form)
            if made:
                return made
    return ()


def _made(found: re.Match[str], form: Form) -> tuple[Values, ...]:
    first, second = found["a"], found.groupdict().get("b")
    last = second if second is not None else first
    single = second is None
    if form == "hex":
        a, b = (int(re.sub(r"0[xX]|[hH$]", "", number), 16) for number in (first, last))
        return (Values(a, b, "hex", single=single),) if a <= b else ()
    if form == "percent":
        low, high = (float(number.strip(" %").replace(",", ".")) for number in (first, last))
        if not low <= high <= 100:
            return ()
        whole = low == 0 and high == 100
        why = "" if whole else "only percent is printed, and several values fall on one percent"
        return (Values(_byte(low), _byte(high), "percent", why, single),)
    pair_a, pair_b = _PAIR.fullmatch(first), _PAIR.fullmatch(last)
    if pair_a and pair_b and "." in first and "." in last and not single:
        numbers = [int(n) for n in (*pair_a.groups(), *pair_b.groups())]
        if max(numbers) <= 255:
            a, b = numbers[0] * 256 + numbers[1], numbers[2] * 256 + numbers[3]
            padded = len(pair_a[1]) == 3 or first.startswith("0")
            why = "" if padded else "either coarse.fine pairs or thousands marks"
            return (Values(a, b, "dotted", why, pairs=True),) if a <= b else ()
    a, b = _plain(first), _plain(last)
    if a > b or b >= 2**32:
        return ()
    return (Values(a, b, "dec", single=single),)


def _plain(text: str) -> int:
    return int(re.sub(r"\D", "", text))


def _byte(percent: float) -> int:
    return round(percent * 255 / 100)


def is_values(text: str) -> bool:
    """Whether a text is values and nothing else."""
    return bool(read_values(text))


def is_range(text: str) -> bool:
    """Whether a text is a stretch of values with two ends."""
    read = read_values(text)
    return bool(read) and not read[0].single


def as_single(values: Values) -> Values:
    """The same stretch as one point."""
    return replace(values, single=True)
