"""Makes printed words comparable: without case, accents, punctuation and articles."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

_PRIME = re.compile(r"(?<!\w)([uv])\s?['’′]")
_NOT_WORD = re.compile(r"[^\w%°#=]+|_+")
_BITS = re.compile(r"\b(8|16|24|32)[\s-]*bits?\b")
_ARTICLES = frozenset(
    [
        "of",
        "the",
        "for",
        "der",
        "die",
        "das",
        "des",
        "du",
        "de",
        "la",
        "le",
        "les",
        "del",
        "della",
        "dello",
        "dei",
        "degli",
        "delle",
        "di",
        "el",
        "los",
        "las",
        "von",
        "fur",
        "il",
        "lo",
        "gli",
        "l",
        "d",
        "al",
        "dem",
        "den",
        "per",
    ]
)
_SPELLINGS = (
    ("colour", re.compile(r"\bcolour"), "color"),
    ("grey", re.compile(r"\bgrey\b"), "gray"),
    ("programme", re.compile(r"\bprogramme"), "program"),
)


@lru_cache(maxsize=20_000)
def fold(text: str) -> str:
    """The words of a text in small letters, one space apart: ``Colour-Temp.`` becomes ``color temp``.

    A percent, degree or number sign stays, since it carries meaning by itself.
    """
    # The lists hold thousands of phrases: each step is taken only where its signs are there at all.
    plain = text.casefold()
    if not plain.isascii() or "'" in plain:
        plain = unicodedata.normalize("NFKD", _PRIME.sub(r"\1 prime ", plain))
        plain = "".join(letter for letter in plain if not unicodedata.combining(letter))
    plain = _NOT_WORD.sub(" ", plain)
    if "bit" in plain:
        plain = _BITS.sub(lambda found: f"{found[1]}bit", plain)
    for sign, pattern, replacement in _SPELLINGS:
        if sign in plain:
            plain = pattern.sub(replacement, plain)
    return " ".join(plain.split())


@lru_cache(maxsize=20_000)
def bare(text: str) -> str:
    """As fold, also without articles and short prepositions, unless nothing else is there."""
    words = fold(text).split()
    kept = [word for word in words if word not in _ARTICLES]
    return " ".join(kept or words)
