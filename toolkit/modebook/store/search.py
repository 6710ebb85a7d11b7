"""Finds modes: by free text and by what is asked exactly, in any combination, in SQL alone."""

from __future__ import annotations

import re
import sqlite3
import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple, get_args

from modebook.documents.ways import SmoothingBy
from modebook.store.errors import SearchError
from modebook.store.full_text import SEARCHED
from modebook.store.search_rows import RECORDED, mark
from modebook.words.e120 import CATEGORIES
from modebook.words.parameters import PARAMETERS
from modebook.words.records import STANDINGS

SMOOTHING_BY: tuple[str, ...] = (
    "slot",
    "rdm",
    "remote",
    *(b for b in get_args(SmoothingBy) if b not in ("slot", "rdm")),
)
"""What can be asked of smoothing: `remote` is by slot or over RDM."""

_WORD = re.compile(r"\w+")


@dataclass(frozen=True, slots=True)
class ModeQuery:
    """What is asked; everything that is given must hold."""

    text: str = ""
    """Words that stand in names, labels, meanings, parameters or settings; the last may be a beginning."""
    smoothing_by: str | None = None
    """One of SMOOTHING_BY."""
    smoothing_length_packets: float | None = None
    """A length that some way reaches in the mode; with `smoothing_by`, that this very way reaches.

    What a maker gives in packets must agree exactly; seconds count at the assumed refresh rate, rounded to
    whole packets."""
    min_bits: Mapping[str, int] = field(default_factory=dict)
    """Parameter words with the fewest bits that the finest such parameter may have."""
    has: Sequence[str] = ()
    """Parameter words that some slots control."""
    max_footprint: int | None = None
    category: str | None = None
    standing: str | None = None
    include_drafts: bool = False
    """Drafts are left out unless this is set or they are asked for by `standing`."""


class FoundMode(NamedTuple):
    """A mode that was found."""

    fixture: str
    id: str
    maker: str
    model: str
    mode: str
    number: int | None
    footprint: int
    ways: str
    """How its smoothing can be changed, in one string."""
    category: str
    standing: str
    given: str | None

    @property
    def smoothing_by(self) -> list[str]:
        """How its smoothing can be changed (see ways.smoothing_by)."""
        return self.ways.split()

    def to_json(self) -> dict[str, object]:
        """The mode for JSON; scripts rely on its keys."""
        return {
            "maker": self.maker,
            "model": self.model,
            "mode": self.mode,
            "number": self.number,
            "footprint": self.footprint,
            "smoothing_by": self.smoothing_by,
            "fixture": self.fixture,
            "id": self.id,
            "category": self.category,
            "standing": self.standing,
            "given": self.given,
        }


@dataclass(frozen=True, slots=True)
class Found:
    """What a search found."""

    total: int
    """All modes that answer, also those past the limit."""
    modes: tuple[FoundMode, ...]

    def to_json(self) -> dict[str, object]:
        """The answer for JSON."""
        return {"total": self.total, "modes": [mode.to_json() for mode in self.modes]}


def find(connection: sqlite3.Connection, query: ModeQuery, limit: int | None = None) -> Found:
    """The modes that answer a query, by maker, model and number; at most `limit`, where that is given.

    Raises SearchError for a word that is not in the vocabulary or a number out of bounds.
    """
    match, where, values = _conditions(query)
    condition = " AND ".join(where) or "1"
    hits = _HITS if match else "mode_order"
    total = 0
    if limit is not None:
        # What full text alone decides is counted there, without a look at anything else.
        counted = "search_fts" if match and len(where) == 1 else hits
        (total,) = connection.execute(f"SELECT count(*) FROM {counted} WHERE {condition}", values).fetchone()
    most = -1 if limit is None else limit
    rows = connection.execute(_FIRST.format(hits=hits, condition=condition), (*values, most))
    modes = tuple(map(FoundMode._make, rows))
    return Found(len(modes) if limit is None else total, modes)


