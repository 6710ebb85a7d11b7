"""Each cue under each choice: what the response engine finds, against what the cue asks for."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from modebook.documents.bits import bits
from modebook.documents.modes import Parameter
from modebook.documents.responding import curve_of, factory_curve, smoothing_of
from modebook.documents.settings import Choice
from modebook.documents.shots import Cue
from modebook.response.camera import Camera
from modebook.response.curves import LINEAR, Curve
from modebook.response.errors import ResponseError
from modebook.response.fade import PLAUSIBLE_PACKETS, Fade
from modebook.response.link import Link
from modebook.response.losses import ArrivalLog, LostAtRandom, LostInBursts
from modebook.response.seen import Viewing
from modebook.response.smoothing import OFF, Smoothing
from modebook.rig.reading import PatchedRow, RigReading
from modebook.shots.asking import Engine, Essence
from modebook.words.parameters import PARAMETERS

NEAR = 1 + 1e-9


@dataclass(frozen=True, slots=True)
class Case:
    """A cue on one kind of unit, but for the smoothing: what the engine is asked under each choice."""

    fade: Fade | None
    """None where the engine cannot judge it; `why` says why."""
    why: str = ""
    judges_stepping: bool = True
    """Whether a stepping in JND means anything: for intensity it does."""
    assumed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Figures:
    """What the engine finds for a cue under a choice; ranges where the smoothing's length is not known."""

    stepping_jnd: tuple[float, float]
    added_s: tuple[float, float]
    delay_s: tuple[float, float]
    known: bool
    length_packets: float | None
    """The choice's length at this link's rate; None where it is not known."""

    @property
    def worst_stepping_jnd(self) -> float:
        """The greatest that it may be."""
        return self.stepping_jnd[1]

    @property
    def worst_added_s(self) -> float:
        """The greatest that it may be."""
        return self.added_s[1]


