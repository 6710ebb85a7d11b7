"""Fixture documents taken in the quick way, for a first look at very many: only what is written is made.

Of the time that a document takes, most goes into fields that it does not have: a model sets each of them to
its default, sixteen for a range of which three are written. Here modes, parameters and ranges become
stand-ins that hold what is written and leave the rest to their class; all else are the models themselves. A
stand-in answers as the model would, but is none, so it serves to find nothing, and what is found is found
again in the models. The schema is the models' own, so that the two ways cannot drift apart.
"""

from __future__ import annotations

from functools import cache
from typing import Any

from pydantic_core import SchemaValidator, ValidationError, core_schema

from modebook.documents.base import Part
from modebook.documents.fixture import Fixture
from modebook.documents.modes import Mode, Parameter, Range


def _defaults(model: type[Part]) -> dict[str, Any]:
    return {
        name: field.get_default(call_default_factory=True)
        for name, field in model.model_fields.items()
        if not field.is_required()
    }


class _StandIn:
    """Holds what is written as its own dictionary; its class has the defaults."""

    def __init__(self, written: dict[str, Any]) -> None:
        self.__dict__ = written


class QuickRange(_StandIn):
    """Stands in for a Range."""


class QuickParameter(_StandIn):
    """Stands in for a Parameter; its ranges are made when asked for."""

    name = Parameter.name

    @property
    def ranges(self) -> list[QuickRange]:
        """The ranges as stand-ins; what looks into `__dict__` finds them as dictionaries."""
        return [QuickRange(piece) for piece in self.__dict__.get("ranges", ())]


class QuickMode(_StandIn):
    """Stands in for a Mode; what is in its cells and parts are models."""

    in_order: Any = Mode.in_order


for _class, _model in ((QuickRange, Range), (QuickParameter, Parameter), (QuickMode, Mode)):
    for _name, _value in _defaults(_model).items():
        if not hasattr(_class, _name):
            setattr(_class, _name, _value)
_FIXTURE_DEFAULTS = _defaults(Fixture)


def quick_fixture(data: Any) -> Fixture | None:
    """A document, out of JSON data, in which every mode is a stand-in; None where the models must look.

    They must where anything is wrong.
    """
    try:
        written = _validator().validate_python(data, by_alias=True, by_name=False)
    except ValidationError:
        return None
    modes = [QuickMode(mode) for mode in written["modes"]]
    for mode in modes:
        parameters = mode.__dict__.get("parameters", ())
        if not all(map(_holds_together, parameters)):
            return None
        mode.__dict__["parameters"] = [QuickParameter(one) for one in parameters]
    # What pydantic offers for this, model_construct, reads the docstrings of the class each time.
    fixture = Fixture.__new__(Fixture)
    object.__setattr__(fixture, "__dict__", _FIXTURE_DEFAULTS | written | {"modes": modes})
    try:
        fixture.each_key_once()
        for mode in modes:
            mode.in_order()
    except ValueError:
        return None
    return fixture


def _holds_together(parameter: dict[str, Any]) -> bool:
    """What the validators of Parameter and Range ask for, which no schema can say."""
    slots = parameter["slots"]
    if len(slots) > 1 and len(set(slots)) != len(slots):
        return False
    if "ranges" in parameter:
        for piece in parameter["ranges"]:
            if piece["from_"] > piece["to"]:
                return False
    return True


@cache
def _validator() -> SchemaValidator:
    return SchemaValidator(_sparse(Fixture.__pydantic_core_schema__))


_QUICK = (Fixture, Mode, Parameter, Range)
_STRICT = core_schema.CoreConfig(strict=True, allow_inf_nan=False)


def _sparse(schema: Any) -> Any:
    """A schema with dictionaries in the place of the quick models, in which absent fields are left out."""
    if isinstance(schema, list):
        return [_sparse(one) for one in schema]
    if not isinstance(schema, dict):
        return schema
    if schema.get("type") == "function-after" and schema["schema"].get("cls") in _QUICK:
        return _sparse(schema["schema"])  # its own validator wants a model: see _holds_together
    if schema.get("type") != "model":
        return {key: _sparse(value) for key, value in schema.items()}
    if schema["cls"] not in _QUICK:
        return schema
    fields = {}
    for name, field in schema["schema"]["fields"].items():
        inner = field["schema"]
        is_optional = inner["type"] == "default"
        fields[name] = core_schema.typed_dict_field(
            _sparse(inner["schema"] if is_optional else inner),
            required=not is_optional,
            validation_alias=field.get("validation_alias"),
        )
    return core_schema.typed_dict_schema(fields, extra_behavior="forbid", config=_STRICT)
