"""Writes charts as text pasted from a viewer: aligned columns, collapsed ones, and detached ones."""

from __future__ import annotations

from intake.corpus.grids import Break, Element, Grid, Heading, Para, Row, Table


def _texts(row: Row) -> list[str]:
    return ["" if cell is None else cell.text.replace("\n", " ") for cell in row]


def aligned(grid: Grid, gap: int = 3) -> str:
    """Columns padded to one width each."""
    rows = [_texts(row) for row in [*grid.head, *grid.body]]
    widths = [max(len(row[x]) for row in rows) for x in range(grid.width)]
    return "\n".join(
        (" " * gap).join(t.ljust(w) for t, w in zip(row, widths, strict=True)).rstrip() for row in rows
    )


def collapsed(grid: Grid) -> str:
    """One blank between what stood in columns; empty cells leave nothing behind."""
    rows = [_texts(row) for row in [*grid.head, *grid.body]]
    return "\n".join(" ".join(t for t in row if t) for row in rows)


def text_file(elements: list[Element], manner: str = "aligned", newline: str = "\n") -> bytes:
    """The whole as UTF-8 text; pages are parted by a form feed."""
    out: list[str] = []
    for element in elements:
        match element:
            case Break():
                out.append("\f")
            case Heading(text, _) | Para(text):
                out += [text, ""]
            case Table(grid, _):
                out += [aligned(grid) if manner == "aligned" else collapsed(grid), ""]
    return newline.join(out).encode()
