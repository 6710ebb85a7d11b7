"""smoothing-mixed: units of one group or position run apart by more than a camera frame."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.rig.gathered import Gathered, gathered
from modebook.rig.grouping import unit_ranges
from modebook.rig.in_effect import FAMILIES, Delay, delays, in_effect, line_rate_hz
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.rules._alike import Apart, cure, worst_apart
from modebook.rig.rules._text import place_figure


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each group that runs apart, and for each position that no group's fault has told of."""
    frame_s = 1.0 / (reading.rig.camera.fps if reading.rig.camera else reading.policy["assumed-camera"].value)
    known: dict[tuple[object, ...], Mapping[str, Delay | None]] = {}
    told: list[frozenset[int]] = []
    for together in (*gathered(reading, "group"), *gathered(reading, "position")):
        rows = [row for row in together.rows if row.mode is not None]
        delay_of: dict[int, Mapping[str, Delay | None]] = {}
        for row in rows:
            settings = tuple(sorted(row.known.settings.items())) if row.known else ()
            key = (id(row.mode), settings, line_rate_hz(reading, row))
            if key not in known:
                known[key] = delays(reading, row)
            delay_of[id(row)] = known[key]
        apart = worst_apart(rows, delay_of, FAMILIES)
        if apart is None:
            continue
        if apart.difference_s > frame_s * (1 + 1e-9):
            concerned = frozenset(id(row) for row in rows)
            fault = _apart(reading, together, apart, frame_s)
        elif apart.unknown:
            concerned = frozenset(id(row) for row in apart.unknown)
            fault = _unknown(together, apart)
        else:
            continue
        if not any(concerned <= before for before in told):
            told.append(concerned)
            yield fault


def _apart(reading: RigReading, together: Gathered, apart: Apart, frame_s: float) -> Fault:
    slow, quick = apart.slow, apart.quick
    line_hz = line_rate_hz(reading, slow[0])
    packets = apart.difference_s * line_hz
    said = (
        f"{together.by} {together.name}: {apart.family} of {_units(slow)} ({_choice(slow[0])}) runs "
        f"{1000 * apart.difference_s:.0f} ms, {packets:.1f} packets, behind that of {_units(quick)} "
        f"({_choice(quick[0])}); a camera frame is {1000 * frame_s:.1f} ms"
    )
    if apart.unknown:
        said += f"; of {_units(apart.unknown)} the length is unknown"
    figure: dict[str, object] = {
        "cause": f"{together.by} {together.name}",
        "by": together.by,
        together.by: together.name,
        "family": apart.family,
        "direction": apart.direction,
        "difference_ms": 1000 * apart.difference_s,
        "difference_packets": packets,
        "refresh_hz": line_hz,
        "frame_ms": 1000 * frame_s,
        "delays": [
            {
                "delay_ms": 1000 * delay_s,
                "fixture": rows[0].identity,
                "choice": _choice(rows[0]),
                "units": [row.unit.number for row in rows],
            }
            for delay_s, rows in apart.steps
        ],
        "unknown_units": [row.unit.number for row in apart.unknown],
        "cost_slots": 0,
    }
    if reading.rig.camera is None:
        figure["frame_assumed"] = True
    help_, changes = cure(reading, apart, frame_s)
    if changes is not None:
        figure["changes"] = changes
    # What the finding is about is the group; the first unit that lags stands for it.
    first = slow[0]
    return Fault(
        "mode", said, figure | place_figure(first), help_, unit=first.unit.number, row=first.unit.row
    )


def _unknown(together: Gathered, apart: Apart) -> Fault:
    first = apart.unknown[0]
    said = (
        f"{together.by} {together.name}: how far {apart.family} of {_units(apart.unknown)} runs behind is "
        "not known; the others stay within a frame of each other"
    )
    figure: dict[str, object] = {
        "cause": f"{together.by} {together.name}",
        "by": together.by,
        together.by: together.name,
        "family": apart.family,
        "unknown_units": [row.unit.number for row in apart.unknown],
        "difference_ms": 1000 * apart.difference_s,
        "cost_slots": 0,
    }
    return Fault(
        "mode",
        said,
        figure | place_figure(first),
        "try them beside the others before the day, or write what they are set to into rig.json",
        severity="info",
        unit=first.unit.number,
        row=first.unit.row,
    )


def _units(rows: Sequence[PatchedRow]) -> str:
    return unit_ranges(row.unit.number for row in rows) or f"row {rows[0].unit.row}"


def _choice(row: PatchedRow) -> str:
    """What a unit's smoothing is set to, in words: ``short, as the factory sets it``."""
    settings = in_effect(row)
    if not settings:
        return "no smoothing"
    because = {"factory": "from the factory", "rig.json": "as rig.json says", "slot": "by its slot's default"}
    return ", ".join(
        f"{one.setting.key} {one.choice.key} {because[one.because]}" if one.choice else one.setting.key
        for one in settings
    )


_SMOOTHING = {
    "key": "smoothing",
    "setting": "smoothing",
    "source": "guide",
    "choices": [
        {"key": "off", "length": {"packets": 0}},
        {"key": "long", "length": {"packets": 8}, "method": "average", "factory": True},
    ],
    "ways": [{"by": "menu", "path": ["Setup", "Response"]}],
}
_FIXTURES = [{"model": "Par"}, {"model": "Wash", "settings": [_SMOOTHING]}]
_PATCH = "unit,fixture,mode,address,group\n1,Par,Mode 1,1/1,key\n2,Wash,Mode 1,1/3,key\n"

RULE = Rule(
    name="smoothing-mixed",
    severity="warning",
    summary="Units of one group or position run apart by more than a camera frame.",
    checks=(
        "For each family of parameters (intensity, color, movement, beam, image) the delay of a snap's "
        "half-way point in what each unit's smoothing is set to: as rig.json's `settings` say, else by the "
        "printed default of the mode's slot, else the factory's choice. A length in packets counts at the "
        "rate of the unit's universe; the delay of the link itself is left out. The greatest difference is "
        "compared with one frame of the rig's camera, or of 24 frames a second where none is given. Units "
        "of unknown length are named, and not compared. A position whose units a group's finding has told "
        "of is not told again."
    ),
    why=(
        "A cue on a beat goes white on one lamp and is still on its way in the next; in a chase one lamp "
        "of the group trails, and the camera holds it for a frame."
    ),
    bad=Example(
        "Eight packets at 30 a second bring the half-way point 133 ms later.",
        {"fixtures": _FIXTURES, "patch": _PATCH},
    ),
    good=Example(
        "The second unit is known to be set to off.",
        {"fixtures": _FIXTURES, "patch": _PATCH, "rig": {"units": {"2": {"settings": {"smoothing": "off"}}}}},
    ),
    references=(
        "one camera frame: common practice, no source",
        "the half-way point of an average of N packets comes N / 2 packets late: closed form",
    ),
    check=check,
)
