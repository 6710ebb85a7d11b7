"""Modulated light and strobes answered: plain figures, ready for JSON, with units in their names."""

from __future__ import annotations

from typing import Any

from .modulation import Modulation, bands, frame_difference, shutter_without_flicker_deg
from .strobing import even_on_camera_hz, strobe_by_packets, strobe_under_camera


def flicker_answer(
    label: str, light: Modulation, fps: float, shutter_deg: float, readout_s: float | None = None
) -> dict[str, Any]:
    """What a camera sees of one modulated light; see modulation.FrameDifference and Bands.

    readout_s: from the first row to the last, in s; None leaves bands out. Raises ResponseError.
    """
    difference = frame_difference(light, fps, shutter_deg)
    told: dict[str, Any] = {
        "label": label,
        "waveform": light.waveform,
        "frequency_hz": light.frequency_hz,
        "duty": light.duty if light.waveform == "pwm" else None,
        "depth": light.depth,
        "exposure_s": difference.exposure_s,
        "difference_between_frames_percent": 100.0 * difference.successive,
        "difference_in_a_take_percent": 100.0 * difference.long,
        "difference_in_a_take_stops": difference.long_stops,
        "shutters_without_flicker_deg": shutter_without_flicker_deg(light.frequency_hz, fps),
        "bands": None,
    }
    if readout_s is not None:
        seen = bands(light, fps, shutter_deg, readout_s)
        told["bands"] = {
            "count": seen.count,
            "height_percent": 100.0 * seen.height,
            "difference_percent": 100.0 * seen.difference,
            "drift_bands_per_frame": seen.drift_per_frame,
        }
    return told


def strobe_answer(strobe_hz: float, refresh_hz: float, fps: float) -> dict[str, Any]:
    """Whether packets give a strobe evenly, and how a camera sees it if even. Raises ResponseError."""
    sent = strobe_by_packets(strobe_hz, refresh_hz)
    seen = strobe_under_camera(strobe_hz, fps)
    return {
        "strobe_hz": strobe_hz,
        "refresh_hz": refresh_hz,
        "even_by_packets": sent.even,
        "packets_between_flashes": [sent.shortest_packets, sent.longest_packets],
        "between_flashes_s": [sent.shortest_s, sent.longest_s],
        "even_on_camera": seen.even,
        "frames_between_flashes": [seen.shortest_frames, seen.longest_frames],
        "flashes_in_a_frame": [seen.fewest_per_frame, seen.most_per_frame],
        "even_both_ways_hz": even_on_camera_hz(refresh_hz, fps),
    }
