"""Parameters of the color family: emitters, filters, wheels, chromaticity, white.

`cyan`, `magenta` and `yellow` are the filters of subtractive mixing, which is what the trade means by those
words alone. An emitter of such a color has a key of its own: `cyan-emitter`, `yellow-emitter`.
"""

from __future__ import annotations

from modebook.words.e120 import (
    SD_UNDEFINED,
    ST_SEC_CONTROL,
    ST_SEC_INDEX,
    ST_SEC_ROTATION,
    ST_SEC_SPEED,
    ST_SEC_TIMING,
)
from modebook.words.parameter import InFamily, Parameter

_OF = InFamily("color")

COLOR: tuple[Parameter, ...] = (
    _OF.scale("red", "Red", 0x0205, "level", "Level of the red emitters, or red of a calibrated mix."),
    _OF.scale(
        "green", "Green", 0x0206, "level", "Level of the green emitters, or green of a calibrated mix."
    ),
    _OF.scale("blue", "Blue", 0x0207, "level", "Level of the blue emitters, or blue of a calibrated mix."),
    _OF.scale("white", "White", 0x0212, "level", "Level of white emitters of no stated warmth."),
    _OF.scale("warm-white", "Warm white", 0x0213, "level", "Level of the warmer white emitters."),
    _OF.scale("cool-white", "Cool white", 0x0214, "level", "Level of the cooler white emitters."),
    _OF.scale(
        "natural-white", "Natural white", 0x020F, "level", "Level of white emitters between warm and cool."
    ),
    _OF.scale("amber", "Amber", 0x0211, "level", "Level of the amber emitters."),
    _OF.scale("lime", "Lime", 0x020A, "level", "Level of the lime emitters."),
    _OF.scale("mint", "Mint", SD_UNDEFINED, "level", "Level of the mint emitters, a pale green-white."),
    _OF.scale(
        "cyan-emitter", "Cyan emitter", 0x020C, "level", "Level of the cyan emitters; `cyan` is the filter."
    ),
    _OF.scale(
        "yellow-emitter",
        "Yellow emitter",
        SD_UNDEFINED,
        "level",
        "Level of the yellow emitters; `yellow` is the filter.",
    ),
    _OF.scale("orange", "Orange", SD_UNDEFINED, "level", "Level of the orange or red-orange emitters."),
    _OF.scale("deep-red", "Deep red", 0x020D, "level", "Level of the deep red emitters."),
    _OF.scale(
        "far-red",
        "Far red",
        SD_UNDEFINED,
        "level",
        "Level of the far red emitters, at the edge of what is seen.",
    ),
    _OF.scale(
        "deep-blue", "Deep blue", 0x020E, "level", "Level of the deep blue emitters, also called royal blue."
    ),
    _OF.scale("indigo", "Indigo", 0x020B, "level", "Level of the indigo emitters."),
    _OF.scale(
        "violet", "Violet", SD_UNDEFINED, "level", "Level of the violet emitters, still within what is seen."
    ),
    _OF.scale("uv", "UV", 0x0218, "level", "Level of the ultraviolet emitters. Mind eyes and skin."),
    _OF.scale(
        "infrared",
        "Infrared",
        SD_UNDEFINED,
        "level",
        "Level of infrared emitters, which no eye sees and some cameras do.",
    ),
    _OF.scale(
        "cyan",
        "Cyan",
        0x0202,
        "level",
        "Subtractive cyan: how far the cyan filter is in; the emitter is `cyan-emitter`.",
    ),
    _OF.scale(
        "magenta", "Magenta", 0x0204, "level", "Subtractive magenta: how far the magenta filter is in."
    ),
    _OF.scale(
        "yellow",
        "Yellow",
        0x0203,
        "level",
        "Subtractive yellow: how far the yellow filter is in; the emitter is `yellow-emitter`.",
    ),
    _OF.scale(
        "uv-filter",
        "UV filter",
        0x0215,
        "level",
        "How far a filter is in that leaves ultraviolet only. Mind eyes and skin.",
    ),
    _OF.scale("hue", "Hue", 0x0216, "hue", "Place on the color circle."),
    _OF.scale("saturation", "Saturation", 0x0217, "saturation", "From white to the pure hue."),
    _OF.scale("cie-x", "CIE x", SD_UNDEFINED, "chromaticity", "x of the CIE 1931 chromaticity diagram."),
    _OF.scale("cie-y", "CIE y", SD_UNDEFINED, "chromaticity", "y of the CIE 1931 chromaticity diagram."),
    _OF.scale(
        "cie-u-prime",
        "CIE u'",
        SD_UNDEFINED,
        "chromaticity",
        "u' of the CIE 1976 uniform chromaticity diagram.",
    ),
    _OF.scale(
        "cie-v-prime",
        "CIE v'",
        SD_UNDEFINED,
        "chromaticity",
        "v' of the CIE 1976 uniform chromaticity diagram.",
    ),
    _OF.scale(
        "color-temperature",
        "Color temperature",
        SD_UNDEFINED,
        "color-temperature",
        "Correlated color temperature of the white that it makes.",
    ),
    _OF.scale(
        "tint",
        "Tint",
        SD_UNDEFINED,
        "tint",
        "Green-magenta shift of a white, from full magenta over neutral to full green.",
    ),
    _OF.scale(
        "color-correction",
        "Color correction",
        0x0208,
        "level",
        "Filter that makes light warmer or cooler, where one parameter does both.",
    ),
    _OF.scale(
        "warm-correction",
        "Warm correction",
        0x0208,
        "level",
        "How far a filter is in that makes light warmer, such as CTO.",
    ),
    _OF.scale(
        "cool-correction",
        "Cool correction",
        0x0208,
        "level",
        "How far a filter is in that makes light cooler, such as CTB.",
    ),
    _OF.scale(
        "green-correction",
        "Green correction",
        SD_UNDEFINED,
        "level",
        "How far a plus green or minus green filter is in.",
    ),
    _OF.scale(
        "rendering-filter",
        "Rendering filter",
        SD_UNDEFINED,
        "level",
        "How far a filter is in that trades output for color rendering.",
    ),
    _OF.scale(
        "white-color-crossfade",
        "White to color crossfade",
        SD_UNDEFINED,
        "level",
        "From the white that is set to the color that is set.",
    ),
    _OF.selector(
        "color-wheel", "Color wheel", 0x0201, "Which filter of a wheel is in, also split or between two."
    ),
    _OF.scale(
        "color-wheel-index",
        "Color wheel index",
        SD_UNDEFINED,
        "angle",
        "Exact angle of the color wheel.",
        slot_type=ST_SEC_INDEX,
    ),
    _OF.scale(
        "color-wheel-rotation",
        "Color wheel rotation",
        SD_UNDEFINED,
        "rotation",
        "Endless turning of the color wheel.",
        slot_type=ST_SEC_ROTATION,
    ),
    _OF.selector(
        "color-wheel-mode",
        "Color wheel mode",
        SD_UNDEFINED,
        "How the wheel is driven: by filter, by angle, turning.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.selector(
        "virtual-color-wheel",
        "Virtual color wheel",
        SD_UNDEFINED,
        "Colors of a list that emitters mix as if a wheel held them.",
    ),
    _OF.selector("color-scroller", "Color scroller", 0x0209, "Which frame of a scroll of filters is in."),
    _OF.selector("color-semaphore", "Color semaphore", 0x0210, "Which hinged filters are swung in."),
    _OF.selector(
        "color-preset", "Color preset", SD_UNDEFINED, "A stored mix of the fixture's emitters or filters."
    ),
    _OF.selector(
        "swatch", "Swatch", SD_UNDEFINED, "A numbered filter of a swatch book that emitters imitate."
    ),
    _OF.selector(
        "source-match", "Source match", SD_UNDEFINED, "A kind of light source that emitters imitate."
    ),
    _OF.selector(
        "color-mode",
        "Color mode",
        SD_UNDEFINED,
        "How the color slots are understood: calibrated, or each emitter for itself.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.selector(
        "color-space",
        "Color space",
        SD_UNDEFINED,
        "The gamut that red, green and blue are relative to.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.selector(
        "white-point",
        "White point",
        SD_UNDEFINED,
        "The white that equal red, green and blue give.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.selector(
        "dim-to-warm",
        "Dim to warm",
        SD_UNDEFINED,
        "Whether white gets warmer as it dims.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.scale(
        "color-speed", "Color speed", SD_UNDEFINED, "speed", "How fast color changes.", slot_type=ST_SEC_SPEED
    ),
    _OF.scale(
        "color-time",
        "Color time",
        SD_UNDEFINED,
        "time",
        "How long color takes to change.",
        slot_type=ST_SEC_TIMING,
    ),
    _OF.selector(
        "color-macro", "Color macro", SD_UNDEFINED, "A run of colors that the fixture plays by itself."
    ),
    _OF.scale(
        "color-macro-speed",
        "Color macro speed",
        SD_UNDEFINED,
        "speed",
        "How fast a run of colors plays.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.selector(
        "background-color",
        "Background color",
        SD_UNDEFINED,
        "A color out of a list for the layer behind an effect.",
    ),
    _OF.selector("effect-color", "Effect color", SD_UNDEFINED, "A color out of a list for an effect."),
)
