"""Names put together of two known parts: a parameter and what of it is meant, such as its speed."""

from __future__ import annotations

import re
from functools import cache, lru_cache

from modebook.intake.folding import bare, fold
from modebook.intake.lexicon import INFLECTED, SURE, Found, exact, inflected, phrases
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
_EMITTED = frozenset(
    (
        *("red", "green", "blue", "white", "warm-white", "cool-white", "natural-white", "amber", "lime"),
        *("mint", "uv", "cyan", "magenta", "yellow", "deep-red", "deep-blue", "orange", "indigo", "violet"),
        *("hue", "saturation"),
    )
)
_MIXED = _EMITTED | {"color-temperature", "tint", "cie-x", "cie-y", "dimmer", "strobe", "shutter"}
_LAYERS = frozenset(
    (
        *("background", "foreground", "effect", "fx", "halo", "aura", "ring", "backlight", "center", "eye"),
        *("hintergrund", "vordergrund", "effekt", "fond", "effet", "fondo", "efecto", "sfondo", "effetto"),
        *("anneau", "anillo", "anello", "centre", "centro", "mitte"),
    )
)
_LAMPS = frozenset(
    ("lamp", "lamps", "lampe", "lampen", "lampes", "lampara", "lamparas", "lampada", "lampade")
)
_TURNING = frozenset({"pan", "tilt", "roll"})
_LINK = re.compile(r"s$")
FACETS = re.compile(
    r"\b(?:(?:a|de|mit|con|with) )?\d{1,2} ?"
    r"(?:fach|facets?|faceted|facettes?|facetten|facce|caras|facetas|fold|way|lobes?)\b"
)
_SIGNS = (
    (re.compile(r"^(?:\+\s?[/|]\s?[-–−]|±)\s*(?=[^\W\d])"), "plus minus "),
    (re.compile(r"(?<=[^\W\d])\s*(?:\+\s?[/|]\s?[-–−]|±)$"), " plus minus"),
    (re.compile(r"^\+\s*(?=[^\W\d])"), "plus "),
    (re.compile(r"\bP\s?[/&+]\s?T\b", re.IGNORECASE), "pan tilt"),
    (
        re.compile(
            r"^(?:CH|Ch|DMX|Channel|Kanal|Canal|Canale|Slot)\.?\s?\d{1,3}\s?(?::|\s[-–—]\s|\.\s)\s*(?=[^\W\d]{2})"
        ),
        "",
    ),
    (
        re.compile(r"\b(?:rotat|rot\b|spin|dreh)\S*\s?[/&+]\s?-?(?:ind|idx|pos)[^\W\d]*\.?", re.IGNORECASE),
        "index and rotation",
    ),
)
_GENERAL = frozenset({"macro", "macro-speed", "effect", "effect-speed", "overall-speed", "control"})
_AMOUNT = frozenset(
    (
        *(
            "intensity",
            "brightness",
            "level",
            "dimmer",
            "helligkeit",
            "intensitat",
            "intensite",
            "luminosite",
        ),
        *("niveau", "intensidad", "nivel", "brillo", "intensita", "luminosita", "livello"),
    )
)
_NARROWING = frozenset(
    (
        *("movement", "color", "colour", "position", "beam", "bewegung", "farbe", "mouvement", "couleur"),
        *("movimiento", "movimento", "colore", "couleurs", "colores", "colori", "faisceau", "haz", "fascio"),
    )
)


def spelled_out(text: str) -> str:
    """A name with its signs in words (`+/- Green`, `P/T speed`), and without a slot number before a colon."""
    for pattern, words in _SIGNS:
        text = pattern.sub(words, text)
    return text.strip()


def narrowed(word: str, printed: list[str]) -> bool:
    """Whether a word of general use would leave out what the name says it is of: a program of movement, the
    brightness of a lamp or of an effect.
    """
    amount = word in PARAMETERS and PARAMETERS[word].quantity in ("selector", "rate", "speed")
    return (word in _GENERAL and not _NARROWING.isdisjoint(printed)) or (
        (amount or word == "lamp-control") and not _AMOUNT.isdisjoint(printed)
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
    lit = _emitted(words, form) or _part(words, form)
    if lit:
        return lit
    for at, word in enumerate(words):
        for aspect, printed in _ASPECTS.items():
            if word in printed and len(words) > 1:
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


_AMOUNTS = frozenset(
    (
        *("dimmer", "dimming", "intensity", "brightness", "level", "led", "leds"),
        *("rgb", "rgbw", "rgba", "rgbaw", "cmy"),
        *(
            "hsi",
            "helligkeit",
            "intensitat",
            "gradateur",
            "intensite",
            "atenuador",
            "intensidad",
            "intensita",
        ),
    )
)


def _emitted(words: list[str], form: str) -> Found | None:
    """The emitter in a name of an amount and a color (`Dimmer Rot`, `RGBW red`)."""
    rest = " ".join(word for word in words if word not in _AMOUNTS)
    if not rest or rest == form:
        return None
    base = exact(rest)
    sure = base is not None and base.score >= SURE and base.word in _EMITTED
    return Found(base.word, INFLECTED, form) if base and sure else None


@cache
def _parts() -> frozenset[str]:
    """What lights up apart from the rest, and is mixed for itself: sides, rings, lamps, layers of what is
    shown.
    """
    return phrases("marks", "cell") | phrases("marks", "side") | _LAMPS | _LAYERS


def _part(words: list[str], form: str) -> Found | None:
    """What is set of one part of the fixture (`Dimmer left`, `Ring red`, `Effect CCT`)."""
    rest = " ".join(word for word in words if word not in _parts())
    if not rest or rest == form:
        return None
    base = exact(rest)
    sure = base is not None and base.score >= SURE and base.word in _MIXED
    return Found(base.word, INFLECTED, form) if base and sure else None


def _of(rest: str, aspect: str, form: str) -> Found | None:
    base = exact(fold(rest)) or inflected(rest)
    if base is None or base.score < SURE:
        return None
    if aspect == "rotation" and base.word in _TURNING:
        # Turning is what these do: Pan (rotation) is a pan.
        return None
    word = f"{base.word}-{aspect}"
    return Found(word, INFLECTED, form) if word in PARAMETERS else None
