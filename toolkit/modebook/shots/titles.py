"""The column titles that people give a list of shots, and which of them are meant."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Literal

from modebook.shelf.table import fold_title

Column = Literal[
    "day",
    "scene",
    "setup",
    "shot",
    "cue",
    "time",
    "units",
    "parameter",
    "from",
    "to",
    "seconds",
    "intent",
    "fps",
    "shutter",
    "note",
]

TITLES: Mapping[Column, tuple[str, ...]] = MappingProxyType(
    {
        "day": ("day", "shooting day", "date"),
        "scene": ("scene", "scene no", "scene number", "sc"),
        "setup": ("setup", "set up", "setup no", "setup number", "camera setup"),
        "shot": ("shot", "shot no", "shot number", "take"),
        "cue": ("cue", "cue no", "cue number", "cue name", "lq", "q", "what happens", "action"),
        "time": (
            "time",
            "at",
            "start",
            "start s",
            "time s",
            "starts at",
            "time in shot",
            "at s",
            "time in s",
        ),
        "units": ("units", "unit", "who", "unit numbers", "lights", "fixtures"),
        "parameter": ("parameter", "param", "what"),
        "from": ("from", "from percent", "from level", "level from", "start level", "before"),
        "to": ("to", "to percent", "to level", "level", "level to", "end level", "after"),
        "seconds": (
            "seconds",
            "sec",
            "secs",
            "s",
            "fade",
            "fade time",
            "fade s",
            "duration",
            "in seconds",
            "in s",
        ),
        "intent": ("intent", "look", "must be", "must look", "wanted", "how"),
        "fps": ("fps", "camera", "camera fps", "frame rate", "frames a second"),
        "shutter": ("shutter", "shutter deg", "shutter angle", "shutter degrees"),
        "note": ("note", "notes", "remark", "remarks", "comment", "comments"),
    }
)
"""For each column the titles that mean it, folded, the plainest first."""

TIMES = ("time", "time s", "time in s")
"""Titles that people give to either time: when a cue starts, or how long it takes."""
KNOWN: frozenset[str] = frozenset(title for titles in TITLES.values() for title in titles)
SUCH_AS = "setup, shot, cue, units, from, to, seconds, intent"


def _meant(folded: Sequence[str]) -> Mapping[Column, tuple[str, ...]]:
    """Which titles mean which column here: beside a column of its own for the start, `Time` is the fade's."""
    starts = [name for name in TITLES["time"] if name not in TIMES and name in folded]
    if not starts or any(name in folded for name in TITLES["seconds"]):
        return TITLES
    kept = tuple(name for name in TITLES["time"] if name not in TIMES)
    return {**TITLES, "time": kept, "seconds": (*TITLES["seconds"], *TIMES)}


def columns_of(titles: Sequence[str]) -> dict[Column, int]:
    """Which title means which column; of several for one, the plainest is taken, and no title twice."""
    folded = [fold_title(title) for title in titles]
    at: dict[Column, int] = {}
    for column, names in _meant(folded).items():
        place = next((folded.index(name) for name in names if name in folded), None)
        if place is not None and place not in at.values():
            at[column] = place
    return at
