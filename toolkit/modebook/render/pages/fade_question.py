"""The fade page's question, read from an address: every figure named, bounded, and refused in one line."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from modebook.documents.cases import Case
    from modebook.documents.fixture import Fixture
    from modebook.response.fade import Fade

LONGEST_S = 120.0
"""The longest fade that the page answers: beyond, an answer takes longer than a hand on a slider waits."""
MOST_CASES = 4
"""Cases beside each other, beyond which neither the plot nor the patches can be read."""
LEAST_FPS = 1.0
"""The slowest camera: below, the page would hold no more than a picture or two."""


class QuestionError(ValueError):
    """A figure of the address that cannot be answered: which, what it was, what would be right."""


@dataclass(frozen=True, slots=True)
class FadeQuestion:
    """What the page asks; lengths in s, levels in percent; defaults are those of `modebook fade`."""

    fixture: str = ""
    mode: str = ""
    parameter: str = "dimmer"
    choices: tuple[str, ...] = ()
    bits: int = 8
    packets: float = 2.0
    method: str = "average"
    curve: str = "linear"
    from_percent: float = 20.0
    to_percent: float = 0.0
    seconds_s: float = 4.0
    refresh_hz: float = 30.0
    gateway_hz: float | None = None
    loss_percent: float = 0.0
    burst_packets: float = 1.0
    camera_fps: float | None = 24.0
    shutter_deg: float = 180.0
    white_cd_m2: float = 100.0
    fill_percent: float = 0.0


_FIGURES: Mapping[str, tuple[str, float, float]] = {
    "packets": ("packets", 0.0, 30.0),
    "from": ("from_percent", 0.0, 100.0),
    "to": ("to_percent", 0.0, 100.0),
    "seconds": ("seconds_s", 0.0, LONGEST_S),
    "refresh": ("refresh_hz", 1.0, 1000.0),
    "loss": ("loss_percent", 0.0, 90.0),
    "burst": ("burst_packets", 1.0, 100.0),
    "shutter": ("shutter_deg", 1.0, 360.0),
    "white": ("white_cd_m2", 0.06, 3993.0),
    "fill": ("fill_percent", 0.0, 99.0),
}
_FIGURES_OR_NONE: Mapping[str, tuple[str, float, float]] = {
    "gateway": ("gateway_hz", 1.0, 1000.0),
    "camera": ("camera_fps", LEAST_FPS, 1000.0),
}
_NAMES: Mapping[str, tuple[str, ...]] = {
    "method": ("average", "interpolate", "lag", "limit", "restart"),
    "curve": ("linear", "square", "s", "inverse-square"),
}
_BITS = (8, 16, 24)
_TEXTS = ("fixture", "mode", "parameter")
_LONGEST_TEXT = 200


def question_of(told: Mapping[str, Sequence[str]]) -> FadeQuestion:
    """The question in an address's parameters; those that it lacks stay as they are, an empty rate is none.

    Raises QuestionError for a figure outside its bounds, a word that is none of those that fit, and a
    parameter that the page does not know.
    """
    known = {*_FIGURES, *_FIGURES_OR_NONE, *_NAMES, *_TEXTS, "bits", "choice"}
    for name in told:
        if name not in known:
            raise QuestionError(f"there is no {_short(name)!r} here; there are {', '.join(sorted(known))}")
    made: dict[str, object] = {}
    for name, values in told.items():
        value = values[-1].strip() if values else ""
        if name in _FIGURES:
            key, least, most = _FIGURES[name]
            made[key] = _figure(name, value, least, most)
        elif name in _FIGURES_OR_NONE:
            key, least, most = _FIGURES_OR_NONE[name]
            made[key] = None if value in ("", "0", "none") else _figure(name, value, least, most)
        elif name in _NAMES:
            if value not in _NAMES[name]:
                raise QuestionError(f"{name} is {_short(value)!r}; it may be {', '.join(_NAMES[name])}")
            made[name] = value
        elif name == "bits":
            if value not in map(str, _BITS):
                raise QuestionError(f"bits is {_short(value)!r}; it may be {', '.join(map(str, _BITS))}")
            made["bits"] = int(value)
        elif name == "choice":
            made["choices"] = tuple(dict.fromkeys(each[:_LONGEST_TEXT] for each in values if each))
        elif value or name != "parameter":
            made[name] = value[:_LONGEST_TEXT]
    return FadeQuestion(**made)  # type: ignore[arg-type]


def _figure(name: str, value: str, least: float, most: float) -> float:
    try:
        figure = float(value)
    except ValueError:
        figure = math.nan
    if not least <= figure <= most:
        raise QuestionError(f"{name} is {_short(value)!r}; it may be a number from {least:g} to {most:g}")
    return figure


def _short(value: str) -> str:
    return value if len(value) <= 40 else f"{value[:40]}..."


def fade_of(question: FadeQuestion) -> Fade:
    """The engine's question, smoothing and bits aside. Raises ResponseError for rates that cannot be."""
    from modebook.response.camera import Camera
    from modebook.response.curves import Curve
    from modebook.response.fade import Fade
    from modebook.response.link import Link
    from modebook.response.losses import LostAtRandom, LostInBursts
    from modebook.response.seen import Viewing

    losses: LostAtRandom | LostInBursts | None = None
    if question.loss_percent:
        share = question.loss_percent / 100.0
        losses = (
            LostInBursts(share, question.burst_packets) if question.burst_packets > 1 else LostAtRandom(share)
        )
    camera = None if question.camera_fps is None else Camera(question.camera_fps, question.shutter_deg)
    return Fade(
        question.from_percent,
        question.to_percent,
        question.seconds_s,
        Link(question.refresh_hz, question.gateway_hz, losses=losses, line="network"),
        curve=Curve(question.curve),
        camera=camera,
        viewing=Viewing(question.white_cd_m2, question.fill_percent / 100.0),
    )


def cases_of(question: FadeQuestion, record: Fixture | None) -> tuple[list[Case], str]:
    """The cases to compare, MOST_CASES at most, and which of a fixture's choices were left out, in words.

    Without a record: the bits asked for, without smoothing and with it. With one: its mode's parameter
    under each choice. Raises CaseError for a mode, parameter or choice that the record lacks.
    """
    from dataclasses import replace

    from modebook.documents.cases import fixture_cases, mode_named, plain_cases
    from modebook.response.smoothing import OFF, Smoothing

    fade = fade_of(question)
    if record is None:
        smoothings = [OFF]
        if question.packets:
            smoothings.append(Smoothing(question.method, packets=question.packets))  # type: ignore[arg-type]
        return plain_cases(replace(fade, bits=question.bits), [question.bits], smoothings), ""
    mode = mode_named(record, question.mode or (record.modes[0].name if record.modes else None))
    cases = fixture_cases(fade, record, mode, question.parameter, question.choices)
    left = cases[MOST_CASES:]
    said = f"not shown, choose them: {', '.join(case.label for case in left)}" if left else ""
    return cases[:MOST_CASES], said
