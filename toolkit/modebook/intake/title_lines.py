"""Reads column titles that stand in one running line, and tells the modes that a line of them names."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.grid import Line
from modebook.intake.headings import ModeHead, read_mode_head
from modebook.intake.lexicon import exact
from modebook.intake.names import read_name
from modebook.intake.titles import title_roles

_BULLET = re.compile(r"^[•‣◦▪●○■□▸►∙·]\s*(?=\w)")
MOST = 6  # modes side by side
LEAST = 2  # rows that bear a line of modes' names out


@dataclass(frozen=True, slots=True)
class NamedColumns:
    """Which line names modes before its other titles, and their names."""

    line: int
    modes: list[str]
    roles: list[str]


def title_line(text: str) -> list[str] | None:
    """The roles that a line of column titles gives, in order; None if it is no such line."""
    told = _titles(text)
    return None if told is None else [role for role, _ in told]


def modes_in_titles(text: str) -> list[str]:
    """What a line of column titles calls its columns of slots, if it has several: `6CH`, `9 ch.`"""
    slots = [phrase for role, phrase in _titles(text) or [] if role == "slot"]
    return slots if len(slots) > 1 else []


def _titles(text: str) -> list[tuple[str, str]] | None:
    words = text.split()
    if not 2 <= len(words) <= 14 or exact(text) is not None:
        return None  # `No effect` is a meaning, though both words title columns
    for lengths in ((4, 3, 2, 1), (1, 2, 3, 4)):
        told = _title_words(words, lengths)
        if told is not None and len(told) >= 2 and any(role == "slot" for role, _ in told):
            return told
    return None


def _title_words(words: list[str], lengths: tuple[int, ...]) -> list[tuple[str, str]] | None:
    """Words read as titles of so many words each, in the order of `lengths`: role and words of each."""
    found: list[tuple[str, str]] = []
    numbered = _numbered_modes(words)
    at = 0
    while at < len(words):
        for length in lengths:
            phrase = " ".join(words[at : at + length])
            known = title_roles(phrase) if at + length <= len(words) else ()
            shorter = length > 1 and _is_mode(" ".join(words[at : at + length - 1]))
            if not known and at + length <= len(words) and length < 4 and _is_mode(phrase) and not shorter:
                known = ("slot",)
            if at in numbered and length == 2:
                known = ("slot",)
            if known:
                # `DMX` behind a title of slots means values.
                roles = {role for role, _ in found}
                twice = known[0] == "slot" and "slot" in roles and "value" in known
                found.append(("value" if twice and "value" not in roles else known[0], phrase))
                at += length
                break
        else:
            return None
    return found


def _numbered_modes(words: list[str]) -> frozenset[int]:
    """Where `Mode 1`, `Mode 2` begin among the words of a line; one alone titles no column of slots."""
    found = [
        at
        for at in range(len(words) - 1)
        if words[at + 1].isdigit()
        and (head := read_mode_head(f"{words[at]} {words[at + 1]}")) is not None
        and head.number is not None
    ]
    return frozenset(found if len(found) > 1 else ())


def _is_mode(phrase: str) -> bool:
    """Whether a title is a mode's, such as `6CH`: under it stand its slots."""
    head = read_mode_head(phrase)
    return head is not None and head.footprint is not None and len(re.findall(r"\d+", phrase)) == 1


def named_columns(lines: Sequence[Line]) -> NamedColumns | None:
    """The line `Basic Extended Function Value`: modes' names of a word each, then titles.

    Only where the rows below begin with as many slots or dashes; no title is taken on its word alone.
    """
    for index, line in enumerate(lines):
        words = line.text.split()
        for count in range(2, min(MOST, len(words) - 2) + 1):
            names, rest = words[:count], words[count:]
            if not _could_be_modes(names):
                continue
            told = _title_words(rest, (4, 3, 2, 1)) or _title_words(rest, (1, 2, 3, 4)) or []
            roles = [role for role, _ in told]
            if "slot" in roles or not {"function", "value", "meaning"} & set(roles) or len(roles) < 2:
                continue
            if _borne_out(lines[index + 1 :], count):
                return NamedColumns(index, names, roles)
        beside = _beside_titles(lines, index)
        if beside is not None:
            return beside
    return None


