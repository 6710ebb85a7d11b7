"""Every document of the catalog holds to its schema, by a validator that is not the program's.

Source: jsonschema-rs, an implementation of JSON Schema draft 2020-12 in Rust. The program itself reads
documents with pydantic, from models that the schemas are generated from.
"""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema_rs
import pytest

ROOT = Path(__file__).resolve().parents[2]
PLACES = [
    ("fixture", "catalog/fixtures/*/*.json"),
    ("fixture", "catalog/readings/*/*/*.json"),
    ("rig", "catalog/rigs/*/rig.json"),
    ("policy", "toolkit/modebook/documents/policy.json"),
]
DOCUMENTS = [
    (name, path.relative_to(ROOT).as_posix()) for name, place in PLACES for path in sorted(ROOT.glob(place))
]


def _validator(name: str) -> jsonschema_rs.Draft202012Validator:
    schema = json.loads((ROOT / "schema" / f"{name}.schema.json").read_text(encoding="utf-8"))
    return jsonschema_rs.Draft202012Validator(schema)


VALIDATORS = {name: _validator(name) for name, _ in PLACES}


@pytest.mark.parametrize(("name", "file"), DOCUMENTS)
def test_a_document_holds_to_its_schema(name: str, file: str) -> None:
    """No error, and the schema that the document names is the one it is checked with."""
    document = json.loads((ROOT / file).read_text(encoding="utf-8"))
    found = [f"{error.instance_path}: {error.message}" for error in VALIDATORS[name].iter_errors(document)]
    assert found == []
    if "$schema" in document:
        assert (ROOT / file).parent.joinpath(document["$schema"]).name == f"{name}.schema.json"


def test_the_catalog_is_there() -> None:
    """An empty catalog would hold to anything."""
    assert {name for name, _ in DOCUMENTS} >= {"fixture", "policy"}
    below = set((ROOT / "catalog").glob("*/**/*.json"))
    assert {ROOT / file for _, file in DOCUMENTS} >= below, "a document is not checked"


def test_the_validator_does_refuse() -> None:
    """A misspelled key in a document of the catalog is found, so silence above means something."""
    name, file = DOCUMENTS[0]
    document = json.loads((ROOT / file).read_text(encoding="utf-8"))
    document["modes"][0]["parametres"] = document["modes"][0].pop("parameters", [])
    assert not VALIDATORS[name].is_valid(document)
