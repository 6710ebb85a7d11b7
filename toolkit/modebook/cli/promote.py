"""`modebook promote`: a record's standing raised, with who vouches for it and when."""

from __future__ import annotations

import datetime
from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption


class Rise(StrEnum):
    """The standings that a record can be raised to."""

    transcribed = "transcribed"
    second_read = "second-read"
    proved = "proved"


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("promote")(promote)


def promote(
    fixture: Annotated[
        str, typer.Argument(metavar="MAKER/MODEL|FILE", help="A fixture of the catalog, or its document.")
    ],
    to: Annotated[
        Rise,
        typer.Option(
            "--to",
            help="transcribed: compared with the source; second-read: a second reading agrees; proved: tried "
            "on a real fixture.",
        ),
    ],
    by: Annotated[str, typer.Option("--by", help="Who vouches for it.")],
    date: Annotated[
        str | None, typer.Option("--date", help="When, as 2026-05-31. Default: today.", show_default=False)
    ] = None,
    note: Annotated[str | None, typer.Option("--note", help="How, or where.")] = None,
    reading: Annotated[
        list[Path] | None,
        typer.Option(
            "--reading",
            metavar="FILE",
            help="For second-read: another reading of the source; may be repeated. Default: those in the "
            "catalog's readings/MAKER/MODEL/.",
        ),
    ] = None,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """Raise a record's standing in its file; refused (exit status 1) while it does not bear it."""
    from modebook.intake.errors import PromotionRefusedError
    from modebook.intake.promote import promote as run
    from modebook.intake.promote import readings_of
    from modebook.shelf.canonical import canonical
    from modebook.shelf.reading import read_fixture
    from modebook.shelf.writing import write_whole

    path, root = _file(fixture, catalog)
    document = read_fixture(path)
    if reading:
        readings = [read_fixture(file) for file in reading]
    else:
        readings = [] if root is None else readings_of(root, document.id)
    when = date or datetime.date.today().isoformat()
    reasons: list[str] = []
    try:
        raised = run(document, to.value, by, when, readings, note)
    except PromotionRefusedError as refused:
        reasons = refused.reasons
    else:
        write_whole(path, canonical(raised))
    if as_json:
        from modebook.render.jsons import to_json

        standing = document.standing if reasons else raised.standing
        told = {"fixture": document.id, "file": str(path), "standing": standing, "refused": reasons}
        typer.echo(to_json(told), nl=False)
    elif reasons:
        from modebook.render.promote_text import refused_text

        typer.echo(refused_text(document, str(path), to.value, reasons), err=True, nl=False)
    else:
        typer.echo(f"{path}: {document.standing} → {raised.standing}, by {by}.")
        typer.echo(f"Next: modebook check {path}")
    if reasons:
        raise typer.Exit(1)


def _file(name: str, catalog: Path | None) -> tuple[Path, Path | None]:
    """The document's file, and the catalog's folder that its readings lie in, if it is in one."""
    from modebook.shelf.catalog import find_catalog, identity_of
    from modebook.shelf.naming import named_fixture

    if name.casefold().endswith(".json"):
        path = Path(name)
        inside = identity_of(path) is not None and len(path.absolute().parts) > 3
        if catalog is not None:
            return path, find_catalog(catalog).root
        return path, path.absolute().parents[2] if inside else None
    found = find_catalog(catalog)
    return found.fixture_file(named_fixture(found, name).id), found.root
