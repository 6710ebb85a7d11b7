"""`modebook build`: the catalog as one SQLite file."""

from __future__ import annotations

from typing import Annotated

import typer

from modebook.cli.options import CatalogOption, DatabaseOption, JsonOption


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("build")(build)


def build(
    catalog: CatalogOption = None,
    db: DatabaseOption = None,
    anew: Annotated[bool, typer.Option("--anew", help="Read every document again.")] = False,
    as_json: JsonOption = False,
) -> None:
    """Make the catalog's database, or bring it up to date: only changed documents are read again."""
    from modebook.shelf.catalog import find_catalog
    from modebook.store.build import build as run

    built = run(find_catalog(catalog), db, anew=anew)
    if as_json:
        from modebook.render.jsons import to_json

        told = {
            "database": str(built.path),
            "documents": built.documents,
            "read": built.read,
            "removed": built.removed,
            "changed": built.changed,
            "why": built.why,
        }
        typer.echo(to_json(told), nl=False)
        return
    if not built.changed:
        typer.echo(f"{built.path}: up to date, {built.documents} documents.")
    elif built.why:
        typer.echo(f"{built.path}: built from {built.documents} documents ({built.why}).")
    else:
        removed = f", {built.removed} taken out" if built.removed else ""
        typer.echo(
            f"{built.path}: brought up to date, {built.read} of {built.documents} documents read{removed}."
        )
