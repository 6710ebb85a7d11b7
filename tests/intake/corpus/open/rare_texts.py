"""Rarer charts: pasted text with tabs, with wrapped lines, with blanks alone."""

from __future__ import annotations

from intake.corpus import making as m
from intake.corpus.content import Made, truth
from intake.corpus.grids import C, Grid, Heading, Look, Row
from intake.corpus.layouts.rows import rows_grid
from intake.corpus.registry import chart
from intake.corpus.scenes import moving_head, panel, spot
from intake.corpus.writers.plain import aligned, text_file

COLS = ["slot", "label", "value", "text"]


@chart("a-text-wrapped", "aligned columns, wrapped lines", "txt", "fr", "Brumaire-Loic", "Luciole 1")
def text_wrapped(seed: int) -> Made:
    b = m.start("fr", seed, rare=True)
    modes = [m.untitled(spot(b))]
    grid = rows_grid(b, modes[0].params, COLS, m.style(b, "hyphen"))
    body: list[Row] = []
    for row in grid.body:
        text = row[3].text if row[3] else ""
        if len(text) > 24 and " " in text[10:24]:
            cut = text.rindex(" ", 0, 24)
            body += [[*row[:3], C(text[:cut])], [C(), C(), C(), C(text[cut + 1 :])]]
        else:
            body.append(row)
    return Made(aligned(Grid(grid.head, body)).encode(), truth("Brumaire-Loic", "Luciole 1", modes))


@chart("a-text-collapsed", "collapsed columns", "txt", "en", "Wuthermoor", "Kestle 6")
def text_collapsed(seed: int) -> Made:
    b = m.start("en", seed, rare=True)
    modes = [m.mode(b, 1, "Short", spot(b), "dash")]
    grid = rows_grid(b, modes[0].params, COLS, m.style(b, "spaceden"))
    return Made(
        text_file(m.mode_tables(modes, [grid], Look()), "collapsed"), truth("Wuthermoor", "Kestle 6", modes)
    )


@chart("a-text-tabs", "columns parted by tabs", "txt", "es", "Mirtalejo", "Candil 9")
def text_tabs(seed: int) -> Made:
    b = m.start("es", seed, rare=True)
    modes = [m.untitled(panel(b))]
    grid = rows_grid(b, modes[0].params, COLS, m.style(b, "ellipsis", merge=False))
    rows = ["\t".join("" if cell is None else cell.text for cell in row) for row in [*grid.head, *grid.body]]
    return Made(("Tabla DMX\n" + "\n".join(rows) + "\n").encode(), truth("Mirtalejo", "Candil 9", modes))


@chart("a-text-aligned", "aligned columns", "txt", "it", "Sgrullone", "Fiocco 30")
def text_aligned(seed: int) -> Made:
    b = m.start("it", seed, rare=True)
    modes = [
        m.mode(b, 1, "Semplice", moving_head(b, fine=False), "dash"),
        m.mode(b, 2, "Avanzato", moving_head(b, lamp=True), "dash"),
    ]
    grids = [rows_grid(b, one.params, COLS, m.style(b, "to")) for one in modes]
    inner = [Heading(b.head("chart")), *m.mode_tables(modes, grids, Look())]
    return Made(text_file(inner), truth("Sgrullone", "Fiocco 30", modes))
