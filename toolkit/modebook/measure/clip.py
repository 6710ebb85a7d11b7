"""Reads a filmed light: frame by frame, only the luma of its patch, with time stamps; finds the patch."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from modebook.measure.errors import MeasureError
from modebook.measure.luma import bits_of, is_full_range, luma_of
from modebook.measure.setup import Box, Setup, Tone
from modebook.measure.trace import Floats, Trace, sha256_of
from modebook.measure.transfer import table

if TYPE_CHECKING:
    from av.video.frame import VideoFrame

Progress = Callable[[float], None]
"""Told how many seconds of the clip are done."""

ENDINGS = (".mp4", ".mov", ".m4v", ".mkv", ".webm", ".avi", ".mts", ".m2ts", ".ts", ".mpg", ".mpeg", ".mxf")
COARSE = 4  # while searching for the light, means of blocks of 4 by 4 pixels are looked at: less grain
SEEN_CODES = 24  # a patch that changes by less is no light that can be measured
AFTER_S = 0.5  # how long the search goes on once a light has changed
SEARCH_MOST_S = 60.0
CLIPPED_SHARE = 0.2  # of a patch's pixels at the top
SMALLEST_PX = 4
CODING_CODES = 0.3  # codes of 8 bits: what compression leaves of error in a patch's mean, at the least
ABOVE_WHITE = 243.0
FINE_GRAIN = 0.4  # standard deviation of pixels in codes above which rounding evens out in the mean


@dataclass(slots=True)
class _Patch:
    """What is kept of one box, a list entry a frame."""

    box: Box
    middle: list[float]
    code: list[float]
    grain: list[float]
    top: list[float]
    over: list[float]


def read_clip(path: Path, setup: Setup, progress: Progress | None = None) -> Trace:
    """Give the light of a patch, and of a reference, over a clip. Frames are read one by one, never kept.

    Raises MeasureError for what is no clip, holds no picture, or no light where it should be.
    """
    box = setup.box or find_light(path, setup)
    notes: list[str] = []
    if setup.box is None:
        notes.append(f"the light was found at --box {box}")
    patches = [_new(box)]
    if setup.reference is not None:
        patches.append(_new(setup.reference))
    times: list[float] = []
    tone: Tone | None = setup.tone
    light: Floats | None = None
    full_range = False
    height = 0
    time_base_s = 0.0
    try:
        for frame in _frames(path, setup):
            if light is None:
                full_range, height = is_full_range(frame), frame.height
                tone = tone or ("srgb" if full_range else "bt709")
                light = table(tone, setup.gray, full_range, bits_of(frame))
                time_base_s = float(frame.time_base or 0.0)
                for patch in patches:
                    _inside(path, patch.box, frame)
            luma = luma_of(frame)
            times.append(float(frame.time))
            for patch in patches:
                _keep(patch, luma, light, full_range)
            if progress is not None and len(times) % 64 == 0:
                progress(times[-1])
    except KeyboardInterrupt:
        raise _stopped(path, times[-1] if times else 0.0) from None
    except _TruncatedError as error:
        notes.append(f"the file breaks off after {times[-1] if times else 0.0:.2f} s: {error}")
    if len(times) < 20:
        raise MeasureError(
            path,
            f"only {len(times)} frames can be read"
            + (": it breaks off" if notes and "breaks" in notes[-1] else ""),
            remedy="give a clip with at least one whole change of the light",
        )
    if setup.gray is not None:
        notes.append("light is worked out by the gray scale given")
    elif setup.tone is None:
        notes.append(f"the transfer curve is taken as {'sRGB' if tone == 'srgb' else 'BT.709'} (not given)")
    time_s, fps, even = _even(np.array(times), time_base_s)
    if not even:
        notes.append("frames are uneven in time: their time stamps are used")
    assert light is not None
    return _trace(path, setup, patches, time_s, fps, light, full_range, height, notes)


def _trace(
    path: Path,
    setup: Setup,
    patches: list[_Patch],
    time_s: Floats,
    fps: float,
    light: Floats,
    full_range: bool,
    height: int,
    notes: list[str],
) -> Trace:
    own = patches[0]
    level = np.array(own.middle)
    if float(np.ptp(np.array(own.code))) < SEEN_CODES / 4:
        raise MeasureError(
            path,
            f"no light changes in the box {own.box}",
            remedy="give the box of the light with --box x,y,w,h, or leave it out to have it found",
        )
    clipped = _clipped(own, full_range)
    if clipped.any():
        notes.append(f"{100 * clipped.mean():.0f} % of the frames are clipped at the top: expose darker")
    reference = None
    if len(patches) > 1:
        other = patches[1]
        if float(np.ptp(np.array(other.code))) < SEEN_CODES / 4:
            raise MeasureError(
                path,
                f"no light changes in the reference box {other.box}",
                remedy="give the box of a second lamp that is sent the same, with --reference x,y,w,h",
            )
        reference = np.array(other.middle)
        middle = (other.box.y + other.box.height / 2) - (own.box.y + own.box.height / 2)
    else:
        middle = 0.0
    return Trace(
        str(path),
        "clip",
        time_s + setup.readout_s * (own.box.y + own.box.height / 2) / height,
        level,
        setup.open_s(fps),
        fps=fps,
        rough=_rough(own, light),
        clipped=clipped,
        reference=reference,
        reference_rough=_rough(patches[1], light) if reference is not None else None,
        reference_clipped=_clipped(patches[1], full_range) if reference is not None else None,
        reference_later_s=setup.readout_s * middle / height,
        spread_s=setup.readout_s * own.box.height / height,
        sha256=sha256_of(path),
        notes=tuple(notes),
    )


def find_light(path: Path, setup: Setup) -> Box:
    """Give the box of the brightest patch that changes. Raises MeasureError where none does."""
    low: NDArray[np.uint8] | None = None
    high: NDArray[np.uint8] | None = None
    seen_at_s: float | None = None
    first_s = 0.0
    try:
        for frame in _frames(path, setup):
            luma = luma_of(frame)
            small = _blocks((luma >> (bits_of(frame) - 8)).astype(np.uint8, copy=False))
            at_s = float(frame.time)
            if low is None or high is None:
                low, high, first_s = small.copy(), small.copy(), at_s
                continue
            np.minimum(low, small, out=low)
            np.maximum(high, small, out=high)
            if seen_at_s is None and int((high - low).max()) > 2 * SEEN_CODES:
                seen_at_s = at_s
            if (seen_at_s is not None and at_s > seen_at_s + AFTER_S) or at_s - first_s > SEARCH_MOST_S:
                break
    except KeyboardInterrupt:
        raise _stopped(path, 0.0) from None
    except _TruncatedError:
        pass  # what was read before the break may do; read_clip tells of the break
    if low is None or high is None:
        raise MeasureError(path, "holds no frame that can be read", remedy="give another file")
    change = _smoothed((high - low).astype(np.float64))
    if setup.reference is not None:
        change[_around(_coarse(setup.reference), change.shape)] = 0.0
    if change.max() < SEEN_CODES:
        raise MeasureError(
            path,
            "no light in the picture changes",
            remedy="film a light that is sent snaps, or give its box with --box x,y,w,h",
        )
    brightest = np.where(change > 0.6 * change.max(), _smoothed(high.astype(np.float64)), 0.0)
    y, x = np.unravel_index(int(brightest.argmax()), brightest.shape)
    mask = change > 0.6 * change[y, x]
    y0, y1, x0, x1 = _grown(mask, int(y), int(x))
    _refuse_another(path, change, (y0, y1, x0, x1))
    # A fifth less on each side stays clear of edges and of what a hand-held camera moves.
    inset_y, inset_x = (y1 - y0) // 5, (x1 - x0) // 5
    return Box(
        (x0 + inset_x) * COARSE,
        (y0 + inset_y) * COARSE,
        max((x1 - x0 - 2 * inset_x) * COARSE, SMALLEST_PX),
        max((y1 - y0 - 2 * inset_y) * COARSE, SMALLEST_PX),
    )


def _stopped(path: Path, at_s: float) -> MeasureError:
    return MeasureError(
        path,
        f"stopped after {at_s:.1f} s of it: nothing is measured or written",
        remedy="read a part of it with --start-s and --end-s",
    )


def _coarse(box: Box) -> tuple[int, int, int, int]:
    """A box in blocks: rows from and to, columns from and to."""
    return (
        box.y // COARSE,
        -(-(box.y + box.height) // COARSE),
        box.x // COARSE,
        -(-(box.x + box.width) // COARSE),
    )


def _around(place: tuple[int, int, int, int], shape: tuple[int, ...]) -> tuple[slice, slice]:
    """A rectangle of blocks with two more on each side, for the glow about a light."""
    y0, y1, x0, x1 = place
    return slice(max(y0 - 2, 0), min(y1 + 2, shape[0])), slice(max(x0 - 2, 0), min(x1 + 2, shape[1]))


def _refuse_another(path: Path, change: Floats, place: tuple[int, int, int, int]) -> None:
    """Raises MeasureError where a second light changes too: which is meant must be said, not guessed."""
    rest = change.copy()
    rest[_around(place, change.shape)] = 0.0
    y, x = np.unravel_index(int(rest.argmax()), rest.shape)
    if rest[y, x] <= 0.5 * change.max():
        return
    other = _grown(rest > 0.6 * rest[y, x], int(y), int(x))
    told = " and ".join(
        f"{x0 * COARSE},{y0 * COARSE},{(x1 - x0) * COARSE},{(y1 - y0) * COARSE}"
        for y0, y1, x0, x1 in sorted((place, other), key=lambda one: one[2])
    )
    raise MeasureError(
        path,
        f"more than one light changes in the picture: {told}",
        remedy="say with --box which is meant, and with --reference which one does not smooth",
    )


def _blocks(luma: NDArray[np.uint8]) -> NDArray[np.uint8]:
    """The means of blocks, rows and columns that fill no block left out."""
    rows, columns = luma.shape[0] // COARSE, luma.shape[1] // COARSE
    whole = luma[: rows * COARSE, : columns * COARSE]
    sums = np.zeros((rows, columns), dtype=np.uint16)
    for i in range(COARSE):
        for j in range(COARSE):
            sums += whole[i::COARSE, j::COARSE]
    return np.asarray(sums // (COARSE * COARSE), dtype=np.uint8)


def _grown(mask: NDArray[np.bool_], y: int, x: int) -> tuple[int, int, int, int]:
    """The rectangle around a place that grows while most of its next row or column belongs to the patch."""
    y0, y1, x0, x1 = y, y + 1, x, x + 1
    grown = True
    while grown:
        grown = False
        if y0 > 0 and mask[y0 - 1, x0:x1].mean() > 0.5:
            y0, grown = y0 - 1, True
        if y1 < mask.shape[0] and mask[y1, x0:x1].mean() > 0.5:
            y1, grown = y1 + 1, True
        if x0 > 0 and mask[y0:y1, x0 - 1].mean() > 0.5:
            x0, grown = x0 - 1, True
        if x1 < mask.shape[1] and mask[y0:y1, x1].mean() > 0.5:
            x1, grown = x1 + 1, True
    return y0, y1, x0, x1


def _smoothed(picture: Floats) -> Floats:
    """Means over 3 by 3."""
    padded = np.pad(picture, 1, mode="edge")
    rows, columns = picture.shape
    return np.asarray(sum(padded[i : i + rows, j : j + columns] for i in range(3) for j in range(3)) / 9.0)


class _TruncatedError(Exception):
    """The stream breaks off: what was read before stands."""


def _frames(path: Path, setup: Setup) -> Iterator[VideoFrame]:
    """The frames of a clip's first picture stream, as shown, between the start and end asked for."""
    import av
    from av.error import FFmpegError

    if path.is_dir():
        raise MeasureError(path, "is a folder", remedy="give a clip or a table")
    try:
        container: Any = av.open(str(path))
    except FileNotFoundError:
        raise MeasureError(path, "no such file", remedy="give a clip or a table") from None
    except FFmpegError as error:
        raise MeasureError(
            path, "is no clip that can be read", remedy="give a video file, or a CSV with time_s and level"
        ) from error
    with container:
        if not container.streams.video:
            what = "only sound is in it" if container.streams.audio else "no picture is in it"
            raise MeasureError(path, what, remedy="give a clip with a picture")
        stream = container.streams.video[0]
        stream.thread_type = "AUTO"
        some = False
        try:
            for frame in container.decode(stream):
                if frame.time is None or frame.time < setup.start_s:
                    continue
                if setup.end_s is not None and frame.time > setup.end_s:
                    return
                some = True
                yield frame
        except FFmpegError as error:
            if not some:
                raise MeasureError(
                    path, "no frame of it can be read", remedy="copy it again: it may be cut short"
                ) from error
            raise _TruncatedError(str(error).split("]")[-1].strip()) from error


