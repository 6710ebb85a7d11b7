"""`modebook check`: are the records in order, and what does their resolution cost?"""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from modebook.cli.options import CatalogOption, JsonOption

if TYPE_CHECKING:
    from modebook.checks.bulk import CheckResult


class Format(StrEnum):
    """How findings are printed."""

    text = "text"
    json = "json"
    github = "github"
    sarif = "sarif"


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command("check")(check)


def check(
    paths: Annotated[
        list[Path] | None,
        typer.Argument(
            help="Documents or folders. Default: every fixture of the catalog.", show_default=False
        ),
    ] = None,
    catalog: CatalogOption = None,
    fix: Annotated[
        bool, typer.Option("--fix", help="Write documents that are in order in canonical form.")
    ] = False,
    explain: Annotated[
        str | None, typer.Option("--explain", metavar="RULE", help="Tell what a rule checks, and why.")
    ] = None,
    only: Annotated[
        list[str] | None, typer.Option("--rule", metavar="RULE", help="Run this rule alone; may be repeated.")
    ] = None,
    form: Annotated[Format, typer.Option("--format", help="How to print the findings.")] = Format.text,
    as_json: JsonOption = False,
    no_cache: Annotated[
        bool,
        typer.Option("--no-cache", help="Judge every document anew, and keep no results for the next check."),
    ] = False,
) -> None:
    """Check fixture records: faults of form, resolution that is too low, smoothing that cannot be reached."""
    if explain is not None:
        _explain(explain)
        return
    from modebook.checks.bulk import check_files
    from modebook.checks.registry import FIXTURE_RULES, rules_of

    rules = rules_of(FIXTURE_RULES)
    if only:
        for name in only:
            _known(name, list(rules))
        rules = {name: rule for name, rule in rules.items() if name in only}
    files = _files(paths, catalog)
    if fix:
        _fix(files)
    result = check_files(files, rules, remember=not no_cache)
    _print(result, Format.json if as_json else form)
    if any(finding.severity == "error" for finding in result.findings):
        raise typer.Exit(1)


def _files(paths: list[Path] | None, catalog: Path | None) -> list[Path]:
    from modebook.shelf.catalog import find_catalog, json_files
    from modebook.shelf.errors import ShelfError

    if not paths:
        found = find_catalog(catalog)
        files = found.fixture_files()
        if not files:
            raise ShelfError(found.fixtures, "no fixture documents are here", remedy="name another --catalog")
        return files
    files = []
    for path in paths:
        if path.is_dir():
            folder = path / "fixtures" if (path / "fixtures").is_dir() else path
            files.extend(json_files(folder))
        elif path.exists():
            files.append(path)
        else:
            raise ShelfError(path, "no such file or folder", remedy="name a document or a folder of them")
    if not files:
        raise ShelfError(paths[0], "no .json documents are here", remedy="name a folder that has some")
    return list(dict.fromkeys(files))


def _fix(files: list[Path]) -> None:
    from modebook.documents.fixture import Fixture
    from modebook.shelf.canonical import canonical_bytes
    from modebook.shelf.errors import ShelfError
    from modebook.shelf.reading import read_bytes
    from modebook.shelf.writing import write_whole

    changed = 0
    for path in files:
        try:
            content = read_bytes(path)
            wanted = canonical_bytes(content, Fixture, path)
        except ShelfError:
            continue  # a document that cannot be taken in is left as it is; the check reports it
        if wanted != content:
            write_whole(path, wanted)
            typer.echo(f"fixed {path}: canonical form", err=True)
            changed += 1
    typer.echo(f"{changed} of {len(files)} documents brought into canonical form", err=True)


def _print(result: CheckResult, form: Format) -> None:
    if form is Format.json:
        from modebook.render.findings_json import check_json as render
    elif form is Format.github:
        from modebook.render.findings_github import github as render
    elif form is Format.sarif:
        from modebook.render.findings_sarif import sarif as render
    else:
        from modebook.render.findings_text import text as render
    typer.echo(render(result), nl=False)


def _known(name: str, names: list[str]) -> None:
    if name in names:
        return
    from modebook.cli.usage import unknown

    raise unknown("rule", name, names)


def _explain(name: str) -> None:
    from modebook.checks.registry import FIXTURE_RULES, all_rules
    from modebook.render.explanation import explanation
    from modebook.rig.rules import PACKAGE

    rules = all_rules(FIXTURE_RULES, PACKAGE)
    _known(name, list(rules))
    typer.echo(explanation(rules[name]), nl=False)
