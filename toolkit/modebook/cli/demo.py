"""`modebook demo`: the demo catalog built, checked, its rig audited, and one question answered."""

from __future__ import annotations

import typer


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("demo")(demo)


def demo() -> None:
    """Show the whole job on the demo catalog: build, check, audit, who allows remote smoothing change."""
    from modebook.checks.bulk import check_files
    from modebook.render.demo_text import demo_text
    from modebook.rig.audit import audit
    from modebook.rig.open_rig import open_rig
    from modebook.rig.remote import remote
    from modebook.shelf.catalog import Catalog, data_folder
    from modebook.store.build import build

    catalog = Catalog(data_folder("catalog"))
    typer.echo("building the database of the demo catalog ...", err=True)
    built = build(catalog)
    checked = check_files(catalog.fixture_files())
    reading = open_rig(RIG, catalog)
    typer.echo(demo_text(built, checked, audit(reading), remote(reading), reading.rig.about or ""), nl=False)


RIG = "ossilby-pier"
"""The demo's large rig."""
