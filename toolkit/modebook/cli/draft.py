"""`modebook draft`: a maker's chart, or a typed chart sheet, to a draft document with its doubts."""

from __future__ import annotations

import shlex
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from modebook.cli.options import JsonOption

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture
    from modebook.intake.draft import About, Draft


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("draft")(draft)


def draft(
    file: Annotated[
        str,
        typer.Argument(
            metavar="FILE|-",
            help="PDF with text, XLSX, ODS, CSV, HTML, text, a chart sheet, or - for text on standard input; "
            "or a draft (.json), to go on with its doubts.",
        ),
    ],
    pages: Annotated[
        str | None, typer.Option("--pages", help="The chart's pages in a PDF, as 31-34 or 31,33.")
    ] = None,
    maker: Annotated[str | None, typer.Option("--maker", help="As the maker writes it.")] = None,
    model: Annotated[str | None, typer.Option("--model", help="As the maker writes it.")] = None,
    category: Annotated[
        str | None, typer.Option("--category", help="The E1.20 category, as 'moving yoke' or fixed.")
    ] = None,
    source_title: Annotated[
        str | None, typer.Option("--source-title", help="What is printed on the manual. Default: the file.")
    ] = None,
    revision: Annotated[str | None, typer.Option("--revision", help="The manual's, as printed.")] = None,
    firmware: Annotated[
        str | None, typer.Option("--firmware", help="The firmware that the manual describes.")
    ] = None,
    output: Annotated[
        Path | None,
        typer.Option(
            "--output",
            "-o",
            help="Write the draft here: a .json file, or a catalog's folder for fixtures/MAKER/MODEL.json "
            "in it.",
        ),
    ] = None,
    overwrite: Annotated[
        bool, typer.Option("--overwrite", help="Let --output and --report replace a file.")
    ] = False,
    report: Annotated[
        Path | None,
        typer.Option(
            "--report", metavar="FILE.html", help="Write a page: the source beside what was read from it."
        ),
    ] = None,
    interactive: Annotated[
        bool,
        typer.Option("--interactive", "-i", help="Settle the doubts one by one; stop and go on as you like."),
    ] = False,
    by: Annotated[
        str | None, typer.Option("--by", help="Who settles the doubts. Asked for where it is left out.")
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """Read a maker's chart into a draft document; what is not certain is kept as doubts."""
    from modebook.intake.draft import About

    if interactive and as_json:
        raise typer.BadParameter("--interactive asks, --json answers a program: give one of the two")
    about = _about(About(), maker, model, category, source_title, revision, firmware)
    if file.casefold().endswith(".json"):
        given = (pages, maker, model, category, source_title, revision, firmware, output, report)
        _go_on(Path(file), interactive, by, as_json, alone=not any(given))
        return
    if interactive and (output is None or file == "-"):
        raise typer.BadParameter(
            "answers are kept in the draft's file: name it with -o, and a chart that is not standard input"
        )
    made = _drafted(file, pages, about)
    target = None if output is None else _target(output, made.document)
    files: list[tuple[Path, bytes]] = []
    if target is not None:
        from modebook.shelf.canonical import canonical

        files.append((target, canonical(made.document)))
    if report is not None:
        _free(report, overwrite)
        from modebook.render.draft_html import draft_html

        command = "" if target is None else f"modebook draft {shlex.quote(str(target))} --interactive"
        files.append((report, draft_html(made, command).encode()))
    _write(files, overwrite)
    if as_json:
        _print_json(made.document, made.notes, target)
        return
    from modebook.render.draft_text import draft_text

    name = file if file != "-" else "standard input"
    typer.echo(draft_text(made.document, name, made.notes, doubts=not interactive))
    if interactive and target is not None:
        from modebook.cli.settling import settle

        settle(target, by)
        return
    _next(made.document, target, report)


def _about(about: About, *told: str | None) -> About:
    from dataclasses import replace

    names = ("maker", "model", "category", "source_title", "revision", "firmware")
    given = {name: value.strip() for name, value in zip(names, told, strict=True) if value is not None}
    for name, value in given.items():
        if not value:
            raise typer.BadParameter(f"--{name.replace('_', '-')} is empty: leave it out, or give it a value")
    if "category" in given:
        from modebook.words.e120 import CATEGORIES

        if given["category"] not in CATEGORIES:
            from modebook.cli.usage import unknown

            raise unknown("category", given["category"], CATEGORIES)
    return replace(about, **given)


def _drafted(file: str, pages: str | None, about: About) -> Draft:
    from modebook.intake.draft import draft as run
    from modebook.intake.draft import draft_bytes

    if file != "-":
        return run(file, about, pages=pages, progress=_told)
    if pages is not None:
        raise typer.BadParameter("--pages is for a PDF file")
    return draft_bytes(sys.stdin.buffer.read(), about)


def _told(page: str) -> None:
    typer.echo(f"reading {page} ...", err=True)


def _target(output: Path, document: Fixture) -> Path:
    """The file that a draft goes to. Raises ShelfError where `output` is neither a file nor a catalog."""
    from modebook.shelf.errors import ShelfError

    if output.suffix.casefold() == ".json" and not output.is_dir():
        return output
    if output.is_dir():
        from modebook.intake.draft import About
        from modebook.shelf.catalog import find_catalog

        catalog = find_catalog(output)
        if document.maker == About().maker or document.model == About().model:
            raise ShelfError(
                output, "the catalog files fixtures by maker and model", remedy="give --maker and --model"
            )
        return catalog.fixture_file(document.id)
    raise ShelfError(
        output, "is neither a .json file nor a catalog's folder", remedy="name such as new.json, or a catalog"
    )


def _free(path: Path, overwrite: bool) -> None:
    """Refuse a place that is taken before anything is written, so that nothing is half done."""
    from modebook.shelf.errors import ShelfError

    if path.exists() and not overwrite:
        remedy = "name another one, or --overwrite it"
        if path.suffix.casefold() == ".json":
            remedy += f"; to go on with its doubts: modebook draft {path} --interactive"
        raise ShelfError(path, "this file exists already", remedy=remedy)


def _write(files: list[tuple[Path, bytes]], overwrite: bool) -> None:
    """Write all files, or none where a place is taken."""
    from modebook.shelf.writing import write_whole

    for path, _ in files:
        _free(path, overwrite)
    for path, content in files:
        write_whole(path, content, overwrite=overwrite)
        typer.echo(f"written: {path}", err=True)


def _print_json(document: Fixture, notes: list[str], target: Path | None) -> None:
    from modebook.render.draft_json import draft_json

    typer.echo(draft_json(document, notes, target), nl=False)


def _next(document: Fixture, target: Path | None, report: Path | None) -> None:
    """Say what to type next."""
    from modebook.cli.settling import next_step

    if target is not None:
        typer.echo(next_step(document, target))
        return
    typer.echo("Nothing is kept. To keep it: -o FILE.json, or -o CATALOG with --maker and --model.")
    if report is None and document.open_doubts:
        typer.echo("To see the doubts beside the source: --report FILE.html.")


def _go_on(path: Path, interactive: bool, by: str | None, as_json: bool, *, alone: bool) -> None:
    """With a draft in place of a chart: its doubts, asked or told."""
    from modebook.shelf.reading import read_fixture

    document = read_fixture(path)
    if not alone:
        raise typer.BadParameter(f"{path} is a draft already: only --interactive, --by and --json go with it")
    if interactive:
        from modebook.cli.settling import settle

        settle(path, by)
    elif as_json:
        _print_json(document, [], path)
    else:
        from modebook.cli.settling import next_step
        from modebook.render.draft_text import draft_text

        typer.echo(draft_text(document, str(path)))
        typer.echo(next_step(document, path))
