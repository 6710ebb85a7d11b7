"""The demonstration catalog uses all that documents can say, and its faults are the planted ones."""

from __future__ import annotations

import json
import typing
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest
from pydantic import BaseModel

from modebook.checks.bulk import check_files
from modebook.checks.registry import FIXTURE_RULES, rules_of
from modebook.documents.base import slug
from modebook.documents.fixture import Fixture
from modebook.documents.rig import Rig
from modebook.shelf.canonical import canonical
from modebook.words.e120 import PROTOTYPE_MANUFACTURERS
from modebook.words.ranges import DOES, HAZARDS, KEPT
from modebook.words.records import STANDINGS
from modebook.words.settings import METHODS

CATALOG = Path(__file__).parents[2] / "catalog"
FILES = sorted((CATALOG / "fixtures").glob("*/*.json"))
RIGS = sorted((CATALOG / "rigs").glob("*/rig.json"))
NOT_RENTED = {"generic", "botchmere"}

RULES_OF_THE_JOB = {
    *("slot-overlap", "slot-gap", "footprint-mismatch", "range-overlap", "range-gap", "default-out-of-range"),
    *("condition-hole", "path-mismatch", "source-missing", "stale-acceptance", "hazard-on-dmx"),
    *("coarse-chromaticity", "coarse-angle", "coarse-hue", "coarse-color-temperature", "coarse-dimmer"),
    *("smoothing-unknown", "smoothing-unreachable", "smoothing-by-hand-only", "smoothing-without-off"),
    "slow-by-default",
}


def fixtures() -> dict[str, Fixture]:
    """Every document by its path below the catalog."""
    return {str(p.relative_to(CATALOG)): Fixture.model_validate_json(p.read_bytes()) for p in FILES}


def planted() -> list[dict[str, str]]:
    found: list[dict[str, str]] = json.loads((CATALOG / "planted.json").read_bytes())
    return found


def models_under(root: type[BaseModel]) -> set[type[BaseModel]]:
    """A model and all models that its fields may hold."""
    seen: set[type[BaseModel]] = set()
    todo: list[object] = [root]
    while todo:
        kind = todo.pop()
        if isinstance(kind, type) and issubclass(kind, BaseModel):
            if kind not in seen:
                seen.add(kind)
                todo.extend(field.annotation for field in kind.model_fields.values())
        else:
            todo.extend(typing.get_args(kind))
    return seen


def fields_used(value: object) -> Iterator[tuple[str, str]]:
    """Every field that is written somewhere in a document, with its model's name."""
    if isinstance(value, BaseModel):
        for name in value.model_fields_set:
            yield type(value).__name__, name
            yield from fields_used(getattr(value, name))
    elif isinstance(value, list | tuple):
        for item in value:
            yield from fields_used(item)
    elif isinstance(value, Mapping):
        for item in value.values():
            yield from fields_used(item)


def words_used(value: object, key: str) -> Iterator[str]:
    """Every text that stands under a key, anywhere in plain data."""
    if isinstance(value, dict):
        for name, item in value.items():
            if name == key and isinstance(item, str):
                yield item
            yield from words_used(item, key)
    elif isinstance(value, list):
        for item in value:
            yield from words_used(item, key)


def test_there_are_enough_makers_fixtures_and_modes() -> None:
    """At least 6 invented makers with 20 fixtures and 48 modes, generic and faulty ones not counted."""
    rented = {path: f for path, f in fixtures().items() if path.split("/")[1] not in NOT_RENTED}
    assert len({path.split("/")[1] for path in rented}) >= 6
    assert len(rented) >= 20
    assert sum(len(f.modes) for f in rented.values()) >= 48


def test_every_field_of_a_fixture_document_is_used() -> None:
    """No feature of the documents is left without an example in the catalog."""
    used = {pair for f in fixtures().values() for pair in fields_used(f)}
    wanted = {(model.__name__, name) for model in models_under(Fixture) for name in model.model_fields}
    assert len(wanted) > 150
    assert wanted - used == set()


def test_every_field_of_a_rig_is_used() -> None:
    """No feature of a rig is left without an example."""
    used = {pair for path in RIGS for pair in fields_used(Rig.model_validate_json(path.read_bytes()))}
    wanted = {(model.__name__, name) for model in models_under(Rig) for name in model.model_fields}
    assert len(wanted) > 25
    assert wanted - used == set()


