"""The synonyms: what a printed phrase is called in the vocabulary, and how sure that is."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache, lru_cache

from modebook.intake.folding import bare, fold
from modebook.intake.wording import all_wording

SURE = 0.9
"""From this score on, what was read is not marked as doubtful."""
_GUESS = 0.76
_TYPO = 0.93
INFLECTED = 0.92
_MARGIN = 0.04
_SHORTEST_TYPO = 7


@dataclass(frozen=True, slots=True)
class Found:
    """A word of the vocabulary for a printed phrase; a score of 1 is a phrase of the lists."""

    word: str
    score: float
    phrase: str


@cache
def synonyms() -> dict[str, tuple[str, float]]:
    """Every phrase of the lists in its bare form, with its word and score; an earlier language wins."""
    found: dict[str, tuple[str, float]] = {}
    for key, phrase, _ in all_wording("parameters"):
        score = 0.8 if phrase.endswith("?") else 1.0
        form = bare(phrase.rstrip("?"))
        known = found.get(form)
        if known is None:
            found[form] = (key, score)
        elif known[0] != key:
            # Two languages use one phrase for different things: whichever is meant, it is not sure.
            found[form] = (known[0], min(known[1], score, 0.8))
        elif score < known[1]:
            found[form] = (key, score)
    return found


@cache
def phrases(subject: str, key: str) -> frozenset[str]:
    """The folded phrases of one key, all languages."""
    return frozenset(fold(phrase) for name, phrase, _ in all_wording(subject) if name == key)


@cache
def keyed(subject: str, prefix: str = "") -> dict[str, str]:
    """Folded phrase to key (without the prefix), for the keys that begin with it."""
    return {
        fold(phrase): key.removeprefix(prefix)
        for key, phrase, _ in reversed(all_wording(subject))
        if key.startswith(prefix)
    }


def exact(text: str) -> Found | None:
    """The word for a phrase that stands in the lists, articles and spelling apart."""
    form = bare(text)
    known = synonyms().get(form)
    if known is None and " and " in f" {form} ":
        known = synonyms().get(" ".join(word for word in form.split() if word != "and"))
    if known is None:
        joined = " ".join(word for word in form.split() if word not in ("and", "und", "et", "y", "e"))
        known = synonyms().get(joined) if joined != form else None
    return Found(known[0], known[1], form) if known else None


_ENDING = re.compile(r"(?:eux|aux|en|er|es|os|as|is|s|e|i|o|a|n)$")


def _stem(form: str) -> str:
    """A phrase without the endings of number and gender; short words stay as they are."""
    cut = [(word, _ENDING.sub("", word)) for word in form.split()]
    return " ".join(stem if len(stem) >= 4 else word for word, stem in cut)


@cache
def _stems() -> dict[str, str | None]:
    """Sure phrases by their stems; None where one stem is of two words."""
    found: dict[str, str | None] = {}
    for phrase, (word, score) in synonyms().items():
        if score < SURE:
            continue
        stem = _stem(phrase)
        found[stem] = word if found.get(stem, word) == word else None
    return found


def inflected(text: str) -> Found | None:
    """The word for a phrase in another number or gender (plural, feminine), or with words cut short by a
    point, if it is the only one.
    """
    form = bare(text)
    if len(form) < 4:
        return None
    word = _stems().get(_stem(form))
    return Found(word, INFLECTED, form) if word else None


@cache
def _bags() -> dict[tuple[str, ...], str | None]:
    """Sure phrases of several words by their words in any order; None where one bag is of two words."""
    found: dict[tuple[str, ...], str | None] = {}
    for phrase, (word, score) in synonyms().items():
        bag = tuple(sorted(phrase.split()))
        if len(bag) < 2 or score < SURE:
            continue
        found[bag] = word if found.get(bag, word) == word else None
    return found


_ASPECTS = frozenset(
    (
        *("index", "indexing", "position", "angle", "rotation", "rotate", "rotating", "rot", "idx"),
        *("spin", "speed", "time", "macro", "mode", "indexation", "winkel", "drehung", "indice"),
        *("posicion", "angulo", "rotacion", "posizione", "angolo", "rotazione", "vitesse", "velocidad"),
        *("velocita", "geschwindigkeit"),
    )
)


def reordered(text: str) -> Found | None:
    """The word for a phrase of the lists in another order (`Prism circular`), if it is the only one."""
    form = bare(text)
    if len(_ASPECTS.intersection(form.split())) > 1:
        return None  # the index of a rotation is not its rotation
    word = _bags().get(tuple(sorted(form.split())))
    return Found(word, INFLECTED, form) if word else None


@lru_cache(maxsize=4_000)
def shortened(text: str) -> Found | None:
    """The word for a name whose words are cut short with a point (`Temp. color`), if it is the only one."""
    if "." not in text:
        return None
    pieces = [(bare(piece), piece.endswith(".")) for piece in text.replace(".", ". ").split()]
    pieces = [(form, cut) for form, cut in pieces if form]
    if not pieces or not any(cut and len(form) >= 3 for form, cut in pieces):
        return None
    fitting: dict[str, str] = {}
    for phrase, (word, score) in synonyms().items():
        parts = phrase.split()
        if (
            score >= SURE
            and len(parts) == len(pieces)
            and all(
                part.startswith(form) if cut else part == form
                for part, (form, cut) in zip(parts, pieces, strict=True)
            )
        ):
            fitting[phrase] = word
    # Of a phrase and longer ones that begin with it (Farbtemperatur, -korrektur) the short one is meant.
    words = {
        word
        for phrase, word in fitting.items()
        if not any(phrase != other and phrase.startswith(other) for other in fitting)
    }
    return Found(words.pop(), INFLECTED, text) if len(words) == 1 else None


def nearest(text: str) -> Found | None:
    """The word whose phrase is spelled most like a text: sure only for long words with one slip."""
    from rapidfuzz import fuzz, process

    form = bare(text)
    if len(form) < 4:
        return None
    near = process.extract(form, list(synonyms()), scorer=fuzz.ratio, limit=6, score_cutoff=100 * _GUESS)
    if not near:
        return None
    phrase, score, _ = near[0]
    word, weight = synonyms()[phrase]
    others = [one[1] for one in near if synonyms()[one[0]][0] != word]
    share = score / 100
    apart = share - max(others, default=0.0) / 100
    sure = share >= _TYPO and apart >= _MARGIN and len(form) >= _SHORTEST_TYPO and weight >= SURE
    return Found(word, max(share, SURE) if sure else min(share, SURE - 0.01), phrase)
