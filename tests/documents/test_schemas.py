"""The schemas say what the models say: both take the same documents and refuse the same ones.

Two implementations of JSON Schema stand for the schemas: jsonschema (Python) and jsonschema-rs (Rust).
"""

from __future__ import annotations

import copy
import json
from collections.abc import Iterator
from typing import Any

import jsonschema
import jsonschema_rs
import pytest
from hypothesis import given
from hypothesis import settings as calm
from hypothesis import strategies as st
from pydantic import BaseModel, ValidationError

from modebook.documents.fixture import Fixture
from modebook.documents.policy import Policy, house_policy
from modebook.documents.rig import Rig
from modebook.documents.schemas import DIALECT, schemas
from support.documents import Json, fixture, fixtures, mode, parameter, policies, rigs, setting

CALM = calm(deadline=None, max_examples=40)
MODELS: dict[str, type[BaseModel]] = {"fixture": Fixture, "policy": Policy, "rig": Rig}
SCHEMAS = {name: schemas()[f"{name}.schema.json"] for name in MODELS}
IN_PYTHON = {name: jsonschema.Draft202012Validator(schema) for name, schema in SCHEMAS.items()}
IN_RUST = {name: jsonschema_rs.Draft202012Validator(schema) for name, schema in SCHEMAS.items()}

OBVIOUS = {"label", "note", "by", "date"}
"""Properties whose name says all that a description could."""


def _schemas_take(name: str, document: Any) -> bool:
    """Whether both implementations take a document; they must agree."""
    rust, python = IN_RUST[name].is_valid(document), IN_PYTHON[name].is_valid(document)
    assert rust == python
    return rust


def _model_refuses(name: str, document: Any) -> set[str]:
    """The kinds of errors that the model finds; none where it takes the document."""
    try:
        MODELS[name].model_validate_json(json.dumps(document), by_alias=True, by_name=False)
    except ValidationError as error:
        return {detail["type"] for detail in error.errors()}
    return set()


@pytest.mark.parametrize("name", MODELS)
def test_schemas_are_of_the_dialect_they_name(name: str) -> None:
    """Valid against the metaschema of draft 2020-12, in both implementations."""
    schema = SCHEMAS[name]
    assert schema["$schema"] == DIALECT
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema_rs.meta.validate(schema)


def _properties(schema: Json) -> Iterator[tuple[str, str, Json]]:
    for name, body in [("document", schema), *schema.get("$defs", {}).items()]:
        for key, one in body.get("properties", {}).items():
            yield name, key, one


@pytest.mark.parametrize("name", MODELS)
def test_an_editor_can_show_what_every_property_means(name: str) -> None:
    """Each has a description, but for those whose name says it all; so has each kind of object."""
    lacking = [
        f"{owner}.{key}"
        for owner, key, one in _properties(SCHEMAS[name])
        if key not in OBVIOUS and not one.get("description")
    ]
    assert lacking == []
    assert [key for key, one in SCHEMAS[name].get("$defs", {}).items() if not one.get("description")] == []


@pytest.mark.parametrize("name", MODELS)
def test_objects_are_closed(name: str) -> None:
    """No object of a schema leaves unknown keys open, maps of free text apart."""

    def visit(value: Any, at: str) -> Iterator[str]:
        if isinstance(value, list):
            for index, item in enumerate(value):
                yield from visit(item, f"{at}/{index}")
        elif isinstance(value, dict):
            if value.get("type") == "object" and "additionalProperties" not in value:
                yield at
            for key, item in value.items():
                yield from visit(item, f"{at}/{key}")

    assert list(visit(SCHEMAS[name], "")) == []


@pytest.mark.parametrize(
    ("name", "documents"), [("fixture", fixtures()), ("policy", policies()), ("rig", rigs())]
)
def test_what_strategies_make_is_taken_by_all(name: str, documents: st.SearchStrategy[Json]) -> None:
    """Both implementations of the schema and the model take every document."""

    @CALM
    @given(documents)
    def check(document: Json) -> None:
        assert IN_RUST[name].is_valid(document)
        IN_PYTHON[name].validate(document)
        assert _model_refuses(name, document) == set()

    check()


def test_the_house_policy_is_taken() -> None:
    """The policy that comes with the program holds to its own schema."""
    assert _schemas_take("policy", house_policy().model_dump(mode="json", by_alias=True, exclude_unset=True))


# What both refuse -----------------------------------------------------------------------------------------

SPAN = {"from": 0, "to": 1, "unit": "deg"}
MENU = {"by": "menu"}
RDM = {"by": "rdm"}


