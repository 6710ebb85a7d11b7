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
from modebook.checks.reading import FixtureReading
from modebook.checks.registry import FIXTURE_RULES, rules_of
from modebook.checks.rule import Rule
from modebook.checks.runner import run_rules
from modebook.documents.fixture import Fixture
from modebook.documents.policy import Policy, house_policy
from modebook.shelf.catalog import identity_of
from modebook.shelf.errors import ShelfError
from modebook.shelf.reading import DocumentError, read_fixture

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
        fixture = read_fixture(path)
    except DocumentError as error:
        return None, [
            Finding(INVALID, "error", file, fault.pointer, fault.message, {}, fault.remedy)
            for fault in error.faults
        ]
    except ShelfError as error:
        return None, [Finding(INVALID, "error", file, error.place, error.problem, {}, error.remedy)]
    reading = FixtureReading(
        fixture, file, identity if identity is not None else identity_of(Path(path)), policy or house_policy()
    )
    return fixture, run_rules(reading, rules_of(FIXTURE_RULES) if rules is None else rules)


def check_files(
    files: Sequence[Path],
    rules: Mapping[str, Rule[Any]] | None = None,
    policy: Policy | None = None,
    processes: int | None = None,
) -> CheckResult:
    """The findings of many documents, in the order of the files whatever the number of processes."""
    chosen = rules_of(FIXTURE_RULES) if rules is None else rules
    against = policy or house_policy()
    wanted = processes or min(2, os.cpu_count() or 1)
    names = [str(path) for path in files]
    if wanted < 2 or len(names) < WORTH_A_PROCESS or not hasattr(os, "fork"):
        return CheckResult(len(names), _check_all(names, chosen, against))
    return CheckResult(len(names), _check_split(names, chosen, against))


def _check_all(files: Iterable[str], rules: Mapping[str, Rule[Any]], policy: Policy) -> list[Finding]:
    # Documents are built and dropped one by one and hold no cycles: the collector would only look on.
    was_on = gc.isenabled()
    gc.disable()
    try:
        found: list[Finding] = []
        for file in files:
            found.extend(check_file(file, rules, policy)[1])
        return found
    finally:
        if was_on:
            gc.enable()


def _check_split(files: list[str], rules: Mapping[str, Rule[Any]], policy: Policy) -> list[Finding]:
    middle = len(files) // 2
    context = multiprocessing.get_context("fork")
    receiver, sender = context.Pipe(duplex=False)
    other = context.Process(
        target=_check_for_another, args=(sender, files[middle:], rules, policy), daemon=True
    )
    other.start()
    sender.close()
    mine = _check_all(files[:middle], rules, policy)
    try:
        theirs: list[Finding] = receiver.recv()
    except EOFError:
        # The other process was ended from outside: its half is done here, so nothing is lost.
        theirs = _check_all(files[middle:], rules, policy)
    other.join()
    return mine + theirs


def _check_for_another(
    sender: Connection, files: list[str], rules: Mapping[str, Rule[Any]], policy: Policy
) -> None:
    sender.send(_check_all(files, rules, policy))
    sender.close()
