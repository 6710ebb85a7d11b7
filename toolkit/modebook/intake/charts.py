"""Walks a source and gathers its charts: which rows belong to which table of which mode."""

from __future__ import annotations

from dataclasses import replace

from modebook.intake.bare_titles import bare_titles
from modebook.intake.cell_grids import from_cell_grid
from modebook.intake.chart_rows import ChartRow
from modebook.intake.closing import Sections, is_other, page_tail
from modebook.intake.columns import Plan, plan_columns
from modebook.intake.footnotes import bracketed_marks, is_legend
from modebook.intake.footprint_titles import with_footprints_told
from modebook.intake.from_zero import from_zero
from modebook.intake.gathered import Chart, Gathered
from modebook.intake.grid import Grid, Leaf, Line, Place, Source
from modebook.intake.headers import in_two_cells, joined_titles, split_sets
from modebook.intake.headings import (
    ModeHead,
    SlotHead,
    heads_of,
    read_footnote,
    read_mode_head,
    read_slot_head,
)
from modebook.intake.legends import continues, is_legend_of, name_of_slot, without_legend
from modebook.intake.lexicon import SURE
from modebook.intake.listed_slots import with_listed_slots
from modebook.intake.loose_modes import loose_modes
from modebook.intake.loose_rows import (
    is_titled,
    looks_like_chart,
    loose_rows,
    values_of,
)
from modebook.intake.mode_column import by_mode_column
from modebook.intake.names import read_name
from modebook.intake.numbered_heads import at_numbered_heads, numbered_heads
from modebook.intake.numbered_names import numbered_names
from modebook.intake.row_parts import by_heads, by_restarts
from modebook.intake.rows import chart_rows
from modebook.intake.slot_lines import goes_on, headed_rows, is_row
from modebook.intake.title_lines import mode_title, title_line, without_signs
from modebook.intake.told_conditions import tells_when
from modebook.intake.turned import turned_matrix


