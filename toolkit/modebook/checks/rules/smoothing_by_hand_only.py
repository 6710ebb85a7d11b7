"""smoothing-by-hand-only: in a mode, smoothing can be changed, but only with a hand on the fixture."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._smoothing import slot_ways_to
from modebook.checks.rules._text import mode_told, plural, together
from modebook.documents.ways import REMOTE, SmoothingBy, smoothing_by

_TOLD = {"menu": "at the menu", "app": "with the maker's app", "page": "on its network page"}


def faults_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Sequence[Fault]:
    """The fault of a mode whose fixture lets smoothing be changed by hand only."""
    sets = mode.survey.sets
    for setting, _ in reading.smoothings:
        if setting.key in sets:
            return ()
    if not _by_hand(reading):
        return ()
    ways: list[SmoothingBy] = smoothing_by(reading.fixture, mode.mode)
    if not REMOTE.isdisjoint(ways) or not any(way in _TOLD for way in ways):
        return ()
    keys = [setting.key for setting, _ in reading.smoothings]
    said = (
        f"in mode {mode_told(mode.mode)} {together(keys)} can be changed only "
        f"{' or '.join(_TOLD[way] for way in ways if way in _TOLD)}"
    )
    figure: dict[str, object] = {"mode": mode.mode.name, "number": mode.mode.number, "by": list(ways)}
    return [Fault(mode.pointer, said, figure, _help(reading))]


def _by_hand(reading: FixtureReading) -> bool:
    """Whether a hand is needed wherever no slot helps: some way there is, and none over RDM."""
    ways = [way for setting in reading.smoothing for way in setting.ways]
    return bool(ways) and not any(way.by == "rdm" and way.values for way in ways)


def _help(reading: FixtureReading) -> str:
    settings = [setting for setting, _ in reading.smoothings]
    by_slot = [
        mode.mode for mode in reading.modes if any(slot_ways_to(setting, (mode,)) for setting in settings)
    ]
    if not by_slot:
        return "set it before the fixture is out of reach, and write down what each unit is set to"
    best = min(by_slot, key=lambda mode: mode.footprint)
    return f"mode {mode_told(best)} changes it by a slot, in {plural(best.footprint, 'slot')}"


def _example(way: dict[str, object]) -> dict[str, object]:
    return {
        "settings": [
            {
                "key": "smoothing",
                "setting": "smoothing",
                "source": "guide",
                "choices": [
                    {"key": "off", "length": {"packets": 0}},
                    {"key": "on", "length": {"packets": 4}},
                ],
                "ways": [{"by": "menu", "path": ["Setup", "Response"]}, way],
            }
        ]
    }


RULE: Rule[FixtureReading] = Rule(
    name="smoothing-by-hand-only",
    severity="warning",
    summary="In a mode, smoothing can be changed, but only with a hand on the fixture.",
    checks=(
        "Each mode of a fixture whose smoothing can be changed: that a range of the mode sets it, or that "
        "a way over RDM with its values is recorded. Whether RDM reaches a unit is the rig's to say."
    ),
    why=(
        "Between two setups nobody climbs to forty fixtures. What only the menu changes must be right before "
        "they are hung, or one shot's compromise is every shot's."
    ),
    bad=Example("A menu, and the maker's app.", _example({"by": "app"})),
    good=Example(
        "The same menu, and RDM.",
        _example({"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "on": 1}}),
    ),
    references=("common practice, no source",),
    check=in_every_mode(faults_in_mode),
)
