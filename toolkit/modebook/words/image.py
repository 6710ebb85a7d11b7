"""Parameters of the image family: gobos, prisms, animation wheels, pictures."""

from __future__ import annotations

from modebook.words.e120 import (
    SD_UNDEFINED,
    ST_SEC_CONTROL,
    ST_SEC_INDEX,
    ST_SEC_INDEX_ROTATE,
    ST_SEC_ROTATION,
    ST_SEC_SPEED,
)
from modebook.words.parameter import InFamily, Parameter

_OF = InFamily("image")

IMAGE: tuple[Parameter, ...] = (
    _OF.selector(
        "gobo-wheel",
        "Gobo wheel",
        0x0301,
        "Which gobo of a wheel is in; its gobos do not turn, or nothing says that they do.",
    ),
    _OF.selector(
        "rotating-gobo-wheel",
        "Rotating gobo wheel",
        0x0302,
        "Which gobo is in, of a wheel whose gobos turn in place.",
    ),
    _OF.scale(
        "gobo-index",
        "Gobo index",
        SD_UNDEFINED,
        "angle",
        "Angle of the gobo in its place.",
        slot_type=ST_SEC_INDEX,
    ),
    _OF.scale(
        "gobo-rotation",
        "Gobo rotation",
        SD_UNDEFINED,
        "rotation",
        "Endless turning of the gobo in its place.",
        slot_type=ST_SEC_ROTATION,
    ),
    _OF.selector(
        "gobo-index-rotation",
        "Gobo index and rotation",
        SD_UNDEFINED,
        "Angle and endless turning of the gobo in ranges of one parameter.",
        slot_type=ST_SEC_INDEX_ROTATE,
    ),
    _OF.scale(
        "gobo-wheel-index",
        "Gobo wheel index",
        SD_UNDEFINED,
        "angle",
        "Exact angle of the whole wheel.",
        slot_type=ST_SEC_INDEX,
    ),
    _OF.scale(
        "gobo-wheel-rotation",
        "Gobo wheel rotation",
        SD_UNDEFINED,
        "rotation",
        "Endless turning of the whole wheel.",
        slot_type=ST_SEC_ROTATION,
    ),
    _OF.selector(
        "gobo-wheel-mode",
        "Gobo wheel mode",
        SD_UNDEFINED,
        "How wheel and gobo are driven: index, rotation, shake.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.scale("gobo-shake", "Gobo shake", SD_UNDEFINED, "rate", "How often the gobo swings to and fro."),
    _OF.selector(
        "gobo-macro", "Gobo macro", SD_UNDEFINED, "A run of gobos that the fixture plays by itself."
    ),
    _OF.selector("prism", "Prism", 0x0303, "Which prism is in the beam, or none."),
    _OF.scale(
        "prism-index",
        "Prism index",
        SD_UNDEFINED,
        "angle",
        "Angle of the prism in its place.",
        slot_type=ST_SEC_INDEX,
    ),
    _OF.scale(
        "prism-rotation",
        "Prism rotation",
        SD_UNDEFINED,
        "rotation",
        "Endless turning of the prism.",
        slot_type=ST_SEC_ROTATION,
    ),
    _OF.selector(
        "prism-macro",
        "Prism macro",
        SD_UNDEFINED,
        "A play of prism and gobo that the fixture runs by itself.",
    ),
    _OF.selector(
        "effects-wheel", "Effects wheel", 0x0304, "Which effect is in, of a wheel that holds several kinds."
    ),
    _OF.scale(
        "animation-wheel",
        "Animation wheel",
        0x0304,
        "position",
        "How far the animation wheel is in the beam.",
    ),
    _OF.scale(
        "animation-wheel-index",
        "Animation wheel index",
        SD_UNDEFINED,
        "angle",
        "The direction in which the pattern crosses the beam.",
        slot_type=ST_SEC_INDEX,
    ),
    _OF.scale(
        "animation-wheel-rotation",
        "Animation wheel rotation",
        SD_UNDEFINED,
        "rotation",
        "Endless turning of the animation wheel.",
        slot_type=ST_SEC_ROTATION,
    ),
    _OF.selector(
        "laser-pattern",
        "Laser pattern",
        SD_UNDEFINED,
        "A figure that a laser draws. Only qualified people run one, within local codes.",
    ),
    _OF.selector("video-source", "Video source", SD_UNDEFINED, "Which input or layer a picture comes from."),
    _OF.selector(
        "media-folder", "Media folder", SD_UNDEFINED, "Which folder a picture or clip is taken from."
    ),
    _OF.selector("media-file", "Media file", SD_UNDEFINED, "Which picture or clip of the folder."),
    _OF.selector(
        "playback-mode",
        "Playback mode",
        SD_UNDEFINED,
        "How a clip plays: stopped, once, looped, backward.",
        slot_type=ST_SEC_CONTROL,
    ),
    _OF.scale(
        "playback-speed",
        "Playback speed",
        SD_UNDEFINED,
        "speed",
        "How fast a clip plays.",
        slot_type=ST_SEC_SPEED,
    ),
    _OF.scale(
        "playback-position", "Playback position", SD_UNDEFINED, "position", "Where in the clip it stands."
    ),
    _OF.scale("image-scale", "Image scale", SD_UNDEFINED, "level", "Size of the picture."),
    _OF.scale("image-rotation", "Image rotation", SD_UNDEFINED, "angle", "Angle of the picture."),
    _OF.scale(
        "image-position-x",
        "Image position across",
        SD_UNDEFINED,
        "position",
        "Place of the picture from side to side.",
    ),
    _OF.scale(
        "image-position-y", "Image position up", SD_UNDEFINED, "position", "Place of the picture up and down."
    ),
)
