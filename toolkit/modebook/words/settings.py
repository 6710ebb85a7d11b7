"""Words about what a fixture remembers: kinds of settings, methods of smoothing, ways to change them."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

SettingKind = Literal[
    "smoothing",
    "dimmer-curve",
    "minimum-level",
    "maximum-level",
    "modulation-frequency",
    "output-mode",
    "color-mode",
    "color-space",
    "white-point",
    "dim-to-warm",
    "fan",
    "movement-speed",
    "pan-range",
    "tilt-range",
    "pan-invert",
    "tilt-invert",
    "pan-tilt-swap",
    "position-correction",
    "blackout-on-move",
    "wheel-path",
    "cell-order",
    "mode",
    "start-address",
    "signal-loss",
    "startup",
    "lamp-on",
    "standby",
    "display",
    "lock",
    "wireless",
    "network",
    "rdm",
    "other",
]

_KINDS: tuple[tuple[SettingKind, str, str], ...] = (
    ("smoothing", "Smoothing", "How the fixture fills in between the packets that it hears."),
    ("dimmer-curve", "Dimmer curve", "How output follows level: linear, square and so on."),
    ("minimum-level", "Minimum level", "The lowest output above off (E1.37-1 MINIMUM_LEVEL)."),
    ("maximum-level", "Maximum level", "The highest output that is allowed (E1.37-1 MAXIMUM_LEVEL)."),
    ("modulation-frequency", "Modulation frequency", "How often a second the emitters are switched (PWM)."),
    ("output-mode", "Output mode", "What the output favors: brightness, constancy, quiet, color quality."),
    ("color-mode", "Color mode", "How color slots are understood: calibrated or each emitter for itself."),
    ("color-space", "Color space", "The gamut that red, green and blue are relative to."),
    ("white-point", "White point", "The white that equal red, green and blue, or no saturation, give."),
    ("dim-to-warm", "Dim to warm", "Whether white gets warmer as it dims, as a filament does."),
    ("fan", "Fan", "How fans run: automatic, quiet, full, off for a take."),
    ("movement-speed", "Movement speed", "How fast pan and tilt travel."),
    ("pan-range", "Pan range", "How many degrees pan covers, where a fixture offers several."),
    ("tilt-range", "Tilt range", "How many degrees tilt covers, where a fixture offers several."),
    ("pan-invert", "Pan invert", "Whether pan runs the other way (E1.20 PAN_INVERT)."),
    ("tilt-invert", "Tilt invert", "Whether tilt runs the other way (E1.20 TILT_INVERT)."),
    ("pan-tilt-swap", "Pan and tilt swapped", "Whether pan and tilt change places (E1.20 PAN_TILT_SWAP)."),
    (
        "position-correction",
        "Position correction",
        "Whether the fixture drives back when it was pushed away.",
    ),
    ("blackout-on-move", "Blackout on move", "Whether the light goes out while a head or wheel travels."),
    ("wheel-path", "Wheel path", "Whether a wheel takes the shorter way round or never passes its open end."),
    ("cell-order", "Cell order", "Where the first cell is and which way the cells are counted."),
    ("mode", "Mode", "The slot layout in use (E1.20 DMX_PERSONALITY)."),
    ("start-address", "Start address", "The address of the mode's slot 1 (E1.20 DMX_START_ADDRESS)."),
    ("signal-loss", "Signal loss", "What the fixture does without a signal (E1.37-1 DMX_FAIL_MODE)."),
    ("startup", "Startup", "What it does from power on to the first packet (E1.37-1 DMX_STARTUP_MODE)."),
    ("lamp-on", "Lamp on", "When the lamp strikes by itself (E1.20 LAMP_ON_MODE)."),
    ("standby", "Standby", "Whether and when the fixture goes to sleep by itself."),
    ("display", "Display", "How the fixture's own display shows: level, turned round, off after a while."),
    ("lock", "Lock", "Whether the menu or RDM is locked against changes (E1.37-1 LOCK_STATE)."),
    ("wireless", "Wireless", "Whether and how the fixture's radio receiver is used."),
    ("network", "Network", "Network address, universe and protocol."),
    ("rdm", "RDM", "Whether the fixture answers RDM at all."),
    ("other", "Other setting", "A setting that this vocabulary does not have; its label says what it is."),
)

SETTING_KINDS: Mapping[str, str] = MappingProxyType({word: meaning for word, _, meaning in _KINDS})
"""Each kind of setting with its meaning in one line. The list grows as fixtures do: add the word, a title,
a meaning. `other` keeps a record whole until then."""

SETTING_TITLES: Mapping[str, str] = MappingProxyType({word: title for word, title, _ in _KINDS})
"""Each kind of setting as output names it."""

Method = Literal["average", "interpolate", "lag", "limit", "restart"]

METHODS: Mapping[str, str] = MappingProxyType(
    {
        "average": "The output is the mean of the last packets or of the last stretch of time.",
        "interpolate": "The output runs in a straight line from one packet's value to the next one's.",
        "lag": "The output closes a fixed share of the remaining distance in each moment (first order).",
        "limit": "The output follows at once, but no faster than a largest rate of change.",
        "restart": "Each packet starts a new ramp of fixed length from where the output is.",
    }
)

Way = Literal["slot", "rdm", "menu", "app", "page"]

WAYS: Mapping[str, str] = MappingProxyType(
    {
        "slot": "By a slot of the mode in use.",
        "rdm": "Over RDM, where RDM reaches the fixture.",
        "menu": "By hand, in the menu on the fixture.",
        "app": "With the maker's app, near the fixture.",
        "page": "On the fixture's own network page.",
    }
)
