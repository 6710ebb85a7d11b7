"""Checks many files: reads each, runs the rules, in two processes where there is enough to do."""

from __future__ import annotations

import gc
import multiprocessing
import os
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

from modebook.checks.finding import Finding
from modebook.checks.first_look import surely_clean
from modebook.checks.known import Known, digest_of, recall
from modebook.checks.reading import FixtureReading
from modebook.checks.registry import FIXTURE_RULES, rules_of
from modebook.checks.rule import Rule
from modebook.checks.runner import run_rules
from modebook.documents.fixture import Fixture
from modebook.documents.policy import Policy, house_policy
from modebook.shelf.catalog import identity_of
from modebook.shelf.errors import ShelfError
from modebook.shelf.reading import DocumentError, parse, read_bytes

INVALID = "document-invalid"
"""The finding that a document which cannot be taken in becomes: the check goes on with the others."""

WORTH_A_PROCESS = 300
"""Documents from which a second process pays for its start."""


@dataclass
class CheckResult:
    """What a check found, in the order of the files."""

    documents: int = 0
    findings: list[Finding] = field(default_factory=list)


def check_file(
    path: Path | str,
    rules: Mapping[str, Rule[Any]] | None = None,
    policy: Policy | None = None,
    identity: str | None = None,
) -> tuple[Fixture | None, list[Finding]]:
    """A document and its findings; no document where it cannot be taken in, which is a finding itself.

    `identity` is its ``maker/model`` by its place; by default the path tells.
    """
    file = str(path)
    try:
        content = read_bytes(path)
    except ShelfError as error:
        return None, [_unreadable(error)]
    if identity is None:
        identity = identity_of(Path(path))
    chosen = rules_of(FIXTURE_RULES) if rules is None else rules
    return _check_content(content, file, identity, chosen, policy or house_policy())


def _check_content(
    content: bytes, file: str, identity: str | None, rules: Mapping[str, Rule[Any]], policy: Policy
) -> tuple[Fixture | None, list[Finding]]:
    try:
        fixture = parse(content, Fixture, file)
    except DocumentError as error:
        return None, [
            Finding(INVALID, "error", file, fault.pointer, fault.message, {}, fault.remedy)
            for fault in error.faults
        ]
    return fixture, run_rules(FixtureReading(fixture, file, identity, policy), rules)


def _unreadable(error: ShelfError) -> Finding:
    return Finding(INVALID, "error", error.file, error.place, error.problem, {}, error.remedy)


def check_files(
    files: Sequence[Path],
    rules: Mapping[str, Rule[Any]] | None = None,
    policy: Policy | None = None,
    processes: int | None = None,
    remember: bool = False,
) -> CheckResult:
    """The findings of many documents, in the order of the files whatever the number of processes.

    With `remember`, documents of a catalog that an earlier check saw as they are now are not judged again
    (see known.py); this holds for all the rules by the house policy only.
    """
    chosen = rules_of(FIXTURE_RULES) if rules is None else rules
    against = policy or house_policy()
    names = [str(path) for path in files]
    usual = chosen == rules_of(FIXTURE_RULES) and against == house_policy()
    known = recall(names) if remember and usual else None
    work = _Work(chosen, against, known)
    wanted = processes or min(2, os.cpu_count() or 1)
    split = wanted > 1 and len(names) >= WORTH_A_PROCESS and hasattr(os, "fork")
    found, fresh = _check_split(work, names) if split else work.done(names)
    if known is not None:
        known.keep(names, fresh)
    return CheckResult(len(names), found)


_Fresh = list[tuple[str, str, list[Finding]]]
"""What was judged in this check: file, digest and findings."""


@dataclass(frozen=True, slots=True)
class _Work:
    """What is to be done with each document."""

    rules: Mapping[str, Rule[Any]]
    policy: Policy
    known: Known | None

    def done(self, files: Iterable[str]) -> tuple[list[Finding], _Fresh]:
        """The findings of documents, and what is to be remembered of them."""
        # Documents are built and dropped one by one and hold no cycles: the collector would only look on.
        was_on = gc.isenabled()
        gc.disable()
        try:
            found: list[Finding] = []
            fresh: _Fresh = []
            for file in files:
                found += self._of_file(file, fresh)
            return found, fresh
        finally:
            if was_on:
                gc.enable()

    def _of_file(self, file: str, fresh: _Fresh) -> list[Finding]:
        try:
            content = read_bytes(file)
        except ShelfError as error:
            return [_unreadable(error)]
        identity = identity_of(Path(file))
        if self.known is None:
            return self._judged(content, file, identity)
        digest = digest_of(content, identity)
        findings = self.known.result(file, digest)
        if findings is None:
            findings = self._judged(content, file, identity)
            fresh.append((file, digest, findings))
        return findings

    def _judged(self, content: bytes, file: str, identity: str | None) -> list[Finding]:
        if surely_clean(content, identity, self.rules, self.policy):
            return []
        return _check_content(content, file, identity, self.rules, self.policy)[1]


def _check_split(work: _Work, files: list[str]) -> tuple[list[Finding], _Fresh]:
    middle = len(files) // 2
    context = multiprocessing.get_context("fork")
    receiver, sender = context.Pipe(duplex=False)
    other = context.Process(target=_check_for_another, args=(sender, work, files[middle:]), daemon=True)
    other.start()
    sender.close()
    mine, fresh = work.done(files[:middle])
    try:
        theirs, their_fresh = receiver.recv()
    except EOFError:
        # The other process was ended from outside: its half is done here, so nothing is lost.
        theirs, their_fresh = work.done(files[middle:])
    other.join()
    return mine + theirs, fresh + their_fresh


def _check_for_another(sender: Connection, work: _Work, files: list[str]) -> None:
    sender.send(work.done(files))
    sender.close()
