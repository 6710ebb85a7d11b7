"""Reads slots out of sentences; everything read so is doubtful."""

from __future__ import annotations

import re

from modebook.intake.chart_rows import SlotCell
from modebook.intake.drafts import DraftMode, DraftParameter, Unsure
from modebook.intake.entries import Entry
from modebook.intake.grid import Line, Place
from modebook.intake.lexicon import SURE, exact, phrases
from modebook.intake.names import read_name
from modebook.intake.quantities import spans
from modebook.intake.spans import fits

_SENTENCE = re.compile(r"(?<=[.;!])\s+(?=[^\W\d_])")


def modes_of_prose(lines: list[Line]) -> list[DraftMode]:
    """One mode out of the sentences that name slots and parameters; empty where no sentence does."""
    text = " ".join(line.text for line in lines)
    words = "|".join(sorted((re.escape(p) for p in phrases("phrases", "slotword")), key=len, reverse=True))
    slots = re.compile(
        rf"\b(?:{words})\b\.?\s*(?P<n>\d{{1,3}}(?:\s*(?:,|and|und|et|y|e|&|\+|-|–|to|bis)\s*\d{{1,3}})*)",
        re.IGNORECASE,
    )
    place = lines[0].place if lines else Place()
    mode = DraftMode("", None, None, place)
    for sentence in _SENTENCE.split(text):
        found = list(slots.finditer(sentence))
        for index, match in enumerate(found):
            end = found[index + 1].start() if index + 1 < len(found) else len(sentence)
            numbers = [int(n) for n in re.findall(r"\d+", match["n"])]
            if not numbers or len(numbers) > 4 or any(not 0 < n <= 512 for n in numbers):
                continue
            word = _word(sentence[match.end() : end]) or (
                _word(sentence[: match.start()]) if len(found) == 1 else None
            )
            if word is None or len(set(numbers)) != len(numbers):
                continue
            entry = Entry(
                {0: SlotCell("slots", tuple(numbers))}, name=word[1], place=place, printed=sentence.strip()
            )
            made = DraftParameter(word[0], numbers, entry, read_name(word[1]), label=word[1])
            quantities = [q for q in spans(sentence[match.end() : end]) if fits(word[0], q.unit)]
            if len(quantities) == 1:
                made.span = {"from": quantities[0].start, "to": quantities[0].end, "unit": quantities[0].unit}
            made.doubt(
                "read out of a sentence, not out of a table", sentence.strip(), f"{word[0]} at {numbers}"
            )
            mode.parameters.append(made)
    if not mode.parameters:
        return []
    mode.parameters.sort(key=lambda p: p.slots[0])
    from modebook.intake.cell_blocks import find_cells
    from modebook.intake.mode_drafts import _footprint, _shared_slots

    find_cells(mode)
    _shared_slots(mode)
    _footprint(mode)
    mode.unsure.append(Unsure("the mode was read out of sentences", "", "one mode", "", place))
    return [mode]


def _word(text: str) -> tuple[str, str] | None:
    """The first known parameter in a piece of a sentence: its word and the phrase."""
    tokens = re.findall(r"[^\W\d_][\w'’-]*", text)[:10]
    for start in range(len(tokens)):
        for length in range(min(4, len(tokens) - start), 0, -1):
            phrase = " ".join(tokens[start : start + length])
            known = exact(phrase)
            if known and known.score >= SURE and known.word not in ("control", "reserved"):
                return known.word, phrase
    return None
