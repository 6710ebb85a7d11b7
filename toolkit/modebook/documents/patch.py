"""A patch: which unit sits at which universe and address, in which mode, as a person wrote it."""

from __future__ import annotations

from dataclasses import dataclass, field

from modebook.documents.address import Address
from modebook.documents.rig import Reach


@dataclass(frozen=True, slots=True)
class Unit:
    """One row of a patch, as written; what the catalog makes of it is worked out by the rig's floor."""

    number: str
    """The unit number as written: 12A is a number too."""
    row: int
    """The line of the file (CSV) or the row of the sheet, counted from 1, titles included."""
    fixture: str
    mode: str
    address: Address | None
    """Where its first slot sits; None for a unit that is not patched."""
    position: str = ""
    purpose: str = ""
    group: str = ""
    throw_m: float | None = None
    part: str = ""
    """The part of the mode that this row patches, for a mode with several start addresses."""
    uid: str = ""
    serial: str = ""
    firmware: str = ""
    reach: Reach | None = None
    note: str = ""
    extra: dict[str, str] = field(default_factory=dict)
    """Columns that nothing here reads, kept as written."""


@dataclass(frozen=True, slots=True)
class RowFault:
    """A row, or a cell of one, that could not be read."""

    row: int
    unit: str
    column: str
    found: str
    why: str
    """What is wrong and what would be right, in one sentence."""


@dataclass(frozen=True, slots=True)
class Patch:
    """All rows of a patch file: those that could be read, and what is wrong with the others."""

    path: str
    units: tuple[Unit, ...]
    faults: tuple[RowFault, ...] = ()
    columns: tuple[str, ...] = ()
    """The titles of the file, in order, as written."""
    notes: tuple[str, ...] = ()
    """What a person should know about how the file was read."""
