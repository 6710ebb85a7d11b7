"""The review of a draft as one page: the source, with what was read marked, beside the mode it became."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING

from modebook.intake.errors import IntakeError
from modebook.intake.page_pictures import PagePicture, page_pictures
from modebook.intake.report import ReadPage, Spot, report_pages, spot
from modebook.render.chart_rows import ChartLine, chart_lines
from modebook.render.draft_source_html import Goals, badge, source_picture, source_table
from modebook.render.findings_text import sentence
from modebook.render.pointer_words import in_words, mode_number
from modebook.render.sheets.page import page as whole_page
from modebook.render.terminal import counted

if TYPE_CHECKING:
    from modebook.documents.doubts import Doubt
    from modebook.intake.draft import Draft


def draft_html(draft: Draft, settle: str = "") -> str:
    """A whole page that needs nothing beside it: pictures, style and marks are in it.

    settle: the command that settles the doubts, to be told beside them.
    """
    review = _Review(draft)
    review.settle = settle
    return whole_page("review.html", f"{_name(draft)}: a draft", subtitle=review.about(), body=review.body())


def _name(draft: Draft) -> str:
    """The fixture, or the chart where it was not told whose it is."""
    from modebook.intake.draft import About

    document = draft.document
    known = document.maker != About().maker or document.model != About().model
    return f"{document.maker} {document.model}" if known else Path(draft.source.name).name


class _Review:
    """One draft on its way to a page: which doubt has which number, which row which mark."""

    def __init__(self, draft: Draft) -> None:
        self.draft = draft
        self.notes = list(draft.notes)
        self.settle = ""
        self.document = draft.document
        self.pages = report_pages(draft)
        waiting = [index for index, doubt in enumerate(self.document.doubts) if doubt.settled is None]
        self.numbers = {index: number for number, index in enumerate(waiting, start=1)}
        self.lines = {index: chart_lines(self.document, index) for index in range(len(self.document.modes))}
        self.read = {row.pointer for page in self.pages for row in page.rows}
        self.shown: set[str] = set()
        self.marks: dict[Spot, str] = {}
        self.mark_of: dict[str, str] = {}
        for page in self.pages:
            for row in page.rows:
                mark = self.marks.setdefault(spot(row.place), f"mark-{len(self.marks) + 1}")
                self.mark_of.setdefault(row.pointer, mark)
            for text in page.unread:
                if text.doubts:
                    self.marks.setdefault(spot(text.place), f"mark-{len(self.marks) + 1}")

    def body(self) -> str:
        """What stands in the page."""
        with_chart = [page for page in self.pages if page.rows or any(one.doubts for one in page.unread)]
        if not with_chart and self.draft.source.kind != "pdf":
            with_chart = self.pages
        numbers = [page.leaf.number for page in with_chart if page.leaf.number is not None]
        pictures = self._pictures(numbers)
        out = [self._head()]
        for page in with_chart:
            out.append(self._page(page, pictures.get(page.leaf.number or 0)))
        out.append(self._elsewhere())
        out.append(self._silent([page for page in self.pages if page not in with_chart]))
        return "\n".join(part for part in out if part)

    def _pictures(self, numbers: Sequence[int]) -> dict[int, PagePicture]:
        """The pictures of some pages; none where they cannot be drawn, with a note: cells are shown then."""
        if self.draft.source.kind != "pdf":
            return {}
        try:
            return {one.number: one for one in page_pictures(Path(self.draft.source.name), numbers)}
        except IntakeError as error:
            self.notes.append(f"{error.problem}: its cells are shown instead")
            return {}

    def about(self) -> str:
        """What was read, in a sentence."""
        parameters = sum(line.kind == "parameter" for lines in self.lines.values() for line in lines)
        doubts = counted(len(self.numbers), "open doubt") if self.numbers else "no open doubt"
        return (
            f"Read from {self.draft.source.name}: {counted(len(self.document.modes), 'mode')}, "
            f"{counted(parameters, 'parameter')}, {doubts}."
        )

    def _head(self) -> str:
        out = [
            "<p>Marked rows of the source were read; a number is a doubt's. A mark leads to what became of "
            "it, a place leads back.</p>"
        ]
        out += [f"<p>{escape(sentence(note))}</p>" for note in self.notes]
        if self.numbers:
            out.append('<h2>Doubts</h2><ol class="doubts">')
            for index, number in self.numbers.items():
                doubt = self.document.doubts[index]
                where = escape(in_words(self.document, doubt.pointer))
                why = escape(sentence(doubt.why))
                out.append(f'<li><a href="#doubt-{number}">{where}</a>: {why}</li>')
            out.append("</ol>")
            if self.settle:
                out.append(f"<p>To settle them: <code>{escape(self.settle)}</code></p>")
        return "\n".join(out)

    def _page(self, page: ReadPage, picture: PagePicture | None) -> str:
        leaf = page.leaf
        name = (
            f"Page {leaf.number}" if leaf.number is not None else f"Sheet {leaf.sheet}" if leaf.sheet else ""
        )
        goals = self._goals(page)
        if picture is not None:
            left = source_picture(page, picture, goals, self.marks)
        else:
            left = source_table(page.leaf, goals, self.marks)
        right = self._modes(page)
        kind = "" if picture is not None else " of-cells"
        return (
            f'<section class="leaf"><h2>{escape(name or "The source")}</h2>\n<div class="pair{kind}">\n'
            f'<div class="source">{left}</div>\n<div class="read">{right}</div>\n</div></section>'
        )

    def _goals(self, page: ReadPage) -> Goals:
        """For each row of a page: the id of what came of it, and the numbers of its doubts."""
        goals: dict[Spot, tuple[str, list[int]]] = {}
        for row in page.rows:
            _, numbers = goals.setdefault(spot(row.place), (_id(row.pointer), []))
            numbers.extend(self.numbers[index] for index in row.doubts)
        for text in page.unread:
            if text.doubts:
                # A row that was not understood has nothing that came of it: its mark leads to its doubt.
                numbers = [self.numbers[index] for index in text.doubts]
                goals[spot(text.place)] = (f"doubt-{numbers[0]}", numbers)
        return goals

    def _modes(self, page: ReadPage) -> str:
        """What was read on a page, mode by mode."""
        here = {row.pointer for row in page.rows}
        numbers = {number for pointer in here if (number := mode_number(pointer)) is not None}
        if not page.rows and self.draft.source.kind != "pdf":
            numbers = set(self.lines)
        out = []
        for number in sorted(numbers):
            lines = [line for line in self.lines[number] if not self.read or self._belongs(line, here)]
            out.append(self._mode(number, lines))
        loose = [index for text in page.unread for index in text.doubts]
        out += [self._doubt(index) for index in loose if f"doubt {index}" not in self.shown]
        return "\n".join(out)

    def _belongs(self, line: ChartLine, here: set[str]) -> bool:
        """Whether a row of the chart was read on a page: itself, or the parameter that it stands under."""
        if line.kind == "block":
            return any(pointer.startswith(f"{line.pointer}/") for pointer in here)
        if line.pointer in self.read:
            return line.pointer in here
        return line.pointer.rpartition("/ranges/")[0] in here

    def _mode(self, number: int, lines: Iterable[ChartLine]) -> str:
        mode = self.document.modes[number]
        again = f"mode {number}" in self.shown
        self.shown.add(f"mode {number}")
        name = f"{mode.name}{f' ({mode.given})' if mode.given else ''}"
        told = f"{'mode' if mode.number is None else f'mode {mode.number}'}, {mode.footprint} slots"
        out = [
            f"<h3>{escape(name)}{', continued' if again else ''} <small>{escape(told)}</small></h3>",
        ]
        if not again:
            own = [
                index
                for index in self.numbers
                if _owner(self.document.doubts[index], self.lines[number]) == f"/modes/{number}"
            ]
            out += [self._doubt(index) for index in own if f"doubt {index}" not in self.shown]
        out.append(
            '<table class="chart"><thead><tr><th>Slots</th><th>Parameter</th><th>Values</th><th>Meaning</th>'
            "<th>Place</th></tr></thead><tbody>"
        )
        for line in lines:
            out += self._line(line)
        return "\n".join([*out, "</tbody></table>"])

    def _line(self, line: ChartLine) -> list[str]:
        again = line.pointer in self.shown
        self.shown.add(line.pointer)
        mine = [
            index
            for index in self.numbers
            if f"doubt {index}" not in self.shown
            and _owner(self.document.doubts[index], self.lines[mode_number(line.pointer) or 0])
            == line.pointer
        ]
        classes = " ".join(word for word in (line.kind, "doubtful" if mine else "") if word)
        name = "" if again else f' id="{_id(line.pointer)}"'
        mark = self.mark_of.get(line.pointer)
        place = f'<a href="#{mark}">{self._place(line.pointer)}</a>' if mark else ""
        if line.kind == "block":
            return [f'<tr class="{classes}"{name}><td></td><td colspan="4">{escape(line.meaning)}</td></tr>']
        word = escape(line.parameter) + (f" <small>{escape(line.label)}</small>" if line.label else "")
        out = [
            f'<tr class="{classes}"{name}><td>{escape(line.slots)}</td><td>{word}</td>'
            f"<td>{escape(line.values)}</td><td>{escape(line.meaning)}</td><td>{place}</td></tr>"
        ]
        out += [
            f'<tr class="doubt"><td></td><td colspan="4">{self._doubt(index)}</td></tr>' for index in mine
        ]
        return out

    def _place(self, pointer: str) -> str:
        for page in self.pages:
            for row in page.rows:
                if row.pointer == pointer and row.place.row is not None:
                    return f"row {row.place.row}"
        return "source"

    def _doubt(self, index: int) -> str:
        """One doubt: number, what was printed, what was read, why."""
        self.shown.add(f"doubt {index}")
        doubt, number = self.document.doubts[index], self.numbers[index]
        told = [("printed", doubt.printed), ("read", doubt.read), ("why", sentence(doubt.why))]
        terms = "".join(f"<dt>{word}</dt><dd>{escape(said)}</dd>" for word, said in told if said)
        place = f" <small>{escape(doubt.place)}</small>" if doubt.place else ""
        return (
            f'<div class="doubt-box" id="doubt-{number}">{badge([number])}'
            f"<dl><dt>about</dt><dd>{escape(in_words(self.document, doubt.pointer, mode=False))}{place}</dd>"
            f"{terms}</dl></div>"
        )

    def _elsewhere(self) -> str:
        """What no page shows: it was read from running text, or its place is not known."""
        out = []
        if self.read:
            for number, lines in self.lines.items():
                rest = [line for line in lines if line.pointer not in self.shown and line.kind != "block"]
                if rest:
                    out.append(self._mode(number, rest))
        elif self.draft.source.kind == "pdf":
            out += [self._mode(number, lines) for number, lines in self.lines.items()]
        out += [self._doubt(index) for index in self.numbers if f"doubt {index}" not in self.shown]
        if not out:
            return ""
        return '<section class="leaf"><h2>Without a row of its own</h2>\n' + "\n".join(out) + "</section>"

    def _silent(self, pages: Sequence[ReadPage]) -> str:
        names = [
            str(page.leaf.number or page.leaf.sheet) for page in pages if page.leaf.number or page.leaf.sheet
        ]
        if not names:
            return ""
        kind = "Pages" if self.draft.source.kind == "pdf" else "Sheets"
        return f"<p>{kind} on which no chart was found: {escape(', '.join(names))}.</p>"


def _owner(doubt: Doubt, lines: Sequence[ChartLine]) -> str:
    """The pointer of the row of the chart that a doubt stands at: the longest one that leads to it."""
    at = doubt.pointer
    owners = [line.pointer for line in lines if f"{at}/".startswith(f"{line.pointer}/")]
    if owners:
        return max(owners, key=len)
    number = mode_number(at)
    return at if number is None else f"/modes/{number}"


def _id(pointer: str) -> str:
    return "at" + pointer.replace("/", "-")
