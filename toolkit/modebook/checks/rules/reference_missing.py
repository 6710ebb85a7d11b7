"""reference-missing: the document names a parameter, setting, choice or place that it does not have."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence, Set

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._pointers import points_at_something
from modebook.checks.rules._text import perhaps
from modebook.documents.fixture import Fixture
from modebook.documents.layout import Holder
from modebook.documents.modes import Condition, Range
from modebook.documents.settings import Setting

_Choices = Mapping[str, frozenset[str]]


def check(reading: FixtureReading) -> Sequence[Fault]:
    """The names of a document that nothing of it bears."""
    found: list[Fault] = []
    fixture = reading.fixture
    for mode in reading.modes:
        if not _is_sound(reading, mode):
            positions = frozenset(position.key for wheel in fixture.wheels for position in wheel.positions)
            found += _in_mode(mode, reading.choices, positions)
    for index, setting in enumerate(fixture.settings):
        if setting.ways:
            found += _in_ways(setting, f"/settings/{index}")
    if fixture.wheels:
        found += _in_wheels(fixture)
    if fixture.doubts:
        found += _in_doubts(fixture)
    return found


def _is_sound(reading: FixtureReading, mode: ModeReading) -> bool:
    """Whether the survey alone shows that every name is borne; False where a closer look is due."""
    survey = mode.survey
    if survey.conditioned or survey.positioned:
        return False
    for setting, places in survey.sets.items():
        known = reading.choices.get(setting)
        if known is None:
            return False
        for _, _, to in places:
            if isinstance(to, str) and to not in known:
                return False
    for index in survey.naming:
        names = mode.written[index].for_
        if names is None or not survey.names.issuperset(names) or index in survey.ranged:
            return False
    return True


def _in_mode(mode: ModeReading, choices: _Choices, positions: frozenset[str]) -> Iterator[Fault]:
    names = mode.by_name.keys() | frozenset(_more_names(mode))
    survey = mode.survey
    referring = {*survey.conditioned, *survey.naming, *survey.positioned}
    referring.update(index for places in survey.sets.values() for index, _, _ in places)
    for index in sorted(referring):
        parameter, pointer = mode.at(index)
        if parameter.for_:
            yield from _unknown_names(parameter.for_, f"{pointer}/for", names)
        yield from _in_conditions(parameter.when, f"{pointer}/when", names, choices)
        for at, piece in enumerate(parameter.ranges):
            yield from _in_range(piece, f"{pointer}/ranges/{at}", names, choices, positions)


def _more_names(mode: ModeReading) -> Iterator[str]:
    """What `for` may name besides parameters: what a range controls, cells and parts."""
    for index in mode.survey.ranged:
        for piece in mode.written[index].ranges:
            if piece.parameter is not None:
                yield piece.parameter
            if piece.key is not None:
                yield piece.key
    yield from _cell_keys(mode.mode)
    for part in mode.mode.parts:
        yield part.key
        yield from _cell_keys(part)


def _cell_keys(holder: Holder) -> Iterator[str]:
    for block in holder.cells:
        if block.key is not None:
            yield block.key
        yield from _cell_keys(block)


def _in_range(
    piece: Range, pointer: str, names: Set[str], choices: _Choices, positions: frozenset[str]
) -> Iterator[Fault]:
    if piece.for_:
        yield from _unknown_names(piece.for_, f"{pointer}/for", names)
    yield from _in_conditions(piece.needs, f"{pointer}/needs", names, choices)
    if piece.position is not None and piece.position not in positions:
        yield _fault(f"{pointer}/position", "wheel position", piece.position, positions)
    for setting, to in (piece.sets or {}).items():
        if setting not in choices:
            yield _fault(f"{pointer}/sets", "setting", setting, choices)
        elif isinstance(to, str) and to not in choices[setting]:
            yield _fault(f"{pointer}/sets/{setting}", f"choice of {setting}", to, choices[setting])


def _unknown_names(wanted: Iterable[str], pointer: str, names: Set[str]) -> Iterator[Fault]:
    for index, name in enumerate(wanted):
        if name not in names:
            yield _fault(f"{pointer}/{index}", "parameter in this mode", name, names)


def _in_conditions(
    conditions: Sequence[Condition] | None, pointer: str, names: Set[str], choices: _Choices
) -> Iterator[Fault]:
    for index, condition in enumerate(conditions or ()):
        at = f"{pointer}/{index}"
        if condition.parameter is not None and condition.parameter not in names:
            yield _fault(f"{at}/parameter", "parameter in this mode", condition.parameter, names)
        if condition.setting is None:
            continue
        if condition.setting not in choices:
            yield _fault(f"{at}/setting", "setting", condition.setting, choices)
            continue
        known = choices[condition.setting]
        for i, choice in enumerate(condition.choices or ()):
            if choice not in known:
                yield _fault(f"{at}/choices/{i}", f"choice of {condition.setting}", choice, known)


def _in_ways(setting: Setting, pointer: str) -> Iterator[Fault]:
    known = {choice.key for choice in setting.choices}
    for index, way in enumerate(setting.ways):
        for choice in way.values or ():
            if choice not in known:
                at = f"{pointer}/ways/{index}/values/{choice}"
                yield _fault(at, f"choice of {setting.key}", choice, known)
        for i, choice in enumerate(way.choices or ()):
            if choice not in known:
                yield _fault(f"{pointer}/ways/{index}/choices/{i}", f"choice of {setting.key}", choice, known)


def _in_wheels(fixture: Fixture) -> Iterator[Fault]:
    for index, wheel in enumerate(fixture.wheels):
        known = {position.key for position in wheel.positions}
        for at, position in enumerate(wheel.positions):
            for i, other in enumerate(position.between or ()):
                if other not in known:
                    place = f"/wheels/{index}/positions/{at}/between/{i}"
                    yield _fault(place, f"position of {wheel.key}", other, known)


def _in_doubts(fixture: Fixture) -> Iterator[Fault]:
    for index, doubt in enumerate(fixture.doubts):
        # A settled doubt may be about a place that its decision took away.
        if doubt.settled is None and not points_at_something(fixture, doubt.pointer):
            yield Fault(
                f"/doubts/{index}/pointer",
                f"the doubt is about {doubt.pointer}, where the document has nothing",
                {"wanted": doubt.pointer},
                "correct the pointer: it counts from 0, as /modes/0/parameters/2",
            )


def _fault(pointer: str, kind: str, wanted: str, known: Iterable[str]) -> Fault:
    return Fault(pointer, f"there is no {kind} called {wanted}", {"wanted": wanted}, perhaps(wanted, known))


def _example(choice: str) -> dict[str, object]:
    control: dict[str, object] = {
        "parameter": "control",
        "slots": [1],
        "ranges": [
            {"from": 0, "to": 127, "meaning": "Response: Fast", "sets": {"smoothing": "off"}},
            {"from": 128, "to": 255, "meaning": "Response: Smooth", "sets": {"smoothing": choice}},
        ],
    }
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
                "ways": [{"by": "menu", "path": ["Setup", "Response"]}],
            }
        ],
        "modes": [{"parameters": [control]}],
    }


RULE: Rule[FixtureReading] = Rule(
    name="reference-missing",
    severity="error",
    summary="The document names a parameter, setting, choice, position or place that it does not have.",
    checks=(
        "The names in `when`, `needs`, `for`, `sets` and `position`, the choices in the values of ways, "
        "the neighbors of split wheel positions, and the places of open doubts. A parameter is called by "
        "its key, or by its word where it has no key; `for` may also name cells, parts, and what a range "
        "controls."
    ),
    why=(
        "A range that sets a choice nobody recorded leads nowhere: searches and plans would pass over it "
        "without a word."
    ),
    bad=Example("The control slot sets a choice that the setting does not have.", _example("smooth")),
    good=Example("Both ranges set choices that there are.", _example("on")),
    references=("common practice, no source",),
    check=check,
)
