"""The program, for what only its commands show: drawing, page, stopping."""

from __future__ import annotations

import pytest

from support.program import Program


@pytest.fixture
def modebook(capfd: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Program:
    """The program with the demo catalog."""
    return Program(capfd, monkeypatch)
