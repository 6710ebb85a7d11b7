"""The wording of charts in five languages: plain lists, one file a subject and language, and their reader."""

from __future__ import annotations

from functools import cache
from pathlib import Path

LANGUAGES = ("en", "de", "fr", "es", "it")


@cache
def wording(subject: str, language: str) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """The lists of one file: (key, phrases) in the file's order. A line is `key = phrase; phrase`.

    A key may stand on several lines. Lines that begin with # are for people.
    """
    file = Path(__file__).with_name(f"{subject}.{language}.txt")
    found: list[tuple[str, tuple[str, ...]]] = []
    for line in file.read_text(encoding="utf-8").splitlines():
        if not line.strip() or line.startswith("#"):
            continue
        key, _, phrases = line.partition("=")
        found.append((key.strip(), tuple(p.strip() for p in phrases.split(";") if p.strip())))
    return tuple(found)


@cache
def all_wording(subject: str) -> tuple[tuple[str, str, str], ...]:
    """Every phrase of a subject as (key, phrase, language), English first."""
    return tuple(
        (key, phrase, language)
        for language in LANGUAGES
        for key, phrases in wording(subject, language)
        for phrase in phrases
    )
