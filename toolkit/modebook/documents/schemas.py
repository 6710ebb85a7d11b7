"""The JSON Schemas of the documents (draft 2020-12), generated from the models."""

from __future__ import annotations

from typing import Any

from pydantic import BaseModel

from modebook.documents.fixture import Fixture
from modebook.documents.policy import Policy
from modebook.documents.rig import Rig

DIALECT = "https://json-schema.org/draft/2020-12/schema"

_MODELS: dict[str, tuple[type[BaseModel], str]] = {
    "fixture": (Fixture, "A fixture: one model of light, its modes, settings, sources and doubts"),
    "policy": (Policy, "A policy: every threshold that checks compare with"),
    "rig": (Rig, "A rig: what holds for all units of one job"),
}


def schemas() -> dict[str, dict[str, Any]]:
    """The schemas by file name, such as ``fixture.schema.json``."""
    made: dict[str, dict[str, Any]] = {}
    for name, (model, title) in _MODELS.items():
        body = model.model_json_schema(by_alias=True)
        body.pop("title", None)
        made[f"{name}.schema.json"] = {"$schema": DIALECT, "title": title, **_tidy(body)}
    return made


def _tidy(value: Any) -> Any:
    """Without the titles that pydantic derives from field names: editors show them over the descriptions.

    A discriminator is OpenAPI's word and not part of the dialect. An object whose keys must match a pattern
    takes no others, which pydantic leaves unsaid.
    """
    if isinstance(value, dict):
        tidy = {
            key: _tidy(item)
            for key, item in value.items()
            if not (key == "title" and isinstance(item, str)) and key != "discriminator"
        }
        if isinstance(value.get("patternProperties"), dict) and value.get("type") == "object":
            tidy.setdefault("additionalProperties", False)
        return tidy
    if isinstance(value, list):
        return [_tidy(item) for item in value]
    return value