class Walk:
    """One pass over a source."""

    def __init__(self) -> None:
        self.found = Gathered()
        self.chart: Chart | None = None
        self.head: ModeHead | None = None
        self.block_open = False
        self.lines: list[Line] = []
        self.titles: list[Line] = []
        self.turned_at = 0
        self.function = ""
        self.plans: dict[tuple[str, ...], Plan] = {}
        self.numbered: dict[str, SlotHead] = {}
        self.bare: dict[tuple[str, Place], str] = {}
        self.marks: frozenset[str] = frozenset()
        self.sections = Sections()

    def over(self, source: Source) -> Gathered:
        """Gather the charts of a source, page by page."""
        self.numbered = numbered_heads(source)
        self.bare = bare_titles(source)
        self.marks = bracketed_marks(source)
        for leaf in source.leaves:
            self._leaf(leaf)
        self._flush()
        self.found.left_behind(self.head)
        return self.found

    def _leaf(self, leaf: Leaf) -> None:
        self.turned_at = len(self.lines)
        self.head = None if leaf.sheet else self.head  # the title of one sheet is not that of the next
        for item in leaf.items:
            if isinstance(item, Line):
                self._line(item)
            else:
                self._flush()
                self.titles = []
                for grid in split_sets(item):
                    for piece in at_numbered_heads(grid, self.numbered):
                        if isinstance(piece, Line):
                            self._line(piece)
                        else:
                            self._grid(piece)

    # Lines

    def _line(self, line: Line) -> None:
        text = without_signs(line.text)
        if not text:
            return
        bare = self.bare.get((text.strip(" :"), line.place))
        if bare:
            self.found.lines.append(line)
            self._headed(ModeHead(text, bare, None, None, True))
            return
        if text != line.text:
            line = replace(line, text=text, words=line.words if line.words[:1] != ("•",) else line.words[1:])
        self.found.lines.append(line)
        note = read_footnote(text)
        if note and note.mark.isdecimal() and not (note.mark in self.marks and is_legend(text, note.text)):
            note = None
        if note:
            self._flush()
        if note and (self.chart is not None or self.found.charts):
            target = self.chart or self.found.charts[-1]
            target.notes.append(note)
            self.found.footnotes.append(note)
            return
        if tells_when(text):
            self._flush()
            (self.chart.told if self.chart is not None else self.found.prose).append(line)
            return
        head = mode_title(text, line.words)
        if head and head.footprint is None and is_row(text, self.lines):
            head = None
        if head and not (
            head.footprint is not None and not head.strong and self.lines and read_name(text).score >= SURE
        ):
            self._headed(head)
            return
        numbered = self.numbered.get(text)
        slot = numbered or read_slot_head(text)
        if slot and not numbered and not text[0].isalpha() and goes_on(text, self.lines):
            slot = None
        if slot and (self.block_open or text.casefold()[0].isalpha() or text[0] == "[" or numbered):
            self._flush()
            self._block_head(slot.slots, slot.name, line)
            return
        if self.sections.end(text, self.chart, self.lines, heading=line.heading):
            self._flush()
            self.block_open = False
            self.found.prose.append(line)
            return
        name = read_name(text)
        if name.sure and len(text) < 50:
            self.function = text
        self.function = name_of_slot(text, self.found.charts) or self.function
        self.lines.append(line)

    def _headed(self, head: ModeHead) -> None:
        """A mode's title: the next chart is its. Titles right above it are those of all modes below."""
        if self.lines and title_line(self.lines[-1].text):
            self.titles = [self.lines[-1]]
        self._flush()
        self.found.left_behind(self.head)
        self.lines = list(self.titles)
        self.head = head
        self.block_open = False
        self.function = ""

    def _flush(self) -> None:
        """Read the lines gathered so far as rows of a chart, or keep them as prose."""
        lines, self.lines = self.lines, []
        tail = page_tail(lines, self.turned_at)
        self.turned_at = 0
        if tail:
            self.found.prose.extend(lines[-tail:])
            lines = lines[:-tail]
        if not lines:
            return
        if self.block_open and self.chart is not None and self.chart.block and self.chart.loose:
            rows, left = loose_rows(lines)
            if any(row.has_value for row in rows):
                self.chart.rows.extend(rows)
                self.chart.stray.extend((line.text, line.place) for line in left)
                return
        rows, left = loose_rows(lines)
        if not looks_like_chart(rows, left, titled=is_titled(lines)):
            self.found.prose.extend(lines)
            self._missed(rows)
            return
        modes = loose_modes(lines, rows)
        for piece in by_restarts(rows):
            chart = self._chart_for(piece, modes, None, lines[0].place)
            chart.loose = True
            chart.rows.extend(piece)
        if self.chart is not None:
            for line in left:
                note = read_footnote(line.text)
                if note:
                    self.chart.notes.append(note)
                else:
                    self.chart.stray.append((line.text, line.place))

    def _missed(self, rows: list[ChartRow]) -> None:
        """Rows that look as if they belonged to the open chart, in lines that are none: never silently
        lost.
        """
        if self.chart is None:
            return
        for row in rows:
            values = values_of(row)
            next_slot = any(
                c.kind == "slots" and min(c.slots) == self.chart.last + 1 for c in row.slots.values()
            )
            if (next_slot and row.name) or (
                values and values[-1].end in (255, 65535) and not values[-1].single
            ):
                self.chart.stray.append((row.raw, row.place))

    # Headings over one slot

    def _block_head(self, slots: tuple[int, ...], name: str, line: Line) -> None:
        self._flush()
        rows = headed_rows(slots, name, line)
        fresh = (
            self.chart is None
            or not self.chart.block
            or self.head is not None
            or slots[0] == 1
            or slots[0] <= self.chart.last
        )
        if fresh:
            self.chart = Chart([self.head], [""], place=line.place, block=True, loose=True)
            self.head = None
            self.found.charts.append(self.chart)
        assert self.chart is not None
        self.chart.rows.extend(rows)
        self.block_open = True

    # Grids

    def _grid(self, grid: Grid) -> None:
        grid = self._headings_out(grid)
        if not grid.rows:
            return
        above, legend = without_legend(grid := with_footprints_told(grid))
        if legend is not None:
            for part in (above, legend):
                self._grid(part)
            return
        grid = turned_matrix(grid) or from_cell_grid(grid) or grid
        grid, told = from_zero(joined_titles(numbered_names(with_listed_slots(grid))))
        names = {head.name for chart in self.found.charts for head in chart.heads if head}
        parts = by_mode_column(grid, names)
        for head, part in parts:
            self.head = head
            self._rows_of(part, told)
        if not parts:
            self._rows_of(grid, told)

    def _rows_of(self, grid: Grid, told: str) -> None:
        """Read a grid whose titles are whole and whose slots count from 1; told: what is doubtful there."""
        plan = plan_columns(grid, self.plans)
        if plan is None:
            self._no_chart(grid)
            return
        if plan.is_chart and plan.titled:
            self.plans.setdefault(plan.titles, plan)
        if told:
            plan = replace(plan, why=[*plan.why, told])
        for index in plan.above:
            self._above(grid, index)
        rows = chart_rows(grid, plan)
        headed = sum(bool(row.whole and read_slot_head(row.whole)) for row in rows)
        if plan.is_values and not headed:
            self._values_table(grid, plan, rows)
            return
        if plan.is_values and self.block_open:
            self._values_with_heads(rows)
            return
        self.function = ""
        for piece, head in by_heads(rows):
            if head is not None:
                self.head = head
            for part in by_restarts(piece):
                if not any(r.has_slot or r.has_value for r in part):
                    continue
                chart = self._chart_for(part, plan.modes or [""], plan, grid.place)
                chart.rows.extend(part)
        self.block_open = False

    def _headings_out(self, grid: Grid) -> Grid:
        """Take leading one-cell rows off a grid and treat them as lines: they are headings."""
        rows = list(grid.rows)
        while rows:
            filled = [cell for cell in rows[0] if cell.flat]
            text = in_two_cells(rows)
            if not text and (
                len(filled) != 1
                or (filled[0].column != 0 and filled[0].span == 1 and len(rows[0]) > 1 and grid.ruled)
            ):
                break
            text = text or filled[0].flat
            if not read_mode_head(text) and not read_slot_head(text):
                break
            self._line(Line(text, filled[0].place))
            rows.pop(0)
        return Grid(rows, grid.place, grid.ruled)

    def _above(self, grid: Grid, index: int) -> None:
        texts = {cell.flat for cell in grid.rows[index] if cell.flat}
        if len(texts) == 1:
            head = read_mode_head(next(iter(texts)))
            if head:
                self.head = head

    def _no_chart(self, grid: Grid) -> None:
        """A grid that is no chart by its columns: perhaps lines of a chart whose columns did not come out."""
        if is_other(grid):
            # Whatever stands below it is of no slot whose heading stood above.
            self.block_open = False
        elif not grid.ruled:
            for row in grid.rows:
                text = "  ".join(cell.flat for cell in row if cell.flat)
                self._line(Line(text, row[0].place))
            self._flush()

    def _values_with_heads(self, rows: list[ChartRow]) -> None:
        """A table of one slot's values that runs on into the headings of the next slots."""
        for row in rows:
            slot = read_slot_head(row.whole) if row.whole else None
            if slot is not None:
                self._block_head(slot.slots, slot.name, Line(row.whole, row.place))
            elif self.chart is not None:
                self.chart.rows.append(row)

    def _values_table(self, grid: Grid, plan: Plan, rows: list[ChartRow]) -> None:
        """Values without slots: of the slot whose heading stands above, or of a function named there."""
        if self.block_open and self.chart is not None and self.chart.block:
            self.chart.rows.extend(rows)
            return
        if not self.function and self.found.shared and continues(rows, self.found.shared[-1][1]):
            self.found.shared[-1][1].extend(rows)
            return
        legend = is_legend_of(rows, self.found.charts)
        if not plan.titled and not self.function and not legend:
            self._missed(rows)
            self.found.unread += 1
            return
        name = self.function
        groups: list[tuple[str, list[ChartRow]]] = []
        if plan.has("function") and plan.has("meaning"):
            for row in rows:
                if row.name:
                    groups.append((row.name, []))
                if groups:
                    groups[-1][1].append(replace(row, name=""))
        elif name:
            groups.append((name, rows))
        else:
            self._missed(rows)
            self.found.unread += 1
        self.found.shared.extend(groups)
        self.function = ""

    def _chart_for(self, rows: list[ChartRow], modes: list[str], plan: Plan | None, place: Place) -> Chart:
        """The chart that rows belong to: the open one if they go on with it, else a new one."""
        first = next(
            (min(c.slots) for r in rows for m, c in sorted(r.slots.items()) if c.kind == "slots"), None
        )
        chart, head = self.chart, self.head
        same = (
            chart is not None
            and not chart.block
            and (chart.titles == modes or (plan is not None and not any(modes)))
        )
        same = same and chart is not None and len(chart.titles) == len(modes)
        if same and chart is not None:
            repeated = (
                head is None
                or head.continued
                or any(h is not None and h.name == head.name and h.number == head.number for h in chart.heads)
            )
            follows = (
                first is None
                or first > chart.last
                or (first == chart.last and not rows[0].has_slot)
                or (first == chart.last and (head is None or head.continued or first > 1))
            )
            if repeated and follows:
                self.head = None
                return chart
        made = Chart(heads_of(modes, head), list(modes), place=place)
        if plan is not None:
            made.why.extend(plan.why)
        self.found.charts.append(made)
        self.chart, self.head = made, None
        return made
