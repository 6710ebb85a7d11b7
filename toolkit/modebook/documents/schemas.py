"""The JSON Schemas of the documents (draft 2020-12), generated from the models."""

from __future__ import annotations

import ast
import inspect
import textwrap
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

from pydantic import BaseModel

from modebook.documents.base import Part
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
        body = _described(model.model_json_schema(by_alias=True), model)
        body.pop("title", None)
        made[f"{name}.schema.json"] = {"$schema": DIALECT, "title": title, **_tidy(body)}
    return made


def _described(body: dict[str, Any], model: type[BaseModel]) -> dict[str, Any]:
    """A schema with the docstrings that stand below the fields of its models.

    Pydantic can put them into the models themselves, but then reads every model's source at each start of the
    program, which takes longer than all the rest of the models does.
    """
    parts = {part.__name__: part for part in _parts_of(Part)}
    for name, told in [(model.__name__, body), *body.get("$defs", {}).items()]:
        part = parts.get(name)
        properties = told.get("properties", {})
        if part is None:
            continue
        words = _docstrings(part)
        for field, about in part.model_fields.items():
            key = about.alias or field
            if field in words and key in properties:
                properties[key] = dict(sorted({**properties[key], "description": words[field]}.items()))
    return body


def _parts_of(kind: type[BaseModel]) -> Iterator[type[BaseModel]]:
    for part in kind.__subclasses__():
        yield part
        yield from _parts_of(part)


def _docstrings(part: type[BaseModel]) -> dict[str, str]:
    """The docstrings below the fields of a model's own class body."""
    (body,) = ast.parse(textwrap.dedent(inspect.getsource(part))).body
    assert isinstance(body, ast.ClassDef)
    found: dict[str, str] = {}
    for field, below in pairwise(body.body):
        if (
            isinstance(field, ast.AnnAssign)
            and isinstance(field.target, ast.Name)
            and isinstance(below, ast.Expr)
            and isinstance(below.value, ast.Constant)
            and isinstance(below.value.value, str)
        ):
            found[field.target.id] = inspect.cleandoc(below.value.value)
    return found


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
