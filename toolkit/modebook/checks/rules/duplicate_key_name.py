"""duplicate-key-name: two things bear one name, and what refers to it cannot tell which is meant."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._conditions import can_meet, existence
from modebook.checks.rules._text import mode_told
from modebook.checks.rules.mode_number_twice import told_apart
from modebook.documents.modes import Mode, Parameter

_REFERRING = frozenset({"conditioned", "naming"})


def check(reading: FixtureReading) -> Sequence[Fault]:
    """The names that stand twice where one is meant."""
    fixture = reading.fixture
    found: list[Fault] = []
    names = [(mode.name, mode.number) for mode in fixture.modes]
    if len(set(names)) != len(names):
        found += _modes(fixture.modes)
    if not _REFERRING.isdisjoint(reading.facts):
        for mode in reading.modes:
            if mode.survey.conditioned or mode.survey.naming:
                found += faults_in_mode(reading, mode)
    return found


def faults_in_mode(reading: FixtureReading, mode: ModeReading) -> Sequence[Fault]:
    """The names in conditions and `for` of a mode that several of its parameters bear at once."""
    found: list[Fault] = []
    told: set[str] = set()
    for index in sorted({*mode.survey.conditioned, *mode.survey.naming}):
        parameter = mode.written[index]
        for name, is_one in _referred(parameter):
            # `for` may mean all of a word; a condition looks at one parameter.
            if name in told or len(mode.by_name.get(name, ())) < 2:
                continue
            if name not in mode.survey.names and not is_one:
                continue
            meant = {id(one) for one in mode.by_name[name]}
            holder = _holder(mode.at(index)[1])
            candidates = [entry for entry in mode.parameters if id(entry[0]) in meant]
            near = [entry for entry in candidates if _holder(entry[1]) == holder]
            # Within a cell or a part its own parameter is meant.
            if len(near) != 1 and _ambiguous(mode, near or candidates):
                told.add(name)
                found.append(_two_parameters(name, near or candidates, mode.at(index)[1]))
    return found


def _referred(parameter: Parameter) -> Iterator[tuple[str, bool]]:
    """The names that a parameter refers to, and whether one parameter must be meant."""
    for name in parameter.for_ or ():
        yield name, False
    conditions = list(parameter.when or ())
    for piece in parameter.ranges:
        for name in piece.for_ or ():
            yield name, False
        conditions += piece.needs or ()
    for condition in conditions:
        if condition.parameter is not None:
            yield condition.parameter, True


def _ambiguous(mode: ModeReading, entries: list[tuple[Parameter, str]]) -> bool:
    """Whether two of the parameters exist at once: conditions that never meet tell them apart."""
    boxes = [existence(parameter, mode.by_name) for parameter, _ in entries]
    return any(can_meet(a, b) for i, a in enumerate(boxes) for b in boxes[:i])


def _two_parameters(name: str, entries: list[tuple[Parameter, str]], by: str) -> Fault:
    return Fault(
        entries[1][1],
        f"{len(entries)} parameters of this mode are called {name}, and {by} refers to one of them",
        {"name": name, "pointers": [pointer for _, pointer in entries], "referred_by": by},
        "give each a `key` of its own, and refer to that",
    )


def _modes(modes: Sequence[Mode]) -> Iterator[Fault]:
    seen: dict[tuple[str, int | None], list[tuple[int, Mode]]] = {}
    for index, mode in enumerate(modes):
        like = seen.setdefault((mode.name, mode.number), [])
        for first, other in like:
            if not told_apart(mode, other):
                yield Fault(
                    f"/modes/{index}/name",
                    f"two modes are called {mode_told(mode)}",
                    {"name": mode.name, "number": mode.number, "first": f"/modes/{first}"},
                    "correct one of them, or give both the menu state (`given`) that decides between them",
                )
                break
        like.append((index, mode))


def _holder(pointer: str) -> str:
    return pointer.rpartition("/parameters/")[0]


def _example(key: str | None) -> dict[str, object]:
    gobo: dict[str, object] = {
        "parameter": "gobo-wheel",
        "slots": [1],
        "ranges": [
            {"from": 0, "to": 9, "meaning": "Open", "does": "open"},
            {"from": 10, "to": 255, "meaning": "Gobos"},
        ],
    }
    second = gobo | {"slots": [2]}
    named = "gobo-wheel"
    if key is not None:
        second["key"] = named = key
    index = {
        "parameter": "gobo-index",
        "slots": [3, 4],
        "when": [{"parameter": named, "from": 10, "to": 255}],
    }
    return {"modes": [{"parameters": [gobo, second, index]}]}


RULE: Rule[FixtureReading] = Rule(
    name="duplicate-key-name",
    severity="error",
    summary="Two things bear one name, and what refers to it cannot tell which is meant.",
    checks=(
        "Modes of one name and number that neither menu states nor sources tell apart, and parameters of "
        "one mode that share a name which a condition or `for` refers to. Within a cell or a part its own "
        "parameter is meant; parameters whose conditions never hold at once may share a name; `for` may "
        "name all parameters of a word. That keys of settings, choices, sources, wheels and parts stand "
        "once is seen to when the document is read."
    ),
    why="A reference to a name that stands twice is followed to the wrong one half of the time.",
    bad=Example("Two gobo wheels without keys, and an index that needs one of them.", _example(None)),
    good=Example("The second wheel has a key, and the index refers to it.", _example("gobo-wheel-2")),
    references=("common practice, no source",),
    check=check,
)
