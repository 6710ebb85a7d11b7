"""`modebook compare`: what two documents, two modes or two firmware versions say differently."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("compare")(compare)


def compare(
    a: Annotated[
        str,
        typer.Argument(
            metavar="A",
            help="A fixture (maker/model), a reading (maker/model/name), a document or any file that `draft` "
            "reads.",
        ),
    ],
    b: Annotated[
        str | None,
        typer.Argument(
            metavar="[B]",
            help="As A. Left out: with two modes or firmware versions A itself, else A's one reading.",
            show_default=False,
        ),
    ] = None,
    mode: Annotated[
        list[str] | None,
        typer.Option("--mode", help="Only this mode; given twice, A's first and B's second.", metavar="NAME"),
    ] = None,
    firmware: Annotated[
        list[str] | None,
        typer.Option(
            "--firmware",
            metavar="VERSION",
            help="Only what the sources for it tell; given twice, A's first and B's second.",
        ),
    ] = None,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """Tell what differs in meaning: slots, bits, ranges, spans, settings. Exit status 1 where they differ."""
    modes, versions = mode or [], firmware or []
    if len(modes) > 2 or len(versions) > 2:
        raise typer.BadParameter("two are compared: give --mode or --firmware twice at most")
    if modes and versions:
        raise typer.BadParameter("give --mode or --firmware, not both")
    left, name_a = _taken(a, catalog)
    if b is not None:
        right, name_b = _taken(b, catalog)
    elif len(set(modes)) == 2 or len(set(versions)) == 2:
        right, name_b = left, name_a
    else:
        right, name_b = _reading(left, catalog)
    pairs: dict[int, int] = {}
    if modes:
        from modebook.intake.compare import compare_modes
        from modebook.intake.picking import one_mode

        one, other = one_mode(left, modes[0]), one_mode(right, modes[-1])
        differences = compare_modes(left, one, right, other)
        pairs = {one: other}
        name_a += f", mode {left.modes[one].name}"
        name_b += f", mode {right.modes[other].name}"
    elif versions:
        from modebook.intake.compare import compare_firmware

        differences = compare_firmware(left, versions[0], right, versions[-1])
        name_a += f", firmware {versions[0]}"
        name_b += f", firmware {versions[-1]}"
    else:
        from modebook.intake.compare import compare as run

        differences = run(left, right)
    if as_json:
        from modebook.render.jsons import to_json

        typer.echo(to_json({"same": not differences, "differences": differences}), nl=False)
    else:
        from modebook.intake.compare import mode_pairs
        from modebook.render.compare_text import compare_text

        pairs = pairs or mode_pairs(left, right)
        typer.echo(compare_text(left, name_a, right, name_b, differences, pairs), nl=False)
    if differences:
        raise typer.Exit(1)


def _taken(name: str, catalog: Path | None) -> tuple[Fixture, str]:
    """The document that is meant, and what to call it."""
    from modebook.shelf.catalog import find_catalog
    from modebook.shelf.naming import named_fixture
    from modebook.shelf.reading import read_fixture

    if name.casefold().endswith(".json"):
        document = read_fixture(name)
        return document, f"{document.maker} {document.model} ({name})"
    if Path(name).is_file():
        from modebook.intake.draft import draft

        return draft(name).document, name
    found = find_catalog(catalog)
    file = found.root / "readings" / f"{name}.json"
    if name.count("/") == 2 and file.is_file():
        document = read_fixture(file)
        return document, f"{document.maker} {document.model} ({file})"
    document = named_fixture(found, name)
    return document, f"{document.maker} {document.model}"


def _reading(fixture: Fixture, catalog: Path | None) -> tuple[Fixture, str]:
    """The one reading of a fixture that the catalog has. Raises ShelfError for none, or for several."""
    from modebook.shelf.catalog import find_catalog, json_files
    from modebook.shelf.errors import ShelfError
    from modebook.shelf.reading import read_fixture

    folder = find_catalog(catalog).root / "readings" / fixture.id
    files = json_files(folder) if folder.is_dir() else []
    if len(files) != 1:
        problem = f"{len(files)} readings are in {folder}" if files else f"no reading is in {folder}"
        names = ", ".join(f"{fixture.id}/{file.stem}" for file in files)
        raise ShelfError(
            fixture.id, problem, remedy=f"name one: {names}" if files else "name what to compare it with"
        )
    return read_fixture(files[0]), f"{fixture.maker} {fixture.model} ({files[0]})"
