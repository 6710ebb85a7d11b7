"""A fixture with most of what a setting can be changed by, and rigs of it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from modebook.rig.examples import rig_of
from modebook.rig.reading import RigReading
from support.shots_pieces import CHOICES, DIMMER, MENU, RDM


@pytest.fixture
def rig() -> Callable[..., RigReading]:
    """Makes a rig of two units, 1 at 1/11 and 2 at 1/21, in a mode of the given parameters."""

    def made(
        *parameters: dict[str, Any],
        ways: list[dict[str, Any]] | None = None,
        rdm: bool | None = True,
        reach: str = "ladder",
        mode: dict[str, Any] | None = None,
        patch: str | None = None,
    ) -> RigReading:
        fixture = {
            "model": "Changer",
            "settings": [
                {"key": "smoothing", "setting": "smoothing", "label": "Response", "choices": CHOICES,
                 "ways": [RDM, MENU] if ways is None else ways}
            ],
            "modes": [mode or {"name": "Whole", "parameters": [DIMMER, *parameters]}],
        }  # fmt: skip
        rows = patch or (
            "unit,fixture,mode,address,position,reach,uid\n"
            f"1,Changer,Whole,1/11,Truss 10,{reach},7FF1:00000001\n"
            f"2,Changer,Whole,1/21,Truss 2,{reach},\n"
        )
        return rig_of({"fixtures": [fixture], "patch": rows, "rig": {"links": {"other": {"rdm": rdm}}}})

    return made
