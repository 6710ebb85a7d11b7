"""A table as data: its columns, its key, and how a fixture's rows are found in it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Table:
    """A table: its columns as SQL, in the order in which rows are given."""

    name: str
    columns: str
    """One column a line: name, type, constraints; those of the table last, each beginning in capitals."""
    of_fixture: str = ""
    """The column by which a fixture's rows are found: ``fixture``, or one that begins with its id."""
    clustered: bool = True
    """Stored in the order of its primary key (WITHOUT ROWID)."""
    indexes: tuple[str, ...] = ()
    """Columns of each further index."""
    bulk: bool = False
    """One of the large tables, whose rows come with '' in place of NULL (see values.for_binding)."""

    @property
    def sql(self) -> str:
        """The statement that creates it."""
        lines = [line.strip() for line in self.columns.strip().splitlines()]
        body = ",\n  ".join(line.rstrip(",") for line in lines)
        return f"CREATE TABLE {self.name} (\n  {body}\n)" + (" WITHOUT ROWID" if self.clustered else "")

    @property
    def declarations(self) -> list[list[str]]:
        """The words of each column's declaration."""
        lines = (line.split() for line in self.columns.strip().splitlines())
        return [words for words in lines if words[0] not in ("PRIMARY", "FOREIGN")]

    @property
    def column_names(self) -> list[str]:
        """Its columns in order."""
        return [words[0] for words in self.declarations]

    @property
    def insert(self) -> str:
        """The statement that puts a row in; a table with numbered rows takes the number first."""
        names = self.column_names
        values = ["NULLIF(?, '')" if self.bulk and "NOT" not in words else "?" for words in self.declarations]
        if not self.clustered:
            names, values = ["rowid", *names], ["?", *values]
        return f"INSERT INTO {self.name} ({', '.join(names)}) VALUES ({', '.join(values)})"
