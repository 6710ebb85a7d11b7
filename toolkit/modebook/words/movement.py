"""Parameters of the movement family: axes of the head or mirror, tracks, motors."""

from __future__ import annotations

from modebook.words.e120 import SD_UNDEFINED, ST_SEC_CONTROL, ST_SEC_ROTATION, ST_SEC_SPEED, ST_SEC_TIMING
from modebook.words.parameter import InFamily, Parameter

_OF = InFamily("movement")

MOVEMENT: tuple[Parameter, ...] = (
    _OF.scale("pan", "Pan", 0x0101, "angle", "Turn about the fixture's main axis."),
    _OF.scale("tilt", "Tilt", 0x0102, "angle", "Swing of the head or mirror across the main axis."),
    _OF.scale("roll", "Roll", SD_UNDEFINED, "angle", "Turn of the head about the beam's own axis."),
    _OF.scale(
        "pan-rotation",
        "Pan rotation",
        SD_UNDEFINED,
        "rotation",
        "Endless turning about the pan axis.",
        slot_type=ST_SEC_ROTATION,
    ),
    _OF.scale(
        "tilt-rotation",
        "Tilt rotation",
        SD_UNDEFINED,
        "rotation",
        "Endless turning about the tilt axis.",
        slot_type=ST_SEC_ROTATION,
    ),
    _OF.scale(
        "roll-rotation",
        "Roll rotation",
        SD_UNDEFINED,
        "rotation",
        "Endless turning about the beam's own axis.",
        slot_type=ST_SEC_ROTATION,
    ),
    _OF.scale(
        "pan-speed", "Pan speed", SD_UNDEFINED, "speed", "How fast pan travels.", slot_type=ST_SEC_SPEED
    ),
    _OF.scale(
        "tilt-speed", "Tilt speed", SD_UNDEFINED, "speed", "How fast tilt travels.", slot_type=ST_SEC_SPEED
    ),
    _OF.scale(
        "movement-speed",
        "Movement speed",
        SD_UNDEFINED,
        "speed",
        "How fast pan and tilt travel together.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.scale(
        "movement-time",
        "Movement time",
        SD_UNDEFINED,
        "time",
        "How long pan and tilt take to a new position.",
        slot_type=ST_SEC_TIMING,
    ),
    _OF.selector(
        "movement-mode",
        "Movement mode",
        SD_UNDEFINED,
        "How pan and tilt follow: tracking, timed, limited, free turning.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.selector(
        "movement-macro",
        "Movement macro",
        SD_UNDEFINED,
        "A movement pattern that the fixture runs by itself.",
    ),
    _OF.scale(
        "movement-macro-speed",
        "Movement macro speed",
        SD_UNDEFINED,
        "speed",
        "How fast a movement pattern runs.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.scale(
        "movement-macro-size",
        "Movement macro size",
        SD_UNDEFINED,
        "level",
        "How far a movement pattern swings.",
    ),
    _OF.scale(
        "mirror-position",
        "Mirror position",
        SD_UNDEFINED,
        "position",
        "Place of an extra mirror, beside those of pan and tilt.",
    ),
    _OF.scale(
        "mirror-rotation",
        "Mirror rotation",
        SD_UNDEFINED,
        "rotation",
        "Turning of a mirror drum or an extra mirror.",
        slot_type=ST_SEC_ROTATION,
    ),
    _OF.scale(
        "track-position",
        "Track position",
        SD_UNDEFINED,
        "distance",
        "Place of a fixture or emitter along a track.",
    ),
    _OF.scale(
        "track-speed",
        "Track speed",
        SD_UNDEFINED,
        "velocity",
        "How fast it travels along the track.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.scale(
        "motor-position",
        "Motor position",
        SD_UNDEFINED,
        "position",
        "Place of a motor that is none of the fixture's own axes or lenses.",
    ),
    _OF.scale(
        "motor-speed",
        "Motor speed",
        SD_UNDEFINED,
        "speed",
        "How fast such a motor runs.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.scale(
        "hoist-position",
        "Hoist position",
        SD_UNDEFINED,
        "distance",
        "Height of a moving load. DMX512 is not to control hoists.",
    ),
    _OF.scale(
        "hoist-speed",
        "Hoist speed",
        SD_UNDEFINED,
        "velocity",
        "How fast a load moves. DMX512 is not to control hoists.",
        slot_type=ST_SEC_SPEED,
    ),
)
