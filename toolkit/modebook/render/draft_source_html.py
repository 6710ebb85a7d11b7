"""A source as HTML with the rows that were read marked: a page's picture, or the cells of what has none."""

from __future__ import annotations

import base64
from collections.abc import Iterable, Mapping
from html import escape

from modebook.intake.grid import Box, Grid, Leaf, Line, Place
from modebook.intake.page_pictures import PagePicture
from modebook.intake.report import ReadPage, Spot, row_place, spot

Goals = Mapping[Spot, tuple[str, list[int]]]
"""For a row: the id of what came of it, and the numbers of its doubts."""


def source_table(leaf: Leaf, goals: Goals, marks: Mapping[Spot, str]) -> str:
    """Every line and every table, in order, each row with its number."""
    out: list[str] = []
    if leaf.raw and not goals:
        # A chart sheet of ours: its blocks have widths of their own.
        body = "".join(f"<tr><th>{n}</th>{_cells(row)}</tr>" for n, row in leaf.raw if any(row))
        return f'<div class="wide"><table class="cells"><tbody>{body}</tbody></table></div>'
    for item in leaf.items:
        if isinstance(item, Line):
            out.append(f'<p class="line">{_number(item.place, goals, marks)}{escape(item.text)}</p>')
        elif isinstance(item, Grid):
            out.append(_grid(item, goals, marks))
    return "\n".join(out)


def _grid(grid: Grid, goals: Goals, marks: Mapping[Spot, str]) -> str:
    rows = []
    for row in grid.rows:
        if not any(cell.flat for cell in row):
            continue
        place = row_place(row)
        goal = goals.get(spot(place))
        kind = "" if goal is None else "doubtful" if goal[1] else "read"
        number = _number(place, goals, marks)
        rows.append(f'<tr class="{kind}"><th>{number}</th>{_cells([cell.text for cell in row])}</tr>')
    return f'<div class="wide"><table class="cells"><tbody>{"".join(rows)}</tbody></table></div>'


def _cells(texts: list[str]) -> str:
    return "".join(f"<td>{escape(text)}</td>" for text in texts)


def _number(place: Place, goals: Goals, marks: Mapping[Spot, str]) -> str:
    """A row's number, which leads to what came of it; its doubts' numbers behind."""
    told = "" if place.row is None else str(place.row)
    goal = goals.get(spot(place))
    if goal is None:
        return f"<small>{told}</small> "
    numbers = f" {badge(goal[1])}" if goal[1] else ""
    return f'<a id="{marks.get(spot(place), "")}" href="#{goal[0]}">{told or "row"}</a>{numbers} '


def source_picture(page: ReadPage, picture: PagePicture, goals: Goals, marks: Mapping[Spot, str]) -> str:
    """The page's picture with a frame for each row that was read, and for rows of tables that were not."""
    data = base64.b64encode(picture.png).decode()
    out = [
        '<div class="sheet">'
        f'<img src="data:image/png;base64,{data}" width="{picture.width_px}" '
        f'height="{picture.height_px}" alt="Page {picture.number} of the source">'
    ]
    places = {spot(row.place): row.place for row in reversed(page.rows)}
    places |= {spot(one.place): one.place for one in page.unread if one.doubts or one.in_table}
    for at, place in sorted(places.items(), key=lambda one: one[1].box or (0, 0, 0, 0)):
        if place.box is not None:
            out.append(_frame(_style(place.box, picture), goals.get(at), marks.get(at, "")))
    return "\n".join([*out, "</div>"])


def _frame(style: str, goal: tuple[str, list[int]] | None, mark: str) -> str:
    if goal is None:
        return f'<span class="frame passed" style="{style}" title="Not read"></span>'
    numbers = sorted(set(goal[1]))
    kind, told = ("doubtful", f"doubt {', '.join(map(str, numbers))}") if numbers else ("read", "read")
    to = f"doubt-{numbers[0]}" if numbers else goal[0]
    return (
        f'<a class="frame {kind}" id="{mark}" href="#{to}" style="{style}" aria-label="{told}">'
        f"{badge(numbers) if numbers else ''}</a>"
    )


def _style(box: Box, picture: PagePicture) -> str:
    """A box of the page in shares of the picture, a point wider all around, to stay off the letters."""
    box = (box[0] - 1, box[1] - 1, box[2] + 1, box[3] + 1)
    x0, top, x1, bottom = picture.box
    wide, high = max(x1 - x0, 1e-6) / 100, max(bottom - top, 1e-6) / 100
    left, upper = (box[0] - x0) / wide, (box[1] - top) / high
    return (
        f"left:{left:.2f}%;top:{upper:.2f}%;"
        f"width:{(box[2] - box[0]) / wide:.2f}%;height:{(box[3] - box[1]) / high:.2f}%"
    )


def badge(numbers: Iterable[int]) -> str:
    """The mark with the numbers of doubts."""
    return f'<span class="badge">{", ".join(map(str, sorted(set(numbers))))}</span>'
