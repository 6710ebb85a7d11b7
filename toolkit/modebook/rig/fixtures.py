"""The catalog's fixtures by name, found by their paths: a document is opened only once a unit uses it."""

from __future__ import annotations

import os
from collections.abc import Mapping
from functools import cached_property
from pathlib import Path
from typing import Protocol

from modebook.documents.base import slug
from modebook.documents.fixture import Fixture
from modebook.shelf.catalog import Catalog
from modebook.shelf.errors import ShelfError, reason_of


class Fixtures(Protocol):
    """Where fixture documents come from."""

    @property
    def identities(self) -> frozenset[str]:
        """All ``maker/model`` there are."""

    def read(self, identity: str) -> Fixture:
        """A document. Raises ShelfError where it cannot be taken in."""

    def file(self, identity: str) -> str:
        """Where it lies, for people."""


class CatalogFixtures:
    """The fixtures of a catalog's folder."""

    def __init__(self, catalog: Catalog) -> None:
        self.catalog = catalog

    @cached_property
    def identities(self) -> frozenset[str]:
        """All ``maker/model`` that the folder's paths say, without opening a document."""
        found: list[str] = []
        try:
            with os.scandir(self.catalog.fixtures) as makers:
                for maker in makers:
                    if maker.name.startswith(".") or not maker.is_dir():
                        continue
                    with os.scandir(maker.path) as models:
                        found.extend(
                            f"{maker.name}/{model.name[:-5]}"
                            for model in models
                            if model.name.endswith(".json") and not model.name.startswith(".")
                        )
        except FileNotFoundError:
            return frozenset()
        except OSError as error:
            raise ShelfError(
                self.catalog.fixtures, reason_of(error), remedy="name a catalog that can be read"
            ) from error
        return frozenset(found)

    def read(self, identity: str) -> Fixture:
        """A document of the folder."""
        from modebook.shelf.reading import read_fixture

        return read_fixture(self.catalog.fixture_file(identity))

    def file(self, identity: str) -> str:
        """Its path."""
        return str(self.catalog.fixture_file(identity))


class GivenFixtures:
    """Fixtures at hand, by identity: for examples and tests."""

    def __init__(self, fixtures: list[Fixture]) -> None:
        self.by_identity: Mapping[str, Fixture] = {fixture.id: fixture for fixture in fixtures}

    @property
    def identities(self) -> frozenset[str]:
        """All ``maker/model`` there are."""
        return frozenset(self.by_identity)

    def read(self, identity: str) -> Fixture:
        """One of them."""
        return self.by_identity[identity]

    def file(self, identity: str) -> str:
        """A name for people."""
        return str(Path("fixtures", f"{identity}.json"))


class FixtureNames:
    """Finds which fixture a name means: ``Maker Model``, the path, or a model that only one maker has."""

    def __init__(self, identities: frozenset[str]) -> None:
        self.identities = identities
        self._by_name: dict[str, list[str]] = {}
        for identity in sorted(identities):
            maker, _, model = identity.replace("-", "").partition("/")
            self._by_name.setdefault(maker + model, []).append(identity)
            if maker:
                self._by_name.setdefault(model, []).append(identity)

    def meant(self, name: str) -> list[str]:
        """The identities that a name may mean: one is sure, several need the maker's name, none is unknown.

        Case, accents, spaces and punctuation do not count.
        """
        path = name.strip().casefold()
        if path in self.identities:
            return [path]
        maker, slash, model = name.partition("/")
        if slash and f"{slug(maker)}/{slug(model)}" in self.identities:
            return [f"{slug(maker)}/{slug(model)}"]
        return self._by_name.get(slug(name).replace("-", ""), [])

    def nearest(self, name: str, most: int = 3) -> list[str]:
        """The identities whose names are most like a name that is not known, the nearest first."""
        from rapidfuzz import fuzz, process

        wanted = slug(name).replace("-", " ")
        choices: dict[str, str] = {}
        for identity in sorted(self.identities):
            choices[identity] = identity.replace("/", " ").replace("-", " ")
        near = process.extract(wanted, choices, scorer=fuzz.token_sort_ratio, limit=most, score_cutoff=55)
        alone = {identity: text.partition(" ")[2] for identity, text in choices.items()}
        near += process.extract(wanted, alone, scorer=fuzz.ratio, limit=most, score_cutoff=70)
        ranked = sorted(near, key=lambda one: (-one[1], one[2]))
        return list(dict.fromkeys(str(identity) for _, _, identity in ranked))[:most]
