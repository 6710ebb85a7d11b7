"""The dialog that settles a draft's doubts: one at a time, each answer written before the next is asked."""

from __future__ import annotations

import datetime
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import typer

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture

HELP = """\
  a, accept      it is right as it was read
  l, leave       leave it open (Enter does the same)
  =              as the doubt before: one row of a chart may be a doubt in each of its modes
  s, stop        stop here; every answer so far is kept
or type what is right:
  0 to 540 deg   where the doubt is about a span
  10-14 Open     where it is about a range; 2: 10-14 for the second range shown
  slots 3, 4     any title of the chart sheet, then its value; parameter hue, default 128
  gone           it is not there at all
Several changes go on one line with ; between them. Larger repairs are easier in the file itself, or in a
spreadsheet: modebook chart FILE.json --xlsx FILE.xlsx, and modebook draft reads that back."""


def settle(path: Path, by: str | None) -> None:
    """Ask for every open doubt of the draft in a file. The end of the input stops it as `stop` does."""
    from modebook.render.doubt_text import about_text, doubt_text
    from modebook.shelf.reading import read_fixture
    from modebook.shelf.writing import write_whole

    document = read_fixture(path)
    waiting = [index for index, doubt in enumerate(document.doubts) if doubt.settled is None]
    if not waiting:
        typer.echo("No doubt is open.")
        typer.echo(next_step(document, path))
        return
    who = by if by is not None else _asked("Who settles them (your name)? ")
    if not (who or "").strip():
        typer.echo("Stopped: a decision needs a name (--by NAME). Nothing has changed.")
        return
    many = f"{len(waiting)} doubt{'s are' if len(waiting) != 1 else ' is'} open in {path}"
    typer.echo(f"{many}.\na accepts, l leaves, = does as before, s stops, ? helps; or type what is right.\n")
    stopped, before = False, ""
    for number, index in enumerate(waiting, start=1):
        typer.echo(doubt_text(document, index, f"{number} of {len(waiting)}"))
        about = about_text(document, index)
        if about:
            typer.echo(about)
        found = _answered(document, index, str(who).strip(), before)
        typer.echo("")
        if found is None:
            stopped = True
            break
        answered, before = found
        if answered is not document:
            _unchanged_since(path, document)
            write_whole(path, _bytes(answered))
            document = answered
    left = len(document.open_doubts)
    settled = len(waiting) - left
    told = f"{settled} settled and written, {left} open"
    typer.echo(f"{'Stopped: ' if stopped else ''}{told}.")
    typer.echo(next_step(document, path))


def next_step(document: Fixture, path: Path) -> str:
    """What to type next with a draft in a file."""
    import shlex

    file = shlex.quote(str(path))
    if document.open_doubts:
        return f"Next, settle the doubts:\n  modebook draft {file} --interactive"
    if document.standing == "draft":
        return (
            "Next, once you have compared it with the source:\n"
            f"  modebook promote {file} --to transcribed --by NAME"
        )
    return f"Next:\n  modebook check {file}"


def _answered(document: Fixture, index: int, who: str, before: str) -> tuple[Fixture, str] | None:
    """The document after one answer, the same one where the doubt is left, with the answer; None for stop.

    before: the answer to the doubt before, which ``=`` repeats.
    """
    from modebook.intake.settling import AnswerError, accepted, corrected
    from modebook.render.doubt_text import about_text

    today = datetime.date.today().isoformat()
    while True:
        told = _asked("? ")
        if told is not None and told.strip() == "=":
            if not before:
                typer.echo("  There is no answer before this one.")
                continue
            told = before
        word = "s" if told is None else told.strip().casefold()
        if word in ("s", "stop", "q", "quit"):
            return None
        if word in ("", "l", "leave"):
            return document, "l"
        if word in ("?", "h", "help"):
            typer.echo(HELP)
            continue
        try:
            if word in ("a", "accept"):
                return accepted(document, index, who, today), "a"
            changed = corrected(document, index, str(told), who, today)
        except AnswerError as error:
            typer.echo(f"  {error}")
            continue
        typer.echo(about_text(changed, index) or "  done")
        return changed, str(told)


def _asked(question: str) -> str | None:
    """A line that a person types; None at the end of the input, or where it is broken off."""
    try:
        told = input(question)
    except (EOFError, KeyboardInterrupt):
        typer.echo("")
        return None
    except UnicodeDecodeError:
        typer.echo("  What was typed is not UTF-8 text.")
        return None
    if not sys.stdin.isatty():
        typer.echo(told)  # a terminal shows what is typed; a log of answers out of a file should too
    return told


def _bytes(document: Fixture) -> bytes:
    from modebook.shelf.canonical import canonical

    return canonical(document)


def _unchanged_since(path: Path, document: Fixture) -> None:
    """Refuse to write over what someone else has written into the file meanwhile."""
    from modebook.shelf.errors import ShelfError
    from modebook.shelf.reading import read_fixture

    if read_fixture(path) != document:
        raise ShelfError(
            path, "the file has changed since it was read", remedy="begin again: the last answer is not in it"
        )
