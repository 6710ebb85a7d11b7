"""Parameters of the intensity family: dimmers, masters and what shapes them."""

from __future__ import annotations

from modebook.words.e120 import SD_UNDEFINED, ST_SEC_CONTROL, ST_SEC_TIMING
from modebook.words.parameter import InFamily, Parameter

_OF = InFamily("intensity")

INTENSITY: tuple[Parameter, ...] = (
    _OF.scale("dimmer", "Dimmer", 0x0001, "level", "Brightness, from nothing to full."),
    _OF.scale(
        "intensity-master",
        "Intensity master",
        0x0002,
        "level",
        "One level over all parts of a fixture that have dimmers of their own.",
    ),
    _OF.scale(
        "background-dimmer",
        "Background dimmer",
        0x0001,
        "level",
        "Brightness of the layer that lies behind an effect.",
    ),
    _OF.scale(
        "effect-dimmer",
        "Effect dimmer",
        0x0001,
        "level",
        "Brightness of an effect apart from the fixture's own.",
    ),
    _OF.scale(
        "strobe-dimmer",
        "Strobe dimmer",
        0x0001,
        "level",
        "Brightness of a separate strobe source. Warn people before it flashes.",
    ),
    _OF.scale(
        "minimum-level",
        "Minimum level",
        SD_UNDEFINED,
        "level",
        "Lowest output above off, where a slot sets it.",
    ),
    _OF.scale(
        "maximum-level",
        "Maximum level",
        SD_UNDEFINED,
        "level",
        "Highest output allowed, where a slot sets it.",
    ),
    _OF.selector(
        "dimmer-curve",
        "Dimmer curve",
        SD_UNDEFINED,
        "How output follows level: linear, square and so on.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.scale(
        "dimmer-fade-time",
        "Dimmer fade time",
        SD_UNDEFINED,
        "time",
        "How long the fixture itself takes to reach a new level.",
        slot_type=ST_SEC_TIMING,
    ),
    _OF.selector("boost", "Boost", SD_UNDEFINED, "Output above the level that the fixture holds for long."),
    _OF.scale(
        "laser-output",
        "Laser output",
        SD_UNDEFINED,
        "level",
        "Power of a laser source. Only qualified people run one, within local codes.",
    ),
)
