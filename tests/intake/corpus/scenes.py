"""Sets of parameters as fixtures have them, and how a chart is wrapped up as a manual."""

from __future__ import annotations

from random import Random

from intake.corpus import manual
from intake.corpus.building import Builder
from intake.corpus.content import P
from intake.corpus.grids import Element, Heading, Look


def moving_head(b: Builder, fine: bool = True, lamp: bool = False, smoothing: bool = False) -> list[P]:
    """Pan, tilt, wheels, optics, control."""
    rng = b.rng
    made = [
        b.angle("pan", rng.choice([540, 630]), fine),
        b.angle("tilt", rng.choice([230, 265, 270]), fine),
        b.plain("speed"),
    ]
    made += [b.wheel(rng.choice([5, 6, 7])), b.gobos("gobo", 5)]
    if rng.random() < 0.6:
        made += [b.gobos("rgobo", 4), b.turning("gobor", fine)]
    made += [b.prism(), b.plain("focus", fine), b.plain("zoom"), b.shutter(), b.plain("dimmer", fine)]
    return [*made, b.control(lamp, smoothing)]


def wash(b: Builder, fine: bool = False, fourth: str = "white") -> list[P]:
    """Colors of emitters, dimmer, strobe, macros."""
    made = [b.plain("dimmer", fine), b.strobe()]
    made += [b.plain(item, fine) for item in ("red", "green", "blue", fourth)]
    made += [b.numbered("macro", 5), b.plain("macros")]
    return made


def panel(b: Builder, fine: bool = True) -> list[P]:
    """A soft light for film: level, color temperature, tint, hue, saturation, fan, curve."""
    made = [b.plain("dimmer", fine), b.kelvin(2800, 10000, fine), b.plain("tint", text="")]
    made += [b.plain("fade"), b.hue(fine), b.plain("sat")]
    made += [
        b.choices("curve", ["linear", "square", "scurve"]),
        b.choices("fan", ["fanauto", "fanlow", "fanfull"]),
    ]
    return made


def spot(b: Builder, fine: bool = False) -> list[P]:
    """Subtractive color, iris, frost, shutter: a profile."""
    made = [
        b.angle("pan", 540, fine),
        b.angle("tilt", 270, fine),
        b.plain("cyan"),
        b.plain("magenta"),
        b.plain("yellow"),
    ]
    made += [b.plain("cto"), b.plain("iris"), b.plain("frost"), b.plain("zoom", fine), b.plain("focus", fine)]
    return [*made, b.shutter(), b.plain("dimmer", fine), b.control()]


def in_manual(b: Builder, maker: str, model: str, inner: list[Element], look: Look) -> list[Element]:
    """The chart's elements between other pages of a manual."""
    rng = Random(b.rng.random())
    opening: list[Element] = []
    if not any(isinstance(e, Heading) and e.level == 1 for e in inner):
        opening = [Heading(b.head("chart"))]
    return [
        *manual.before(b.language, maker, model, rng, look),
        *opening,
        *inner,
        *manual.after(b.language, rng, look),
    ]
