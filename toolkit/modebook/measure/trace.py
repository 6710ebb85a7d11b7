"""A response as samples: when each began, how much light it gathered, what was sent; read from a table."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from modebook.measure.errors import MeasureError
from modebook.shelf.table import Table

Floats = NDArray[np.float64]

TITLES = ("time s", "level", "sent")
SUCH_AS = "time_s, level, sent"
MOST_BYTES = 256_000_000
HEAD_LINES = 60
SCALES = (1.0, 100.0, 255.0, 65535.0)
"""What full may be in a column `sent`: a share, percent, or one or two slots' greatest value."""


@dataclass(frozen=True, slots=True)
class Trace:
    """Samples of one light; arrays are [N].

    time_s: when each sample's exposure opens, rising; level: the mean light during it, linear, in any
    unit; open_s: for how long it gathers (0: a moment; None: not known); spread_s: how much later the
    patch's last row opens than its first; rough: the standard deviation that rounding to code values may
    leave; clipped: where the level is only a lower bound; sent: the level on the wire, 0 to 1; reference:
    the light of a second lamp in the same samples, whose rows open reference_later_s after the patch's.
    """

    path: str
    kind: Literal["clip", "trace"]
    time_s: Floats
    level: Floats
    open_s: float | None
    fps: float | None = None
    spread_s: float = 0.0
    rough: Floats | None = None
    clipped: NDArray[np.bool_] | None = None
    sent: Floats | None = None
    reference: Floats | None = None
    reference_rough: Floats | None = None
    reference_clipped: NDArray[np.bool_] | None = None
    reference_later_s: float = 0.0
    sha256: str | None = None
    notes: tuple[str, ...] = field(default=())

    @property
    def step_s(self) -> float:
        """The usual time between two samples."""
        return float(np.median(np.diff(self.time_s)))

    @property
    def reference_trace(self) -> Trace | None:
        """The second lamp as a trace of its own."""
        if self.reference is None:
            return None
        return replace(
            self,
            time_s=self.time_s + self.reference_later_s,
            level=self.reference,
            rough=self.reference_rough,
            clipped=self.reference_clipped,
            reference=None,
            sent=None,
        )


def sha256_of(path: Path) -> str:
    """Give the SHA-256 of a file as hexadecimal digits. Raises MeasureError where it cannot be read."""
    digest = hashlib.sha256()
    try:
        with path.open("rb") as file:
            while piece := file.read(1 << 20):
                digest.update(piece)
    except OSError as error:
        raise MeasureError(
            path, (error.strerror or str(error)).lower(), remedy="give a clip or a table"
        ) from error
    return digest.hexdigest()


def read_trace(path: Path, open_s: float | None = None) -> Trace:
    """Give the trace in a CSV, XLSX or ODS file with the columns time_s, level and, if logged, sent.

    open_s: for how long the meter gathers light for one sample; None: a moment. Raises ShelfError for a
    file that is no such table, MeasureError for samples that are no trace.
    """
    from modebook.shelf.reading import read_bytes
    from modebook.shelf.tables import table_from_bytes

    content = read_bytes(path, MOST_BYTES)
    if content.startswith((b"PK\x03\x04", b"\xd0\xcf\x11\xe0", b"%PDF")):
        columns = _by_rows(table_from_bytes(content, str(path), TITLES, such_as=SUCH_AS))
    else:
        columns = _columns(content, path)
    time_s, level = columns["time s"], columns["level"]
    if len(time_s) < 20:
        raise MeasureError(path, f"{len(time_s)} samples are too few", remedy="log at least one whole change")
    wrong = np.flatnonzero(np.diff(time_s) <= 0)
    if len(wrong):
        at = int(wrong[0])
        raise MeasureError(
            path,
            f"time goes from {time_s[at]:g} s to {time_s[at + 1]:g} s",
            place=f"sample {at + 2}",
            remedy="let time_s rise from each sample to the next",
        )
    sent = columns.get("sent")
    notes: list[str] = []
    if sent is not None:
        full = next((scale for scale in SCALES if sent.max() <= scale * (1 + 1e-9)), float(sent.max()))
        notes.append(f"the column sent is taken as counted to {full:g} at full")
        sent = sent / full
    clipped = _clipped(level)
    if clipped is not None:
        notes.append(
            f"{100 * clipped.mean():.0f} % of the samples stand at the greatest level: taken as clipped"
        )
    return Trace(
        str(path),
        "trace",
        time_s,
        level,
        open_s or 0.0,
        clipped=clipped,
        sent=sent,
        sha256=hashlib.sha256(content).hexdigest(),
        notes=tuple(notes),
    )


def _columns(content: bytes, path: Path) -> dict[str, Floats]:
    """The columns of a CSV; titles are found as in any table, the numbers below all at once."""
    from modebook.shelf.delimited import decoded
    from modebook.shelf.tables import table_from_bytes

    text, _, _ = decoded(content, str(path))
    lines = text.splitlines()
    head = table_from_bytes("\n".join(lines[:HEAD_LINES]).encode(), str(path), TITLES, such_as=SUCH_AS)
    _need(head)
    names = [name for name in TITLES if name in head.folded]
    if head.rows:
        first = head.rows[0].number - 1
        try:
            numbers = np.loadtxt(
                lines[first:],
                delimiter=head.delimiter,
                usecols=[head.folded.index(name) for name in names],
                ndmin=2,
            )
        except ValueError:
            pass
        else:
            if np.isfinite(numbers).all():
                return {name: np.ascontiguousarray(numbers[:, n]) for n, name in enumerate(names)}
    return _by_rows(table_from_bytes(content, str(path), TITLES, such_as=SUCH_AS))


def _need(found: Table) -> None:
    for name in TITLES[:2]:
        if name not in found.folded:
            raise MeasureError(
                found.path,
                f"has no column {name.replace(' ', '_')}",
                remedy=f"give the columns {SUCH_AS} (sent only where it was logged)",
            )


def _by_rows(found: Table) -> dict[str, Floats]:
    """The columns of a table cell by cell: decimal commas and gaps are understood or told."""
    from modebook.shelf.numbers import number

    _need(found)
    names = [name for name in TITLES if name in found.folded]
    places = [found.folded.index(name) for name in names]
    told: list[list[float]] = []
    for row in found.rows:
        if row.blank:
            continue
        try:
            told.append([number(row.cells[place]) for place in places])
        except ValueError as error:
            raise MeasureError(found.path, str(error), place=f"row {row.number}") from None
    numbers = np.array(told, dtype=np.float64).reshape(len(told), len(names))
    return {name: np.ascontiguousarray(numbers[:, n]) for n, name in enumerate(names)}


def _clipped(level: Floats) -> NDArray[np.bool_] | None:
    """Where a meter stood at its end: many samples are the greatest, while the least shows noise."""
    span = float(np.ptp(level))
    top, bottom = level >= level.max() - 1e-9 * span, level <= level.min() + 1e-9 * span
    many = max(10, 0.02 * len(level))
    return top if top.sum() > many > 2.0 * bottom.sum() else None
