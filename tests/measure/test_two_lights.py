"""Two lights in one picture: which is meant is asked for, and never guessed."""

from __future__ import annotations

import pytest

from measure.demo_clip import CLIP
from modebook.measure.clip import find_light
from modebook.measure.errors import MeasureError
from modebook.measure.setup import Box, Setup


def test_a_second_light_that_changes_is_not_passed_over():
    with pytest.raises(MeasureError, match=r"more than one light changes in the picture: .* and "):
        find_light(CLIP, Setup())


def test_with_the_reference_told_the_other_light_is_found():
    """The clip's generator has the light at 18,18,24,30 and the reference at 66,18,18,30."""
    found = find_light(CLIP, Setup(reference=Box(66, 18, 18, 30)))
    assert found.x >= 18
    assert found.x + found.width <= 18 + 24
    assert found.y >= 18
    assert found.y + found.height <= 18 + 30
