"""Finds out what the columns of a grid hold: by their titles, and by what stands in them."""

from __future__ import annotations

from dataclasses import dataclass, field

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.column_stats import Stats, stats_of, texts_of
from modebook.intake.grid import Cell, Grid
from modebook.intake.headings import read_mode_head
from modebook.intake.names import read_name
from modebook.intake.titles import Column, Role, is_title_row, title_roles
from modebook.intake.values import read_values

_SEARCHED = 15


@dataclass(slots=True)
class Plan:
    """The columns of a grid, the rows below its titles, and the titles of its modes."""

    columns: list[Column]
    first: int
    """Index of the first row below the titles."""
    modes: list[str] = field(default_factory=list)
    """The printed title of each mode column; empty where there is only one without a title."""
    above: list[int] = field(default_factory=list)
    """Rows above the titles: headings."""
    titled: bool = False
    matrix: bool = False
    titles: tuple[str, ...] = ()
    why: list[str] = field(default_factory=list)

    def has(self, role: Role) -> bool:
        """Whether a column has the role."""
        return any(column.role == role for column in self.columns)

    @property
    def is_chart(self) -> bool:
        """Whether it has slots of its own."""
        return self.has("slot") or self.has("coarse") or self.matrix

    @property
    def is_values(self) -> bool:
        """Whether it has values with meanings and no slots: the table of one slot or of one function."""
        return not self.is_chart and (
            self.has("value") or self.has("from") or self.has("percent") or self.has("hex")
        )


def find_header(grid: Grid) -> tuple[int, int] | None:
    """Index and height of the row of titles, or None."""
    for index, row in enumerate(grid.rows[:_SEARCHED]):
        if not is_title_row(texts_of(row)) and not _titles_modes(grid, index):
            continue
        height = 1
        if index + 1 < len(grid.rows) and _is_second(row, grid.rows[index + 1]):
            height = 2
        return index, height
    return None


def _titles_modes(grid: Grid, index: int) -> bool:
    """Whether a row with one known title and names of modes stands over columns of slots or of names."""
    row = grid.rows[index]
    filled = [cell for cell in row if cell.flat]
    if len(filled) < 2 or len(filled) < 0.6 * grid.width:
        return False
    known = [cell for cell in filled if title_roles(cell.flat)]
    if not known or any(
        read_slot_cell(cell.flat).kind == "slots" or read_values(cell.flat) for cell in filled
    ):
        return False
    body = grid.rows[index + 1 :]
    if len(body) < 2:
        return False
    numbers = 0
    for cell in filled:
        stats = stats_of([r[cell.column] for r in body if cell.column < len(r)])
        slotlike = stats.filled > 0 and stats.slots + stats.absent >= 0.75 * stats.filled and stats.slots > 0
        numbers += slotlike
        roles = title_roles(cell.flat)
        if cell in known:
            if roles[0] == "slot" and not slotlike:
                return False
        elif not slotlike and not read_mode_head(cell.flat) and stats.share(stats.names) < 0.4:
            return False
    return numbers > 0


def _is_second(upper: list[Cell], lower: list[Cell]) -> bool:
    """Whether a row goes on with the titles above it: only words, under titles that want more."""
    filled = [cell for cell in lower if cell.flat]
    if not filled:
        return False
    if is_title_row(texts_of(lower)):
        return any(not cell.flat for cell in upper) or texts_of(upper) != texts_of(lower)
    if len(filled) == 1 and len(lower) > 2 and filled[0].span > 1:
        return False
    for cell in filled:
        if read_slot_cell(cell.flat).kind == "slots" or (
            read_values(cell.flat) and not title_roles(cell.flat)
        ):
            return False
        title = upper[cell.column].flat if cell.column < len(upper) else ""
        covered = _covering(upper, cell.column)
        roles = title_roles(title or covered)
        mode = read_mode_head(cell.flat) is not None
        if not (mode or roles[:1] in (("slot",), ("mode",)) or (not title and title_roles(cell.flat))):
            return False
        if read_name(cell.flat).sure and not mode and not title_roles(cell.flat):
            return False
        if title and not mode and not title_roles(cell.flat) and roles[:1] == ("slot",):
            # One slot column with a name below it is the first row of the body.
            others = [c for c in lower if c.flat and c is not cell]
            if not others:
                return False
    return True


def _covering(row: list[Cell], column: int) -> str:
    """The title of the cell that spans a column, or of the nearest filled one to its left."""
    for cell in reversed(row[: column + 1]):
        if cell.flat:
            return cell.flat if cell.column + cell.span > column or cell.span == 1 else ""
    return ""