def _with(**more: Any) -> Json:
    return fixture(modes=[mode(parameter(**more))])


def _range(**more: Any) -> Json:
    return _with(ranges=[{"from": 0, "to": 1, "meaning": "x", **more}])


REFUSED_BY_BOTH: dict[str, Json] = {
    "an unknown key of the document": fixture(colour="red"),
    "an unknown key deep inside": _range(mening="x"),
    "an unknown key in one of several spans": _with(span=[SPAN, {**SPAN, "units": "deg"}]),
    "a key that is no key, in sets": _range(sets={"Smoothing": "off"}),
    "a key that is no key, in values": fixture(settings=[setting(ways=[{**RDM, "values": {"Off!": 1}}])]),
    "a missing key of the document": {key: one for key, one in fixture().items() if key != "maker"},
    "a missing key deep inside": _with(ranges=[{"from": 0, "to": 1}]),
    "a missing unit": _with(span={"from": 0, "to": 1}),
    "no modes": fixture(modes=[]),
    "a word that is not in the vocabulary": _with(parameter="dimer"),
    "a unit that is not": _with(span={**SPAN, "unit": "degrees"}),
    "a category that is not": fixture(category="moving head"),
    "a standing that is not": fixture(standing="sure"),
    "a hazard that is not": _range(hazard="Reset"),
    "a way by slot": fixture(settings=[setting(ways=[{"by": "slot"}])]),
    "a number in quotes": _with(default="0"),
    "a number for words": fixture(maker=7),
    "a list for words": fixture(model=["Lumo"]),
    "words for a list": fixture(sources="guide"),
    "true for a number": _with(default=True),
    "half a slot": _with(slots=[1.5]),
    "slot 0": _with(slots=[0]),
    "five slots": _with(slots=[1, 2, 3, 4, 5]),
    "a negative value": _range(**{"from": -1}),
    "a value past 32 bits": _range(to=2**32),
    "empty words": fixture(maker=""),
    "one span in a list": _with(span=[SPAN]),
    "an RDM number in other form": fixture(rdm={"manufacturer": "7FF1", "model": "0x0001"}),
    "a month 13": fixture(sources=[{"key": "a", "title": "x", "date": "2026-13"}]),
    "a pointer without its slash": fixture(doubts=[{"pointer": "modes", "why": "x"}]),
    "a key with a capital": _with(key="Blade"),
    "a condition with no range at all": _with(when=[{"parameter": "pan", "any_of": []}]),
    "a list for a document": [],  # type: ignore[dict-item]
    "null for words": fixture(maker=None),
}


@pytest.mark.parametrize("what", REFUSED_BY_BOTH)
def test_refused_by_the_schema_and_by_the_model(what: str) -> None:
    """An editor shows red where the program would refuse."""
    document = REFUSED_BY_BOTH[what]
    assert not _schemas_take("fixture", document)
    assert _model_refuses("fixture", document)


@pytest.mark.parametrize(
    "told",
    [
        {"camera": {"fps": 0}},
        {"links": {"64000": {}}},
        {"links": {"all": {}}},
        {"links": {"1": {"rdm": "maybe"}}},
        {"links": {"1": {"loss": {"rate": 1}}}},
        {"links": {"1": {"loss": "much"}}},
        {"policy": {"hue-step": "2"}},
        {"policy": {"hue-step": {"severity": "bad"}}},
        {"policy": {"Hue": 2}},
        {"units": {"1": {"reach": "crane"}}},
        {"units": {"": {}}},
        {"refresh": 30},
    ],
)
def test_rigs_refused_by_both(told: Json) -> None:
    """The same holds for rigs."""
    document = {"name": "Night shoot", **told}
    assert not _schemas_take("rig", document)
    assert _model_refuses("rig", document)


CELLS = {"count": 65_536, "first": 1, "stride": 1, "parameters": [parameter("pan", 1, 2)]}

