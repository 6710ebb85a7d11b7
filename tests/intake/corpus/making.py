"""The usual road of a generator: modes with titles, a table each, a manual around, a file and its truth."""

from __future__ import annotations

from collections.abc import Callable
from random import Random

from intake.corpus.building import Builder, footprint, place
from intake.corpus.content import M, Made, P, truth
from intake.corpus.grids import Element, Grid, Heading, Look, Table
from intake.corpus.layouts.rows import RowStyle
from intake.corpus.scenes import in_manual
from intake.corpus.values import Values
from intake.corpus.writers.pdf_fpdf import fpdf_pdf
from intake.corpus.writers.pdf_reportlab import reportlab_pdf

Pdf = Callable[..., bytes]
FPDF, REPORTLAB = fpdf_pdf, reportlab_pdf


def start(language: str, seed: int, rare: bool = False) -> Builder:
    return Builder(language, Random(f"{language}{seed}"), rare)


def style(
    b: Builder, kind: str = "hyphen", zeros: bool = False, merge: bool = True, **more: object
) -> RowStyle:
    """The manner of printing values, and how rows are set."""
    values = Values(kind, zeros, b.words.TO, b.rng)
    return RowStyle(values, merge, **more)  # type: ignore[arg-type]


def titled(b: Builder, number: int, name: str, count: int, form: str = "full") -> tuple[str, tuple[str, ...]]:
    """A mode's heading and the names that may be read from it, best first."""
    word, channels = b.words.HEADS["mode"][0][0].format(number), b.head("channels", count)
    match form:
        case "full":
            title = f"{word}: {name} ({channels})"
        case "dash":
            title = f"{name} – {channels}"
        case "count":
            return channels, (channels,)
        case "word":
            title = b.words.HEADS["mode"][0][0].format(name)
        case _:
            title = name
    return title, (name, title, word, f"{word}: {name}", f"{name} ({channels})", f"{word} {name}")


def mode(b: Builder, number: int, name: str, params: list[P], form: str = "full") -> M:
    placed = place(params)
    title, names = titled(b, number, name, footprint(placed), form)
    return M(title, names, footprint(placed), placed)


def untitled(params: list[P] | tuple[P, ...]) -> M:
    """The only mode of a chart that prints no name for it."""
    placed = tuple(params) if all(p.slots for p in params) else place(list(params))
    return M("", (), footprint(placed), placed)


def mode_tables(modes: list[M], grids: list[Grid], look: Look, level: int = 2) -> list[Element]:
    """Heading, table, heading, table ..."""
    made: list[Element] = []
    for m, grid in zip(modes, grids, strict=True):
        made += [Heading(m.title, level)] if m.title else []
        made.append(Table(grid, look))
    return made


def as_pdf(
    b: Builder,
    maker: str,
    model: str,
    modes: list[M],
    inner: list[Element],
    look: Look,
    pdf: Pdf = FPDF,
    **how: object,
) -> Made:
    """A whole manual with the chart inside."""
    data = pdf(in_manual(b, maker, model, inner, look), foot=f"{maker} {model}", **how)
    return Made(data, truth(maker, model, modes))
