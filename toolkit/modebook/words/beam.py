"""Parameters of the beam family: lens, iris, frost, strobe, framing blades, barn doors."""

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

_OF = InFamily("beam")

BEAM: tuple[Parameter, ...] = (
    _OF.scale("zoom", "Zoom", 0x0405, "angle", "Opening of the beam."),
    _OF.selector(
        "zoom-mode",
        "Zoom mode",
        SD_UNDEFINED,
        "How zoom is driven: free, linked to focus, narrowed.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.scale(
        "zoom-speed", "Zoom speed", SD_UNDEFINED, "speed", "How fast zoom travels.", slot_type=ST_SEC_SPEED
    ),
    _OF.scale("focus", "Focus", 0x0402, "position", "Place of the lens that makes an edge sharp or soft."),
    _OF.scale(
        "focus-distance",
        "Focus distance",
        SD_UNDEFINED,
        "distance",
        "Throw at which the fixture keeps itself sharp.",
    ),
    _OF.selector(
        "autofocus",
        "Autofocus",
        SD_UNDEFINED,
        "Whether and at which throw focus follows zoom.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.scale("iris", "Iris", 0x0401, "position", "Opening of the iris."),
    _OF.scale(
        "iris-pulse", "Iris pulse", SD_UNDEFINED, "rate", "How often the iris opens and closes by itself."
    ),
    _OF.scale("frost", "Frost", 0x0403, "level", "How far a diffusion filter is in."),
    _OF.scale(
        "beam-shaper",
        "Beam shaper",
        SD_UNDEFINED,
        "position",
        "How far a lens is in that makes the beam long in one direction.",
    ),
    _OF.scale(
        "beam-shaper-index",
        "Beam shaper index",
        SD_UNDEFINED,
        "angle",
        "Direction of the shaped beam.",
        slot_type=ST_SEC_INDEX,
    ),
    _OF.scale(
        "beam-shaper-rotation",
        "Beam shaper rotation",
        SD_UNDEFINED,
        "rotation",
        "Endless turning of the shaped beam.",
        slot_type=ST_SEC_ROTATION,
    ),
    _OF.scale(
        "strobe",
        "Strobe",
        0x0404,
        "rate",
        "Flashes a second. Warn people first: flashes can set off seizures.",
    ),
    _OF.selector(
        "strobe-mode",
        "Strobe mode",
        SD_UNDEFINED,
        "Kind of flashing: even, random, pulse, lightning.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.scale(
        "strobe-duration",
        "Strobe duration",
        SD_UNDEFINED,
        "time",
        "How long one flash lasts.",
        slot_type=ST_SEC_TIMING,
    ),
    _OF.selector("shutter", "Shutter", 0x0404, "Open, closed, and kinds of flashing, in ranges."),
    _OF.scale("douser", "Douser", 0x0408, "position", "How far a mechanical blind lets light pass."),
    _OF.scale(
        "blade-position",
        "Blade position",
        0x0406,
        "position",
        "How far a framing blade is in; its key says which blade.",
    ),
    _OF.scale(
        "blade-angle",
        "Blade angle",
        SD_UNDEFINED,
        "angle",
        "Slant of a framing blade; its key says which blade.",
        slot_type=ST_SEC_INDEX,
    ),
    _OF.scale(
        "framing-rotation", "Framing rotation", 0x0407, "angle", "Turn of all framing blades together."
    ),
    _OF.selector(
        "framing-macro",
        "Framing macro",
        SD_UNDEFINED,
        "A shape or a play of the framing blades, out of a list.",
    ),
    _OF.scale(
        "framing-speed",
        "Framing speed",
        SD_UNDEFINED,
        "speed",
        "How fast the framing blades travel.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.scale(
        "barn-door",
        "Barn door",
        0x0409,
        "position",
        "How far a barn door is closed; its key says which leaf.",
    ),
    _OF.scale(
        "barn-door-rotation", "Barn door rotation", SD_UNDEFINED, "angle", "Turn of all barn doors together."
    ),
    _OF.scale(
        "beam-speed",
        "Beam speed",
        SD_UNDEFINED,
        "speed",
        "How fast lenses, wheels and blades travel.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.scale(
        "beam-time",
        "Beam time",
        SD_UNDEFINED,
        "time",
        "How long lenses, wheels and blades take.",
        slot_type=ST_SEC_TIMING,
    ),
    _OF.selector(
        "beam-macro", "Beam macro", SD_UNDEFINED, "A play of beam parameters that the fixture runs by itself."
    ),
)
