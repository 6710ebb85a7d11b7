"""Reads slots out of sentences: slot, name, values. Sentences that fit together count as a chart."""

from __future__ import annotations

import re

from modebook.intake.chart_rows import ChartRow, SlotCell
from modebook.intake.drafts import DraftMode, Unsure
from modebook.intake.entries import build_entries
from modebook.intake.footnotes import Footnotes
from modebook.intake.grid import Line, Place
from modebook.intake.lexicon import SURE, exact, phrases
from modebook.intake.mode_drafts import build_mode
from modebook.intake.names import read_name
from modebook.intake.setting_ranges import Settings
from modebook.intake.values import read_values

_NUMBERS = r"\d{1,3}(?:\s*(?:,|and|und|et|y|e|&|\+|-|–|to|bis)\s*\d{1,3})*"
_LEAD = r"(?:[^\W\d_]+\s+)?"
_RANGE = re.compile(
    rf"(?P<lead>{_LEAD})(?<![\d.,°%])(?P<values>\d{{1,3}}(?:\s*(?:[-–—…]|\.\.+|to|bis|à|a)\s*\d{{1,3}})?)"
    r"\s*(?P<sign>[:=(]|→|->)\s*(?=[^\W\d_])",
    re.IGNORECASE,
)
_END = re.compile(r"[.;]\s*$")
_MOST_WORDS = 6
_ARTICLES = frozenset(
    (
        "the",
        "a",
        "an",
        "der",
        "die",
        "das",
        "den",
        "dem",
        "le",
        "la",
        "les",
        "el",
        "los",
        "las",
        "il",
        "lo",
        "i",
    )
)


def modes_of_prose(lines: list[Line], settings: Settings) -> list[DraftMode]:
    """One mode out of the sentences that name slots and parameters; empty where no two sentences do.

    Slots that do not count from 1, or a slot named twice, leave every parameter doubtful.
    """
    rows = _rows(" ".join(line.text for line in lines), lines[0].place if lines else Place())
    numbers = [slot for row in rows for cell in row.slots.values() for slot in cell.slots]
    if len(numbers) < 2:
        return []
    place = next((line.place for line in lines if rows[0].raw[:20] in line.text), rows[0].place)
    mode = DraftMode("", None, None, place)
    entries, _ = build_entries(rows)
    build_mode(mode, entries, 0, settings, Footnotes([]))
    if sorted(numbers) != list(range(1, len(numbers) + 1)):
        for parameter in mode.parameters:
            parameter.doubt("read out of sentences whose slots do not count from 1 on")
        mode.unsure.append(Unsure("the mode was read out of sentences", "", "one mode", "", place))
    return [mode]


def _rows(text: str, place: Place) -> list[ChartRow]:
    words = "|".join(sorted((re.escape(p) for p in phrases("phrases", "slotword")), key=len, reverse=True))
    pattern = re.compile(rf"\b(?:{words})\b\.?\s*(?P<n>{_NUMBERS})\b(?!\s*(?:{words})\b)", re.IGNORECASE)
    found = list(pattern.finditer(text))
    rows: list[ChartRow] = []
    for index, match in enumerate(found):
        end = found[index + 1].start() if index + 1 < len(found) else len(text)
        numbers = tuple(int(n) for n in re.findall(r"\d+", match["n"]))
        if not all(0 < n <= 512 for n in numbers) or len(numbers) > 4 or len(set(numbers)) != len(numbers):
            continue
        behind = text[match.end() : end]
        before = re.split(r"[.;!]\s", text[: match.start()])[-1]
        name = _name(behind) or _name(before)
        if name is None:
            continue
        rows.extend(_slot_rows(numbers, name, behind, place))
    return rows


def _slot_rows(numbers: tuple[int, ...], name: str, text: str, place: Place) -> list[ChartRow]:
    ranges = [m for m in _RANGE.finditer(text) if read_values(m["values"])]
    stop = ranges[0].start() if ranges else len(text)
    told = _END.sub("", text[:stop].split(". ")[0].strip())
    at = told.casefold().find(name.casefold())
    remark = told[at + len(name) :] if at >= 0 else ""
    head = ChartRow(
        place, {0: SlotCell("slots", numbers)}, name=_bare(name), raw=_END.sub("", text.strip())[:120]
    )
    if remark.strip(" ,:()–-"):
        head.meaning = remark.strip(" ,:–-")
        if head.meaning.startswith("(") and head.meaning.endswith(")"):
            head.meaning = head.meaning[1:-1]
    made = [head]
    if not ranges and re.search(r"\d{1,3}\s*(?:[-–—…]|\.\.+|to|bis|à|a)\s*\d{1,3}(?![\d%°]|\s*[%°K])", text):
        head.why.append("values are told in this sentence, and were not understood")
    elif ranges and any(read_values(v) for v in _left(text[stop:], ranges, stop)):
        head.why.append("not all values of this sentence were understood")
    for index, match in enumerate(ranges):
        end = ranges[index + 1].start() if index + 1 < len(ranges) else len(text)
        meaning = text[match.end() : end].strip()
        if index + 1 == len(ranges):
            meaning = re.split(r"\.\s+(?=[^\W\d_])", meaning)[0]
        meaning = re.sub(r"[\s.;,]+$", "", meaning)
        if match["sign"] == "(":
            meaning = meaning.removesuffix(")")
        made.append(ChartRow(place, value=match["values"], meaning=meaning, raw=match[0] + meaning))
    return made


def _left(text: str, ranges: list[re.Match[str]], offset: int) -> list[str]:
    """Values in a text that none of the ranges found begins with."""
    starts = {match.start("values") - offset for match in ranges}
    pattern = re.compile(r"(?<![\d.,°%])\d{1,3}\s*[-–—]\s*\d{1,3}(?![\d%°]|\s*[%°K])")
    return [match[0] for match in pattern.finditer(text) if match.start() not in starts]


def _bare(name: str) -> str:
    """A name without the article before it and the conjunction behind it."""
    words = name.split()
    while len(words) > 1 and words[0].casefold() in _ARTICLES:
        words.pop(0)
    while len(words) > 1 and words[-1].casefold() in ("and", "und", "et", "y", "e"):
        words.pop()
    return " ".join(words)


def _name(text: str) -> str | None:
    """The first known name among the first words of a piece of a sentence, as printed."""
    tokens = list(re.finditer(r"[^\W\d_][\w'’-]*", re.split(r"[.;]\s", text)[0]))[: _MOST_WORDS + 4]
    for start in range(min(len(tokens), _MOST_WORDS)):
        for length in range(min(5, len(tokens) - start), 0, -1):
            phrase = text[tokens[start].start() : tokens[start + length - 1].end()]
            if re.search(r"[.;:(]\s", phrase):
                continue
            known = exact(phrase)
            read = read_name(phrase)
            sure = (known is not None and known.score >= SURE) or (read.level and read.sure)
            if (sure and read.word not in ("control", "reserved")) or (
                known and start == 0 and known.score >= SURE
            ):
                return phrase
    return None
