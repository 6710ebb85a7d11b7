"""Settles what a range does by the parameter it is of: a word that turns a wheel turns no program."""

from __future__ import annotations

import re

from modebook.intake.folding import fold
from modebook.intake.lexicon import phrases
from modebook.intake.names import read_name
from modebook.intake.phrases import read_description, runs

_WHEELS = frozenset({"color-wheel", "gobo-wheel", "rotating-gobo-wheel", "effect-wheel", "animation-wheel"})
_RUNNING = frozenset(
    {
        "macro",
        "movement-macro",
        "color-macro",
        "gobo-macro",
        "pixel-macro",
        "beam-macro",
        "prism-macro",
        "effect",
        "pixel-effect",
        "framing-macro",
    }
)
_LIGHT = frozenset(
    (
        *("strobe", "strobe-mode", "shutter", "dimmer", "fan", "fan-mode", "control", "smoothing"),
        *("fog-output", "haze-output", "fluid-pump"),
    )
)
_TURNED = re.compile(r"wheel|scroller|rotation|prism")
_RAINBOW = re.compile(
    r"\b(?:rainbow|regenbogen\w*|arc[ -]en[ -]ciel|arco ?[ií]ris|arcobaleno)\b", re.IGNORECASE
)


def what_it_does(word: str, meaning: str, does: str | None, *, whole: bool, degrees: bool) -> str | None:
    """What a range of a parameter does, out of what its words say alone. whole: it is the only one; degrees:
    they are what it runs through.
    """
    if does == "open" and word not in _WHEELS and read_name(meaning).word in ("white", "natural-white"):
        # White opens a color wheel; beside a mode of color it is a color.
        does = None
    if does == "stop" and word in _LIGHT and fold(meaning) in phrases("phrases", "off"):
        # One word for a stop and for off: of light, off is meant.
        does = None
    if does == "rotate" and not _TURNED.search(word) and _turns_by_rainbow(meaning):
        # Without a wheel a rainbow is a program or a color: nothing turns.
        does = None
    if does == "bounce" and word in _RUNNING:
        # Where programs are chosen, to and fro is one of them: nothing shakes.
        does = None
    if does is None and word in _RUNNING and runs(meaning):
        does = "runs"
    if does == "rotate" and degrees:
        does = "index"  # degrees from end to end are places
    if does in ("rotate", "bounce", "index") and word in ("control", "reset", "lamp-control"):
        does = None
    if does == "runs" and not whole and fold(meaning) in ("macro speed",):
        does = None
    return does


def _turns_by_rainbow(meaning: str) -> bool:
    """Whether a rainbow is all that turns in a text."""
    return read_description(_RAINBOW.sub(" ", meaning)).does != "rotate"
