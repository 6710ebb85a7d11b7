"""Drafts charts for tests, and says what came of them in short forms that a person can check by eye."""

from __future__ import annotations

from typing import Any

from modebook.documents.fixture import Fixture
from modebook.documents.modes import Mode, Parameter, spans_of
from modebook.intake.draft import draft_text


def drafted(text: str) -> Fixture:
    """The document of a pasted text."""
    return draft_text(text).document


def short(parameter: Parameter) -> tuple[Any, ...]:
    """Word, slots, and the ranges as from, to, meaning."""
    return (parameter.parameter, parameter.slots, [(r.from_, r.to, r.meaning) for r in parameter.ranges])


def slots(mode: Mode) -> list[tuple[str, list[int]]]:
    """Word and slots of each parameter."""
    return [(p.parameter, p.slots) for p in mode.parameters]


def spans(mode: Mode) -> dict[str, list[tuple[float, float, str]]]:
    """The spans that parameters have, by word."""
    found = {p.parameter: [(s.from_, s.to, str(s.unit)) for s in spans_of(p.span)] for p in mode.parameters}
    return {word: one for word, one in found.items() if one}


def named(mode: Mode, word: str) -> Parameter:
    """The one parameter of a word."""
    (found,) = [p for p in mode.parameters if p.parameter == word]
    return found


def whys(document: Fixture, pointer: str = "") -> list[str]:
    """Why the doubts at or below a pointer are there."""
    return [
        d.why
        for d in document.doubts
        if d.pointer == pointer or d.pointer.startswith(pointer.rstrip("/") + "/")
    ]
