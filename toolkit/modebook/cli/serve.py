"""`modebook serve`: the catalog as pages, read only, on this machine alone unless told otherwise."""

from __future__ import annotations

from typing import Annotated

import typer

from modebook.cli.options import CatalogOption, DatabaseOption


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("serve")(serve)


def serve(
    port: Annotated[
        int, typer.Option("--port", min=0, max=65535, help="The port; 0 takes a free one.")
    ] = 8001,
    host: Annotated[
        str,
        typer.Option("--host", help="Where to listen. Another host than this machine publishes the pages."),
    ] = "127.0.0.1",
    catalog: CatalogOption = None,
    db: DatabaseOption = None,
) -> None:
    """Serve the catalog as web pages; builds the database first where it is not up to date."""
    from modebook.render.site import run_site
    from modebook.shelf.catalog import find_catalog
    from modebook.store.build import build

    built = build(find_catalog(catalog), db)
    run_site(built.path, host, port, tell=lambda line: typer.echo(line, err=True))