class Judge:
    """Asks the engine, once for each distinct case."""

    def __init__(self, reading: RigReading, engine: Engine | None = None) -> None:
        self.reading, self.policy = reading, reading.policy
        self.engine = engine or Engine(keep=False)
        self._links: dict[int, Link] = {}
        self._curves: dict[tuple[int, str | None], tuple[Curve, str]] = {}
        self._figures: dict[tuple[Fade, Smoothing, bool], Figures] = {}

    def camera(self, cue: Cue) -> Camera:
        """The camera that sees a cue: its own, else the rig's, else the policy's."""
        rig = self.reading.rig.camera
        fps = cue.fps or (rig.fps if rig else self.policy["assumed-camera"].value)
        return Camera(fps, cue.shutter_deg or (rig.shutter_deg if rig else 180.0))

    def link(self, row: PatchedRow) -> Link:
        """The road to a unit, as rig.json has it."""
        universe = row.unit.address.universe if row.unit.address else 0
        if universe not in self._links:
            told = self.reading.link(universe)
            losses: LostAtRandom | LostInBursts | None = None
            kind = "missing"
            if isinstance(told.loss, float):
                losses = LostAtRandom(told.loss) if told.loss else None
            elif told.loss is not None:
                burst = told.loss.burst_packets
                losses = (
                    LostAtRandom(told.loss.rate) if burst is None else LostInBursts(told.loss.rate, burst)
                )
                kind = "repeat" if told.loss.kind == "repeated" else "missing"
            self._links[universe] = Link(
                self.reading.rig.refresh_hz,
                told.gateway_hz,
                told.delay_s,
                losses=losses,
                loss=kind,  # type: ignore[arg-type]
                line="network" if told.gateway_hz is None else "dmx",
                slots=1 if told.gateway_hz else 512,
            )
        return self._links[universe]

    def case(self, row: PatchedRow, parameter: Parameter, cue: Cue) -> Case:
        """A cue on a unit."""
        size = bits(parameter) or _emitter_bits(row)
        if not size:
            return Case(None, f"{parameter.name} has no slot of its own, and no emitter either")
        runs = _runs(parameter, cue)
        if runs:
            return Case(None, f"{runs!r} runs by itself: what it looks like at a moment cannot be computed")
        assumed: list[str] = []
        curve = LINEAR
        intensity = PARAMETERS[parameter.parameter].family == "intensity"
        if parameter.parameter == "dimmer":
            curve, said = self._curve(row)
            assumed.append(said)
        try:
            fade = Fade(
                cue.from_percent,
                cue.to_percent,
                cue.seconds_s,
                self.link(row),
                bits=size,
                curve=curve,
                camera=self.camera(cue),
                viewing=Viewing(self.policy["dimmer-white"].value, self.policy["shot-other-light"].value),
            )
        except ResponseError as error:
            return Case(None, str(error))
        if cue.from_percent == cue.to_percent:
            return Case(None, "the cue goes nowhere: it starts at the level at which it ends")
        return Case(fade, judges_stepping=intensity, assumed=tuple(assumed))

    def figures(self, case: Case, choice: Choice | None, stepping: bool = True) -> Figures:
        """What the engine finds under a choice (None: no smoothing), over the usual lengths if it is unknown.

        stepping: False where delays alone are asked for, which losses do not move.
        """
        assert case.fade is not None
        smoothing, known = OFF, True
        if choice is not None:
            told = smoothing_of(choice)
            smoothing, known = told.smoothing, told.known
        fade = _without_losses(case.fade, stepping)
        key = (fade, smoothing, known)
        if key not in self._figures:
            self._figures[key] = self._ask(fade, smoothing, known)
        return self._figures[key]

    def questions(self, case: Case, choice: Choice | None, stepping: bool = True) -> list[Fade]:
        """What `figures` would ask the engine."""
        assert case.fade is not None
        told = None if choice is None else smoothing_of(choice)
        fade = _without_losses(case.fade, stepping)
        if told is None or told.known:
            return [replace(fade, smoothing=told.smoothing if told else OFF)]
        return [replace(fade, smoothing=one) for one in _plausible(told.smoothing)]

    def _ask(self, fade: Fade, smoothing: Smoothing, known: bool) -> Figures:
        rate_hz = fade.link.line_hz
        if known:
            judged = [self.engine.ask(replace(fade, smoothing=smoothing))]
            rising = fade.to_percent >= fade.from_percent
            length: float | None = smoothing.lengths_s(1.0 / rate_hz)[0 if rising else 1] * rate_hz
        else:
            judged = [self.engine.ask(replace(fade, smoothing=one)) for one in _plausible(smoothing)]
            length = None

        def over(figure: Callable[[Essence], float]) -> tuple[float, float]:
            values = [figure(one) for one in judged]
            return min(values), max(values)

        return Figures(
            over(lambda one: one.worst_stepping_jnd),
            over(lambda one: one.added_s),
            over(lambda one: one.delay_s),
            known,
            length,
        )

    def _curve(self, row: PatchedRow) -> tuple[Curve, str]:
        assert row.fixture is not None
        fixture = row.fixture.fixture
        known: Mapping[str, str] = row.known.settings if row.known else {}
        for setting in fixture.settings:
            if setting.setting == "dimmer-curve" and setting.key in known:
                chosen = next((one for one in setting.choices if one.key == known[setting.key]), None)
                made = curve_of(chosen) if chosen else None
                if chosen and made:
                    return made, f"the dimmer curve is {chosen.label or chosen.key}, as rig.json has it"
        made, said = factory_curve(fixture)
        return made or LINEAR, said


def _without_losses(fade: Fade, stepping: bool) -> Fade:
    """The question without losses where delays alone are asked for: what is lost moves none of them."""
    if stepping or isinstance(fade.link.losses, ArrivalLog):
        return fade
    return replace(fade, link=fade.link.lossless())


def _plausible(smoothing: Smoothing) -> list[Smoothing]:
    return [replace(smoothing, packets=n, length_s=None) if n else OFF for n in PLAUSIBLE_PACKETS]


def _emitter_bits(row: PatchedRow) -> int:
    """The finest emitter's bits, where the desk makes the intensity from the emitters."""
    assert row.mode is not None
    return max(
        (
            bits(parameter)
            for parameter, _ in row.mode.parameters
            if PARAMETERS[parameter.parameter].family == "color"
            and PARAMETERS[parameter.parameter].quantity == "level"
        ),
        default=0,
    )


def _runs(parameter: Parameter, cue: Cue) -> str:
    """The meaning of a range that runs by itself and that a cue ends in or passes; else empty."""
    top = 256 ** len(parameter.slots) - 1
    low, high = sorted((cue.from_percent, cue.to_percent))
    for piece in parameter.ranges:
        if piece.does == "runs" and piece.to >= low / 100 * top and piece.from_ <= high / 100 * top:
            return piece.meaning
    return ""


@lru_cache(maxsize=1024)
def difference_percent(frequency_hz: float, fps: float, shutter_deg: float) -> float:
    """The greatest difference between one frame and the next of a light switched at half duty, in percent."""
    from modebook.response.modulation import Modulation, frame_difference

    return 100.0 * frame_difference(Modulation("pwm", frequency_hz), fps, shutter_deg).successive
