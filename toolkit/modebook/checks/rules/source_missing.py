"""source-missing: a source is named that the document does not have, or a fact has no origin."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._text import mode_told, perhaps
from modebook.documents.layout import Holder
from modebook.documents.modes import Block, Mode, Span
from modebook.documents.settings import Setting

_ORIGIN_HELP = "name its source, or record the source first"


def check(reading: FixtureReading) -> Sequence[Fault]:
    """The source keys that nothing stands behind, and the facts that name none."""
    known = {source.key for source in reading.fixture.sources}
    found: list[Fault] = []
    for mode in reading.modes:
        record = mode.mode
        if (
            (record.source is not None and record.source not in known)
            or not mode.survey.sources <= known
            or not (mode.plain or _cells_are_known(record, known))
        ):
            found += [_unknown(key, pointer, known) for key, pointer in _named(mode) if key not in known]
        if record.source is None and len(known) > 1:
            found.append(
                Fault(
                    mode.pointer,
                    f"the mode {mode_told(record)} does not say which of {len(known)} sources it was read "
                    "from",
                    {"sources": sorted(known)},
                    "give the mode its `source`",
                    "warning",
                )
            )
    fixture = reading.fixture
    for index, setting in enumerate(fixture.settings):
        if not _has_origins(setting, known):
            found += _in_setting(setting, f"/settings/{index}", known)
    origins = [(f"/wheels/{i}/source", wheel.source) for i, wheel in enumerate(fixture.wheels)]
    origins += [(f"/emitters/{i}/source", emitter.source) for i, emitter in enumerate(fixture.emitters)]
    found += [_unknown(key, at, known) for at, key in origins if key is not None and key not in known]
    if not known and fixture.standing != "draft":
        found.append(
            Fault(
                "/standing",
                f"the record stands as {fixture.standing}, but names no source at all",
                {"standing": fixture.standing},
                "record the manual that it was read from under `sources`",
                "warning",
            )
        )
    return found


def _cells_are_known(mode: Mode, known: set[str]) -> bool:
    holders: list[Mode | Block] = [mode, *mode.parts]
    return all(key in known for holder in holders for key, _ in _in_cells(holder, ""))


def _has_origins(setting: Setting, known: set[str]) -> bool:
    """Whether a setting and all its choices name known sources, and its ways none; False: look closer."""
    source = setting.source
    if source is None:
        if setting.none:
            return False
    elif source not in known:
        return False
    for choice in setting.choices:
        if choice.source not in known and (choice.source is not None or source is None):
            return False
    return all(way.source is None or way.source in known for way in setting.ways)


def _in_setting(setting: Setting, pointer: str, known: set[str]) -> Iterator[Fault]:
    if setting.source is not None:
        if setting.source not in known:
            yield _unknown(setting.source, f"{pointer}/source", known)
    elif setting.none:
        yield Fault(
            pointer,
            f"that there is no {setting.key} is a fact, and names no source",
            {"setting": setting.key},
            _ORIGIN_HELP,
            "warning",
        )
    for index, choice in enumerate(setting.choices):
        if choice.source is not None:
            if choice.source not in known:
                yield _unknown(choice.source, f"{pointer}/choices/{index}/source", known)
        elif setting.source is None and (choice.length is not None or choice.factory):
            what = "length" if choice.length is not None else "place as the factory choice"
            yield Fault(
                f"{pointer}/choices/{index}",
                f"the {what} of {choice.key} in {setting.key} names no source",
                {"setting": setting.key, "choice": choice.key},
                _ORIGIN_HELP,
                "warning",
            )
    for index, way in enumerate(setting.ways):
        if way.source is not None and way.source not in known:
            yield _unknown(way.source, f"{pointer}/ways/{index}/source", known)


def _unknown(key: str, pointer: str, known: set[str]) -> Fault:
    return Fault(pointer, f"the document has no source {key!r}", {"source": key}, perhaps(key, known))


def _named(mode: ModeReading) -> Iterator[tuple[str, str]]:
    """Every source key that a mode names, with its pointer."""
    if mode.mode.source is not None:
        yield mode.mode.source, f"{mode.pointer}/source"
    yield from _in_cells(mode.mode, mode.pointer)
    for index, part in enumerate(mode.mode.parts):
        yield from _in_cells(part, f"{mode.pointer}/parts/{index}")
    for parameter, pointer in mode.parameters:
        if parameter.source is not None:
            yield parameter.source, f"{pointer}/source"
        yield from _in_span(parameter.span, f"{pointer}/span")
        for index, piece in enumerate(parameter.ranges):
            if piece.source is not None:
                yield piece.source, f"{pointer}/ranges/{index}/source"
            yield from _in_span(piece.span, f"{pointer}/ranges/{index}/span")


def _in_cells(holder: Holder, pointer: str) -> Iterator[tuple[str, str]]:
    for index, block in enumerate(holder.cells):
        if block.source is not None:
            yield block.source, f"{pointer}/cells/{index}/source"
        yield from _in_cells(block, f"{pointer}/cells/{index}")


def _in_span(span: Span | list[Span] | None, pointer: str) -> Iterator[tuple[str, str]]:
    if isinstance(span, list):
        for index, one in enumerate(span):
            if one.source is not None:
                yield one.source, f"{pointer}/{index}/source"
    elif span is not None and span.source is not None:
        yield span.source, f"{pointer}/source"


RULE: Rule[FixtureReading] = Rule(
    name="source-missing",
    severity="error",
    summary="A source is named that the document does not have, or a fact has no origin.",
    checks=(
        "Every source key in modes, cells, parameters, ranges, spans, settings, choices, ways, wheels and "
        "emitters against the document's sources: a key without a source is an error. A warning where a "
        "fact has no origin: a choice with a length or marked as factory whose setting names none either; "
        "a setting that the fixture is said not to have; a mode of a document with several sources that "
        "does not say which; a record above draft without any source. With one source in all, a mode is "
        "taken from it."
    ),
    why=(
        "A length without a source is a rumor: nobody can look it up again, nor tell which of two that "
        "disagree is the newer."
    ),
    bad=Example(
        "The mode was read from a guide that the document does not list.", {"modes": [{"source": "guide-b"}]}
    ),
    good=Example("The guide is listed.", {"modes": [{"source": "guide"}]}),
    references=("common practice, no source",),
    check=check,
)