def split_sets(grid: Grid) -> list[Grid]:
    """A grid with its titles printed twice side by side, as the two grids that it is."""
    header = find_header(grid)
    if header is None:
        return [grid]
    row = (
        grid.rows[header[0] + header[1] - 1]
        if header[1] == 2 and is_title_row(texts_of(grid.rows[header[0] + 1]))
        else grid.rows[header[0]]
    )
    firsts: list[str | None] = [(title_roles(text) or (None,))[0] for text in texts_of(row)]
    texts = [text.casefold() for text in texts_of(row)]
    slot_columns = [
        index
        for index, role in enumerate(firsts)
        if role in ("slot", "coarse") and (index == 0 or firsts[index - 1] not in ("slot", "coarse"))
    ]
    if len(slot_columns) < 2:
        return [grid]
    parts = [
        slice(start, end) for start, end in zip(slot_columns, [*slot_columns[1:], len(texts)], strict=True)
    ]
    shapes = [tuple(role for role in firsts[part] if role is not None) for part in parts]
    if len(set(shapes)) != 1 or not set(shapes[0]) & {"function", "meaning", "value"}:
        return [grid]
    if slot_columns[0] != 0 and any(firsts[: slot_columns[0]]):
        return [grid]
    made: list[Grid] = []
    for part in parts:
        rows = []
        for cells in grid.rows:
            piece = [
                Cell(c.text, c.place, c.row, i, min(c.span, part.stop - part.start))
                for i, c in enumerate(cells[part])
            ]
            rows.append(piece)
        made.append(Grid(rows, grid.place, grid.ruled))
    return made


def plan_columns(grid: Grid) -> Plan | None:
    """What the columns hold; None where the grid is no part of a chart."""
    header = find_header(grid)
    if header is None:
        return _untitled(grid)
    index, height = header
    upper = grid.rows[index]
    lower = grid.rows[index + 1] if height == 2 else None
    first = index + height
    body = grid.rows[first:]
    width = grid.width
    above = [i for i in range(index) if any(texts_of(grid.rows[i]))]
    stats = [stats_of([row[c] for row in body if c < len(row)]) for c in range(width)]
    titles = [_title(upper, lower, c) for c in range(width)]
    roles: list[Role] = [_role(titles[c], stats[c]) for c in range(width)]
    if not any(title_roles(title) for title in titles):
        return _untitled(grid)
    matrix = _matrix_columns(roles, titles, stats)
    _settle(roles, titles, stats)
    modes = _mode_titles(grid, index, upper, lower, titles, roles, above)
    plan = Plan([Column(role) for role in roles], first, [], above, True, titles=tuple(titles))
    if matrix:
        plan.matrix = True
        plan.modes = [titles[c] for c in matrix]
        plan.columns = [
            Column("mode", matrix.index(c)) if c in matrix else Column(roles[c]) for c in range(width)
        ]
        return plan
    _number_modes(plan, roles, modes)
    return plan if plan.is_chart or plan.is_values else None


def _title(upper: list[Cell], lower: list[Cell] | None, column: int) -> str:
    top = upper[column].flat if column < len(upper) else ""
    if lower is None:
        return top
    below = lower[column].flat if column < len(lower) else ""
    if below and title_roles(below):
        return below
    return below or top


def _role(title: str, stats: Stats) -> Role:
    """A column's role by its title, corrected by what stands in it."""
    roles = title_roles(title)
    numbers = stats.slots + stats.absent
    slotlike = stats.filled > 0 and numbers >= 0.75 * stats.filled and stats.slots > 0
    if not roles:
        if slotlike and title and (read_mode_head(title) or stats.ranges < 0.5 * stats.filled):
            return "slot"
        if not title and slotlike and stats.rising and stats.ranges <= 0.3 * stats.filled:
            return "slot"
        if stats.share(stats.values) > 0.7:
            return "percent" if stats.percent > stats.values / 2 else "value"
        return "none"
    if len(roles) == 1 and roles[0] not in ("value", "slot"):
        return roles[0]
    first = roles[0]
    if "slot" in roles and "value" in roles:
        return "slot" if slotlike and stats.ranges < 0.4 * stats.filled and stats.rising else "value"
    if first == "slot" and stats.filled and stats.share(stats.ranges) > 0.6 and not stats.rising:
        return "value"
    if first == "value":
        if stats.percent > stats.values / 2 and stats.percent:
            return "percent"
        if stats.share(stats.text) > 0.8 and stats.values == 0:
            return "meaning"
    return first


def _settle(roles: list[Role], titles: list[str], stats: list[Stats]) -> None:
    """Two columns of one kind: which is the name and which the meaning, which decimal and which not."""
    values = [c for c, role in enumerate(roles) if role == "value"]
    for c in values:
        if stats[c].percent > stats[c].values / 2 and len(values) > 1:
            roles[c] = "percent"
        elif (
            stats[c].hexes > 0.3 * stats[c].filled
            and len(values) > 1
            and "value" in [roles[o] for o in values if o != c]
        ):
            roles[c] = "hex"
    texts = [
        c
        for c, role in enumerate(roles)
        if role in ("function", "meaning")
        or (role == "none" and stats[c].text > 0.5 * max(1, stats[c].filled))
    ]
    functions = [c for c in texts if roles[c] == "function"]
    meanings = [c for c in texts if roles[c] == "meaning"]
    if not functions and len(meanings) > 1:
        best = max(meanings, key=lambda c: stats[c].share(stats[c].names))
        roles[best] = "function"
    elif len(functions) > 1:
        best = max(functions, key=lambda c: (stats[c].share(stats[c].names) > 0.5, -c))
        for c in functions:
            if c != best:
                roles[c] = "meaning"
    elif not functions and not meanings and texts:
        roles[texts[0]] = "function"
        for c in texts[1:]:
            roles[c] = "meaning"
    for c in texts:
        if roles[c] == "none" and titles[c] == "" and "function" in roles and "meaning" not in roles:
            roles[c] = "meaning"


