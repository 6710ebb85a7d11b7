"""Finds out what the columns of a grid hold: by their titles, and by what stands in them."""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass, field, replace

from modebook.intake.column_roles import matrix_columns, roles_of
from modebook.intake.column_stats import Stats, ends_of, stats_of, texts_of
from modebook.intake.grid import Cell, Grid
from modebook.intake.headers import covering, find_header
from modebook.intake.headings import own_titles
from modebook.intake.titles import Column, Role, title_roles
from modebook.intake.values import read_values

_INNER = re.compile(r"[(\[]\s*([^)\]]+?)\s*[)\]]$")


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


def plan_columns(grid: Grid, known: dict[tuple[str, ...], Plan] | None = None) -> Plan | None:
    """What the columns hold; None where the grid is no part of a chart.

    `known`: plans by their titles. A table that repeats the titles of one before it holds the same.
    """
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
    before = (known or {}).get(tuple(titles))
    if before is not None:
        again = replace(before, first=first, above=above)
        if not before.matrix:
            # What a row above the titles calls the modes is of this table alone.
            kept: list[Role] = [column.role for column in before.columns]
            again = replace(again, columns=list(before.columns), modes=[], why=list(before.why))
            _number_modes(again, kept, _mode_titles(grid, index, upper, lower, titles, kept, above))
        return again
    strange = sum(title_roles(title)[:1] == ("foreign",) for title in titles)
    roles = roles_of(titles, stats)
    _ends(roles, body, width)
    _range_numbers(roles, body)
    promised = [title_roles(title) for title in titles]
    if any(told[:1] == ("slot",) and "value" not in told for told in promised) and not {
        "slot",
        "coarse",
    } & set(roles):
        # A column of slots is announced, and what stands under it is something else: columns that collapsed.
        return None
    matrix = matrix_columns(roles, titles, stats)
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
    plan.why.extend(
        f"what the column {titles[c]!r} means is not known"
        for c, role in enumerate(roles)
        if role == "none" and titles[c] and stats[c].values >= 0.8 * max(1, stats[c].filled) > 0
    )
    if plan.is_chart:
        valued = plan.has("value") or plan.has("from") or plan.has("hex")
        return plan if _names_something(plan, stats) and (valued or not strange) else None
    return plan if plan.is_values and not strange else None


def _ends(roles: list[Role], body: list[list[Cell]], width: int) -> None:
    """Two neighboring columns of numbers that begin and end ranges, whatever their titles say."""
    if "from" in roles or any(role == "value" for role in roles):
        return
    for c in range(width - 1):
        if roles[c] in ("none", "default") and roles[c + 1] in ("none", "default"):
            lows = [row[c] for row in body if len(row) > c + 1]
            highs = [row[c + 1] for row in body if len(row) > c + 1]
            if ends_of(lows, highs):
                roles[c], roles[c + 1] = "from", "to"
                return


def _range_numbers(roles: list[Role], body: list[list[Cell]]) -> None:
    """A column that counts on while the slot stays and its values go on numbers ranges (frames, gobos)."""
    slots = [c for c, role in enumerate(roles) if role == "slot"]
    if len(slots) < 2 or "value" not in roles:
        return
    value = roles.index("value")
    rows = [row for row in body if len(row) > max(*slots, value)]
    for c in slots[1:]:
        counted = 0
        for above, row in itertools.pairwise(rows):
            before, after = read_values(above[value].flat), read_values(row[value].flat)
            stays = row[slots[0]].flat in ("", above[slots[0]].flat) and above[c].flat != row[c].flat
            onward = bool(before and after) and after[0].start == before[-1].end + 1
            numbers = above[c].flat.isdigit() and row[c].flat.isdigit()
            counted += stays and onward and numbers and int(row[c].flat) == int(above[c].flat) + 1
        if counted >= 3:
            roles[c] = "foreign"


def _names_something(plan: Plan, stats: list[Stats]) -> bool:
    """Whether a table with slots has words for them, and without values names that are known: a list of
    messages or of units counts as slots do, and is no chart.
    """
    texts = [c for c, column in enumerate(plan.columns) if column.role in ("function", "meaning")]
    told = sum(stats[c].text for c in texts)
    if not told:
        return False
    valued = any(
        column.role in ("value", "percent", "hex", "from") and stats[c].values
        for c, column in enumerate(plan.columns)
    )
    return valued or any(
        stats[c].names >= 0.4 * stats[c].text and stats[c].kinds >= min(2, stats[c].text) for c in texts
    )


def _title(upper: list[Cell], lower: list[Cell] | None, column: int) -> str:
    top = upper[column].flat if column < len(upper) else ""
    if lower is None:
        return top
    below = lower[column].flat if column < len(lower) else ""
    if below and title_roles(below):
        return below
    return below or top


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
    # Modes called A, B, C: one of the letters is a known title, and is none here.
    told = [titles[c] for c in slots if titles[c]]
    inner = [said[1] for text in told if (said := _INNER.search(text)) and not title_roles(said[1])]
    if len(inner) == len(told) == len(slots) > 1 and len(set(inner)) == len(inner):
        # `Slot (Basic)`, `Slot (Full)`: what tells them apart are the modes.
        return [inner[slots.index(c)] if c in slots else "" for c in range(len(titles))]
    counting = {"slot", "coarse", "fine"}
    named = sum(not counting & set(title_roles(title)) for title in told)
    own = len(set(told)) == len(told) > 1 and named >= 0.5 * len(told)
    for c in slots:
        title = titles[c]
        if title and (not title_roles(title) or own):
            found[c] = title
            continue
        for row in (upper if lower is not None else None, super_row):
            if row is None:
                continue
            over = covering(row, c)
            if over and not title_roles(over) and over != title:
                found[c] = over
                break
    return own_titles(found)


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
        elif "value" in roles and s.percent and (s.percent == s.whole_percent or s.filled > s.values):
            roles[c] = "meaning"  # what each slot measures, beside its values
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
