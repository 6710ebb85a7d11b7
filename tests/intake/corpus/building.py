"""Builds the parameters that charts print, in any of the five languages, out of the wording lists."""

from __future__ import annotations

from dataclasses import replace
from random import Random
from types import ModuleType

from intake.corpus.content import Json, P, R, span
from intake.corpus.wording import english, french, german, italian, spanish

LANGUAGES: dict[str, ModuleType] = {
    "en": english,
    "de": german,
    "fr": french,
    "es": spanish,
    "it": italian,
}

WORDS: dict[str, tuple[str, ...]] = {
    "dimmer": ("dimmer", "intensity-master"),
    "shutter": ("shutter", "strobe"),
    "strobe": ("strobe", "shutter"),
    "warm": ("warm-white",),
    "cool": ("cool-white",),
    "cct": ("color-temperature",),
    "cto": ("warm-correction", "color-correction"),
    "sat": ("saturation",),
    "x": ("cie-x",),
    "y": ("cie-y",),
    "fade": ("white-color-crossfade",),
    "wheel": ("color-wheel",),
    "gobo": ("gobo-wheel",),
    "rgobo": ("rotating-gobo-wheel",),
    "gobor": ("gobo-index-rotation", "gobo-rotation"),
    "prismr": ("prism-rotation",),
    "speed": ("movement-speed",),
    "fan": ("fan", "fan-mode"),
    "curve": ("dimmer-curve",),
    "macro": ("macro", "color-macro", "color-preset"),
    "macros": ("macro-speed", "color-macro-speed"),
    "effects": ("effect-speed",),
    "tint": ("tint", "green-correction"),
}
"""The words accepted for an item, where they are more than the item's own name."""

BROAD = {"cto", "tint", "zoom", "focus", "iris", "frost", "fan", "speed", "macros", "effects"}
SETTING = {"linear": "dimmer-curve", "square": "dimmer-curve", "scurve": "dimmer-curve"}


