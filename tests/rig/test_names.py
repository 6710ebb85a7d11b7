"""Fixtures and modes by the names that people write: sure or refused, never guessed."""

from __future__ import annotations

import pytest

from modebook.documents.modes import Mode
from modebook.rig.audit import audit
from modebook.rig.examples import rig_of
from modebook.rig.fixtures import CatalogFixtures, FixtureNames
from modebook.rig.mode_names import modes_meant, nearest_modes
from modebook.shelf.catalog import Catalog

NAMES = FixtureNames(frozenset({"arden/lumo-40", "arden/lumo-400", "brisk/lumo-40", "brisk/tal", "ile/no-2"}))


@pytest.mark.parametrize(
    ("name", "meant"),
    [
        ("Arden Lumo 40", ["arden/lumo-40"]),
        ("ARDEN  lumo-40", ["arden/lumo-40"]),
        ("arden lumo40", ["arden/lumo-40"]),
        ("arden/lumo-40", ["arden/lumo-40"]),
        ("Arden/Lumo 40", ["arden/lumo-40"]),
        ("Lumo 400", ["arden/lumo-400"]),
        ("Tal", ["brisk/tal"]),
        ("Île Nº 2", ["ile/no-2"]),
        ("Lumo 40", ["arden/lumo-40", "brisk/lumo-40"]),
        ("Lumo", []),
        ("Lumo 4", []),
        ("arden", []),
        ("", []),
        ("../../etc", []),
    ],
)
def test_a_fixture_is_found_by_whole_names_only(name, meant):
    """Maker and model, the path, or a model that one maker has; a beginning or a slip is nobody's name."""
    assert NAMES.meant(name) == meant


def test_the_nearest_fixtures_are_told():
    """A slip of one letter leads back to what was meant."""
    assert NAMES.nearest("Arden Luma 40")[0] == "arden/lumo-40"
    assert NAMES.nearest("Tall") == ["brisk/tal"]
    assert NAMES.nearest("zzzz") == []


def modes(*names):
    return [Mode(name=name, number=number, footprint=4) for number, name in enumerate(names, 1)]


@pytest.mark.parametrize(
    ("told", "places"),
    [
        ("Extended 16 bit", [1]),
        ("extended 16-BIT", [1]),
        ("EXTENDED16BIT", [1]),
        ("2", [1]),
        ("02", [1]),
        ("Mode 2", [1]),
        ("personality 3", [2]),
        ("Extended", []),
        ("16 bit", []),
        ("9", []),
        ("RGB+", [3]),
        ("RGB", [2]),
        ("rgb -", [2, 3]),
        ("", []),
        ("+", []),
    ],
)
def test_a_mode_is_found_by_its_whole_name_or_its_number(told, places):
    """Case, spaces and punctuation do not count, unless they tell two modes apart."""
    assert modes_meant(told, modes("Basic", "Extended 16 bit", "RGB", "RGB+")) == places


def test_a_name_that_is_another_modes_number_is_in_doubt():
    """A mode called 3 that is personality 1."""
    assert modes_meant("3", modes("3", "16", "Full")) == [0, 2]
    assert modes_meant("16", modes("3", "16", "Full")) == [1]


def test_a_number_that_stands_twice_is_in_doubt():
    """A menu state decides between them."""
    two = [Mode(name="A", number=1, footprint=4, given="x"), Mode(name="B", number=1, footprint=5, given="y")]
    assert modes_meant("1", two) == [0, 1]
    reading = rig_of(
        {
            "fixtures": [{"model": "Par", "modes": [mode.model_dump(exclude_unset=True) for mode in two]}],
            "patch": "unit,fixture,mode,address\n1,Par,1,1/1\n",
        }
    )
    (finding,) = [one for one in audit(reading).findings if one.rule == "unknown-mode"]
    assert finding.message == (
        "'1' may be the mode 'A' (4 slots, number 1, given x) or 'B' (5 slots, number 1, given y) "
        "of Invented Maker Par"
    )


def test_the_nearest_modes_are_told():
    """By likeness for a name, by distance for a number."""
    there = modes("Basic", "Extended 16 bit", "Full", "Pixel", "Compact")
    assert nearest_modes("Extnded 16", there)[0] == "Extended 16 bit"
    assert nearest_modes("9", there) == ["Compact", "Pixel", "Full"]


def test_an_ambiguous_model_is_told_with_its_makers():
    """The same model by two makers."""
    fixtures = [{"maker": maker, "model": "Lumo"} for maker in ("Arden", "Brisk")]
    reading = rig_of({"fixtures": fixtures, "patch": "unit,fixture,mode,address\n1,Lumo,Mode 1,1/1\n"})
    (finding,) = audit(reading).findings
    assert finding.rule == "unknown-fixture"
    assert finding.message == "'Lumo' may be arden/lumo or brisk/lumo"
    assert finding.help == "write the maker's name before it"


def test_a_catalog_is_indexed_by_its_paths_alone(tmp_path):
    """No document need be sound, or opened, to be found by name."""
    for path in ("a/x.json", "a/y.json", "b/x.json", "b/.hidden.json", ".c/z.json", "b/note.txt"):
        file = tmp_path / "fixtures" / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text("not read")
    fixtures = CatalogFixtures(Catalog(tmp_path))
    assert fixtures.identities == {"a/x", "a/y", "b/x"}
    assert CatalogFixtures(Catalog(tmp_path / "none")).identities == frozenset()


def test_the_nearest_names_stand_in_the_figure():
    """For scripts: fixtures by their path, modes by their name."""
    reading = rig_of(
        {"fixtures": [{}], "patch": "unit,fixture,mode,address\n1,Invnted 1,x,1\n2,Invented 1,x,2\n"}
    )
    fixture, mode = (finding.figure["nearest"] for finding in audit(reading).findings)
    assert fixture == ["invented-maker/invented-1"]
    assert mode == ["Mode 1"]
