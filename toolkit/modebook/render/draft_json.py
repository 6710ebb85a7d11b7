"""A draft as one JSON object: the document with its doubts, and what the reader had to say."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from modebook.documents.fixture import Fixture
from modebook.render.jsons import to_json
from modebook.shelf.canonical import as_written


def draft_json(fixture: Fixture, notes: Sequence[str], written: Path | None) -> str:
    """`document` is the draft as it stands in its file, `doubts` always among its keys with all theirs."""
    document: dict[str, Any] = as_written(fixture)
    document["doubts"] = [
        {
            "pointer": doubt.pointer,
            "slots": doubt.slots,
            "place": doubt.place,
            "printed": doubt.printed,
            "read": doubt.read,
            "why": doubt.why,
            **({} if doubt.settled is None else {"settled": doubt.settled.model_dump(mode="json")}),
        }
        for doubt in fixture.doubts
    ]
    told = {"document": document, "notes": list(notes), "written": None if written is None else str(written)}
    return to_json(told)
