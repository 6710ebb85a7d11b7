"""ANSI E1.20 (RDM): slot labels, slot types, product categories, and the PIDs that this project names.

Slot labels are the standard's table C-2, slot types its table C-1. `edition`, the PIDs and the product
categories (table A-5) are from memory; numbers of PIDs and categories agree with a public packet dissector.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from modebook.words.families import Family

SD_UNDEFINED = 0xFFFF
"""The label of a slot for which the standard has none."""

PROTOTYPE_MANUFACTURERS = range(0x7FF0, 0x8000)
"""RDM manufacturer ids that are set aside for prototypes: invented makers use these and no others."""

MAKER_PIDS = range(0x8000, 0xFFE0)
"""PIDs whose meaning each maker defines for its own fixtures (from memory)."""

Edition = Literal["2006", "2010", "later"]


@dataclass(frozen=True, slots=True)
class SlotLabel:
    """What a slot is about (SLOT_INFO's label field of a primary slot). `edition` is from memory."""

    number: int
    name: str
    family: Family
    meaning: str
    edition: Edition


@dataclass(frozen=True, slots=True)
class SlotType:
    """How a slot relates to its parameter. A secondary slot's label field holds its primary's offset."""

    number: int
    name: str
    meaning: str


@dataclass(frozen=True, slots=True)
class Pid:
    """A parameter id of RDM; `from_memory` where the number and its use were not read from a table."""

    number: int
    name: str
    use: str
    from_memory: bool = False


_LABELS: tuple[SlotLabel, ...] = (
    SlotLabel(0x0001, "SD_INTENSITY", "intensity", "intensity", "2006"),
    SlotLabel(0x0002, "SD_INTENSITY_MASTER", "intensity", "intensity master", "2006"),
    SlotLabel(0x0101, "SD_PAN", "movement", "pan", "2006"),
    SlotLabel(0x0102, "SD_TILT", "movement", "tilt", "2006"),
    SlotLabel(0x0201, "SD_COLOR_WHEEL", "color", "color wheel", "2006"),
    SlotLabel(0x0202, "SD_COLOR_SUB_CYAN", "color", "subtractive cyan", "2006"),
    SlotLabel(0x0203, "SD_COLOR_SUB_YELLOW", "color", "subtractive yellow", "2006"),
    SlotLabel(0x0204, "SD_COLOR_SUB_MAGENTA", "color", "subtractive magenta", "2006"),
    SlotLabel(0x0205, "SD_COLOR_ADD_RED", "color", "additive red", "2006"),
    SlotLabel(0x0206, "SD_COLOR_ADD_GREEN", "color", "additive green", "2006"),
    SlotLabel(0x0207, "SD_COLOR_ADD_BLUE", "color", "additive blue", "2006"),
    SlotLabel(0x0208, "SD_COLOR_CORRECTION", "color", "color temperature correction", "2006"),
    SlotLabel(0x0209, "SD_COLOR_SCROLL", "color", "scroll", "2006"),
    SlotLabel(0x020A, "SD_COLOR_ADD_LIME", "color", "additive lime", "later"),
    SlotLabel(0x020B, "SD_COLOR_ADD_INDIGO", "color", "additive indigo", "later"),
    SlotLabel(0x020C, "SD_COLOR_ADD_CYAN", "color", "additive cyan", "later"),
    SlotLabel(0x020D, "SD_COLOR_ADD_DEEP_RED", "color", "additive deep red", "later"),
    SlotLabel(0x020E, "SD_COLOR_ADD_DEEP_BLUE", "color", "additive deep blue", "later"),
    SlotLabel(0x020F, "SD_COLOR_ADD_NAT_WHITE", "color", "additive natural white", "later"),
    SlotLabel(0x0210, "SD_COLOR_SEMAPHORE", "color", "semaphore", "2006"),
    SlotLabel(0x0211, "SD_COLOR_ADD_AMBER", "color", "additive amber", "2010"),
    SlotLabel(0x0212, "SD_COLOR_ADD_WHITE", "color", "additive white", "2010"),
    SlotLabel(0x0213, "SD_COLOR_ADD_WARM_WHITE", "color", "additive warm white", "2010"),
    SlotLabel(0x0214, "SD_COLOR_ADD_COOL_WHITE", "color", "additive cool white", "2010"),
    SlotLabel(0x0215, "SD_COLOR_SUB_UV", "color", "subtractive UV", "2010"),
    SlotLabel(0x0216, "SD_COLOR_HUE", "color", "hue", "2010"),
    SlotLabel(0x0217, "SD_COLOR_SATURATION", "color", "saturation", "2010"),
    SlotLabel(0x0218, "SD_COLOR_ADD_UV", "color", "additive UV", "later"),
    SlotLabel(0x0301, "SD_STATIC_GOBO_WHEEL", "image", "static gobo wheel", "2006"),
    SlotLabel(0x0302, "SD_ROTO_GOBO_WHEEL", "image", "rotating gobo wheel", "2006"),
    SlotLabel(0x0303, "SD_PRISM_WHEEL", "image", "prism wheel", "2006"),
    SlotLabel(0x0304, "SD_EFFECTS_WHEEL", "image", "effects wheel", "2006"),
    SlotLabel(0x0401, "SD_BEAM_SIZE_IRIS", "beam", "beam size iris", "2006"),
    SlotLabel(0x0402, "SD_EDGE", "beam", "edge or lens focus", "2006"),
    SlotLabel(0x0403, "SD_FROST", "beam", "frost or diffusion", "2006"),
    SlotLabel(0x0404, "SD_STROBE", "beam", "strobe or shutter", "2006"),
    SlotLabel(0x0405, "SD_ZOOM", "beam", "zoom lens", "2006"),
    SlotLabel(0x0406, "SD_FRAMING_SHUTTER", "beam", "framing shutter", "2006"),
    SlotLabel(0x0407, "SD_SHUTTER_ROTATE", "beam", "framing shutter rotation", "2006"),
    SlotLabel(0x0408, "SD_DOUSER", "beam", "douser", "2006"),
    SlotLabel(0x0409, "SD_BARN_DOOR", "beam", "barn door", "2006"),
    SlotLabel(0x0501, "SD_LAMP_CONTROL", "control", "lamp control", "2006"),
    SlotLabel(0x0502, "SD_FIXTURE_CONTROL", "control", "fixture control", "2006"),
    SlotLabel(0x0503, "SD_FIXTURE_SPEED", "control", "overall speed setting for attributes", "2006"),
    SlotLabel(0x0504, "SD_MACRO", "control", "macro control", "2006"),
    SlotLabel(0x0505, "SD_POWER_CONTROL", "control", "relay or power control", "2010"),
    SlotLabel(0x0506, "SD_FAN_CONTROL", "control", "fan control", "2010"),
    SlotLabel(0x0507, "SD_HEATER_CONTROL", "control", "heater control", "2010"),
    SlotLabel(0x0508, "SD_FOUNTAIN_CONTROL", "control", "fountain water pump control", "2010"),
    SlotLabel(0xFFFF, "SD_UNDEFINED", "control", "no definition", "2006"),
)

SLOT_LABELS: Mapping[int, SlotLabel] = MappingProxyType({label.number: label for label in _LABELS})
"""Every slot label, by its id."""

ST_PRIMARY = 0x00
ST_SEC_FINE = 0x01
ST_SEC_TIMING = 0x02
ST_SEC_SPEED = 0x03
ST_SEC_CONTROL = 0x04
ST_SEC_INDEX = 0x05
ST_SEC_ROTATION = 0x06
ST_SEC_INDEX_ROTATE = 0x07
ST_SEC_UNDEFINED = 0xFF

_TYPES: tuple[SlotType, ...] = (
    SlotType(
        ST_PRIMARY, "ST_PRIMARY", "slot directly controls a parameter (the coarse byte of a 16-bit one)"
    ),
    SlotType(ST_SEC_FINE, "ST_SEC_FINE", "fine byte of a 16-bit parameter"),
    SlotType(ST_SEC_TIMING, "ST_SEC_TIMING", "timing value for the associated parameter"),
    SlotType(ST_SEC_SPEED, "ST_SEC_SPEED", "speed or velocity for the associated parameter"),
    SlotType(ST_SEC_CONTROL, "ST_SEC_CONTROL", "control or mode information for the associated parameter"),
    SlotType(ST_SEC_INDEX, "ST_SEC_INDEX", "index position for the associated parameter"),
    SlotType(ST_SEC_ROTATION, "ST_SEC_ROTATION", "rotation speed for the associated parameter"),
    SlotType(ST_SEC_INDEX_ROTATE, "ST_SEC_INDEX_ROTATE", "combined index and rotation control"),
    SlotType(ST_SEC_UNDEFINED, "ST_SEC_UNDEFINED", "undefined secondary type"),
)

SLOT_TYPES: Mapping[int, SlotType] = MappingProxyType({kind.number: kind for kind in _TYPES})
"""Every slot type, by its id."""

_PIDS: tuple[Pid, ...] = (
    Pid(0x0050, "SUPPORTED_PARAMETERS", "which PIDs the fixture answers", from_memory=True),
    Pid(0x0051, "PARAMETER_DESCRIPTION", "size, type and text label of a maker's own PID", from_memory=True),
    Pid(0x0060, "DEVICE_INFO", "model id, category, footprint, personality, start address", from_memory=True),
    Pid(0x0080, "DEVICE_MODEL_DESCRIPTION", "the model's name", from_memory=True),
    Pid(0x0081, "MANUFACTURER_LABEL", "the maker's name", from_memory=True),
    Pid(0x0082, "DEVICE_LABEL", "a name that people give the unit", from_memory=True),
    Pid(0x0090, "FACTORY_DEFAULTS", "back to the state that it left the factory in", from_memory=True),
    Pid(0x00C0, "SOFTWARE_VERSION_LABEL", "the firmware's version", from_memory=True),
    Pid(0x00E0, "DMX_PERSONALITY", "the mode in use and the number of modes", from_memory=True),
    Pid(0x00E1, "DMX_PERSONALITY_DESCRIPTION", "a mode's footprint and name", from_memory=True),
    Pid(0x00F0, "DMX_START_ADDRESS", "the address of the mode's slot 1", from_memory=True),
    Pid(0x0120, "SLOT_INFO", "type and label of each slot, offsets from 0", from_memory=True),
    Pid(0x0121, "SLOT_DESCRIPTION", "text label of a slot", from_memory=True),
    Pid(0x0122, "DEFAULT_SLOT_VALUE", "default of each slot", from_memory=True),
    Pid(0x0403, "LAMP_STATE", "whether the lamp is on", from_memory=True),
    Pid(0x0404, "LAMP_ON_MODE", "when the lamp strikes by itself", from_memory=True),
    Pid(0x0500, "DISPLAY_INVERT", "whether the display is turned round", from_memory=True),
    Pid(0x0501, "DISPLAY_LEVEL", "the display's brightness", from_memory=True),
    Pid(0x0600, "PAN_INVERT", "whether pan runs the other way", from_memory=True),
    Pid(0x0601, "TILT_INVERT", "whether tilt runs the other way", from_memory=True),
    Pid(0x0602, "PAN_TILT_SWAP", "whether pan and tilt change places", from_memory=True),
    Pid(0x1000, "IDENTIFY_DEVICE", "the unit shows which one it is", from_memory=True),
    Pid(0x1001, "RESET_DEVICE", "a reset: motors run, the light may go out", from_memory=True),
)

E120_PIDS: Mapping[int, Pid] = MappingProxyType({pid.number: pid for pid in _PIDS})
"""By number. The dimmer message sets are E1.37-1's: see e137."""

Category = Literal[
    "not declared",
    "fixture",
    "fixed",
    "moving yoke",
    "moving mirror",
    "other fixture",
    "accessory",
    "color accessory",
    "yoke accessory",
    "mirror accessory",
    "effect accessory",
    "beam accessory",
    "other accessory",
    "projector",
    "fixed projector",
    "moving yoke projector",
    "moving mirror projector",
    "other projector",
    "atmospheric",
    "atmospheric effect",
    "pyrotechnic",
    "other atmospheric",
    "dimmer",
    "incandescent dimmer",
    "fluorescent dimmer",
    "cold cathode dimmer",
    "non-dim",
    "low voltage dimmer",
    "other AC dimmer",
    "DC level dimmer",
    "DC PWM dimmer",
    "LED dimmer",
    "other dimmer",
    "power",
    "power control",
    "power source",
    "other power",
    "scenic",
    "scenic drive",
    "other scenic",
    "data",
    "data distribution",
    "data conversion",
    "other data",
    "AV",
    "audio",
    "video",
    "other AV",
    "monitor",
    "AC line monitor",
    "DC power monitor",
    "environment monitor",
    "other monitor",
    "control",
    "controller",
    "backup controller",
    "other control",
    "test",
    "test equipment",
    "other test equipment",
    "other",
]
"""A product category in words; a document names the closest."""

_CATEGORIES: tuple[tuple[int, Category, str], ...] = (
    (0x0000, "not declared", "The maker says nothing about what it is."),
    (0x0100, "fixture", "A fixture, with nothing said about whether it moves."),
    (0x0101, "fixed", "A fixture that no motor points: a panel, a wash, a profile, a batten."),
    (0x0102, "moving yoke", "A moving head: the fixture's head turns in a motorized yoke."),
    (0x0103, "moving mirror", "A moving mirror points the beam of a fixed body."),
    (0x01FF, "other fixture", "A fixture of another kind."),
    (0x0200, "accessory", "An accessory to a fixture."),
    (0x0201, "color accessory", "A color changer or scroller in front of a fixture."),
    (0x0202, "yoke accessory", "A motorized yoke that carries a fixture."),
    (0x0203, "mirror accessory", "A motorized mirror in front of a fixture."),
    (0x0204, "effect accessory", "An effect in front of a fixture: a gobo rotator, an animation disk."),
    (0x0205, "beam accessory", "A beam control in front of a fixture: an iris, a shutter, a douser."),
    (0x02FF, "other accessory", "An accessory of another kind."),
    (0x0300, "projector", "A projector of pictures."),
    (0x0301, "fixed projector", "A projector that no motor points."),
    (0x0302, "moving yoke projector", "A projector in a motorized yoke."),
    (0x0303, "moving mirror projector", "A projector with a motorized mirror."),
    (0x03FF, "other projector", "A projector of another kind."),
    (0x0400, "atmospheric", "Fog, haze and other atmospheric effects."),
    (0x0401, "atmospheric effect", "A fogger, hazer, fan or the like."),
    (0x0402, "pyrotechnic", "Pyrotechnics, which DMX512 is not to control."),
    (0x04FF, "other atmospheric", "An atmospheric device of another kind."),
    (0x0500, "dimmer", "A dimmer that feeds other lights."),
    (0x0501, "incandescent dimmer", "An AC dimmer for incandescent lamps."),
    (0x0502, "fluorescent dimmer", "An AC dimmer for fluorescent lamps."),
    (0x0503, "cold cathode dimmer", "An AC dimmer for cold cathode lamps."),
    (0x0504, "non-dim", "An AC module that switches and does not dim."),
    (0x0505, "low voltage dimmer", "An AC dimmer for electronic low voltage lamps."),
    (0x0506, "other AC dimmer", "An AC dimmer of another kind."),
    (0x0507, "DC level dimmer", "A dimmer that puts out a DC level."),
    (0x0508, "DC PWM dimmer", "A dimmer that puts out pulse-width modulated DC."),
    (0x0509, "LED dimmer", "A dimmer for light-emitting diodes."),
    (0x05FF, "other dimmer", "A dimmer of another kind."),
    (0x0600, "power", "A device for power."),
    (0x0601, "power control", "Relays and other switched power."),
    (0x0602, "power source", "A power supply."),
    (0x06FF, "other power", "A power device of another kind."),
    (0x0700, "scenic", "A device that belongs to the set."),
    (0x0701, "scenic drive", "Motors that move scenery, which DMX512 is not to control."),
    (0x07FF, "other scenic", "A scenic device of another kind."),
    (0x0800, "data", "A device for data."),
    (0x0801, "data distribution", "Splitters, gateways, radio."),
    (0x0802, "data conversion", "A converter to another protocol."),
    (0x08FF, "other data", "A data device of another kind."),
    (0x0900, "AV", "Sound or pictures."),
    (0x0901, "audio", "A device for sound."),
    (0x0902, "video", "A device for video."),
    (0x09FF, "other AV", "A sound or picture device of another kind."),
    (0x0A00, "monitor", "A device that measures."),
    (0x0A01, "AC line monitor", "It measures the mains."),
    (0x0A02, "DC power monitor", "It measures a DC supply."),
    (0x0A03, "environment monitor", "It measures temperature, wind and the like."),
    (0x0AFF, "other monitor", "A measuring device of another kind."),
    (0x7000, "control", "A device that controls others."),
    (0x7001, "controller", "A desk or another controller."),
    (0x7002, "backup controller", "A controller that stands in for another one."),
    (0x70FF, "other control", "A controlling device of another kind."),
    (0x7100, "test", "A device for testing."),
    (0x7101, "test equipment", "A tester."),
    (0x71FF, "other test equipment", "A testing device of another kind."),
    (0x7FFF, "other", "Something that no other category describes."),
)

CATEGORIES: Mapping[str, str] = MappingProxyType({word: meaning for _, word, meaning in _CATEGORIES})

CATEGORY_IDS: Mapping[str, int] = MappingProxyType({word: number for number, word, _ in _CATEGORIES})
"""The product category ids that RDM's DEVICE_INFO reports."""
