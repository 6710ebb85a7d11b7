"""`modebook rigs`: over all rigs, who allows smoothing to be changed, what is too coarse, who uses what."""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING, Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption
from modebook.cli.paper import CsvOption, HtmlOption, OverwriteOption, print_csv, write_paper

if TYPE_CHECKING:
    from modebook.rig.fixtures import CatalogFixtures


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
    using: Annotated[
        str | None,
        typer.Option(
            "--using",
            metavar="MAKER/MODEL",
            help="Only the rigs that use this fixture: which units, in which modes.",
        ),
    ] = None,
    html: HtmlOption = None,
    as_csv: CsvOption = False,
    overwrite: OverwriteOption = False,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
) -> None:
    """For each rig: whose smoothing can be changed and how; what is too coarse; fixtures without a record."""
    from modebook.rig.across import demands
    from modebook.rig.across import using as used_in
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
    identity = None if using is None else _identity(using, fixtures)
    answers, unread = [], 0
    for name in wanted:
        try:
            reading = open_rig(name, found, fixtures=fixtures)
        except ShelfError as error:
            typer.echo(f"modebook: {error}", err=True)
            unread += 1
            continue
        modes = [] if identity is None else used_in(reading, identity)
        if identity is None or modes:
            answers.append((remote(reading), demands(reading), modes))
    if html is not None:
        from modebook.render.sheets.across import rigs_csv, rigs_page

        write_paper(html, overwrite, lambda: rigs_page(answers, identity), lambda: rigs_csv(answers))
    if as_json:
        from modebook.render.jsons import to_json
        from modebook.render.rigs_json import rigs_json

        typer.echo(to_json(rigs_json(answers, identity)), nl=False)
    elif as_csv:
        from modebook.render.sheets.across import rigs_csv

        print_csv(rigs_csv(answers))
    elif identity is not None:
        from modebook.render.rigs_text import using_text

        typer.echo(using_text(identity, [(one.rig, modes) for one, _, modes in answers]), nl=False)
    elif answers:
        from modebook.render.remote_text import remote_text
        from modebook.render.rigs_text import demands_text

        typer.echo(remote_text([one for one, _, _ in answers], smoothing_by.value))
        typer.echo(demands_text([(one.rig, left) for one, left, _ in answers]), nl=False)
    if unread:
        raise typer.Exit(2)


def _identity(told: str, fixtures: CatalogFixtures) -> str:
    """The fixture that a word means. Raises BadParameter for none, or for several."""
    from modebook.cli.usage import unknown
    from modebook.rig.fixtures import FixtureNames

    names = FixtureNames(fixtures.identities)
    meant = names.meant(told)
    if not meant:
        raise unknown("fixture", told, names.identities)
    if len(meant) > 1:
        raise typer.BadParameter(f"{told!r} may be {' or '.join(meant)}: write the maker's name before it")
    return meant[0]