def _matrix_columns(roles: list[Role], titles: list[str], stats: list[Stats]) -> list[int]:
    """The columns of a slot by mode matrix: names under mode titles, beside one slot column."""
    if roles.count("slot") != 1 or "value" in roles or "from" in roles:
        return []
    candidates = [
        c
        for c, role in enumerate(roles)
        if role in ("none", "mode")
        and titles[c]
        and stats[c].filled
        and stats[c].text >= 0.5 * max(1, stats[c].filled - stats[c].absent)
    ]
    if "function" in roles or "meaning" in roles:
        candidates = [c for c in candidates if read_mode_head(titles[c])]
        if len(candidates) < 1 or any(r == "function" for r in roles):
            return []
    named = [c for c in candidates if stats[c].names >= 0.4 * max(1, stats[c].text)]
    return candidates if candidates and len(named) >= 0.5 * len(candidates) else []


def _mode_titles(
    grid: Grid,
    index: int,
    upper: list[Cell],
    lower: list[Cell] | None,
    titles: list[str],
    roles: list[Role],
    above: list[int],
) -> list[str]:
    """For each column the title of the mode whose slots it holds; empty where nothing names one."""
    found = [""] * len(titles)
    super_row = grid.rows[above[-1]] if above and above[-1] == index - 1 else None
    slots = [c for c, role in enumerate(roles) if role in ("slot", "coarse", "fine")]
    for c in slots:
        title = titles[c]
        if not title_roles(title) and title:
            found[c] = title
            continue
        for row in (upper if lower is not None else None, super_row):
            if row is None:
                continue
            over = _covering(row, c)
            if over and not title_roles(over) and over != title:
                found[c] = over
                break
    return found


def _number_modes(plan: Plan, roles: list[Role], modes: list[str]) -> None:
    """Give slot columns the numbers of their modes."""
    numbers: dict[str, int] = {}
    current = -1
    pending: str | None = None
    untitled = sum(1 for c, r in enumerate(roles) if r == "slot" and not modes[c])
    if untitled > 1 and len(numbers) == 0 and any(modes[c] for c, r in enumerate(roles) if r == "slot"):
        plan.why.append("some slot columns have no title")
    for c, role in enumerate(roles):
        if role not in ("slot", "coarse", "fine"):
            continue
        title = modes[c]
        if title and title in numbers:
            number = numbers[title]
        elif (role == "fine" and pending in ("coarse", "slot") and current >= 0 and not title) or (
            role == "coarse"
            and pending == "fine"
            and current >= 0
            and not title
            and roles.count("coarse") == 1
        ):
            number = current
        else:
            number = len(plan.modes)
            plan.modes.append(title)
            if title:
                numbers[title] = number
        plan.columns[c] = Column(role, number)
        current, pending = number, role


def _untitled(grid: Grid) -> Plan | None:
    """Columns of a grid without titles, by what stands in them."""
    width = grid.width
    body = [row for row in grid.rows if sum(bool(cell.flat) for cell in row) > 0]
    if width < 2 or not body:
        return None
    stats = [stats_of([row[c] for row in body if c < len(row)]) for c in range(width)]
    roles: list[Role] = ["none"] * width
    modes = 0
    for c in range(width):
        s = stats[c]
        if not s.filled:
            continue
        # 1-2, 3, 4-5 are slots, though each pair looks like values.
        paired = s.ranges <= 0.34 * s.filled or (s.starts == 1 and s.following >= 0.8 * s.slots)
        counts = s.slots + s.absent >= 0.8 * s.filled and s.slots > 0 and s.rising
        slotlike = counts and (s.starts or 0) >= 1 and paired
        if slotlike and (c == 0 or all(r == "slot" for r in roles[:c])):
            roles[c] = "slot"
            modes += 1
        elif s.share(s.values) > 0.6 and s.ranges:
            roles[c] = (
                "percent"
                if s.percent > s.values / 2
                else ("hex" if "value" in roles and s.hexes else "value")
            )
        elif s.text >= 0.5 * s.filled:
            roles[c] = "meaning" if "function" in roles else "function"
        elif "function" in roles and not s.slots:
            roles[c] = "meaning"
    plan = Plan([Column(role) for role in roles], 0)
    _number_modes(plan, roles, [""] * width)
    texts = [c for c, role in enumerate(roles) if role in ("function", "meaning")]
    if plan.has("slot"):
        named = sum(stats[c].names for c in texts)
        told = sum(stats[c].text for c in texts)
        if not texts or not told or (named < 0.4 * told and not plan.has("value")):
            return None
        return plan
    return plan if plan.has("value") and texts else None