_HITS = "search_fts CROSS JOIN mode_order ON mode_order.number = search_fts.rowid"
"""Full text first, each hit with its place: a narrow table, so that even a great many are soon sorted."""

_FIRST = """
SELECT fixture, id, maker, model, mode, modes.number, modes.footprint, smoothing_by, category, standing, given
FROM (
  SELECT mode_order.number AS hit, mode_order.place AS turn FROM {hits} WHERE {condition}
  ORDER BY turn LIMIT ?
) CROSS JOIN modes ON modes.rowid = hit ORDER BY turn"""


def _conditions(query: ModeQuery) -> tuple[bool, list[str], list[object]]:
    """Whether full text is asked, the conditions, and their values."""
    where: list[str] = []
    values: list[object] = []
    pieces = [f"marks : {one}" for one in marks_asked(query)]
    if query.standing is None and not query.include_drafts:
        pieces.append(f"marks : {RECORDED}")
    text = text_asked(query.text)
    if text:
        pieces.append(text)
    elif query.text.strip():
        where.append("0")  # signs alone: no word that anything could be found by
    if pieces:
        where.append("search_fts MATCH ?")
        values.append(" AND ".join(pieces))
    if query.max_footprint is not None:
        if query.max_footprint < 0:
            raise SearchError(f"a footprint of at most {query.max_footprint} slots: no mode has so few")
        where.append("mode_order.footprint <= ?")
        values.append(query.max_footprint)
    return bool(pieces), where, values


def text_asked(text: str) -> str:
    """Free text as a full-text query: every word must stand somewhere, the last as a beginning of one.

    Whatever is typed is safe: only runs of letters and digits are taken, each in quotes.
    """
    words = _WORD.findall(unicodedata.normalize("NFKC", text).replace("_", " "))
    if not words:
        return ""
    quoted = " AND ".join(f'"{word}"' for word in words)
    return f"{{{' '.join(SEARCHED)}}} : ({quoted}*)"


def marks_asked(query: ModeQuery) -> list[str]:
    """The marks that a mode must carry. Raises SearchError for a word that the vocabulary lacks."""
    asked: list[str] = []
    by, length = query.smoothing_by, query.smoothing_length_packets
    if by is not None and by not in SMOOTHING_BY:
        raise SearchError(f"smoothing by {by!r}: it is one of {', '.join(SMOOTHING_BY)}")
    if by is not None:
        asked.append(mark("by", by))
    if length is not None:
        if not 0 <= length <= 100_000:
            raise SearchError(f"a smoothing length of {length:g} packets is not within 0 to 100000")
        asked.append(mark(f"{by}-length" if by else "length", f"{length:g}"))
    for word in query.has:
        asked.append(mark("has", _known(word)))
    for word, bits in query.min_bits.items():
        if not 1 <= bits <= 32:
            raise SearchError(f"{bits} bits of {word}: a parameter has 1 to 32")
        asked.append(mark(_known(word), 8 * -(-bits // 8)))
    if query.category is not None:
        asked.append(mark("category", _one_of("category", query.category, CATEGORIES)))
    if query.standing is not None:
        asked.append(mark("standing", _one_of("standing", query.standing, STANDINGS)))
    return list(dict.fromkeys(asked))


def _known(word: str) -> str:
    return _one_of("parameter", word.strip().lower(), PARAMETERS)


def _one_of(kind: str, word: str, words: Mapping[str, object] | Mapping[object, object]) -> str:
    for known in words:
        if str(known).lower() == word.lower():
            return str(known)
    from rapidfuzz import process

    near = [
        name
        for name, _, _ in process.extract(word, [str(known) for known in words], limit=3, score_cutoff=60)
    ]
    hint = f"; is {' or '.join(near)} meant?" if near else ""
    raise SearchError(f"{word!r} is no {kind} that the vocabulary has{hint}")
