"""The full-text indexes as data: over which columns, and how rows go in and out."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FullText:
    """A full-text index over columns of a table whose rows are numbered by their names."""

    name: str
    content: str
    columns: tuple[str, ...]
    options: str

    @property
    def sql(self) -> str:
        """The statement that creates it."""
        options = f'content="{self.content}", {self.options}'
        return f"CREATE VIRTUAL TABLE {self.name} USING fts5({', '.join(self.columns)}, {options})"

    @property
    def fill(self) -> str:
        """The statement that takes in every row of its table."""
        columns = ", ".join(self.columns)
        return (
            f"INSERT INTO {self.name} (rowid, {columns}) SELECT rowid, {columns} FROM {self.content} "
            "ORDER BY rowid"
        )

    def forget(self, where: str) -> str:
        """The statement that takes out the rows of its table for which `where` holds, while they last."""
        columns = ", ".join(self.columns)
        return (
            f"INSERT INTO {self.name} ({self.name}, rowid, {columns}) "
            f"SELECT 'delete', rowid, {columns} FROM {self.content} WHERE {where}"
        )

    def add(self, where: str) -> str:
        """The statement that takes in the rows of its table for which `where` holds."""
        columns = ", ".join(self.columns)
        return (
            f"INSERT INTO {self.name} (rowid, {columns}) SELECT rowid, {columns} FROM {self.content} "
            f"WHERE {where} ORDER BY rowid"
        )


SEARCHED = ("maker", "model", "name", "category", "parameters", "labels", "meanings", "settings")
"""The columns that free text looks at."""

FULL_TEXT = (
    FullText(
        "fixtures_fts",
        "fixtures",
        ("maker", "model", "category", "about"),
        'tokenize="unicode61 remove_diacritics 2"',
    ),
    # Marks stand in the same index as the text, so that one pass answers both; `_` holds a mark together.
    FullText(
        "search_fts",
        "search",
        (*SEARCHED, "marks"),
        "tokenize=\"unicode61 remove_diacritics 2 tokenchars '_'\"",
    ),
)
"""Their rows have the numbers of the tables' rows, which come from the ids (see ids.row_number)."""
