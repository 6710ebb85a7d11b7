"""A fixture of the catalog by the name that a person types, or the nearest names."""

from __future__ import annotations

from modebook.documents.base import slug
from modebook.documents.fixture import Fixture
from modebook.shelf.catalog import Catalog
from modebook.shelf.errors import ShelfError
from modebook.shelf.reading import read_fixture


def named_fixture(catalog: Catalog, name: str) -> Fixture:
    """The fixture that ``maker/model`` means, by its path or as its maker writes it.

    A model alone will do where only one maker has it. Raises ShelfError with the nearest names.
    """
    maker, mark, model = name.partition("/")
    if mark:
        path = catalog.fixture_file(f"{slug(maker)}/{slug(model)}")
        if path.is_file():
            return read_fixture(path)
    identities = [f"{path.parent.name}/{path.stem}" for path in catalog.fixture_files()]
    wanted = slug(name)
    same = [each for each in identities if wanted in (each.partition("/")[2], each.replace("/", "-"))]
    if len(same) == 1:
        return read_fixture(catalog.fixture_file(same[0]))
    if same:
        raise ShelfError(name, "several makers have it", remedy=f"name one: {', '.join(same)}")
    from rapidfuzz import fuzz, process

    near = [
        each for each, _, _ in process.extract(name, identities, scorer=fuzz.WRatio, limit=3, score_cutoff=50)
    ]
    raise ShelfError(
        name,
        f"the catalog in {catalog.root} has no such fixture",
        remedy=f"is {' or '.join(near)} meant?" if near else "see `modebook find`",
    )
