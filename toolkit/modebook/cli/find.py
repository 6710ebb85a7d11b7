"""`modebook find`: modes by words, by ways to change smoothing, by bits, parameters, footprint."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

import typer

from modebook.cli.options import CatalogOption, DatabaseOption, JsonOption


class SmoothingByName(StrEnum):
    """How smoothing can be changed."""

    slot = "slot"
    rdm = "rdm"
    remote = "remote"
    menu = "menu"
    app = "app"
    page = "page"
    none = "none"
    unknown = "unknown"


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("find")(find)


def find(
    words: Annotated[
        list[str] | None,
        typer.Argument(
            help="Words of names, labels, meanings; the last may be a beginning.", show_default=False
        ),
    ] = None,
    smoothing_by: Annotated[
        SmoothingByName | None,
        typer.Option("--smoothing-by", help="How smoothing can be changed; remote is by slot or over RDM."),
    ] = None,
    smoothing_length: Annotated[
        float | None,
        typer.Option(
            "--smoothing-length", metavar="PACKETS", help="A length that some way reaches; 0 is off."
        ),
    ] = None,
    min_bits: Annotated[
        list[str] | None,
        typer.Option("--min-bits", metavar="PARAMETER=BITS", help="As pan=16; may be repeated."),
    ] = None,
    has: Annotated[
        list[str] | None, typer.Option("--has", metavar="PARAMETER", help="As hue,color-temperature.")
    ] = None,
    max_footprint: Annotated[int | None, typer.Option("--max-footprint", help="Slots at most.")] = None,
    category: Annotated[str | None, typer.Option("--category", help="As 'moving yoke'.")] = None,
    standing: Annotated[
        str | None, typer.Option("--standing", help="draft, transcribed, second-read or proved.")
    ] = None,
    drafts: Annotated[
        bool, typer.Option("--drafts", help="Drafts too; they are left out otherwise.")
    ] = False,
    limit: Annotated[int, typer.Option("--limit", help="How many to print; 0 is all.", min=0)] = 50,
    catalog: CatalogOption = None,
    db: DatabaseOption = None,
    as_json: JsonOption = False,
) -> None:
    """Find modes: everything that is asked must hold."""
    from modebook.shelf.catalog import find_catalog
    from modebook.store.build import build
    from modebook.store.opening import open_database
    from modebook.store.search import ModeQuery
    from modebook.store.search import find as run

    query = ModeQuery(
        text=" ".join(words or ()),
        smoothing_by=smoothing_by.value if smoothing_by else None,
        smoothing_length_packets=smoothing_length,
        min_bits=dict(_bits(one) for told in min_bits or () for one in told.split(",")),
        has=[word.strip() for told in has or () for word in told.split(",") if word.strip()],
        max_footprint=max_footprint,
        category=category,
        standing=standing,
        include_drafts=drafts,
    )
    built = build(find_catalog(catalog), db)
    connection = open_database(built.path)
    try:
        found = run(connection, query, None if as_json or not limit else limit)
    finally:
        connection.close()
    if as_json:
        from modebook.render.jsons import to_json

        typer.echo(to_json(found.to_json()), nl=False)
        return
    from modebook.render.found_text import found_text

    typer.echo(found_text(found), nl=False)


def _bits(told: str) -> tuple[str, int]:
    word, mark, bits = told.partition("=")
    if not mark or not bits.strip().isdigit():
        raise typer.BadParameter(f"{told!r} is not a parameter with its bits, such as pan=16")
    return word.strip(), int(bits)
