"""The worst step and stepping over all phases of a camera against the packets.

A step is a function of the moment u at which the earlier frame opens. With straight pieces of light it
is a parabola between the u at which an opening or closing meets a breakpoint, so its greatest value in
percent is exact: an end, or a vertex. Decaying or curved light and JNDs bend it; there the ends, the
middles and a search around the best give the greatest value: in percent to a thousandth of it, in JND
to `bound_jnd`, the most by which an interval's own curvature, doubled, could still exceed it.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from .camera import Camera, exposures
from .seen import Viewing, jnd_of
from .signal import Array
from .stepping import Worst, joined, most
from .transfer import Light

BLOCK_VALUES = 60_000  # trials times moments searched at a time: what a processor's cache holds
SEARCH_POINTS = 9  # ends of smaller intervals, each with its middle
SEARCH_ROUNDS = 2
SEARCH_PLACES = 4  # intervals searched for each figure, at most
SEARCH_ENOUGH = 1e-3  # of a figure: an interval that could hold no more than that is not searched


def at_worst_phase(
    light: Light,
    ideal: Light,
    viewing: Viewing,
    camera: Camera,
    from_s: float | Array,
    to_s: float | Array,
    closer: bool = True,
) -> Worst:
    """Give the worst over all phases of the camera, for frames that touch from_s to to_s.

    from_s, to_s: in s, one for all signals or [B], each its own. closer: whether figures in JND and stops
    are searched between the samples; without that they are faster, and bound_jnd is larger.
    """
    tried_s = tried_openings_s(light, ideal, camera, from_s, to_s)
    block = max(1, BLOCK_VALUES // tried_s.shape[-1])
    shared = tried_s.ndim == 1
    expose = _straight_pairs(camera, tried_s) if shared and light.straight else None
    even = _pair(ideal, camera, tried_s) if shared and ideal is not light else (tried_s, tried_s)
    places = SEARCH_PLACES if closer else 0
    parts = []
    for first in range(0, light.count, block):
        rows = slice(first, first + block)
        some, own_s = light.rows(rows), tried_s if shared else tried_s[rows]
        lit = _pair(some, camera, own_s) if expose is None else expose(some)
        like = some if ideal is light else ideal
        if ideal is light:
            even = lit
        elif not shared:
            even = _pair(ideal, camera, own_s)
        parts.append(_search(some, like, viewing, camera, own_s, lit, even, places))
    return joined(parts)


def tried_openings_s(
    light: Light, ideal: Light, camera: Camera, from_s: float | Array, to_s: float | Array
) -> Array:
    """Give the openings of the earlier frame at which a formula changes, and midway, [Q] or [B, Q]."""
    breaks_s, corners_s = light.breaks_s(), ideal.breaks_s()
    # An ideal in very many pieces is smooth: its own corners need no samples beyond its ends.
    corners_s = corners_s.ravel() if corners_s.size <= 64 else corners_s.ravel()[[1, -1]]
    shifts_s = (0.0, camera.open_s, camera.frame_s, camera.frame_s + camera.open_s)
    return _tried(breaks_s, corners_s, shifts_s, np.asarray(from_s) - shifts_s[-1], np.asarray(to_s))


def _tried(own_s: Array, corners_s: Array, shifts_s: tuple[float, ...], low_s: Array, high_s: Array) -> Array:
    """Give the openings of the earlier frame at which some formula changes, and the middles between them.

    [Q], or [B, Q] where the signals have breakpoints (own_s, [B, M]) or windows (low_s, high_s, [B]) of
    their own; there some may stand twice.
    """
    if own_s.ndim == 2:
        corners_s = np.broadcast_to(corners_s, (len(own_s), len(corners_s)))
    met_s = np.concatenate([own_s, corners_s], axis=-1)
    met_s = np.concatenate([met_s - shift_s for shift_s in shifts_s], axis=-1)
    if met_s.ndim == 1:
        met_s = np.unique(np.round(met_s, 11))
    else:
        met_s.sort(axis=-1)
    if low_s.ndim == 0 and met_s.ndim == 1:
        inside = (met_s > low_s) & (met_s < high_s)
        met_s = np.concatenate([[low_s], met_s[inside], [high_s]])
    else:
        low_s, high_s = low_s.reshape(-1, 1), high_s.reshape(-1, 1)
        if met_s.ndim == 1:
            first, last = np.searchsorted(met_s, low_s), np.searchsorted(met_s, high_s)
        else:
            first = (met_s < low_s).sum(axis=1, keepdims=True)
            last = (met_s <= high_s).sum(axis=1, keepdims=True)
        places = first - 1 + np.arange(int((last - first).max()) + 2)
        np.clip(places, 0, met_s.shape[-1] - 1, out=places)
        met_s = met_s[places] if met_s.ndim == 1 else np.take_along_axis(met_s, places, axis=1)
        met_s = np.clip(met_s, low_s, high_s)
    return _with_middles(met_s)


def _with_middles(ends: Array) -> Array:
    """Give values along the last axis with the means of neighbors behind them, [..., Q] to [..., 2 Q - 1]."""
    return np.concatenate([ends, 0.5 * (ends[..., 1:] + ends[..., :-1])], axis=-1)


def _pair(of: Light, camera: Camera, opens_s: Array) -> tuple[Array, Array]:
    """Give the exposures, [B, Q] each, of the frames that open at opens_s and of the frames after them."""
    return exposures(of, opens_s, camera.open_s), exposures(of, opens_s + camera.frame_s, camera.open_s)


def _straight_pairs(camera: Camera, tried_s: Array) -> Callable[[Light], tuple[Array, Array]]:
    """Give what _pair gives, for straight light at tried_s ([Q] ends and the middles), in half of its time.

    Many openings and closings fall on the same moments, so that each is integrated once; and between two
    ends an exposure is a parabola, whose middle follows from its ends and from its slope at the first,
    which is the difference of the light at closing and opening over the shutter time.
    """
    open_s = camera.open_s
    ends_s = tried_s[: (len(tried_s) + 1) // 2]
    shifts_s = np.array([0.0, open_s, camera.frame_s, camera.frame_s + open_s])
    moments_s, places = np.unique(np.round(ends_s + shifts_s[:, None], 12), return_inverse=True)
    places = places.reshape(4, len(ends_s))
    quarters_s = np.diff(ends_s) / (4.0 * open_s)

    def expose(light: Light) -> tuple[Array, Array]:
        areas, values = light.area(moments_s), light.at(moments_s)
        pair = []
        for opens, closes in (places[:2], places[2:]):
            count = len(opens)
            lit = np.empty((len(areas), 2 * count - 1))
            ends, middles = lit[:, :count], lit[:, count:]
            np.subtract(areas.take(closes, axis=1), areas.take(opens, axis=1), out=ends)
            ends /= open_s
            np.subtract(values.take(closes[:-1], axis=1), values.take(opens[:-1], axis=1), out=middles)
            middles *= quarters_s
            middles += 0.75 * ends[:, :-1]
            middles += 0.25 * ends[:, 1:]
            pair.append(lit)
        return pair[0], pair[1]

    return expose


def _search(
    light: Light,
    ideal: Light,
    viewing: Viewing,
    camera: Camera,
    tried_s: Array,
    lit: tuple[Array, Array],
    even: tuple[Array, Array],
    places: int,
) -> Worst:
    """Give the worst over frames that open at tried_s ([Q] or [B, Q]), every second of which is a middle.

    lit, even: what _pair gives of the light and of the ideal at tried_s.
    """
    frame_s = camera.frame_s

    def change(opens_s: Array, of: Light = light) -> Array:
        earlier, later = _pair(of, camera, opens_s)
        return later - earlier

    def stops(opens_s: Array) -> Array:
        earlier, later = (viewing.luminance_cd_m2(each) for each in _pair(light, camera, opens_s))
        return np.asarray(np.log2(later / earlier))

    def step(opens_s: Array) -> Array:
        earlier, later = _pair(light, camera, opens_s)
        return viewing.jnd(later) - viewing.jnd(earlier)

    def stepping(opens_s: Array) -> Array:
        earlier, later = _pair(ideal, camera, opens_s)
        return step(opens_s) - (viewing.jnd(later) - viewing.jnd(earlier))

    steps = lit[1] - lit[0]
    before, after = (viewing.luminance_cd_m2(each) for each in lit)
    jnd_steps = jnd_of(after)
    jnd_steps -= jnd_of(before)
    after /= before
    step_jnd, step_at_s, bound = _best(step, jnd_steps, tried_s, places)
    jnd_steps -= viewing.jnd(even[1]) - viewing.jnd(even[0])
    stepping_jnd, stepping_at_s, stepping_bound = _best(stepping, jnd_steps, tried_s, places)
    offs = steps - (even[1] - even[0])
    if light.straight:
        step_full, stepping_full = _most_of_parabolas(steps), _most_of_parabolas(offs)
    else:
        step_full = _best(change, steps, tried_s, places)[0]
        stepping_full = _best(lambda at_s: change(at_s) - change(at_s, ideal), offs, tried_s, places)[0]
    return Worst(
        100.0 * step_full,
        _most_stops(stops, after, tried_s),
        step_jnd,
        step_at_s + frame_s,
        100.0 * stepping_full,
        stepping_jnd,
        stepping_at_s + frame_s,
        np.maximum(bound, stepping_bound),
    )


def _most_stops(stops: Callable[[Array], Array], ratios: Array, tried_s: Array) -> Array:
    """Give the largest step in stops, [B], searched around the sample whose luminances differ most."""
    rows, ends = np.arange(len(ratios)), (ratios.shape[1] + 1) // 2
    times_s = np.broadcast_to(tried_s, ratios.shape)
    up, down = ratios.argmax(axis=1), ratios.argmin(axis=1)
    at = np.where(ratios[rows, up] * ratios[rows, down] >= 1.0, up, down)
    found = np.abs(np.log2(ratios[rows, at]))
    at = np.where(at < ends, at, at - ends)
    low_s, high_s = times_s[rows, np.maximum(at - 1, 0)], times_s[rows, np.minimum(at + 1, ends - 1)]
    near_s = np.linspace(low_s, high_s, 2 * SEARCH_POINTS, axis=1)
    return np.asarray(np.maximum(found, np.abs(stops(near_s)).max(axis=1)))


def _thirds(values: Array) -> tuple[Array, Array, Array]:
    """Give what intervals have at their start, middle and end, [B, I] each."""
    ends = (values.shape[1] + 1) // 2
    return values[:, : ends - 1], values[:, ends:], values[:, 1:ends]


def _most_of_parabolas(values: Array) -> Array:
    """Give the largest size, [B], of parabolas through the start, middle and end of each interval."""
    found = most(values)
    start, middle, end = _thirds(values)
    bend = start + end
    bend -= 2.0 * middle
    # With x from -1 to 1 the parabola is middle + lean x / 2 + bend x**2 / 2, its vertex at -lean / (2 bend),
    # and between its ends it is never further than half the bend from its middle beyond all three samples.
    could = np.abs(bend)
    could *= 0.5
    could += np.abs(middle)
    rows, places = np.nonzero(could > found[:, None])
    lean, bend = end[rows, places] - start[rows, places], bend[rows, places]
    within = np.abs(lean) < 2.0 * np.abs(bend)
    rows, lean, bend = rows[within], lean[within], bend[within]
    vertex = np.abs(middle[rows, places[within]] - lean * lean / (8.0 * bend))
    np.maximum.at(found, rows, vertex)
    return found


def _could(values: Array) -> Array:
    """Give what the size of a figure could reach in each interval of three samples, [B, I].

    A parabola exceeds its samples by an eighth of their second difference at most; a kink by a quarter.
    """
    start, middle, end = _thirds(values)
    could = start + end
    could -= 2.0 * middle
    np.abs(could, out=could)
    could *= 0.25
    sizes = np.abs(values)
    at_start, at_middle, at_end = _thirds(sizes)
    most_there = np.maximum(at_start, at_end)
    could += np.maximum(most_there, at_middle, out=most_there)
    return could


def _best(
    of: Callable[[Array], Array], values: Array, tried_s: Array, places: int
) -> tuple[Array, Array, Array]:
    """Search the intervals that could hold the largest size of a figure, those that could hold most first.

    of: the figure at given openings, [B, Q] to [B, Q]; values: the figure at tried_s; places: how many
    intervals are searched. Gives, [B] each, the largest size found, where, and how much larger it could
    be where the search did not look closer.
    """
    rows = np.arange(len(values))
    times_s = np.broadcast_to(tried_s, values.shape)
    rises, falls = values.argmax(axis=1), values.argmin(axis=1)
    at = np.where(values[rows, rises] >= -values[rows, falls], rises, falls)
    found, found_s = np.abs(values[rows, at]), times_s[rows, at]
    could = _could(values)
    left = np.zeros(len(values))
    for _ in range(places):
        place = could.argmax(axis=1)
        if (could[rows, place] <= found * (1.0 + SEARCH_ENOUGH)).all():
            break
        low_s, high_s = times_s[rows, place], times_s[rows, place + 1]
        could[rows, place] = 0.0
        for _ in range(SEARCH_ROUNDS):
            near_s = _with_middles(np.linspace(low_s, high_s, SEARCH_POINTS, axis=1))
            near = of(near_s)
            near_could = _could(near)
            best = near_could.argmax(axis=1)
            top = np.abs(near).argmax(axis=1)
            better = np.abs(near[rows, top]) > found
            found = np.where(better, np.abs(near[rows, top]), found)
            found_s = np.where(better, near_s[rows, top], found_s)
            low_s, high_s = near_s[rows, best], near_s[rows, best + 1]
            reached = near_could[rows, best]
            near_could[rows, best] = 0.0
            left = np.maximum(left, near_could.max(axis=1))
        left = np.maximum(left, reached)
    left = np.maximum(left, could.max(axis=1))
    return found, found_s, np.maximum(left - found, 0.0)
