"""Parameters and categories that are a hazard in themselves, and those that DMX512 is not for."""

from __future__ import annotations

import typing

import pytest

from modebook.words.e120 import CATEGORIES
from modebook.words.inherent import CATEGORY_HAZARDS, NOT_FOR_DMX, PARAMETER_HAZARDS
from modebook.words.parameters import PARAMETERS
from modebook.words.ranges import Hazard


def test_the_keys_and_words_are_those_of_the_vocabulary() -> None:
    """A key with a slip in it would leave a hazard unmarked."""
    assert set(PARAMETER_HAZARDS) <= set(PARAMETERS)
    assert set(CATEGORY_HAZARDS) <= set(CATEGORIES)
    hazards = set(typing.get_args(Hazard))
    assert set(PARAMETER_HAZARDS.values()) | set(CATEGORY_HAZARDS.values()) | NOT_FOR_DMX <= hazards


# ANSI E1.11: DMX512 is not to control pyrotechnics, flames, hoists, motors.
@pytest.mark.parametrize(
    "key", ["flame", "pyrotechnics", "hoist-position", "hoist-speed", "motor-position", "motor-speed"]
)
def test_flame_hoist_motor_and_pyrotechnics_are_not_for_dmx(key: str) -> None:
    """Each counts as a hazard that the standard keeps off DMX512."""
    assert PARAMETER_HAZARDS[key] in NOT_FOR_DMX


@pytest.mark.parametrize("key", ["pan", "tilt", "zoom", "laser-output", "uv", "strobe"])
def test_daily_work_is_not_kept_off_dmx(key: str) -> None:
    """Moving heads, UV and lasers want caution, yet the standard does not rule them out."""
    assert PARAMETER_HAZARDS.get(key) not in NOT_FOR_DMX
