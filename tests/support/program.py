"""Runs the program inside the test's own process, as a person would type it."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[2]
CATALOG = ROOT / "catalog"


@dataclass(frozen=True)
class Run:
    """What a command printed and how it ended."""

    status: int
    out: str
    err: str

    @property
    def json(self) -> Any:
        """Standard output as one JSON object."""
        return json.loads(self.out)


class Program:
    """`modebook` with the demo catalog, unless a test names another."""

    def __init__(self, capfd: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
        self._capfd = capfd
        self._monkeypatch = monkeypatch

    def __call__(self, *words: object, catalog: Path | None = CATALOG) -> Run:
        """Run it. Raises what the program would not have caught: a traceback for the person."""
        from modebook.cli.app import main

        if catalog is not None:
            self._monkeypatch.setenv("MODEBOOK_CATALOG", str(catalog))
        self._monkeypatch.setattr("sys.argv", ["modebook", *map(str, words)])
        self._capfd.readouterr()
        status = 0
        try:
            main()
        except SystemExit as end:
            status = end.code if isinstance(end.code, int) else 1 if end.code else 0
        out, err = self._capfd.readouterr()
        return Run(status, out, err)
