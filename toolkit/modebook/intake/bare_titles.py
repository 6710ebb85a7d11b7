"""Titles of modes that are but a name (`Basic`, `Extended`): told by where they stand, above every slot 1."""

from __future__ import annotations

import re
from dataclasses import dataclass

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.folding import fold
from modebook.intake.grid import Grid, Line, Place, Source
from modebook.intake.headings import read_footnote, read_mode_head
from modebook.intake.names import read_name
from modebook.intake.title_lines import title_line
from modebook.intake.titles import is_title_row, title_roles
from modebook.intake.values import read_values

Key = tuple[str, Place]
LONGEST = 4  # words
_FIRST = re.compile(r"(?:ch\.?|channel|slot|kanal|canal|canale)?\s*0*1[.:)]?\s+[^\W\d]", re.IGNORECASE)
_USUAL = frozenset(
    {
        *("basic", "standard", "extended", "advanced", "full", "raw", "compact", "simple", "normal"),
        *("expert", "complete", "short", "reduced", "einfach", "erweitert", "voll", "kompakt"),
        *("reduziert", "komplett"),
        *("etendu", "avance", "complet", "reduit", "basico", "avanzado", "extendido", "completo", "reducido"),
        *("base", "avanzato", "esteso", "ridotto", "semplice", "sencillo", "compacto", "compatto"),
        "estandar",
    }
)
"""What makers call modes by one word, folded. Common practice, no source."""
_LOOK = 5  # rows of a grid in which its slot 1 stands


@dataclass(slots=True)
class Start:
    """Where a chart begins, and the line that stands right above it."""

    above: Line | None


def bare_titles(source: Source) -> dict[Key, str]:
    """The lines that title a mode with its name alone, by text and place.

    Only where two charts or more begin at slot 1 and each has a short line of its own right above, each a
    different one: a line that stands once may be anything, but for the usual names of modes.
    """
    starts = [start for leaf in source.leaves for start in _starts(leaf.items)]
    texts = [_flat(start.above) for start in starts]
    usual = {
        (text, start.above.place): text
        for start, text in zip(starts, texts, strict=True)
        if start.above is not None and fold(text) in _USUAL
    }
    if len(texts) < 2 or not all(texts) or len({text.casefold() for text in texts}) != len(texts):
        return usual
    heads = [read_mode_head(text) for text in texts]
    if not all(head or _is_bare(text) for head, text in zip(heads, texts, strict=True)):
        return usual
    return {
        (text, start.above.place): text
        for start, head, text in zip(starts, heads, texts, strict=True)
        if head is None and start.above is not None
    }


def _starts(items: list[Line | Grid]) -> list[Start]:
    found: list[Start] = []
    above: Line | None = None
    for item in items:
        if isinstance(item, Grid):
            if _begins(item):
                found.append(Start(above))
            above = None
            continue
        text = _flat(item)
        if not text or title_line(text) is not None:
            continue
        if _FIRST.match(text) and read_name(re.sub(r"^\D*\d+\W*|[\d–-].*$", "", text)).sure:
            found.append(Start(above))
            above = None
            continue
        above = item
    return found


def _begins(grid: Grid) -> bool:
    """Whether a grid has titles of columns, slots among them, and slot 1 soon below."""
    for index, row in enumerate(grid.rows[:_LOOK]):
        texts = [cell.flat for cell in row]
        if index and _FIRST.match(texts[0]) and read_name(re.sub(r"^\D*\d+\W*", "", texts[0])).sure:
            return True  # slot and name in one cell
        slots = [c for c, text in enumerate(texts) if title_roles(text)[:1] == ("slot",)]
        if is_title_row(texts) and slots:
            below = grid.rows[index + 1 : index + 1 + _LOOK]
            return any(
                read_slot_cell(row[c].flat).slots[:1] == (1,) for row in below for c in slots if c < len(row)
            )
    return False


def _is_bare(text: str) -> bool:
    """Whether a line can be a name and nothing else: no values, no parameter's name, no sentence."""
    words = text.split()
    return (
        len(words) <= LONGEST
        and any(letter.isalpha() for letter in text)
        and not text.endswith((".", ",", ";", "%", "°"))
        and not read_values(text)
        and not any(read_values(word) and not word.isdigit() for word in words)
        and not read_name(text).sure
        and read_footnote(text) is None
    )


def _flat(line: Line | None) -> str:
    return " ".join(line.text.split()).strip(" :") if line is not None else ""
