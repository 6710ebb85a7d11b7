"""Reads tables and headings of an HTML page; merged cells keep their span, line breaks stay."""

from __future__ import annotations

from typing import Any

from modebook.intake.errors import IntakeError, MissingExtraError
from modebook.intake.grid import Cell, Grid, Item, Leaf, Line, Place, Source
from modebook.intake.readers.inner_tables import without_inner

_BLOCKS = frozenset(
    {
        "p",
        "h1",
        "h2",
        "h3",
        "h4",
        "h5",
        "h6",
        "li",
        "dt",
        "dd",
        "caption",
        "figcaption",
        "pre",
        "blockquote",
        "summary",
        "legend",
    }
)
_SKIPPED = frozenset({"script", "style", "noscript", "template", "head", "svg", "math", "object", "iframe"})
_BREAKING = frozenset({"p", "div", "li", "tr", "dt", "dd"})
_MOST_CELLS = 200_000


def read_html(content: bytes, name: str) -> Source:
    """An HTML page as lines and grids. Nothing it refers to is fetched. Raises IntakeError."""
    try:
        from lxml import etree, html  # type: ignore[import-untyped]
    except ImportError as error:
        raise MissingExtraError(name, "reading HTML needs lxml", remedy="install modebook[draft]") from error
    try:
        parser = html.HTMLParser(encoding=_encoding(content), no_network=True, huge_tree=False)
        root = html.document_fromstring(content, parser=parser)
    except (etree.ParserError, etree.XMLSyntaxError, ValueError, LookupError) as error:
        raise IntakeError(
            name, f"cannot be read as HTML: {error}", remedy="save the page again, or paste its text"
        ) from error
    items: list[Item] = []
    _walk(root, items, [0])
    if not items:
        raise IntakeError(name, "no text is in it", remedy="save the page as its browser shows it")
    return Source(name, "html", [Leaf(None, items)])


def _encoding(content: bytes) -> str | None:
    if content.startswith(b"\xef\xbb\xbf"):
        return "utf-8"
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "utf-16"
    head = content[:2048].lower()
    if b"charset=" in head:
        return None
    try:
        content.decode("utf-8")
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8"


_HEADINGS = frozenset({"h1", "h2", "h3", "h4", "h5", "h6"})


def _walk(element: Any, items: list[Item], tables: list[int]) -> None:
    for child in element:
        if not isinstance(child.tag, str) or child.tag in _SKIPPED:
            continue
        if child.tag == "table":
            for caption in child.iter("caption"):
                _line(caption, items)
            tables[0] += 1
            grid = _table(child, tables[0])
            if grid.rows:
                items.append(grid)
        elif child.tag in _BLOCKS and not any(
            inner.tag in ("table", *_BLOCKS) for inner in child.iterdescendants()
        ):
            if child.tag == "pre":
                for number, text in enumerate((_text(child)).split("\n"), start=1):
                    if text.strip():
                        items.append(Line(text, Place(row=number)))
            else:
                _line(child, items)
        else:
            own = " ".join((child.text or "").split())
            if own and child.tag not in ("html", "body"):
                if any(inner.tag in ("table", "div", *_BLOCKS) for inner in child.iterdescendants()):
                    items.append(Line(own, Place(row=child.sourceline)))
                else:
                    _line(child, items)
                    continue
            _walk(child, items, tables)


def _line(element: Any, items: list[Item]) -> None:
    for text in _text(element).split("\n"):
        flat = " ".join(text.split())
        if flat:
            items.append(Line(flat, Place(row=element.sourceline), heading=element.tag in _HEADINGS))


def _text(element: Any) -> str:
    """The text of an element: line breaks and inner blocks as line feeds, other white space as it comes."""
    pieces: list[str] = []

    def take(node: Any) -> None:
        if not isinstance(node.tag, str):
            return
        if node.tag == "br" or (node.tag in _BREAKING and pieces and not pieces[-1].endswith("\n")):
            pieces.append("\n")
        if node.tag in ("td", "th") and pieces:
            pieces.append(" ")
        if node.tag == "sup" and (node.text or "").strip().isdigit():
            pieces.append("".join("⁰¹²³⁴⁵⁶⁷⁸⁹"[int(d)] for d in node.text.strip()))
        elif node.text and node.tag not in _SKIPPED:
            pieces.append(node.text if node.tag == "pre" else " ".join(node.text.split("\n")))
        for inner in node:
            if inner.tag not in _SKIPPED:
                take(inner)
            if inner.tail:
                pieces.append(" ".join(inner.tail.split("\n")))
        if node.tag in _BREAKING and pieces and not pieces[-1].endswith("\n"):
            pieces.append("\n")

    take(element)
    text = "".join(pieces)
    return "\n".join(" ".join(line.split()) for line in text.split("\n")).strip("\n")


def _table(table: Any, number: int) -> Grid:
    """Rows and columns of a table, with cells put where their spans place them."""
    table = without_inner(table)
    filled: dict[tuple[int, int], Cell] = {}
    rows = [row for row in table.iter("tr") if _owner(row) is table]
    width = count = 0
    for index, row in enumerate(rows):
        column = 0
        for cell in row:
            if cell.tag not in ("td", "th"):
                continue
            while (index, column) in filled:
                column += 1
            across, down = _span(cell, "colspan"), _span(cell, "rowspan")
            count += across * down
            if count > _MOST_CELLS:
                break
            text = _text(cell)
            place = Place(table=number, row=index + 1)
            for deeper in range(min(down, len(rows) - index)):
                for further in range(across):
                    first = deeper == 0 and further == 0
                    filled[index + deeper, column + further] = Cell(
                        text if first else "", place, index + deeper, column + further, across if first else 1
                    )
            column += across
            width = max(width, column)
    made = [
        [filled.get((r, c), Cell("", Place(table=number, row=r + 1), r, c)) for c in range(width)]
        for r in range(len(rows))
    ]
    return Grid([row for row in made if any(cell.flat for cell in row)], Place(table=number))


def _owner(row: Any) -> Any:
    parent = row.getparent()
    while parent is not None and parent.tag != "table":
        parent = parent.getparent()
    return parent


def _span(cell: Any, key: str) -> int:
    told = str(cell.get(key) or "1").strip()
    return max(1, min(int(told), 1000)) if told.isascii() and told.isdigit() else 1
