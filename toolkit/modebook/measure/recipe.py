"""The recipe for a measurement: what to send, how to film it, how long, and the values for each choice."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import Any

from modebook.documents.control_values import byte_values, hazards_beside, value_for
from modebook.documents.fixture import Fixture
from modebook.documents.modes import Mode
from modebook.documents.settings import Choice, Setting
from modebook.documents.ways import slot_ways, smoothing_settings

USUAL_HZ = 44.0
UNKNOWN_PACKETS = 16.0  # how long a choice of unknown length is allowed for
HOLD_LENGTHS = 3.0  # a lag needs as many time constants to settle
LEAST_HOLD_S = 0.6
REPEATS = 3
STAIRS = 4

CAUTIONS = (
    "Snaps at full are bright: warn everybody in the room, mind people with photosensitive epilepsy, look "
    "at the wall and not into the lamp.",
    "Control ranges can make a fixture move, reset, strobe or go dark: keep people clear, send them out of "
    "a take, and check each value against the fixture's manual first.",
    "Rigging, power and work at height belong to qualified people; local codes come first. What is hot "
    "stays hot.",
)


@dataclass(frozen=True, slots=True)
class CueValue:
    """What sets one choice: the slots (counted from 1 in the mode) with their values, or the other ways."""

    setting: str
    choice: str
    label: str | None
    slots: tuple[tuple[int, int], ...]
    hold_s: float | None
    needs: tuple[str, ...]
    by: tuple[str, ...]
    cautions: tuple[str, ...]
    hold_level_s: float
    """For how long each level of the events is held for this choice."""


@dataclass(frozen=True, slots=True)
class Recipe:
    """A fixture's recipe; see CueValue for the choices."""

    fixture: str
    mode: str
    refresh_hz: float
    choices: tuple[CueValue, ...]
    send: tuple[str, ...]
    film: tuple[str, ...]
    cautions: tuple[str, ...]

    def as_json(self) -> dict[str, Any]:
        """The recipe as plain data."""
        told = asdict(self)
        for each in told["choices"]:
            each["slots"] = [{"slot": slot, "value": value} for slot, value in each["slots"]]
        return told


def recipe(fixture: Fixture, mode: Mode, refresh_hz: float | None = None) -> Recipe:
    """Give the recipe for a fixture in a mode, at the desk's rate (44 packets a second unless given)."""
    rate = refresh_hz or USUAL_HZ
    choices = tuple(
        _cue_value(setting, choice, mode, rate)
        for setting in smoothing_settings(fixture)
        for choice in setting.choices
    )
    longest_s = max((one.hold_level_s for one in choices), default=LEAST_HOLD_S)
    fast_fps = next((fps for fps in (60, 120, 240) if fps >= 4 * rate), 240)
    send = (
        f"Set the desk to a fixed rate of {rate:g} packets a second, and the smoothing choice as below.",
        "Program cues of time 0 for the dimmer; hold each level for the time told with the choice: "
        "0, 100 %, 0, 50 %, 100 %, 50 %, 0.",
        f"Then a staircase of {STAIRS} even steps from 0 to 100 %, the steps two packets apart "
        f"({2000 / rate:.0f} ms), and one down. It tells an average, a limit and a restarted ramp apart.",
        "Then a fade of 0.6 s up and one down.",
        f"Do it all {REPEATS} times for each choice, without stopping the camera. About "
        f"{REPEATS * (13 * longest_s + 2):.0f} s for the longest choice.",
        "Put a lamp without smoothing on the same universe into the picture, sent the same levels: only "
        "against it can interpolation, which is late and else straight, be measured (--reference).",
    )
    film = (
        f"Film at {fast_fps} frames a second or more if the camera can; at 24 to 30 only lengths of "
        "several packets show. Note the rate and the shutter angle.",
        "Shutter at 180 degrees or less; all of it by hand: exposure, white balance, focus, no stabilizer.",
        "Film a white wall or card that both lamps light in separate patches, or dim the lamps: at 100 % "
        "no part of the patch may clip (keep below 90 % on the waveform), at 0 it should be dark.",
        "Camera on a stand, other lights off or steady; lamps on the mains flicker, which is fitted.",
        "A light meter or photodiode on a logger does it too: time_s, level, and sent if it can be logged, "
        "at 1000 samples a second or more.",
    )
    return Recipe(fixture.id, mode.name, rate, choices, send, film, CAUTIONS)


def _cue_value(setting: Setting, choice: Choice, mode: Mode, rate: float) -> CueValue:
    slots: tuple[tuple[int, int], ...] = ()
    hold_s: float | None = None
    needs: list[str] = []
    cautions: list[str] = []
    by: list[str] = []
    for way in slot_ways(mode):
        if way.setting == setting.key and way.choice == choice.key:
            values = byte_values(way.parameter, value_for(way.piece))
            slots = tuple(zip(way.parameter.slots, values, strict=True))
            hold_s = way.piece.hold_s
            needs = [
                f"{need.parameter or need.setting}"
                + (f" at {need.from_} to {need.to}" if need.from_ is not None else "")
                for need in way.needs
            ]
            if way.piece.hazard:
                cautions.append(f"the range itself: {way.piece.hazard}")
            cautions += [
                f"the range beside it ({other.from_}-{other.to}): {other.hazard}"
                for other in hazards_beside(way.parameter, way.piece)
            ]
            break
    for other_way in setting.ways:
        if other_way.values is not None and choice.key in other_way.values:
            by.append(f"RDM, PID {other_way.pid}, value {other_way.values[choice.key]}")
        elif other_way.by != "rdm" and (other_way.choices is None or choice.key in other_way.choices):
            by.append(f"{other_way.by}: {' > '.join(other_way.path or ()) or 'see the manual'}")
    length = choice.length
    packets = UNKNOWN_PACKETS if length is None else length.longest_packets(rate)
    hold_level_s = max(LEAST_HOLD_S, HOLD_LENGTHS * packets / rate)
    return CueValue(
        setting.key,
        choice.key,
        choice.label,
        slots,
        hold_s,
        tuple(needs),
        tuple(by),
        tuple(cautions),
        round(hold_level_s, 2),
    )
