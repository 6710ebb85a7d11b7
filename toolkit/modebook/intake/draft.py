"""Drafts a fixture document from a maker's chart: the one door of the intake."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from modebook.intake.errors import IntakeError
from modebook.intake.grid import Source
from modebook.intake.opening import from_bytes, from_text, open_chart
from modebook.intake.readings import Reading

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture
    from modebook.intake.assembler import Assembled
    from modebook.intake.drafts import Json

Progress = Callable[[str], None]
SOURCE_KEY = "chart"


@dataclass(frozen=True, slots=True)
class About:
    """What the caller knows of the chart; nothing of it is guessed. `category` is an E1.20 product
    category.
    """

    maker: str = "Unknown maker"
    model: str = "Unknown model"
    category: str = "not declared"
    source_title: str = ""
    revision: str = ""
    firmware: str = ""
    date: str = ""
    language: str = ""


@dataclass(slots=True)
class Draft:
    """A drafted document with the source that it was read from, for the report."""

    document: Fixture
    source: Source
    notes: list[str] = field(default_factory=list)
    readings: list[Reading] = field(default_factory=list)
    """Which row of the source became what."""


def draft(
    chart: Path | str,
    about: About = About(),
    *,
    pages: Sequence[int] | str | None = None,
    progress: Progress | None = None,
) -> Draft:
    """Read a chart file into a document of standing draft.

    chart: a PDF with a text layer, XLSX, ODS, CSV, HTML or text file; a chart sheet of ours comes back whole.
    pages: for a PDF, page numbers from 1, or such as ``31-34,40``. progress: told what is read.
    Raises IntakeError with one line that says what is wrong and what would be right.
    """
    asked = page_numbers(pages, chart) if isinstance(pages, str) else pages
    source = open_chart(chart, asked, progress)
    return _made(source, about, pages if isinstance(pages, str) else _pages_text(asked))


def draft_text(text: str, about: About = About(), *, name: str = "the pasted text") -> Draft:
    """As draft, for a text at hand (standard input)."""
    return _made(from_text(text, name), about, None)


def draft_bytes(content: bytes, about: About = About(), *, name: str = "standard input") -> Draft:
    """As draft, for the bytes of a file at hand that is no PDF."""
    if b"%PDF" in content[:1024]:
        raise IntakeError(name, "holds a PDF", remedy="name the file: pages are read where it lies")
    return _made(from_bytes(content, name), about, None)


def _made(source: Source, about: About, pages: str | None) -> Draft:
    from modebook.intake.sheet_in import document_of_sheet

    whole = document_of_sheet(source, about)
    if whole is not None:
        return Draft(whole, source, [*source.notes, *_sheet_notes(whole, about)])
    # A chart sheet needs none of what reads a maker's chart.
    from modebook.intake.assembler import assemble

    read = assemble(source, SOURCE_KEY)
    if not read.modes:
        raise IntakeError(
            source.name,
            "no chart was found in it",
            remedy="name the chart's pages, or type it into a blank chart sheet",
        )
    return Draft(_document(read, about, source, pages), source, list(source.notes), read.readings)


def _sheet_notes(document: Fixture, about: About) -> list[str]:
    """What a person should know of a chart sheet that came back: whose fixture it says it is."""
    from modebook.intake.sheet_out import EXAMPLE

    notes = [
        f"the sheet says {key} {getattr(document, key)!r}, so {getattr(about, key)!r} was not used"
        for key in ("maker", "model", "category")
        if getattr(about, key) not in (getattr(About(), key), getattr(document, key))
    ]
    if (document.maker, document.model) == EXAMPLE:
        notes.append(
            "this is the worked example of the blank sheet, or its first rows still stand in the sheet: "
            "put your own in their place"
        )
    return notes


def _document(read: Assembled, about: About, source: Source, pages: str | None) -> Fixture:
    from pydantic import ValidationError

    from modebook.documents.fixture import Fixture

    entry: Json = {"key": SOURCE_KEY, "title": about.source_title or Path(source.name).name or "chart"}
    for key, value in (
        ("revision", about.revision),
        ("date", about.date),
        ("firmware", about.firmware),
        ("pages", pages),
        ("language", about.language),
    ):
        if value:
            entry[key] = value
    made: Json = {
        "$schema": "../../../schema/fixture.schema.json",
        "maker": about.maker,
        "model": about.model,
        "category": about.category,
        "standing": "draft",
        "sources": [entry],
    }
    if read.settings:
        made["settings"] = read.settings
    made["modes"] = read.modes
    if read.doubts:
        made["doubts"] = read.doubts
    try:
        return Fixture.model_validate(made)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        place = "/".join(str(step) for step in first["loc"])
        raise IntakeError(
            source.name,
            f"what was read is no document: {first['msg']}",
            place=place,
            remedy="check maker, model, category and dates",
        ) from error


def page_numbers(text: str, file: object = "pages") -> list[int]:
    """Page numbers in a text such as ``31-34,40``. Raises IntakeError for anything else."""
    found: list[int] = []
    for part in text.replace("–", "-").split(","):
        match = re.fullmatch(r"\s*(\d{1,5})(?:\s*-\s*(\d{1,5}))?\s*", part)
        if not match:
            raise IntakeError(file, f"{text!r} are no pages", remedy="write pages such as 31-34 or 31,33")
        first, last = int(match[1]), int(match[2] or match[1])
        if first < 1 or last < first or last - first > 10_000:
            raise IntakeError(
                file, f"{part.strip()!r} is no stretch of pages", remedy="write the smaller page first"
            )
        found.extend(range(first, last + 1))
    return sorted(set(found))


def _pages_text(pages: Sequence[int] | None) -> str | None:
    if not pages:
        return None
    ordered = sorted(set(pages))
    if len(ordered) > 1 and ordered == list(range(ordered[0], ordered[-1] + 1)):
        return f"{ordered[0]}-{ordered[-1]}"
    return ", ".join(str(page) for page in ordered)
