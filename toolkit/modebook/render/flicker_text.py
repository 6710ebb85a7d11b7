"""What a camera sees of modulated light and strobes, in a table and in words, with the usual caution."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from modebook.render.terminal import paint, printed, table, wrapped

CAUTION = (
    "Strobes and flicker from 3 to 30 flashes a second can bring on seizures: warn the crew and the cast "
    "before any strobe, post it at the door, and keep to local rules."
)


def flicker_text(told: Mapping[str, Any], title: str = "") -> str:
    """The answer to `modebook flicker` for people."""
    head = f"Camera at {told['camera_fps']:g} fps, shutter {told['shutter_deg']:g} degrees"
    out = [paint(f"{title}. {head}" if title else head, "bold")]
    if told["modulations"]:
        out += ["", _modulations(told["modulations"])]
        out += [wrapped(line) for line in _shutters(told["modulations"], told["shutter_deg"])]
    if told["strobes"]:
        out.append("")
        for strobe in told["strobes"]:
            out += [wrapped(line) for line in _strobe(strobe)]
        out.append(wrapped(CAUTION))
    return "\n".join(out) + "\n"


def _modulations(lights: Sequence[Mapping[str, Any]]) -> str:
    rows = []
    with_bands = any(light["bands"] for light in lights)
    for light in lights:
        stops = light["difference_in_a_take_stops"]
        row = [
            light["label"],
            f"{light['frequency_hz']:g}",
            f"{light['difference_between_frames_percent']:.3g}",
            f"{light['difference_in_a_take_percent']:.3g}",
            "dark frames" if stops == float("inf") else f"{stops:.2g}",
        ]
        if with_bands:
            seen = light["bands"]
            row += [f"{seen['count']:.3g}", f"{seen['difference_percent']:.3g}"] if seen else ["-", "-"]
        rows.append(row)
    columns = ["Hz", "frame to frame %", "in a long take %", "stops"]
    columns += ["bands", "across bands %"] if with_bands else []
    return printed(table([("modulation", "left"), *((title, "right") for title in columns)], rows))


def _shutters(lights: Sequence[Mapping[str, Any]], shutter_deg: float) -> list[str]:
    out = []
    for light in lights:
        clean = light["shutters_without_flicker_deg"]
        if light["difference_in_a_take_percent"] < 0.05 or not clean:
            continue
        near = sorted(clean, key=lambda angle: abs(angle - shutter_deg))[:3]
        told = ", ".join(f"{angle:.4g}" for angle in sorted(near))
        out.append(
            f"{light['label']}: without any difference at a shutter of {told} degrees (whole periods)."
        )
    return out


def _strobe(strobe: Mapping[str, Any]) -> list[str]:
    shortest, longest = strobe["packets_between_flashes"]
    told = (
        f"A strobe of {strobe['strobe_hz']:g} a second made by {strobe['refresh_hz']:g} packets a second is "
    )
    if strobe["even_by_packets"]:
        told += f"even: a flash every {shortest} packets."
    else:
        told += f"uneven: flashes come {shortest} or {longest} packets apart."
    camera = "The camera sees "
    frames, flashes = strobe["frames_between_flashes"], strobe["flashes_in_a_frame"]
    if strobe["even_on_camera"]:
        camera += "it evenly." if flashes[1] > 1 else f"a flash every {frames[0]} frames, evenly."
    elif flashes[1] > 1:
        camera += f"{flashes[0]} or {flashes[1]} flashes in a frame: an unsteady exposure."
    else:
        camera += f"flashes {frames[0]} or {frames[1]} frames apart: an uneven beat."
    even = strobe["even_both_ways_hz"]
    cure = (
        f"Even both by packets and on camera: {', '.join(f'{hz:.4g}' for hz in even[:8])} flashes a second."
        if even
        else "No rate is even both by packets and on this camera."
    )
    return [told, camera, cure]