UNSAID: dict[str, Json] = {
    "from is above to": _range(**{"from": 2}),
    "one slot is listed twice": _with(slots=[1, 1]),
    "cells past 65,536 slots": fixture(modes=[mode(cells=[CELLS])]),
    "neither packets nor seconds": fixture(settings=[setting({"key": "a", "length": {}})]),
    "packets and seconds": fixture(settings=[setting({"key": "a", "length": {"packets": 1, "seconds": 1}})]),
    "rise without fall": fixture(settings=[setting({"key": "a", "length": {"rise": {"packets": 1}}})]),
    "a condition on nothing": _with(when=[{}]),
    "a condition on a parameter without values": _with(when=[{"parameter": "pan"}]),
    "a condition on a setting without choices": _with(when=[{"setting": "fan"}]),
    "values without a parameter": _with(when=[{"given": "x", "from": 0, "to": 1}]),
    "a path over RDM": fixture(settings=[setting(ways=[{**RDM, "path": ["Setup"]}])]),
    "a PID at the menu": fixture(settings=[setting(ways=[{**MENU, "pid": "0x8000"}])]),
    "choices of what the fixture has not": fixture(settings=[setting({"key": "a"}, none=True)]),
    "two choices of one key": fixture(settings=[setting({"key": "a"}, {"key": "a"})]),
    "two settings of one key": fixture(settings=[setting(), setting()]),
    "two sources of one key": fixture(sources=[{"key": "a", "title": "x"}] * 2),
    "two wheels of one key": fixture(wheels=[{"key": "a", "positions": []}] * 2),
    "two positions of one key": fixture(wheels=[{"key": "a", "positions": [{"key": "b"}] * 2}]),
    "two emitters of one key": fixture(emitters=[{"key": "a"}] * 2),
    "two parts of one key": fixture(modes=[mode(parts=[{"key": "a", "footprint": 1}] * 2)]),
    "x without y": fixture(wheels=[{"key": "a", "positions": [{"key": "b", "color": {"x": 0.3}}]}]),
    "a color of neither x, y nor filter": fixture(
        wheels=[{"key": "a", "positions": [{"key": "b", "color": {}}]}]
    ),
}
"""What a schema cannot say, or not so that an editor would show it well: rules over several fields. The
model alone refuses these. Two more are left to it: a whole number written with a point (7.0 is an integer to
JSON Schema, not to the model), and two equal keys in one object, which no validator ever sees."""


@pytest.mark.parametrize("what", UNSAID)
def test_rules_over_several_fields_are_the_models_alone(what: str) -> None:
    """The schema takes each of these documents and the model refuses it, as a rule of its own."""
    assert _schemas_take("fixture", UNSAID[what])
    assert _model_refuses("fixture", UNSAID[what]) == {"value_error"}


def test_a_whole_number_with_a_point_is_the_models_alone() -> None:
    """To JSON Schema 7.0 is an integer; documents write whole numbers whole."""
    assert _schemas_take("fixture", _with(default=7.0))
    assert _model_refuses("fixture", _with(default=7.0)) == {"int_type"}


# Mutations ------------------------------------------------------------------------------------------------

STRANGE = st.sampled_from(
    (
        None,
        True,
        False,
        0,
        -1,
        1.5,
        2**40,
        70_000,
        "",
        "x",
        "Off!",
        "rdm",
        "off",
        [],
        {},
        [1],
        ["x"],
        {"x": 1},
    )
)


def _holders(value: Any) -> Iterator[Any]:
    if isinstance(value, dict | list):
        yield value
        for item in value.values() if isinstance(value, dict) else value:
            yield from _holders(item)


@st.composite
def _spoiled(draw: st.DrawFn, documents: st.SearchStrategy[Json]) -> Json:
    """A document with something strange in one place: in a value, in place of a key, or taken out."""
    document = copy.deepcopy(draw(documents))
    holders = [holder for holder in _holders(document) if holder]
    holder = holders[draw(st.integers(0, len(holders) - 1))]
    keys = list(holder) if isinstance(holder, dict) else list(range(len(holder)))
    key = keys[draw(st.integers(0, len(keys) - 1))]
    how = draw(st.sampled_from(("value", "out", "key")))
    if how == "value" or isinstance(holder, list):
        holder[key] = draw(STRANGE)
    elif how == "out":
        del holder[key]
    else:
        holder[draw(st.sampled_from(("Label!", "labels", "x", "from", "source")))] = holder.pop(key)
    return document


@pytest.mark.parametrize(
    ("name", "documents"), [("fixture", fixtures()), ("rig", rigs()), ("policy", policies())]
)
def test_schema_and_model_agree_on_spoiled_documents(name: str, documents: st.SearchStrategy[Json]) -> None:
    """The schema refuses just what the model refuses, rules over several fields apart."""

    @calm(deadline=None, max_examples=150)
    @given(_spoiled(documents))
    def check(document: Json) -> None:
        refused = _model_refuses(name, document)
        if IN_RUST[name].is_valid(document):
            assert refused <= {"value_error"}
        else:
            assert refused

    check()