class Builder:
    """Makes parameters with seeded wording; `rare` draws mostly from the rarer wordings."""

    def __init__(self, language: str, rng: Random, rare: bool = False) -> None:
        self.words = LANGUAGES[language]
        self.language = language
        self.rng = rng
        self.rare = rare
        self._fine: str | None = None

    def pick(self, pair: tuple[list[str], list[str]]) -> str:
        """One of the variants: a usual one, or (rare) mostly one of the others."""
        usual, other = pair
        return self.rng.choice(other if self.rare and other and self.rng.random() < 0.7 else usual)

    def say(self, phrase: str, *fill: object) -> str:
        return self.pick(self.words.PHRASES[phrase]).format(*fill)

    def head(self, name: str, *fill: object) -> str:
        return self.pick(self.words.HEADS[name]).format(*fill)

    def label(self, item: str) -> str:
        return self.pick(self.words.ITEMS[item])

    def fine(self, label: str, count: int = 1) -> tuple[str, ...]:
        """The labels of finer bytes; one chart keeps to one manner."""
        self._fine = self._fine or self.pick(self.words.FINE)
        return tuple(self._fine.format(label) for _ in range(count))

    def cuts(self, count: int, first: int = 0, last: int = 255) -> list[tuple[int, int]]:
        """`count` stretches that cover first to last without gap."""
        room = last - first + 1
        least = max(2, min(4, room // count - 1))
        shares = sorted(self.rng.randint(0, room - least * count) for _ in range(count - 1))
        widths = [least + z - a for a, z in zip([0, *shares], [*shares, room - least * count], strict=True)]
        made, at = [], first
        for width in widths:
            made.append((at, at + width - 1))
            at += width
        return made

    def plain(self, item: str, fine: bool = False, text: str | None = None) -> P:
        """A parameter without ranges: a level, a lens, a speed."""
        label = self.label(item)
        words = WORDS.get(item, (item,))
        spans: tuple[Json | None, ...] = ()
        if text is None:
            text = ""
            if item in ("zoom", "focus", "iris", "speed", "macros", "effects"):
                phrase = {"zoom": "narrow", "focus": "near", "iris": "big", "speed": "fastslow"}
                text = self.say(phrase.get(item, "slowfast"))
            elif self.rng.random() < 0.7:
                text = self.say("level")
                spans = (span(0, 100, "%"),)
        return P(words, label, fine=self.fine(label) if fine else (), text=text, spans=spans)

    def angle(self, item: str, degrees: int, fine: bool = True) -> P:
        """Pan or tilt with the degrees printed once, or not at all."""
        label = self.label(item)
        fines = self.fine(label) if fine else ()
        if self.rng.random() < 0.25:
            return P((item,), label, fine=fines)
        text = self.say("angle", degrees)
        half = degrees / 2
        spans: tuple[Json | None, ...] = (span(0, degrees, "deg"),)
        if "0" not in text.replace(str(degrees), ""):
            both = (*spans, span(-half, half, "deg"))
            return P((item,), label, fine=fines, text=text, spans=both, doubt="may", why=LONE)
        return P((item,), label, fine=fines, text=text, spans=spans)

    def kelvin(self, low: int, high: int, fine: bool = False) -> P:
        label = self.label("cct")
        dash = self.rng.choice([" - ", "–", " – "])
        text = f"{low}{dash}{high} K"
        return P(
            WORDS["cct"],
            label,
            fine=self.fine(label) if fine else (),
            text=text,
            spans=(span(low, high, "K"),),
        )

    def hue(self, fine: bool = False) -> P:
        label = self.label("hue")
        text = self.rng.choice(["0 - 360°", "0–360°"])
        return P(
            ("hue",), label, fine=self.fine(label) if fine else (), text=text, spans=(span(0, 360, "deg"),)
        )

    def shutter(self, item: str = "shutter") -> P:
        """Closed, open, flashing, at times with its hertz."""
        parts = self.rng.choice(
            [
                ("closed", "open", "flash", "open"),
                ("closed", "flashhz", "open"),
                ("open", "flash", "pulse", "rnd", "open"),
            ]
        )
        made = []
        for (lo, hi), part in zip(self.cuts(len(parts)), parts, strict=True):
            if part in ("open", "closed"):
                made.append(R(lo, hi, self.say(part), does=part, may={"hazard": ("blackout",)}))
            elif part == "flashhz":
                top = self.rng.choice([15, 20, 25])
                made.append(R(lo, hi, self.say(part, 1, top), span=span(1, top, "Hz"), may=FLASH))
            else:
                made.append(R(lo, hi, self.say(part), may=FLASH))
        return P(WORDS[item], self.label(item), ranges=tuple(made))

    def strobe(self) -> P:
        """A flash rate with an off at its foot."""
        (a, b), (c, d) = self.cuts(2, 0, 255) if self.rng.random() < 0.3 else [(0, 9), (10, 255)]
        first = R(a, b, self.say("nofn"), does="nothing")
        return P(WORDS["strobe"], self.label("strobe"), ranges=(first, R(c, d, self.say("flash"), may=FLASH)))

    def wheel(self, count: int = 6, turn: bool = True) -> P:
        """Filters of a wheel, and its turning."""
        names = self.rng.sample(self.words.COLORS, count)
        tail = ["cw", "stop", "ccw"] if turn else []
        cuts = self.cuts(1 + count + len(tail))
        made = [R(*cuts[0], self.say("white"), may={"does": ("open",)})]
        made += [R(*cut, name) for cut, name in zip(cuts[1 : count + 1], names, strict=True)]
        made += self._turns(cuts[count + 1 :], tail)
        return P(WORDS["wheel"], self.label("wheel"), ranges=tuple(made))

    def gobos(self, item: str = "gobo", count: int = 5, shake: bool = True) -> P:
        """Gobos of a wheel, still and shaken."""
        shaken = count if shake else 0
        cuts = self.cuts(1 + count + shaken)
        made = [R(*cuts[0], self.words.PHRASES["open"][0][0], may={"does": ("open",)})]
        one, two = self.pick(self.words.PHRASES["gobo"]), self.pick(self.words.PHRASES["shake"])
        made += [R(*cut, one.format(n + 1)) for n, cut in enumerate(cuts[1 : count + 1])]
        made += [R(*cut, two.format(n + 1), may=SHAKE) for n, cut in enumerate(cuts[count + 1 :])]
        return P(WORDS[item], self.label(item), ranges=tuple(made))

    def _turns(self, cuts: list[tuple[int, int]], parts: list[str]) -> list[R]:
        meaning = {"cw": "rotate", "ccw": "rotate", "stop": "stop", "index": "index"}
        made = []
        for (lo, hi), part in zip(cuts, parts, strict=True):
            arc = span(0, 360, "deg") if part == "index" else None
            r = R(lo, hi, self.say(part), does=meaning[part], span=arc, may=TURN)
            made.append(replace(r, spans_also=(None,)) if arc else r)
        return made

    def turning(self, item: str = "gobor", fine: bool = False) -> P:
        """Index and endless turning of a gobo or prism; ranges count the coarse byte."""
        parts = ["index", "cw", "stop", "ccw"] if item == "gobor" else ["stop", "cw", "stop", "ccw"]
        label = self.label(item)
        ranges = tuple(self._turns(self.cuts(4), parts))
        return P(WORDS[item], label, fine=self.fine(label) if fine else (), ranges=ranges)

    def prism(self) -> P:
        (a, b), (c, d) = self.cuts(2)
        ranges = (
            R(a, b, self.say("out"), may={"does": ("open", "nothing")}),
            R(c, d, self.say("in")),
        )
        return P(("prism",), self.label("prism"), ranges=ranges)

    def control(self, lamp: bool = True, smoothing: bool = False, hold: bool = True) -> P:
        """Resets, lamp, smoothing choices and stretches without function, some with a hold."""
        parts = ["nofn", "resetpt", "reset"]
        parts += ["lampon", "lampoff"] if lamp else []
        parts += ["fast", "smooth"] if smoothing else []
        parts.append("nofn")
        made = []
        seconds = self.rng.choice([2, 3, 5])
        nothing = self.say("nofn")
        manner = self.pick(self.words.PHRASES["hold"])
        for (lo, hi), part in zip(self.cuts(len(parts)), parts, strict=True):
            text = nothing if part == "nofn" else self.say(part)
            r = R(lo, hi, text)
            if part == "nofn":
                r = replace(r, does="nothing")
            elif part in HAZARDS:
                r = replace(r, hazard=HAZARDS[part])
            if part in ("fast", "smooth"):
                r = replace(r, sets=("smoothing", part, text))
            if hold and part in HAZARDS:
                r = replace(r, text=manner.format(text, seconds), also=(text,), hold_s=float(seconds))
            made.append(r)
        return P(("control",), self.label("control"), ranges=tuple(made))

    def choices(self, item: str, phrases: list[str]) -> P:
        """A slot that chooses among named things: curves, fans, smoothing."""
        made = []
        for (lo, hi), phrase in zip(self.cuts(len(phrases)), phrases, strict=True):
            r = R(lo, hi, self.say(phrase))
            if phrase == "menu":
                r = replace(r, does="as-menu")
            elif phrase == "nofn":
                r = replace(r, does="nothing")
            elif item == "smoothing":
                r = replace(r, sets=("smoothing", phrase, r.text))
            else:
                r = replace(r, may={"sets": ("dimmer-curve", "fan")})
            made.append(r)
        return P(WORDS.get(item, (item,)), self.label(item), ranges=tuple(made))

    def numbered(self, item: str, count: int) -> P:
        """Macros or effects by number or name."""
        cuts = self.cuts(count + 1)
        made = [R(*cuts[0], self.say("nofn"), does="nothing")]
        usual, other = self.words.PHRASES["effectname"]
        names = (usual + other)[:count] if item == "effect" else []
        for n, cut in enumerate(cuts[1:]):
            text = names[n] if n < len(names) else self.say("macro", n + 1)
            made.append(R(*cut, text, may={"does": ("runs",)}))
        return P(WORDS.get(item, (item,)), self.label(item), ranges=tuple(made))

    def reserved(self) -> P:
        return P(("reserved",), self.label("reserved"), text="")


LONE = "one figure alone: where the travel begins is not printed"
HAZARDS = {"resetpt": "reset", "reset": "reset", "lampon": "lamp on", "lampoff": "lamp off"}
FLASH = {"does": ("runs", "random"), "parameter": ("strobe", "strobe-mode", "shutter")}
TURN = {
    "parameter": (
        "color-wheel-rotation",
        "gobo-rotation",
        "gobo-index",
        "prism-rotation",
        "color-wheel-index",
    )
}
SHAKE = {"does": ("bounce", "runs"), "parameter": ("gobo-shake",)}


def place(params: list[P], first: int = 1) -> tuple[P, ...]:
    """Gives parameters their slots one after the other, fine bytes behind their coarse one."""
    made, at = [], first
    for p in params:
        width = 1 + len(p.fine)
        made.append(replace(p, slots=tuple(range(at, at + width))))
        at += width
    return tuple(made)


def footprint(params: tuple[P, ...]) -> int:
    return max(slot for p in params for slot in p.slots)