def _new(box: Box) -> _Patch:
    return _Patch(box, [], [], [], [], [])


def _inside(path: Path, box: Box, frame: VideoFrame) -> None:
    fits = (
        box.x >= 0 and box.y >= 0 and box.x + box.width <= frame.width and box.y + box.height <= frame.height
    )
    if not fits or box.width < SMALLEST_PX or box.height < SMALLEST_PX:
        raise MeasureError(
            path,
            f"the box {box} does not lie in the picture of {frame.width} by {frame.height}",
            remedy=f"give x,y,w,h in pixels, at least {SMALLEST_PX} by {SMALLEST_PX}",
        )


def _keep(patch: _Patch, luma: NDArray[Any], light: Floats, full_range: bool) -> None:
    box = patch.box
    part = luma[box.y : box.y + box.height, box.x : box.x + box.width]
    counts = np.bincount(part.ravel(), minlength=len(light))
    share = counts / counts.sum()
    fine = len(light) // 256  # codes of the clip in one of 8 bits
    codes = np.arange(float(len(light))) / fine
    mean = float(share @ codes)
    patch.middle.append(float(share @ light))
    patch.code.append(mean)
    patch.grain.append(float(np.sqrt(max(share @ (codes - mean) ** 2, 0.0))))
    patch.top.append(float(share[(253 if full_range else 234) * fine :].sum()))
    patch.over.append(float(share[241 * fine :].sum()))


