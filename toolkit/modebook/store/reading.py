"""Reads documents, checks them and makes their rows: here, or in two processes while this one writes."""

from __future__ import annotations

import gc
import hashlib
import marshal
import multiprocessing
import os
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from multiprocessing.connection import Connection
from typing import Any, NamedTuple

from modebook.checks.bulk import INVALID
from modebook.checks.finding import Finding
from modebook.checks.reading import FixtureReading
from modebook.checks.rule import Rule
from modebook.checks.runner import run_rules
from modebook.documents.fixture import Fixture
from modebook.documents.policy import Policy
from modebook.shelf.errors import ShelfError
from modebook.shelf.reading import DocumentError, parse, read_bytes
from modebook.store.rows import FixtureFile, finding_rows, fixture_rows
from modebook.store.schema import TABLES
from modebook.store.values import Rows, for_binding

CHUNK = 100
"""Documents read, sent and written together."""

WORTH_A_PROCESS = 400
"""Documents from which other processes pay for their start."""


_BULK = [table.name for table in TABLES if table.bulk]


class DocumentPlace(NamedTuple):
    """A fixture document on disk and what the catalog calls it."""

    identity: str
    """``maker/model``, by its path."""
    path: str
    """Its path in the catalog, with slashes."""
    file: str
    """Its path for the system."""


@dataclass(frozen=True, slots=True)
class Against:
    """What documents are checked against."""

    rules: Mapping[str, Rule[Any]]
    policy: Policy


def rows_of_document(place: DocumentPlace, against: Against) -> Rows:
    """The rows of one document; one that cannot be taken in becomes findings, and the rest goes on."""
    try:
        content = read_bytes(place.file)
    except ShelfError as error:
        return _unread(place, 0, "", [(error.place, error.problem, error.remedy)])
    digest = hashlib.sha256(content).hexdigest()
    try:
        fixture = parse(content, Fixture, place.path)
    except DocumentError as error:
        faults = [(fault.pointer, fault.message, fault.remedy) for fault in error.faults]
        return _unread(place, len(content), digest, faults)
    reading = FixtureReading(fixture, place.path, place.identity, against.policy)
    findings = run_rules(reading, against.rules)
    file = FixtureFile(place.identity, place.path, len(content), digest, content)
    return fixture_rows(reading, file, findings)


def _unread(place: DocumentPlace, size_bytes: int, digest: str, faults: list[tuple[str, str, str]]) -> Rows:
    findings = [
        Finding(INVALID, "error", place.path, pointer, message, {}, remedy)
        for pointer, message, remedy in faults
    ]
    return {
        "documents": [(place.path, "fixture", size_bytes, digest)],
        "findings": finding_rows(findings, None, []),
    }


def rows_of_chunk(places: Iterable[DocumentPlace], against: Against) -> Rows:
    """The rows of several documents, table by table, as the inserts take them."""
    rows: Rows = {}
    for place in places:
        for table, made in rows_of_document(place, against).items():
            known = rows.get(table)
            if known is None:
                rows[table] = made
            else:
                known.extend(made)
    for table in _BULK:
        if table in rows:
            rows[table] = for_binding(rows[table])
    return rows


def all_rows(
    places: Sequence[DocumentPlace], against: Against, processes: int | None = None
) -> Iterator[Rows]:
    """The rows of all documents, chunk by chunk in the order given, whatever the number of processes."""
    chunks = [places[start : start + CHUNK] for start in range(0, len(places), CHUNK)]
    wanted = processes if processes is not None else min(2, os.cpu_count() or 1)
    if wanted < 2 or len(places) < WORTH_A_PROCESS or not hasattr(os, "fork"):
        for chunk in chunks:
            yield rows_of_chunk(chunk, against)
        return
    yield from _from_others(chunks, against, wanted)


def _from_others(chunks: list[Sequence[DocumentPlace]], against: Against, processes: int) -> Iterator[Rows]:
    context = multiprocessing.get_context("fork")
    workers = []
    for number in range(processes):
        receiver, sender = context.Pipe(duplex=False)
        worker = context.Process(
            target=_for_another, args=(sender, chunks[number::processes], against), daemon=True
        )
        worker.start()
        sender.close()
        workers.append((worker, receiver))
    try:
        for index, chunk in enumerate(chunks):
            receiver = workers[index % processes][1]
            try:
                yield marshal.loads(receiver.recv_bytes())
            except EOFError:
                # The other process was ended from outside: its share is done here, so nothing is lost.
                yield rows_of_chunk(chunk, against)
    finally:
        for worker, receiver in workers:
            receiver.close()
            worker.join(timeout=5)
            if worker.is_alive():
                worker.terminate()


def _for_another(sender: Connection, chunks: list[Sequence[DocumentPlace]], against: Against) -> None:
    gc.disable()
    try:
        for chunk in chunks:
            sender.send_bytes(marshal.dumps(rows_of_chunk(chunk, against)))
    except BrokenPipeError:
        return  # the writer has stopped, and tells why itself
    finally:
        sender.close()
