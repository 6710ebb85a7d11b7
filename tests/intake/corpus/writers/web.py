"""Writes a manual as a web page: tables with rowspan and colspan, headings, lists."""

from __future__ import annotations

from html import escape

from intake.corpus.grids import Break, Element, Grid, Heading, Para, Row, Table


def html_page(elements: list[Element], title: str, language: str, plain: bool = False) -> bytes:
    """A page in UTF-8; `plain` leaves out thead and th, as converters do."""
    out = [
        f'<!DOCTYPE html>\n<html lang="{language}"><head><meta charset="utf-8"><title>{escape(title)}</title>'
    ]
    out.append("<style>td{padding:2px 6px} .x{display:none}</style></head><body>")
    out.append('<nav><ul><li><a href="#">1</a></li><li><a href="#">2</a></li></ul></nav>')
    for element in elements:
        match element:
            case Break():
                out.append("<hr>")
            case Heading(text, level):
                out.append(f"<h{level + 1}>{escape(text)}</h{level + 1}>")
            case Para(text):
                out.append(f"<p>{escape(text)}</p>")
            case Table(grid, _):
                out.append(_table(grid, plain))
    out.append("</body></html>")
    return "\n".join(out).encode()


def _table(grid: Grid, plain: bool) -> str:
    out = ["<table border=1>"]
    if grid.head:
        tag = "td" if plain else "th"
        rows = "".join(_row(row, tag) for row in grid.head)
        out.append(rows if plain else f"<thead>{rows}</thead>")
    out.append("<tbody>" + "\n".join(_row(row, "td") for row in grid.body) + "</tbody></table>")
    return "\n".join(out)


def _row(row: Row, tag: str) -> str:
    made = []
    for cell in row:
        if cell is None:
            continue
        reach = (f" rowspan={cell.rows}" if cell.rows > 1 else "") + (
            f" colspan={cell.cols}" if cell.cols > 1 else ""
        )
        text = escape(cell.text).replace("\n", "<br>").replace("100 %", "100&nbsp;%")
        made.append(f"<{tag}{reach}>{text}</{tag}>")
    return f"<tr>{''.join(made)}</tr>"