def _clipped(patch: _Patch, full_range: bool) -> NDArray[np.bool_]:
    """Frames in which many pixels stand at the greatest value that the clip has."""
    # Compression may overshoot by some codes; beyond them a clip of limited range goes on above its white.
    if not full_range and max(patch.over) > CLIPPED_SHARE and max(patch.code) > ABOVE_WHITE:
        return np.asarray(np.array(patch.code) > 252.0)
    return np.asarray(np.array(patch.top) > CLIPPED_SHARE)


def _rough(patch: _Patch, light: Floats) -> Floats:
    """What coding may leave of error in the mean: rounding leaves little where pixels differ."""
    fine = len(light) // 256
    code = np.clip(np.array(patch.code) * fine, 0.0, len(light) - 2.0)
    slope = np.diff(light)[code.astype(np.intp)]
    grain = np.array(patch.grain) * fine
    rounding = np.where(grain > FINE_GRAIN, 0.1, 0.29)
    return np.asarray(slope * np.hypot(rounding, CODING_CODES * fine))


def _even(time_s: Floats, time_base_s: float) -> tuple[Floats, float, bool]:
    """Frame times freed of the time base's rounding where they come evenly, the rate, and whether they do."""
    number = np.arange(len(time_s))
    steps = np.diff(time_s)
    usual = float(np.median(steps))
    slope, start = np.polyfit(number, time_s, 1)
    line = start + slope * number
    if float(np.abs(time_s - line).max()) <= max(1.01 * time_base_s, 0.02 * usual):
        return line, float(1.0 / slope), True
    rising = np.concatenate([[True], steps > 0])
    if not rising.all():
        raise MeasureError("clip", "time stamps go back", remedy="copy the stream into a new file")
    return time_s, float(1.0 / usual), False
