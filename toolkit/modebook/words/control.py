"""Parameters of the control family: modes, macros, speeds, effects, lamp, power, atmosphere."""

from __future__ import annotations

from modebook.words.e120 import SD_UNDEFINED, ST_SEC_CONTROL, ST_SEC_SPEED, ST_SEC_TIMING
from modebook.words.parameter import InFamily, Parameter

_OF = InFamily("control")

CONTROL: tuple[Parameter, ...] = (
    _OF.selector(
        "control",
        "Control",
        0x0502,
        "Settings and actions in ranges: reset, lamp, smoothing, modes. Mind its hazards.",
    ),
    _OF.selector("reset", "Reset", 0x0502, "A slot for resets alone. Motors run and the light may go out."),
    _OF.selector(
        "lamp-control",
        "Lamp control",
        0x0501,
        "Lamp on and off. A discharge lamp may take minutes to strike again.",
    ),
    _OF.selector("power", "Power", 0x0505, "A relay or other switch of power."),
    _OF.scale(
        "overall-speed",
        "Overall speed",
        0x0503,
        "speed",
        "How fast all parameters change.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.scale(
        "overall-time",
        "Overall time",
        SD_UNDEFINED,
        "time",
        "How long all parameters take to change.",
        slot_type=ST_SEC_TIMING,
    ),
    _OF.selector(
        "smoothing",
        "Smoothing",
        SD_UNDEFINED,
        "How the fixture fills in between packets, where it has a slot of its own.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.scale(
        "modulation-frequency",
        "Modulation frequency",
        SD_UNDEFINED,
        "rate",
        "How often a second the emitters are switched.",
    ),
    _OF.selector(
        "output-mode",
        "Output mode",
        SD_UNDEFINED,
        "What output favors: brightness, constancy, quiet, color quality.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.selector("macro", "Macro", 0x0504, "A program that the fixture runs by itself."),
    _OF.scale(
        "macro-speed",
        "Macro speed",
        SD_UNDEFINED,
        "speed",
        "How fast such a program runs.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.selector(
        "effect",
        "Effect",
        SD_UNDEFINED,
        "A lighting effect out of a list: fire, television, lightning, chase.",
    ),
    _OF.scale(
        "effect-speed",
        "Effect speed",
        SD_UNDEFINED,
        "speed",
        "How fast the effect runs.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.scale(
        "effect-crossfade",
        "Effect crossfade",
        SD_UNDEFINED,
        "level",
        "How softly one step of the effect passes into the next.",
    ),
    _OF.scale("effect-size", "Effect size", SD_UNDEFINED, "level", "How far or how wide the effect swings."),
    _OF.scale(
        "effect-offset",
        "Effect offset",
        SD_UNDEFINED,
        "angle",
        "Where in its cycle the effect stands against other units.",
    ),
    _OF.selector(
        "effect-direction",
        "Effect direction",
        SD_UNDEFINED,
        "Which way the effect runs.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.selector(
        "pixel-effect", "Pixel effect", SD_UNDEFINED, "A pattern over the fixture's cells, out of a list."
    ),
    _OF.scale(
        "pixel-effect-speed",
        "Pixel effect speed",
        SD_UNDEFINED,
        "speed",
        "How fast that pattern runs.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.scale(
        "pixel-effect-crossfade",
        "Pixel effect crossfade",
        SD_UNDEFINED,
        "level",
        "From the cells' own slots to the pattern.",
    ),
    _OF.selector(
        "pixel-macro", "Pixel macro", SD_UNDEFINED, "A program over the fixture's cells that runs by itself."
    ),
    _OF.scale(
        "pixel-macro-speed",
        "Pixel macro speed",
        SD_UNDEFINED,
        "speed",
        "How fast that program runs.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.scale("tempo", "Tempo", SD_UNDEFINED, "rate", "Beat that programs and effects keep to.", unit="bpm"),
    _OF.scale(
        "sound-sensitivity",
        "Sound sensitivity",
        SD_UNDEFINED,
        "level",
        "How readily a program follows sound.",
    ),
    _OF.scale("fan", "Fan", 0x0506, "level", "Speed of a fan, for cooling or for wind."),
    _OF.selector("fan-mode", "Fan mode", 0x0506, "How fans run: automatic, quiet, full, off for a take."),
    _OF.scale("heater", "Heater", 0x0507, "level", "Power of a heater."),
    _OF.scale("fountain-pump", "Fountain pump", 0x0508, "level", "Output of a water pump."),
    _OF.scale("fluid-pump", "Fluid pump", SD_UNDEFINED, "level", "Feed of fog or haze fluid."),
    _OF.scale(
        "fog-output",
        "Fog output",
        SD_UNDEFINED,
        "level",
        "How much fog comes out. Mind alarms, exits and breathing.",
    ),
    _OF.scale(
        "haze-output",
        "Haze output",
        SD_UNDEFINED,
        "level",
        "How much haze comes out. Mind alarms and breathing.",
    ),
    _OF.scale(
        "output-duration",
        "Output duration",
        SD_UNDEFINED,
        "time",
        "How long a burst of fog or haze lasts.",
        slot_type=ST_SEC_TIMING,
    ),
    _OF.scale(
        "output-interval",
        "Output interval",
        SD_UNDEFINED,
        "time",
        "How long it waits between two bursts.",
        slot_type=ST_SEC_TIMING,
    ),
    _OF.scale("flame", "Flame", SD_UNDEFINED, "level", "A flame effect. DMX512 is not to control it."),
    _OF.selector(
        "pyrotechnics",
        "Pyrotechnics",
        SD_UNDEFINED,
        "Firing of pyrotechnics or sparks. DMX512 is not to control it.",
    ),
    _OF.selector(
        "arming",
        "Arming",
        SD_UNDEFINED,
        "A value that must stand before a dangerous parameter acts. It is no safety device.",
    ),
    _OF.selector(
        "display", "Display", SD_UNDEFINED, "The fixture's own display: on, off, turned round, level."
    ),
    _OF.selector(
        "signal-loss",
        "Signal loss",
        SD_UNDEFINED,
        "What the fixture does without a signal, where a slot sets it.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.selector("reserved", "Reserved", SD_UNDEFINED, "A slot that the maker gives no function."),
    _OF.selector(
        "other", "Other", SD_UNDEFINED, "What this vocabulary has no word for; the label says what it is."
    ),
)