def _beside_titles(lines: Sequence[Line], index: int) -> NamedColumns | None:
    """The line `Standard Extended`, or `6CH 11CH`, under or over titles of which one is for slots."""
    names = lines[index].text.split()
    if not 2 <= len(names) <= MOST or not all(any(letter.isalpha() for letter in name) for name in names):
        return None
    if len({name.casefold() for name in names}) != len(names) or any(read_name(n).sure for n in names):
        return None
    for other in (index - 1, index + 1):
        roles = title_line(lines[other].text) if 0 <= other < len(lines) else None
        if roles is None or roles.count("slot") != 1 or not {"function", "value", "meaning"} & set(roles):
            continue
        if _count_up(lines[max(index, other) + 1 :], len(names)):
            return NamedColumns(index, names, roles)
    return None


def _could_be_modes(names: list[str]) -> bool:
    distinct = len({name.casefold() for name in names}) == len(names)
    return distinct and all(
        any(letter.isalpha() for letter in name) and not title_roles(name) and not read_name(name).sure
        for name in names
    )


def _count_up(lines: Sequence[Line], count: int) -> bool:
    """Whether the rows that begin with as many slots or dashes as there are names count up from 1 in each."""
    last = [0] * count
    full = 0
    for words in (line.text.split() for line in lines):
        if len(words) <= count or not all(re.fullmatch(r"\d{1,3}|[-–—]", word) for word in words[:count]):
            continue
        numbers = [int(word) if word.isdecimal() else 0 for word in words[:count]]
        if not all(number == 0 or number > before for number, before in zip(numbers, last, strict=True)):
            return False
        if full == 0 and not set(numbers) <= {0, 1}:
            return False
        full += 1
        last = [number or before for number, before in zip(numbers, last, strict=True)]
    return full >= LEAST and min(last) > 1


def _borne_out(lines: Sequence[Line], count: int) -> bool:
    """Whether the rows that begin with a slot or a dash begin with as many as there are names."""
    rows = [line.text.split() for line in lines if line.text.strip()]
    full = other = 0
    seen: set[int] = set()
    for words in rows:
        cells = [read_slot_cell(word) for word in words[: count + 1]]
        heads = [cell.kind in ("slots", "absent") for cell in cells]
        if len(words) > count and all(heads[:count]) and words[count][0].isalpha():
            full += 1
            seen.update(slot for cell in cells[:count] for slot in cell.slots)
        elif heads[:1] == [True] and len(words) > 1 and words[1][0].isalpha():
            # One number and words: a row of one column of slots, or a value.
            other += 1
    return full >= LEAST and 1 in seen and full > 2 * other


def mode_title(text: str, words: tuple[str, ...] = ()) -> ModeHead | None:
    """The mode that a line names, unless it is a line of column titles. `Effect mode (3 channels)` is none,
    though its words are titles: it has a footprint, and nothing for values. words: the pieces that wide
    gaps part; a number apart from the rest is a section's, as in `5   DMX CHANNELS`.
    """
    if len(words) > 1 and words[0].isdecimal() and text.startswith(words[0]):
        text = text[len(words[0]) :].strip()
    titles = {"function", "value", "meaning"} & set(title_line(text) or [])
    head = read_mode_head(text)
    whole = head is not None and head.strong and head.footprint is not None and titles == {"function"}
    return head if not titles or whole else None


def without_signs(text: str) -> str:
    """A line without the bullet or the signs of a heading that plain text puts before it."""
    told = _BULLET.sub("", " ".join(text.split()))
    # A mark of a footnote has a legend behind it, not a mode.
    return told.lstrip("# ") if told.startswith("#") and read_mode_head(told.lstrip("# ")) else told
