"""Brings columns of figures in running lines into the one form that rows are read in, as their titles say."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

_PAIR = re.compile(r"(?<!\S)(\d{1,3}|\d{5}) (\d{1,3}|\d{5})(?=\s|$)")
_SPAN = r"(?P<{0}>[0-9A-F]{{1,4}}){1}\s?(?:[-–—]|to|bis)\s?(?P<{2}>[0-9A-F]{{1,4}}){1}"
_VALUES = re.compile(rf"(?<![\w.,-]){_SPAN.format('a', '', 'b')}(?![\w%])")
_PERCENT = re.compile(rf"\s{_SPAN.format('a', ' ?%?', 'b')}(?: ?%)?(?=\s|$)")
_HEX = re.compile(
    rf"\s(?:0x)?{_SPAN.format('a', 'h?', 'b').replace('(?P<b>', '(?:0x)?(?P<b>')}(?=\s|$)", re.IGNORECASE
)
_LAST = re.compile(r"\s(\d{1,3})$")


@dataclass(frozen=True, slots=True)
class Columns:
    """What a line of titles says of the lines below it."""

    roles: tuple[str, ...] = ()
    slots: int = 1
    """How many columns of slots there are."""
    defaults: bool = False
    """Whether the rows of slots end with a default."""


def columns_of(roles: Sequence[str], slots: int, below: Sequence[str]) -> Columns:
    """The columns that titles name; a default counts where nearly all rows of slots below end with one."""
    rows = [" ".join(text.split()) for text in below]
    last = bool(roles) and roles[-1] == "default"
    ends: list[str] = []
    for text, under in zip(rows, [*rows[1:], ""], strict=True) if last else ():
        name = " ".join(text.split()[slots:])
        if _lead(text.split(), slots) != slots:
            continue
        if _VALUES.search(name) or _PAIR.search(name) or ("from" not in roles and _LAST.search(text)):
            ends.append(text)
        elif re.match(r"0{1,3}(?!\d)", under):
            ends.append(under)  # its values stand on the lines below
    ended = sum(_LAST.search(text) is not None for text in ends)
    return Columns(tuple(roles), slots, ended >= 0.9 * len(ends) > 0)


def without_group(text: str, columns: Columns, slot: int) -> tuple[str, str]:
    """A line without the label of a group before its slot, and the label: `Ring 1 8 Red` behind slot 7."""
    if columns.roles[:2] != ("group", "slot") or not text[:1].isalpha():
        return text, ""
    for found in re.finditer(r"(?<=\s)(\d{1,3})\s+(?=[^\W\d])", text):
        if int(found[1]) == slot + 1:
            return text[found.start() :], text[: found.start()].strip()
    return text, ""


def is_group(text: str, columns: Columns, slot: int, under: str) -> bool:
    """Whether a line is the label of the slots below it: under a title for groups, or in capitals."""
    titled = columns.roles[:1] == ("group",) or text.isupper()
    short = len(text.split()) <= 4 and text[:1].isalpha() and _VALUES.search(text) is None
    return titled and short and re.match(rf"{slot + 1}(?:\s+[^\W\d]|$)", under) is not None


def in_one_form(text: str, columns: Columns, end: int | None, *, first: bool) -> tuple[str, str]:
    """A line without what its titles name besides slots, values and words, and its default.

    `0 255` under From and To becomes `0-255`; percent and hex that say once more what the values say go; a
    number at the end under Default goes. `end`: the value that the line above ended with; `first`: the line
    above is a slot without values.
    """
    default = ""
    last = _LAST.search(text)
    if columns.defaults and last is not None and (first or _lead(text.split(), columns.slots)):
        text, default = text[: last.start()], last[1]
    if "from" in columns.roles and "to" in columns.roles:
        text = _joined(text, columns.slots, end)
    if "percent" in columns.roles and end is not None:
        text = _single(text, end)
    found = _VALUES.search(text)
    if found is None or not (found["a"] + found["b"]).isdecimal():
        return text, default
    a, b = int(found["a"]), int(found["b"])
    for role, pattern, base, scale in (("percent", _PERCENT, 10, 100 / 255), ("hex", _HEX, 16, 1.0)):
        again = pattern.match(text, found.end()) if role in columns.roles and b <= 255 else None
        if again is None or (base == 10 and not (again["a"] + again["b"]).isdecimal()):
            continue
        if max(abs(int(again["a"], base) - a * scale), abs(int(again["b"], base) - b * scale)) < 2:
            text = text[: again.start()] + text[again.end() :]
    return text, default


def _single(text: str, end: int) -> str:
    """`128 50 Neutral` behind a value of 127: the second number says in percent what the first says."""
    found = re.match(r"(\d{1,3}) (\d{1,3})(?: ?%)?(?=\s)", text)
    if found and int(found[1]) == end + 1 and abs(int(found[1]) * 100 / 255 - int(found[2])) < 2:
        return found[1] + text[found.end() :]
    return text


def _lead(words: list[str], slots: int) -> int:
    """How many words of a line are its slots, or dashes for them; 0 where no name follows."""
    lead = 0
    while lead < min(slots, len(words)) and re.fullmatch(r"\d{1,3}|[-–—]", words[lead]):
        lead += 1
    return lead if lead < len(words) and words[lead][0].isalpha() else 0


def _joined(text: str, slots: int, end: int | None) -> str:
    """A line whose two numbers are the ends of a range: behind the slots and the name, or going on from the
    values above.
    """
    lead = _lead(text.split(), slots)
    found = _PAIR.search(text, len(" ".join(text.split()[:lead])) + 1) if lead else None
    if found is None:
        found = _PAIR.match(text)
        if found is not None and int(found[1]) not in (0, -1 if end is None else end + 1):
            return text
    if found is None or int(found[1]) > int(found[2]):
        return text
    return f"{text[: found.start()]}{found[1]}-{found[2]}{text[found.end() :]}"
