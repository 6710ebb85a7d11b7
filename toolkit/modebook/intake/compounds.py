"""Names put together of two known parts: a parameter and what of it is meant, such as its speed."""

from __future__ import annotations

import re
from functools import lru_cache

from modebook.intake.folding import bare, fold
from modebook.intake.lexicon import INFLECTED, SURE, Found, exact, inflected
from modebook.words.parameters import PARAMETERS

_ASPECTS: dict[str, tuple[str, ...]] = {
    "speed": ("speed", "rate", "velocity", "geschwindigkeit", "tempo", "vitesse", "velocidad", "velocita"),
    "rotation": ("rotation", "spin", "drehung", "rotacion", "giro", "rotazione"),
    "index": (
        *("index", "indexing", "position", "angle", "indizierung", "indexierung", "winkel", "indexation"),
        *("indice", "posicion", "angulo", "indexacion", "posizione", "angolo", "indicizzazione"),
    ),
    "time": ("time", "zeit", "temps", "duree", "tiempo", "durata"),
    "mode": ("mode", "modus", "modo", "modalita"),
    "macro": (
        *("macro", "macros", "program", "programs", "makro", "makros", "programm", "programme"),
        *("programmes", "programa", "programas", "programma", "programmi"),
    ),
    "size": ("size", "amplitude", "grosse", "taille", "tamano", "dimensione", "ampiezza"),
}
_ENDS = sorted(
    ((word, aspect) for aspect, words in _ASPECTS.items() for word in words if len(word) >= 5),
    key=lambda pair: -len(pair[0]),
)
_LINK = re.compile(r"s$")
FACETS = re.compile(
    r"\b(?:(?:a|de|mit|con|with) )?\d{1,2} ?"
    r"(?:fach|facets?|faceted|facettes?|facetten|facce|caras|facetas|fold|way|lobes?)\b"
)


def without_facets(form: str) -> str:
    """A folded name without how many facets a prism has (`3 facet prism`, `prisma a 3 facce`)."""
    if not any(digit.isdigit() for digit in form):
        return form
    left = " ".join(FACETS.sub(" ", form).split())
    return left or form


@lru_cache(maxsize=4_000)
def composed(text: str) -> Found | None:
    """The word for a name of a known parameter and one aspect of it, in any order, if there is one."""
    form = bare(text)
    words = form.split()
    for at, word in enumerate(words):
        for aspect, known in _ASPECTS.items():
            if word in known and len(words) > 1:
                found = _of(" ".join(words[:at] + words[at + 1 :]), aspect, form)
                if found:
                    return found
    if len(words) == 1:
        # As German writes it: Farbmakrogeschwindigkeit.
        for end, aspect in _ENDS:
            if form.endswith(end) and len(form) > len(end) + 2:
                stem = form[: -len(end)]
                found = _of(stem, aspect, form) or _of(_LINK.sub("", stem), aspect, form)
                if found:
                    return found
    return None


def _of(rest: str, aspect: str, form: str) -> Found | None:
    base = exact(fold(rest)) or inflected(rest)
    if base is None or base.score < SURE:
        return None
    word = f"{base.word}-{aspect}"
    return Found(word, INFLECTED, form) if word in PARAMETERS else None
