"""Names of two uses settled by their company: a size beside a laser, warm beside cool, a tempo of a program."""

from __future__ import annotations

import re

from modebook.intake.drafts import DraftMode, DraftParameter
from modebook.intake.folding import fold
from modebook.words.parameters import PARAMETERS

_PAIRS = (("warm-white", "cool-white"),)
_LASERS = frozenset({"laser-output", "laser-pattern"})
_HEADS = frozenset({"pan", "tilt", "rotating-gobo-wheel", "gobo-rotation", "movement-speed"})
_OF_LASERS: tuple[tuple[str, re.Pattern[str]], ...] = (
    (
        "laser-pattern",
        re.compile(r"(?:pattern|figure|image|muster|figur|bild|motif|forme|patron|figura|imagen|immagine)s?"),
    ),
    ("image-scale", re.compile(r"size|scale|grosse|taille|tamano|dimensione|grandezza")),
    ("image-rotation", re.compile(r"rotation|drehung|rotacion|giro|rotazione")),
    ("image-position-x", re.compile(r"x position|position x|x|posicion x|posizione x")),
    ("image-position-y", re.compile(r"y position|position y|y|posicion y|posizione y")),
    ("color-preset", re.compile(r"colou?rs?|farben?|couleurs?|color(?:es)?|colori?e?")),
)
"""What the names of a laser's parameters stand for, folded: it has no wheels, and nothing of it is panned."""
_PROGRAMS = frozenset({"macro", "color-macro", "effect", "pixel-effect", "pixel-macro", "movement-macro"})
_BEATS = re.compile(r"\bbpm\b|beat|schl[aä]ge|battements|pulsaciones|battiti", re.IGNORECASE)


def settle_by_company(mode: DraftMode) -> None:
    """Settle the words of parameters whose names alone leave two uses open."""
    words = {parameter.word for parameter in mode.parameters}
    for pair in _PAIRS:
        if words.issuperset(pair):
            for parameter in mode.parameters:
                if parameter.word in pair:
                    _settle(parameter, parameter.word)
    if words & _LASERS and not words & _HEADS:
        _as_laser(mode)
    if "color-scroller" in words and not words & _HEADS:
        for parameter in mode.parameters:
            if parameter.word == "color-wheel-rotation" and not parameter.name.sure:
                _settle(parameter, "color-speed")
    previous: DraftParameter | None = None
    for parameter in mode.parameters:
        if parameter.word == "tempo" and not parameter.name.sure and previous is not None:
            _as_speed(parameter, previous)
        previous = parameter


def _as_laser(mode: DraftMode) -> None:
    for parameter in mode.parameters:
        form = fold(parameter.label)
        for word, pattern in _OF_LASERS:
            if pattern.fullmatch(form):
                _settle(parameter, word)


def _as_speed(parameter: DraftParameter, previous: DraftParameter) -> None:
    """A tempo right behind a program, without a word of beats, is how fast that runs."""
    speed = f"{previous.word}-speed"
    if previous.word not in _PROGRAMS or speed not in PARAMETERS:
        return
    if not any(_BEATS.search(text) for text in (parameter.label, *(s.text for s in parameter.stretches))):
        _settle(parameter, speed)


def _settle(parameter: DraftParameter, word: str) -> None:
    parameter.word = word
    parameter.unsure = [
        u for u in parameter.unsure if not u.why.startswith(("the name may mean", "the name is not in"))
    ]
