"""One case: a light with a known smoothing, what it is sent, how it is recorded, what can be told of it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from .camera import Camera, Flicker, encoded
from .light import Light, respond
from .meter import Meter, as_csv, held
from .picture import Filmed, Picture, frames
from .telling import Record, Told, told
from .video import Coding, encode
from .wire import Group, Wire

Floats = NDArray[np.float64]
PLAIN = Picture()
FLICKER_LEFT = 0.15  # of the flicker, what a pessimist expects to stay in the record after it is fitted
METER_STEPS = 100.0  # a meter's errors are counted in percent of full
THINNED_HZ = 1000.0  # a fast meter is judged on so many samples a second, their noise averaged


@dataclass(frozen=True, slots=True)
class Truth:
    """What is true of a case. length_packets counts packets that the fixture hears (a gateway's, where there
    is one); delay_ms is the fixture's processing time before its smoothing begins; can_tell_* are None in the
    gray zone, which counts neither way (see telling)."""

    method: str
    length_packets: float
    length_ms: float
    delay_ms: float
    refresh_hz: float
    camera_fps: float | None
    events: int
    can_tell_length: bool | None
    can_tell_method: bool | None
    why: str


@dataclass(frozen=True)
class Case:
    """A case, complete: the same case writes the same file. Either camera and coding or meter is given."""

    name: str
    seed: int
    method: str
    packets: float
    wire: Wire
    groups: tuple[Group, ...]
    seconds: float
    arguments: tuple[str, ...]
    latency_s: float = 0.0
    picture: Picture = PLAIN
    camera: Camera | None = None
    coding: Coding | None = None
    meter: Meter | None = None

    @property
    def ending(self) -> str:
        """The ending of the file's name."""
        return self.coding.ending if self.coding else ".csv"

    def write(self, folder: Path) -> Path:
        """Write the clip or the trace into a folder and give its path."""
        path = folder / f"{self.name}{self.ending}"
        light, plain = self.lights()
        if self.meter:
            times_s, readings = self.meter.samples(light, self.seconds, self.seed)
            sent = None
            if self.meter.sent_full:
                heard_s, levels = self._packets()
                sent = self.meter.sent_full * held(times_s, heard_s, levels, self.groups[0].first)
            path.write_text(as_csv(times_s, readings, sent), encoding="utf-8")
            return path
        camera, coding = self._filmed_with()
        starts_s = camera.starts_s(self.seconds, self.seed)
        lit = [Filmed(self.picture.box, light)]
        if self.picture.reference:
            lit.append(Filmed(self.picture.reference, plain))
        pictures = frames(self.picture, camera, tuple(lit), starts_s, self.seed)
        full_range, transfer = self.picture.full_range, camera.transfer
        encode(path, pictures, starts_s, coding, camera.fps, full_range=full_range, transfer=transfer)
        return path

    def lights(self) -> tuple[Light, Light]:
        """Give the light, and one without smoothing on the same line, over the whole record."""
        times_s, levels = self._packets()
        first, late_s = self.groups[0].first, times_s + self.latency_s
        length_s = self.packets * self.wire.heard_period_s
        return respond(self.method, length_s, late_s, levels, first), respond(
            "none", 0.0, late_s, levels, first
        )

    @cached_property
    def told(self) -> Told:
        """The distances of the nearest rivals."""
        return told(self.method, self.packets, self.wire, self.groups, self.record())

    @cached_property
    def truth(self) -> Truth:
        """What is true, and whether the record can tell it."""
        return Truth(
            method=self.method,
            length_packets=self.packets,
            length_ms=1000.0 * self.packets * self.wire.heard_period_s,
            delay_ms=1000.0 * self.latency_s,
            refresh_hz=self.wire.desk_hz,
            camera_fps=self.camera.fps if self.camera else None,
            events=len(self.groups),
            can_tell_length=self.told.length,
            can_tell_method=self.told.method,
            why=f"nearest other method {self.told.nearest}, {self.told.method_large:.1f} to "
            f"{self.told.method_small:.1f} sd away; nearest other length {self.told.length_large:.1f} to "
            f"{self.told.length_small:.1f} sd",
        )

    def record(self) -> Record:
        """Give what is recorded, without errors, for the decision about what can be told."""
        return self._metered() if self.meter else self._filmed()

    def _metered(self) -> Record:
        meter = self.meter
        assert meter is not None
        rate_hz = min(meter.rate_hz, THINNED_HZ)
        noise = METER_STEPS * meter.noise * np.sqrt(rate_hz / meter.rate_hz)
        flicker = (
            FLICKER_LEFT
            * METER_STEPS
            * (meter.flicker.lamp_depth + meter.flicker.other * meter.flicker.other_depth)
        )

        def code(light: Floats, gain: float) -> Floats:
            return METER_STEPS * np.minimum(gain * (light + meter.flicker.other), meter.rail)

        return Record(
            starts_s=np.arange(int(self.seconds * rate_hz)) / rate_hz,
            open_s=1e-5,
            light_delays_s=np.zeros(1),
            reference_delays_s=None,
            sent=meter.sent_full is not None,
            code=code,
            clipped=bool(meter.rail < 1.0 + meter.flicker.other),
            large=float(np.hypot(np.hypot(noise, 0.5), flicker)),
            small=float(np.hypot(noise, 0.02)),
        )

    def _filmed(self) -> Record:
        camera, coding = self._filmed_with()
        picture, scale = self.picture, 255.0 if self.picture.full_range else 219.0
        other = camera.flicker.other

        def code(light: Floats, gain: float) -> Floats:
            return scale * encoded(camera.black + gain * camera.gain * (light + other), camera.transfer)

        delays = picture.row_delays_s(picture.box, camera)
        reference = picture.row_delays_s(picture.reference, camera) if picture.reference else None
        slope = scale * 0.55  # steps of luma for linear light near the upper middle, for either curve
        flicker = FLICKER_LEFT * slope * camera.gain * _left(camera.flicker, camera.open_s)
        grain = slope * np.hypot(camera.read_noise, camera.shot_noise * 0.7)
        pixels = picture.box[2] * picture.box[3]
        return Record(
            starts_s=camera.starts_s(self.seconds, self.seed),
            open_s=camera.open_s,
            light_delays_s=_few(delays),
            reference_delays_s=None if reference is None else _few(reference),
            sent=False,
            code=code,
            clipped=bool(camera.gain * (1.0 + other) + camera.black > 1.0),
            large=float(np.hypot(np.hypot(coding.error, 0.4), flicker)),
            small=float(np.hypot(grain / np.sqrt(pixels), 0.3 * coding.error) + 0.05),
        )

    def _packets(self) -> tuple[Floats, Floats]:
        """All packets of the record: each group's cue holds until the next one's."""
        edges = [*(group.start_s for group in self.groups[1:]), self.seconds + 1.0]
        times, levels, start_s = [], [], -1.0
        for group, end_s in zip(self.groups, edges, strict=True):
            heard_s, sent = self.wire.packets(group, start_s, end_s - 1e-9)
            times.append(heard_s)
            levels.append(sent)
            start_s = end_s
        return np.concatenate(times), np.concatenate(levels)

    def _filmed_with(self) -> tuple[Camera, Coding]:
        if self.camera is None or self.coding is None:
            raise ValueError(f"case {self.name} has neither a camera with a coding nor a meter")
        return self.camera, self.coding


def _few(delays_s: Floats) -> Floats:
    """Two rows stand for all, where the rows differ at all."""
    return np.asarray(np.quantile(delays_s, (0.21, 0.79))) if np.ptp(delays_s) else delays_s[:1]


def _left(flicker: Flicker, open_s: float) -> float:
    """The amplitude of the flicker that an exposure lets through, as a share of full light."""
    through = abs(np.sinc(flicker.hz * open_s))
    return float(through * (flicker.other * flicker.other_depth + flicker.lamp_depth))
