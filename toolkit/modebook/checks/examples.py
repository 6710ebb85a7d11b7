"""Makes whole fixture documents of the rules' examples, which leave out everything but their point."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from modebook.checks.reading import FixtureReading
from modebook.documents.fixture import Fixture

_NO_SMOOTHING = {"key": "smoothing", "setting": "smoothing", "none": True, "source": "guide"}
_DIMMER = {"parameter": "dimmer", "slots": [1, 2]}


def complete(content: Mapping[str, object]) -> Fixture:
    """The fixture document of an example, sound in all that the example leaves out.

    A document without settings says that it has no smoothing; one without modes has a dimmer of 16 bits. A
    mode without a name or footprint gets them, the footprint by its highest slot. `path` is no part of a
    document (see reading_of).
    """
    whole: dict[str, Any] = {
        "maker": "Invented Maker",
        "model": "Invented 1",
        "category": "fixed",
        "standing": "transcribed",
        "sources": [{"key": "guide", "title": "Invented 1 user guide", "revision": "A"}],
        "settings": [_NO_SMOOTHING],
        "modes": [{"parameters": [_DIMMER]}],
    }
    whole |= {key: value for key, value in content.items() if key != "path"}
    whole["modes"] = [
        {"name": f"Mode {index}", "footprint": _highest(mode)} | mode
        for index, mode in enumerate(whole["modes"], 1)
    ]
    return Fixture.model_validate_json(json.dumps(whole))


def reading_of(content: Mapping[str, object]) -> FixtureReading:
    """An example as rules see it; its `path`, where it has one, is the document's place below fixtures/."""
    path = content.get("path")
    return FixtureReading(
        complete(content), file="example.json", identity=None if path is None else str(path)
    )


def _highest(holder: Mapping[str, Any]) -> int:
    """The highest slot of a mode or a cell; 0 without any."""
    own: list[int] = [slot for parameter in holder.get("parameters", []) for slot in parameter["slots"]]
    ends: list[int] = [
        block["first"] - 1 + (block["count"] - 1) * block["stride"] + _highest(block)
        for block in holder.get("cells", [])
    ]
    parts: int = sum(part["footprint"] for part in holder.get("parts", []))
    return max([*own, *ends, 0]) + parts
