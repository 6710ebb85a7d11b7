"""From a fixture's settings to rows: choices, ways by hand and over RDM, and each mode's ways by slot."""

from __future__ import annotations

from dataclasses import dataclass, field

from modebook.checks.reading import ModeReading
from modebook.documents.fixture import Fixture
from modebook.documents.modes import Span
from modebook.documents.settings import Choice, Length, Setting, Way
from modebook.documents.ways import SmoothingBy, is_smoothing, reached_by
from modebook.store.values import NO_SPAN, Row, Rows, as_json, in_words


@dataclass(slots=True)
class Settings:
    """What the modes need to know of their fixture's settings."""

    ids: dict[str, str] = field(default_factory=dict)
    """The row of each setting, by its key."""
    smoothing: set[str] = field(default_factory=set)
    """The keys of those that decide how much the fixture smooths, without those that say `none`."""
    says_none: bool = False
    """Whether a source says that there is no smoothing."""
    by: set[str] = field(default_factory=set)
    """The ways other than slots that lead to a smoothing."""
    lengths: dict[tuple[str, str], list[str]] = field(default_factory=dict)
    """The lengths of each smoothing choice, by setting and choice, as marks write them."""
    reached: set[tuple[str, str, str]] = field(default_factory=set)
    """Way, setting and choice of every smoothing choice that a way other than a slot reaches."""


def setting_rows(rows: Rows, fixture: Fixture, identity: str, refresh_hz: float) -> Settings:
    """Add the rows of a fixture's settings, choices and ways; slots' ways follow with each mode.

    `refresh_hz`: packets a second at which lengths in seconds are counted in packets.
    """
    known = Settings()
    rows["settings"], rows["choices"], rows["ways"] = [], [], []
    for setting in sorted(fixture.settings, key=lambda setting: setting.key):
        key = setting.key
        setting_id = f"{identity}:{key}"
        known.ids[key] = setting_id
        smooths = is_smoothing(setting)
        rows["settings"].append(
            (
                setting_id,
                identity,
                key,
                setting.setting,
                setting.label,
                " ".join(setting.acts_on) or None,
                int(setting.none),
                int(smooths),
                setting.source,
                setting.note,
            )
        )
        rows["choices"].extend(
            sorted((_choice_row(choice, setting_id, refresh_hz) for choice in setting.choices), key=_key)
        )
        if smooths:
            _note_smoothing(known, setting, key, refresh_hz)
        _way_rows(rows["ways"], setting, setting_id)
    return known


def slot_way_rows(
    rows: Rows, mode: ModeReading, mode_id: str, names: dict[str, str], settings: Settings
) -> list[SmoothingBy]:
    """Add the ways by slot that a mode offers; return how its smoothing can be changed (see ways)."""
    by_slot = False
    ways = rows["ways"]
    short = mode_id.partition("#")[2]
    seen: dict[tuple[str, str, str], int] = {}
    for way in mode.slot_ways:
        setting_id = settings.ids.get(way.setting)
        by_slot = by_slot or way.setting in settings.smoothing
        if setting_id is None:
            continue  # a setting that the document does not have: a finding, and no way to anything
        piece, span = way.piece, way.span
        name = names[way.pointer.rpartition("/ranges/")[0]]
        place = f"{short}/{name}/{piece.from_}-{piece.to}"
        key = (setting_id, way.choice or "", place)
        nth = seen[key] = seen.get(key, 0) + 1
        ways.append(
            (
                setting_id,
                way.choice or "",
                "slot",
                place,
                nth,
                mode_id,
                name,
                piece.from_,
                piece.to,
                piece.hold_s,
                piece.kept,
                in_words(way.needs) if way.needs else None,
                *(NO_SPAN if span is None else _span(span)),
                None,
                None,
                None,
                None,
                None,
                piece.source,
                piece.note,
            )
        )
    if not settings.smoothing:
        return ["none"] if settings.says_none else ["unknown"]
    order: tuple[SmoothingBy, ...] = ("slot", "rdm", "menu", "app", "page")
    return [by for by in order if (by == "slot" and by_slot) or by in settings.by] or ["unknown"]


def packets_of(length: Length, refresh_hz: float) -> list[str]:
    """A length in packets as marks write it, rise and fall apart.

    Exact where the maker counts packets; seconds are counted at `refresh_hz` and rounded to whole packets.
    """
    told: list[str] = []
    for one in length.durations:
        packets = one.packets if one.packets is not None else round((one.seconds or 0.0) * refresh_hz)
        told.append(f"{packets:g}")
    return list(dict.fromkeys(told))


def _note_smoothing(known: Settings, setting: Setting, key: str, refresh_hz: float) -> None:
    if setting.none:
        known.says_none = True
        return
    known.smoothing.add(setting.key)
    for choice in setting.choices:
        if choice.length is not None:
            known.lengths[key, choice.key] = packets_of(choice.length, refresh_hz)
    for way in setting.ways:
        if way.by != "rdm" or way.values:
            known.by.add(way.by)
        known.reached.update((way.by, key, choice) for choice in reached_by(way, setting))


def _choice_row(choice: Choice, setting_id: str, refresh_hz: float) -> Row:
    length = choice.length
    rise, fall = (length.rise, length.fall) if length else (None, None)
    return (
        setting_id,
        choice.key,
        choice.label,
        int(choice.factory),
        length.packets if length else None,
        length.seconds if length else None,
        rise.packets if rise else None,
        rise.seconds if rise else None,
        fall.packets if fall else None,
        fall.seconds if fall else None,
        length.longest_packets(refresh_hz) if length else None,
        length.measures if length else None,
        choice.method,
        choice.rate_percent_per_s,
        choice.curve,
        as_json(choice.points) if choice.points else None,
        choice.frequency_hz,
        choice.given,
        choice.measured.model_dump_json(exclude_unset=True) if choice.measured else None,
        choice.source,
        choice.note,
    )


def _way_rows(ways: list[Row], setting: Setting, setting_id: str) -> None:
    seen: dict[tuple[str, str, str], int] = {}
    for way in setting.ways:
        place = way.pid or "" if way.by == "rdm" else " > ".join(way.path or ())
        for choice in reached_by(way, setting) or [""]:
            key = (choice, way.by, place)
            nth = seen[key] = seen.get(key, 0) + 1
            ways.append(
                (
                    setting_id,
                    *key,
                    nth,
                    None,
                    None,
                    None,
                    None,
                    None,
                    way.kept,
                    None,
                    *NO_SPAN,
                    way.pid,
                    way.size,
                    (way.values or {}).get(choice),
                    _locked(way),
                    way.firmware,
                    way.source,
                    way.note,
                )
            )


def _locked(way: Way) -> str | None:
    if way.locked is None or isinstance(way.locked, str):
        return way.locked
    return "yes" if way.locked else "no"


def _span(span: Span) -> tuple[float, float, str]:
    return span.from_, span.to, span.unit


def _key(row: Row) -> str:
    return str(row[1])
