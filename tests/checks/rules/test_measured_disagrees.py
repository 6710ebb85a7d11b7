"""measured-disagrees: where a measured smoothing and a printed one are not the same."""

from __future__ import annotations

from typing import Any

import pytest

from modebook.checks.examples import reading_of
from modebook.checks.rules.measured_disagrees import check


def found(printed: dict[str, Any], measured: dict[str, Any], method: str | None = None) -> list[Any]:
    """The faults of one choice."""
    choice: dict[str, Any] = {"key": "soft", "length": printed}
    if method:
        choice["method"] = method
    choice["measured"] = {"date": "2026-05-31", "by": "R. Quill", **measured}
    setting = {"key": "smoothing", "setting": "smoothing", "source": "guide", "choices": [choice]}
    return list(check(reading_of({"settings": [setting]})))


@pytest.mark.parametrize(
    ("printed", "length", "interval", "count"),
    [
        ({"packets": 4}, 4.0, [3.9, 4.1], 0),
        ({"packets": 4}, 4.4, [4.3, 4.5], 0),
        ({"packets": 4}, 8.0, [7.9, 8.1], 1),
        ({"packets": 0}, 2.0, [1.9, 2.1], 1),
        ({"seconds": 0.1}, 4.4, [4.3, 4.5], 0),
        ({"seconds": 0.2}, 4.4, [4.3, 4.5], 1),
    ],
)
def test_a_length_disagrees_beyond_its_interval_and_half_a_packet(
    printed: dict[str, Any], length: float, interval: list[float], count: int
) -> None:
    """Seconds count at the packets a second of the measurement."""
    measured = {"length": {"packets": length}, "interval_packets": interval, "refresh_hz": 44}
    assert len(found(printed, measured)) == count


def test_another_method_than_recorded_is_told() -> None:
    """Even where the lengths agree."""
    measured = {"length": {"packets": 4}, "method": "limit", "interval_packets": [3.9, 4.1]}
    (fault,) = found({"packets": 4}, measured, "average")
    assert fault.figure["measured_method"] == "limit"
    assert found({"packets": 4}, measured, "limit") == []
