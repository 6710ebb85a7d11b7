"""`modebook rigs`: over all rigs, who allows smoothing to be changed, and how."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption


class SmoothingWay(StrEnum):
    """Ways to change smoothing that units are listed by."""

    remote = "remote"
    slot = "slot"
    rdm = "rdm"
    hand = "hand"
    none = "none"
    unknown = "unknown"


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("rigs")(rigs)


def rigs(
    names: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="[RIG]...", help="Rigs by name, folder or patch file. Default: all of the catalog."
        ),
    ] = None,
    smoothing_by: Annotated[
        SmoothingWay, typer.Option("--smoothing-by", help="List the units whose smoothing is changed so.")
    ] = SmoothingWay.remote,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """For each rig: how many units let smoothing be changed by a slot, over RDM, by hand; and which."""
    from modebook.rig.fixtures import CatalogFixtures
    from modebook.rig.open_rig import open_rig
    from modebook.rig.remote import remote
    from modebook.shelf.catalog import find_catalog
    from modebook.shelf.errors import ShelfError

    found = find_catalog(catalog)
    wanted = list(names) if names else [str(folder) for folder in found.rig_folders()]
    if not wanted:
        raise ShelfError(found.rigs, "no rigs are here", remedy="name a patch file, or another --catalog")
    fixtures = CatalogFixtures(found)
    answers, unread = [], 0
    for name in wanted:
        try:
            answers.append(remote(open_rig(name, found, fixtures=fixtures)))
        except ShelfError as error:
            typer.echo(f"modebook: {error}", err=True)
            unread += 1
    if as_json:
        from modebook.render.jsons import to_json

        typer.echo(to_json({"rigs": [answer.to_json() for answer in answers]}), nl=False)
    elif answers:
        from modebook.render.remote_text import remote_text

        typer.echo(remote_text(answers, smoothing_by.value), nl=False)
    if unread:
        raise typer.Exit(2)
