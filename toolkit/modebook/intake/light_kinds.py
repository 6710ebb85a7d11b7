"""Settles names by the kind of light that a whole mode speaks of: a laser has figures, emitters no wheel."""

from __future__ import annotations

import re

from modebook.intake.drafts import DraftMode, DraftParameter
from modebook.intake.folding import fold
from modebook.intake.lexicon import SURE
from modebook.intake.phrases import runs
from modebook.words.parameters import PARAMETERS

_LASER = re.compile(r"\blasers?\b")
_SIZE = re.compile(r"\b(?:size|scale|zoom|grosse|taille|tamano|dimensione|ampiezza)\b")
_ROTATION = re.compile(r"rotation|rotate|drehung|rotacion|rotazione")
_FIGURES = {
    "gobo-wheel": "laser-pattern",
    "gobo-rotation": "image-rotation",
    "gobo-index": "image-rotation",
    "pan": "image-position-x",
    "tilt": "image-position-y",
    "pan-rotation": "image-rotation",
    "color-wheel": "color-preset",
}
"""What names of moving lights mean of the figures that a laser draws."""
_OWN = re.compile(
    r"\b(?:gobos?|pan|tilt|wheel|rad|roue|rueda|ruota|dis[ck]s?|scheiben?|disques?|discos?|dischi|filters?|"
    r"filtr\w+|gels?|dichro\w+|dikro\w+|dicro\w+)\b"
)
"""Words that say that the thing itself is there: a head that turns, a wheel with filters."""
_PLACE = re.compile(r"\b(?:x|y|horizontal\w*|vertical\w*|vertikal\w*|orizzontal\w*)\b")
_HALVES = re.compile(
    r"\b(?:split|half|halves|halb\w*|geteilt\w*|demi|bicolor\w*|mitad|medio|meta|mezz[oa])\b"
)
_MIXED = frozenset({"red", "green", "blue"})
_WHITES = frozenset({"warm-white", "cool-white"})
"""`Warm` beside `Cool` can be nothing else."""
_PATTERNED = frozenset({"gobo-wheel", "rotating-gobo-wheel", "prism", "effects-wheel", "animation-wheel"})
_CHANGING = re.compile(
    r"\b(?:jump\w*|fad\w+|chang\w+|gradual\w*|gradient|pulse\w*|chas\w+|flow\w*|running|strob\w*|rainbow|auto\w*|"
    r"music|sound|musik\w*|musique|musica|sonido|son|uberblend\w*|sprung\w*|springen\w*|wechsel\w*|\w+wechsel|"
    r"fondu\w*|saut\w*|chenillard\w*|cambio\w*|changement\w*|fundido\w*|salto\w*|persecucion|dissolvenz\w*|"
    r"sequenz\w*|inseguimento|pulsa\w*|arcobaleno|regenbogen|arcoiris)\b"
)
"""What programs do with the light, in the words in which their ranges are named."""

_SPEED_RUN = re.compile(
    r"\b(?:slow|langsam|lent|lento)\w* (?:to|bis|zu|a) (?:fast|schnell|rapid|velo)|"
    r"\b(?:fast|schnell|rapid|veloc)\w* (?:to|bis|zu|a) (?:slow|langsam|lent)"
)
"""From slow to fast: how a fan runs, and no other thing that is called wind."""
_SPEEDS = re.compile(r"\b(?:speed|rate|tempo|geschwindigkeit|vitesse|velocidad|velocita)\b")


def settle_by_kind(mode: DraftMode) -> None:
    """Give parameters the word that they can only have in this mode, and take the doubt about it back."""
    words = {p.word for p in mode.parameters}
    heads = any(_OWN.search(fold(p.label)) or _turns(p) for p in mode.parameters)
    laser = not heads and ("laser-output" in words or any(_LASER.search(_told(p)) for p in mode.parameters))
    mixed = words >= _MIXED and not _PATTERNED & words
    numbered = [p for p in mode.parameters if _is_one_of_several(p)]
    before: DraftParameter | None = None
    for parameter in mode.parameters:
        if len(numbered) > 1 and parameter in numbered:
            _settle(parameter, "dimmer")
        if parameter.word in _WHITES and words >= _WHITES:
            _settle(parameter, parameter.word)
        if laser:
            _figure(parameter)
        elif mixed and parameter.word == "color-wheel" and not _is_wheel(parameter):
            _settle(parameter, "color-preset")
        if parameter.word == "control" and not parameter.name.sure and _is_program(parameter):
            _settle(parameter, "macro")
        if parameter.word == "fan" and not parameter.name.sure and _SPEED_RUN.search(_told(parameter)):
            _settle(parameter, "fan")
        if before is not None:
            _speed_of(parameter, before)
        before = parameter


def _is_one_of_several(parameter: DraftParameter) -> bool:
    """Whether a numbered output, circuit or lamp has one run of values: it is dimmed. What a lamp alone is
    told in a slot is switched.
    """
    values = [value for stretch in parameter.stretches for value in stretch.values]
    dimmed = (parameter.word == "dimmer" and not parameter.name.sure) or parameter.word == "lamp-control"
    return dimmed and parameter.number is not None and len(values) <= 1


def _told(parameter: DraftParameter) -> str:
    """All that is printed of a parameter, folded."""
    return fold(" ".join((parameter.label, *(stretch.text for stretch in parameter.stretches))))


def _turns(parameter: DraftParameter) -> bool:
    """Whether a pan or tilt is one by its name, and not only a place from left to right or down to up."""
    return parameter.word in ("pan", "tilt") and not _PLACE.search(fold(parameter.label))


def _is_wheel(parameter: DraftParameter) -> bool:
    """Whether a slot of colors speaks of a wheel: by its name, or by two of its colors at a time."""
    halves = any(_HALVES.search(fold(stretch.text)) for stretch in parameter.stretches)
    return halves or _OWN.search(fold(parameter.label)) is not None


def _figure(parameter: DraftParameter) -> None:
    """A name that is of the figure where a laser draws it: its pattern, its size, its place."""
    form = fold(parameter.label)
    if (parameter.word == "gobo-wheel" and _SIZE.search(form)) or _SIZE.fullmatch(form):
        _settle(parameter, "image-scale")
    elif _ROTATION.fullmatch(form):
        _settle(parameter, "image-rotation")
    elif parameter.word in _FIGURES:
        _settle(parameter, _FIGURES[parameter.word])
    elif parameter.word in _FIGURES.values() or parameter.word == "image-scale":
        _settle(parameter, parameter.word)


def _is_program(parameter: DraftParameter) -> bool:
    """Whether most ranges of a slot with a general name are programs."""
    texts = [fold(s.text) for s in parameter.stretches if s.text]
    running = [text for text in texts if runs(text) or _CHANGING.search(text)]
    return len(running) >= 2 and len(running) >= 0.6 * len(texts)


def _speed_of(parameter: DraftParameter, before: DraftParameter) -> None:
    """`Function speed` behind `Function` is the speed of what that one is."""
    mine, theirs = fold(parameter.label).split(), fold(before.label).split()
    speed = f"{before.word}-speed"
    if parameter.name.score >= SURE or not theirs or speed not in PARAMETERS:
        return
    left = list(mine)
    for word in theirs:
        if word not in left:
            return
        left.remove(word)
    if parameter.word == "overall-speed" or (left and _SPEEDS.search(" ".join(left))):
        _settle(parameter, speed)


def _settle(parameter: DraftParameter, word: str) -> None:
    parameter.word = word
    parameter.unsure = [u for u in parameter.unsure if not u.why.startswith("the name ")]
