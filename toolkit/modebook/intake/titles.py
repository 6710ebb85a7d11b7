"""Reads column titles: which column holds slots, values, names, meanings, and which are modes' own."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Literal

from modebook.intake.folding import fold
from modebook.intake.values import read_values
from modebook.intake.wording import all_wording

Role = Literal[
    "slot",
    "coarse",
    "fine",
    "value",
    "percent",
    "hex",
    "from",
    "to",
    "function",
    "meaning",
    "default",
    "group",
    "bits",
    "hold",
    "kept",
    "unit",
    "condition",
    "mode",
    "foreign",
    "none",
]

_NUMBERS = re.compile(r"^\(?\s*(?:0+\s*[-–.…]+\s*(?:255|65535|100\s*%|ff))\s*\)?$", re.IGNORECASE)


@cache
def _titles() -> dict[str, tuple[Role, ...]]:
    found: dict[str, list[Role]] = {}
    for key, phrase, _ in all_wording("titles"):
        form = fold(phrase)
        roles = found.setdefault(form, [])
        if key not in roles:
            roles.append(key)  # type: ignore[arg-type]
    return {form: tuple(roles) for form, roles in found.items()}


@cache
def _languages() -> dict[str, frozenset[str]]:
    found: dict[str, set[str]] = {}
    for _, phrase, language in all_wording("titles"):
        found.setdefault(fold(phrase), set()).add(language)
    return {form: frozenset(languages) for form, languages in found.items()}


def title_languages(text: str) -> frozenset[str]:
    """The languages in which a text is a known column title."""
    return _languages().get(fold(" ".join(text.split())), frozenset())


@cache
def _unbroken() -> dict[str, tuple[Role, ...]]:
    """The titles without their spaces; those that mean two things without them are left out."""
    found: dict[str, set[tuple[Role, ...]]] = {}
    for form, roles in _titles().items():
        found.setdefault(form.replace(" ", ""), set()).add(_titles().get(form.replace(" ", ""), roles))
    return {form: next(iter(roles)) for form, roles in found.items() if len(roles) == 1}


@lru_cache(maxsize=4_000)
def title_roles(text: str) -> tuple[Role, ...]:
    """The roles that a column title may mean, likeliest first; empty if it is no known title.

    Titles in two languages (``Channel / Kanal``) and with remarks (``Value (DMX)``) count as their parts.
    """
    flat = " ".join(text.split())
    if not flat or len(flat) > 48:
        return ()
    known = _titles()
    form = fold(flat)
    if form in known:
        return known[form]
    unmarked = fold(re.sub(r"\s*(?:#|n[°º]|no\.|nr\.)$|^#\s*", "", flat, flags=re.IGNORECASE))
    if unmarked in known and known[unmarked][0] in ("slot", "coarse", "fine"):
        return known[unmarked]  # `Channel #`
    joined = form.replace(" ", "")
    if len(joined) > 3 and joined in _unbroken():
        # A narrow column breaks words: `Canal e`, `Default val ue`.
        return _unbroken()[joined]
    if _NUMBERS.match(flat):
        return ("value",)
    # What stands in brackets is a remark: `Distance (m)`, `Value (DMX)`.
    outer = fold(re.sub(r"[(\[].*?[)\]]", " ", flat))
    inner = fold(" ".join(re.findall(r"[(\[](.*?)[)\]]", flat)))
    if outer and outer in known and outer != form:
        if inner and known.get(inner, ("",))[0] in ("hex", "percent") and known[outer][0] == "value":
            return known[inner]
        return known[outer]
    short = _abbreviated(flat)
    if short:
        return short
    parts = [fold(part) for part in re.split(r"[/|\n,–-]", flat) if fold(part)]
    if len(parts) > 1 and all(part in known for part in parts):
        shared = [role for role in known[parts[0]] if all(role in known[part] for part in parts[1:])]
        return tuple(shared) or known[parts[0]]
    return ()


def _abbreviated(text: str) -> tuple[Role, ...]:
    """The roles of a title whose words are cut short with a point: `Chan.`, `Val. iniziale`, `DMX-Ch.`"""
    if "." not in text:
        return ()
    words = [fold(word) for word in re.split(r"[\s-]+", text.replace(".", ". ")) if fold(word)]
    cut = [word.endswith(".") for word in re.split(r"[\s-]+", text.replace(".", ". ")) if fold(word)]
    if not any(len(word) >= 2 and short for word, short in zip(words, cut, strict=True)):
        return ()
    found: list[tuple[Role, ...]] = []
    for form, roles in _titles().items():
        parts = form.split()
        if len(parts) == len(words) and all(
            part.startswith(word) if short else part == word
            for part, word, short in zip(parts, words, cut, strict=True)
        ):
            found.append(roles)
    if not found:
        return ()
    shared = [role for role in found[0] if all(role in roles for roles in found)]
    return tuple(shared)


@dataclass(frozen=True, slots=True)
class Column:
    """A column's role; `mode` tells the modes of slot columns apart."""

    role: Role
    mode: int | None = None


def _titles_mode(text: str) -> bool:
    from modebook.intake.headings import read_mode_head

    return len(text) < 30 and read_mode_head(text) is not None


def is_title_row(texts: list[str]) -> int:
    """How many cells of a row are column titles, 0 unless the row can be a header at all."""
    filled = [text for text in texts if text.strip()]
    if len(filled) < 2:
        return 0
    known = [title_roles(text) for text in filled]
    if any(roles[:1] == ("slot",) for roles in known):
        # Under a slot column's title stand slots, beside it perhaps modes' titles: `Channel | 4 channels`.
        known = [
            roles or (("mode",) if _titles_mode(text) else ())
            for roles, text in zip(known, filled, strict=True)
        ]
    numbers = sum(bool(re.fullmatch(r"[\d\s.,–—…-]+", text)) for text in filled)
    hits = sum(bool(roles) for roles in known)
    if sum(roles[:1] == ("foreign",) for roles in known) * 2 >= len(filled):
        # Messages, menus, distances: the table is no chart.
        return 0
    firsts = {roles[0] for roles in known if roles}
    strong = firsts & {"slot", "value", "coarse", "from", "to", "hex", "percent"}
    words = sum(
        bool(roles) and any(letter.isalpha() for letter in text) and not _NUMBERS.match(text)
        for text, roles in zip(filled, known, strict=True)
    )
    if numbers or not hits or not words:
        return 0
    if any(read_values(text) and not _NUMBERS.match(text) for text in filled):
        return 0
    if hits >= 2 and (strong or hits == len(filled)):
        return hits
    return 0