@pytest.mark.parametrize(
    ("key", "words"),
    [("does", DOES), ("hazard", HAZARDS), ("kept", KEPT), ("method", METHODS), ("standing", STANDINGS)],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_every_word_of_the_short_lists_is_used(key: str, words: Mapping[str, str]) -> None:
    """What ranges do, their hazards, how long they keep, methods and standings all stand somewhere."""
    used = {word for path in FILES for word in words_used(json.loads(path.read_bytes()), key)}
    assert set(words) - used == set()


def test_every_way_to_change_smoothing_is_used() -> None:
    """Smoothing is changed by slot, over RDM, at a menu, by app and on a page; by none; and unknown."""
    from modebook.documents.ways import smoothing_by

    found = {by for f in fixtures().values() for mode in f.modes for by in smoothing_by(f, mode)}
    assert found == {"slot", "rdm", "menu", "app", "page", "none", "unknown"}


def test_paths_are_maker_and_model_but_for_the_planted_one() -> None:
    """A document's path is its identity; the one that is not is listed as a fault."""
    wrong = {
        path for path, f in fixtures().items() if path != f"fixtures/{slug(f.maker)}/{slug(f.model)}.json"
    }
    assert wrong == {entry["file"] for entry in planted() if entry["rule"] == "path-mismatch"}


@pytest.mark.parametrize("path", FILES, ids=lambda p: f"{p.parent.name}/{p.stem}")
def test_documents_are_in_canonical_form(path: Path) -> None:
    """Each file is what the program itself would write."""
    assert canonical(Fixture.model_validate_json(path.read_bytes())) == path.read_bytes()


@pytest.mark.parametrize("path", RIGS, ids=lambda p: p.parent.name)
def test_rigs_are_in_canonical_form(path: Path) -> None:
    """Each rig.json is what the program itself would write."""
    assert canonical(Rig.model_validate_json(path.read_bytes())) == path.read_bytes()


def test_invented_makers_use_prototype_ids() -> None:
    """No id of a real maker stands in the catalog, and each maker has one of its own (E1.20)."""
    ids: dict[str, set[int]] = {}
    for f in fixtures().values():
        if f.rdm is not None:
            ids.setdefault(f.maker, set()).add(int(f.rdm.manufacturer, 16))
    assert all(len(found) == 1 for found in ids.values())
    every = [number for found in ids.values() for number in found]
    assert len(every) == len(set(every))
    assert all(number in PROTOTYPE_MANUFACTURERS for number in every)


def test_generic_documents_accept_with_a_reason() -> None:
    """What is inherent in a plain mode is accepted in its document, and nothing of it is planted."""
    generic = {path: f for path, f in fixtures().items() if path.startswith("fixtures/generic/")}
    assert len(generic) >= 10
    for f in generic.values():
        assert "smoothing-unknown" in {one.rule for one in f.accepted}
        assert all(len(one.reason) > 20 for one in f.accepted)
    assert not [entry for entry in planted() if entry["file"] in generic]


def test_planted_findings_name_existing_places() -> None:
    """Every planted finding has a file, a place in it, and a rule that there is."""
    rules = set(rules_of(FIXTURE_RULES))
    for entry in planted():
        assert list(entry) == ["rule", "file", "pointer", "about"]
        assert entry["rule"] in rules, entry
        place = json.loads((CATALOG / entry["file"]).read_bytes())
        for step in entry["pointer"].split("/")[1:]:
            place = place[int(step)] if isinstance(place, list) else place[step]


def test_every_rule_of_the_job_has_a_planted_finding() -> None:
    """Each of the rules fires at least once on the catalog."""
    assert RULES_OF_THE_JOB - {entry["rule"] for entry in planted()} == set()


def test_the_check_finds_the_planted_findings_and_nothing_else() -> None:
    """The list made by hand and the program agree, place by place."""
    found = {(f.rule, str(Path(f.file).relative_to(CATALOG)), f.pointer) for f in check_files(FILES).findings}
    assert found == {(entry["rule"], entry["file"], entry["pointer"]) for entry in planted()}
