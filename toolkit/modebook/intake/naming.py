"""Settles what a parameter is called where no row prints a name by itself, as in `Shutter closed`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from modebook.intake.descriptions import describe
from modebook.intake.drafts import DraftParameter
from modebook.intake.folding import fold
from modebook.intake.lexicon import SURE, exact
from modebook.intake.names import ENDED, Name, read_name
from modebook.intake.phrases import denied, runs
from modebook.intake.quantities import unitless
from modebook.words.parameters import PARAMETERS

_LIKELY = 0.8
_FOGGING = frozenset({"fog-output", "haze-output", "fluid-pump"})
_ENDED_DEG = 90
_LOAD = re.compile(
    r"^(?:lamps?|lampen?|lampara|lampada|lampe|bulb|output|out|ausgang|sortie|salida|uscita|circuit|circuito|"
    r"stromkreis|load|last|charge|carga|carico)(?: \d{1,3}| [a-h])?(?: \w+)?$"
)
"""What a dimmer or a driver feeds, folded, perhaps with its number."""
_FLICKERS = ("flicker", "flackern", "vacillement", "parpadeo", "sfarfallio", "tremolio")
_BOTH_GREENS = re.compile(
    r"(?:[-–−]|\bminus|\bmoins|\bmenos|\bmeno)\s?(?:\d(?:/\d)?\s?|\d{1,3}\s?%\s?)?(?:gr[üu]n|green|vert|verde)\b|\bmagenta\b",
    re.IGNORECASE,
)
_HEATS = re.compile(r"heat|heiz|chauff|calent|riscald")
_SEEN_HZ = 60
"""Flashes up to here; what is faster than that is a modulation of the emitters."""
_PLAYED = frozenset({"effect", "macro", "pixel-effect", "color-macro", "pixel-macro", "movement-macro"})
_MIRRORED = frozenset({"mirror-position", "mirror-rotation"})
_GENERIC = frozenset({"nothing", "open", "closed", "stop"})


def settle_name(parameter: DraftParameter) -> None:
    """Give a parameter its word and label; mark it where the name is unknown or was read off its ranges."""
    entry = parameter.entry
    if parameter.name.label and (entry.named or entry.matrix):
        _known_or_doubt(parameter, parameter.name)
        return
    texts = [stretch.text for stretch in parameter.stretches if stretch.text]
    if not texts:
        if parameter.name.label:
            _known_or_doubt(parameter, parameter.name)
        else:
            parameter.word = "other"
            parameter.doubt("no name is printed for this slot", read="other")
        return
    if len(parameter.stretches) == 1:
        name = read_name(texts[0])
        _known_or_doubt(parameter, name, from_text=True)
        return
    shared, sure = _shared_head(texts)
    common = _common_words(texts) if shared is None else ""
    if common:
        _known_or_doubt(parameter, read_name(common))
        return
    if shared is None:
        parameter.word = "other"
        parameter.label = ""
        parameter.doubt("no name is printed for this slot, and its ranges do not tell one", read="other")
        return
    parameter.name, parameter.word, parameter.label = shared, shared.word or "other", shared.label
    parameter.number = shared.number
    if not sure:
        parameter.doubt(
            "no name is printed for this slot; it was taken from one of its ranges", read=parameter.word
        )


def _known_or_doubt(parameter: DraftParameter, name: Name, *, from_text: bool = False) -> None:
    if name.level is None and parameter.name.level is not None:
        # A column of bits said which byte it is.
        name = replace(name, level=parameter.name.level, bits=parameter.name.bits)
    name = _measured(parameter, name)
    parameter.name, parameter.label = name, name.label
    parameter.number, parameter.cell = name.number, name.cell
    if name.word is None:
        parameter.word = "other"
        parameter.doubt("the name is not in the list of synonyms", name.label, "other")
        return
    parameter.word = name.word
    if name.number is not None and name.label[:1].isdigit() and name.number != parameter.slots[0]:
        parameter.doubt("the number before the name may be another mode's slot", name.label, name.word)
    if not name.sure:
        parameter.doubt(
            f"the name may mean {name.word}; that is not sure (score {name.score:.2f})", name.label, name.word
        )
    if from_text and len(parameter.stretches) == 1:
        stretch = parameter.stretches[0]
        parameter.stretches[0] = replace(stretch, text=name.rest)


def _measured(parameter: DraftParameter, name: Name) -> Name:
    """A name that says too little, settled by what is measured beside it: x and y up to 1 are a place in
    the chromaticity diagram, a white in kelvin is a color temperature, a turning of so many degrees has an
    end, a frequency of a few hertz is of flashes, a flash effect of many is a choice.
    """
    texts = [name.rest, *(stretch.text for stretch in parameter.stretches), *parameter.entry.remarks]
    form = fold(name.label)
    if form in ("x", "y"):
        figures = [quantity for text in texts for quantity in unitless(text)]
        if figures and all(0 <= one.start < one.end <= 1 for one in figures):
            return replace(name, word=f"cie-{form}", score=1.0)
    single = len(parameter.stretches) <= 1
    if not name.sure and single:
        # Nothing but a white is measured in kelvins, whatever it is called.
        spans = [quantity for text in texts for quantity in describe(text).spans]
        if spans and all(one.unit == "K" and one.start >= 1000 for one in spans):
            return replace(name, word="color-temperature", score=1.0)
    if form.startswith(_FLICKERS) and len(parameter.stretches) > 2 and name.word in (None, "effect", "macro"):
        return replace(name, word="effect", score=1.0)
    if (
        name.word == "color-correction"
        or (name.word in ("warm-correction", "cool-correction") and single)
        or (name.word in ("white", "white-point") and single)
    ):
        spans = [quantity for text in texts for quantity in describe(text).spans]
        if spans and all(one.unit == "K" for one in spans):
            return replace(name, word="color-temperature")
    if name.word == "green" and single and any(_BOTH_GREENS.search(text) for text in texts):
        # From minus green to plus green no emitter runs.
        return replace(name, word="tint", score=1.0)
    if name.word in ENDED and len(parameter.stretches) <= 1:
        told = [one for text in texts for one in (*describe(text).spans, *describe(text).singles)]
        if any(one.unit == "deg" and one.end >= _ENDED_DEG for one in told):
            return replace(name, word=ENDED[name.word])
    if name.word in (None, "lamp-control") and single and _LOAD.search(form):
        # A lamp or an output that runs from 0 to 100 % is a dimmer's, and no switch.
        told = [one for text in texts for one in describe(text).spans]
        if told and all(one.unit == "%" and one.start in (0, 100) for one in told):
            return replace(name, word="dimmer", score=1.0)
    if name.word == "gobo-index" and len(parameter.stretches) > 2:
        does = {describe(text).said.does for text in texts}
        if "open" in does and "index" not in does:
            return replace(name, word="gobo-wheel")  # positions of a wheel, not of a gobo
    if form in ("rate", "speed") or (name.word == "modulation-frequency" and not name.sure):
        told = [one for text in texts for one in (*describe(text).spans, *describe(text).singles)]
        if told and all(one.unit == "Hz" and one.end <= _SEEN_HZ for one in told):
            return replace(name, word="strobe", score=_LIKELY)
    if name.word == "strobe" and form.startswith("flash effect") and len(parameter.stretches) > 3:
        return replace(name, word="strobe-mode")
    return name


def head_of(text: str) -> Name | None:
    """The known name that a text begins with: the longest one."""
    for sign in (":", " – ", " - ", ","):
        head, mark, rest = text.partition(sign)
        if mark and rest.strip():
            name = read_name(head)
            if name.sure:
                return name
    words = text.split()
    for length in range(min(len(words), 5), 0, -1):
        phrase = " ".join(words[:length])
        found = exact(phrase)
        if found and found.score >= SURE and found.word != "reserved":
            return read_name(phrase)
    return None


def _common_words(texts: list[str]) -> str:
    """The words that all ranges of a slot begin with, where each goes on: `Lag off`, `Lag 1 s`."""
    split = [text.split() for text in texts]
    common: list[str] = []
    for words in zip(*split, strict=False):
        if len({fold(word) for word in words}) > 1 or not fold(words[0]).isalpha():
            break
        common.append(words[0])
    goes_on = all(len(words) > len(common) for words in split)
    return " ".join(common) if len(texts) > 1 and goes_on else ""


def _shared_head(texts: list[str]) -> tuple[Name | None, bool]:
    """The name that the ranges of one slot share, and whether that is sure."""
    telling = [text for text in texts if describe(text).said.does not in _GENERIC or head_of(text)]
    heads = [(text, head_of(text)) for text in telling]
    if any(head is not None for _, head in heads):
        # `No strobe` beside `Strobe slow to fast` tells of the strobe, and of nothing else.
        words = {word for _, head in heads if head is not None for word in fold(head.label).split()}
        telling = [text for text in telling if not denied(text) or not words & set(denied(text).split())]
        heads = [(text, head_of(text)) for text in telling]
    known = [head for _, head in heads if head is not None]
    if not known:
        return None, False
    both = {head.word for head in known}
    index = next((w for w in both if w is not None and w.endswith("-index")), "")
    if (
        len(both) == 2
        and index
        and f"{index}-rotation" in PARAMETERS
        and index.replace("index", "rotation") in both
    ):
        # Indexed below, turning above: a slot of two uses.
        return replace(known[0], word=f"{index}-rotation"), len(known) == len(telling)
    counts: dict[str, int] = {}
    for head in known:
        counts[head.word or ""] = counts.get(head.word or "", 0) + 1
    word = max(counts, key=lambda w: (counts[w], -[h.word for h in known].index(w)))
    first = next(head for head in known if head.word == word)
    if counts[word] == 1 and len(counts) > 2:
        return None, False  # White, Red, Green: what is chosen among, not what chooses
    share = counts[word] / len(telling)
    colon = any(fold(text.split(":")[0]) == fold(first.label) for text in telling if ":" in text)
    # A wheel runs no program: beside `Auto run`, `Color jump` is no slot of a color wheel.
    others = [text for text, head in heads if head is None or head.word != word]
    odd = word.endswith("-wheel") and any(runs(text) for text in others)
    return first, share >= 0.99 or (share >= 0.5 and (counts[word] >= 2 or colon) and not odd)


def confirm_name(parameter: DraftParameter, words: Sequence[str]) -> None:
    """Take back the doubt about a likely word where the ranges say the same: a reset, a hold or a setting
    in `Function`, gobos in a slot that may be a gobo wheel. `words`: those of the whole mode; one pan
    beside one tilt is a pair.
    """
    if parameter.name.word is None or parameter.name.score < _LIKELY:
        return
    if parameter.word in ("pan", "tilt"):
        partner = "tilt" if parameter.word == "pan" else "pan"
        if partner in words and sum(word == parameter.word for word in words) == 1:
            parameter.unsure = [u for u in parameter.unsure if not u.why.startswith("the name may mean")]
        return
    if parameter.word == "movement-speed":
        if {"pan", "tilt"} <= set(words) and not _MIRRORED.intersection(words):
            # The mirror is what pan and tilt move, if there is no other.
            parameter.unsure = [u for u in parameter.unsure if not u.why.startswith("the name may mean")]
        return
    warmed = parameter.word == "minimum-level" and _HEATS.search(fold(parameter.label))
    if warmed and _FOGGING.intersection(words):
        parameter.word = "heater"  # a lamp is warmed by a little light, a fog machine is heated
        return
    if parameter.word == "fountain-pump" and _FOGGING.intersection(words):
        parameter.word = "fluid-pump"
        parameter.unsure = [u for u in parameter.unsure if not u.why.startswith("the name may mean")]
        return
    if parameter.word in ("output-duration", "output-interval") and _FOGGING.intersection(words):
        # Beside the output of a fog machine they can be of nothing else.
        parameter.unsure = [u for u in parameter.unsure if not u.why.startswith("the name may mean")]
        return
    if parameter.word == "strobe":
        before = words[: words.index("strobe")]
        if words.count("strobe") == 1 and not _PLAYED.intersection(before):
            # Flashes, as nothing else in the mode could have a rate.
            parameter.unsure = [u for u in parameter.unsure if not u.why.startswith("the name may mean")]
        return
    if parameter.word == "output-duration" and fold(parameter.label) == "duration" and "strobe" in words:
        parameter.word = "strobe-duration"
        parameter.unsure = [u for u in parameter.unsure if not u.why.startswith("the name may mean")]
        return
    acting = any(entry.get(key) for entry in parameter.ranges for key in ("hazard", "hold_s", "sets", "kept"))
    heads = [head_of(str(entry["meaning"])) for entry in parameter.ranges]
    same = sum(head is not None and head.word == parameter.word for head in heads)
    if (parameter.word == "control" and acting) or same >= 2:
        parameter.unsure = [u for u in parameter.unsure if not u.why.startswith("the name may mean")]
