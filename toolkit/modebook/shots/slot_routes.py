"""Roads by a slot of the mode that a unit is patched in: what is sent, held, needed first, sent after."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from modebook.documents.control_values import hazards_beside
from modebook.documents.modes import Condition, Parameter, Range
from modebook.documents.policy import Policy
from modebook.documents.settings import Choice, Setting
from modebook.documents.ways import SlotWay, slot_ways
from modebook.rig.reading import PatchedRow
from modebook.shots.located import Located, Places, places
from modebook.shots.route import Byte, Kept, Route
from modebook.shots.slot_values import (
    Rest,
    always_rules,
    between,
    needs_of,
    rest_of,
    safe_value,
    top_of,
    value_for_need,
    value_in_span,
)
from modebook.words.parameters import PARAMETERS
from modebook.words.ranges import Hazard

DARK: tuple[Hazard, ...] = ("reset", "lamp off", "blackout", "calibration")
MOVING: tuple[Hazard, ...] = ("reset", "calibration", "movement", "hoist")


@dataclass(frozen=True, slots=True)
class Overruled:
    """What slots of the mode do to a setting that is set by another road."""

    always: bool
    """Some slot sets it at every value: nothing else can hold."""
    stand: tuple[Byte, ...]
    """The rests that must be sent so that it holds."""
    doubts: tuple[str, ...]
    defaults: tuple[tuple[str, tuple[str, ...]], ...] = ()
    """Slots without a known rest whose printed default sets it: their names, and the choices that agree."""

    def against(self, choice: str) -> str:
        """The slot that is known to overrule a choice at its printed default; empty where none is."""
        return next((name for name, agreeing in self.defaults if choice not in agreeing), "")


def slot_routes(rows: Sequence[PatchedRow], policy: Policy, at: Places) -> Iterator[Route]:
    """Every road by a slot of a unit's mode, to the choices of its record's settings; `at`: its places."""
    row = rows[0]
    assert row.mode is not None
    assert row.fixture is not None
    others: dict[tuple[str, int], Overruled] = {}
    settings = {setting.key: setting for setting in row.fixture.fixture.settings}
    for way in slot_ways(row.mode.mode):
        located, setting = at.of(way.parameter), settings.get(way.setting)
        if located is None or setting is None:
            continue
        for choice in setting.choices:
            value = _value(way, choice, located)
            if value is not None:
                made = _route(way, choice, value, located, at, policy, row)
                key = (setting.key, id(located))
                other = others[key] = others.get(key) or overruled(rows, setting, at, besides=located)
                if made is not None and not other.always and not other.against(choice.key):
                    yield replace(
                        made,
                        stand=(*made.stand, *other.stand),
                        rests=(*made.rests, *other.stand),
                        doubts=(*made.doubts, *other.doubts),
                    )


def overruled(
    rows: Sequence[PatchedRow], setting: Setting, at: Places | None = None, besides: Located | None = None
) -> Overruled:
    """What a unit's slots do to a setting that is set otherwise; `besides`: a slot that is left aside."""
    mode = rows[0].mode
    assert mode is not None
    at = at or places(rows)
    always, stand, doubts = False, list[Byte](), list[str]()
    defaults: list[tuple[str, tuple[str, ...]]] = []
    seen: set[int] = set()
    for way in slot_ways(mode.mode):
        located = at.of(way.parameter)
        if (
            way.setting != setting.key
            or located is None
            or id(way.parameter) in seen
            or (besides is not None and located.slots == besides.slots)
        ):
            continue
        seen.add(id(way.parameter))
        always = always or always_rules(way.parameter, setting.key)
        if not _overrules(way.parameter.ranges, setting.key):
            continue  # it acts once, when it is sent: a slot at rest changes nothing
        rest = rest_of(way.parameter, setting.key, located.ranges)
        if rest.value is None:
            doubts.append(f"the slot {way.parameter.name} may overrule it: {rest.why}")
            defaults += _at_default(way.parameter, setting)
        else:
            stand += located.bytes(rest.value)
    return Overruled(always, tuple(stand), tuple(doubts), tuple(defaults))


def _at_default(parameter: Parameter, setting: Setting) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The slot's name, and the choices that what it sets at its printed default agrees with."""
    default = parameter.default
    if default is None or parameter.when:
        return
    for piece in parameter.ranges:
        to = (piece.sets or {}).get(setting.key)
        if to is None or piece.needs or not piece.from_ <= default <= piece.to:
            continue
        if isinstance(to, str):
            yield parameter.name, (to,)
        else:
            agreeing = (one.key for one in setting.choices if value_in_span(piece, to, one) == default)
            yield parameter.name, tuple(agreeing)


def _overrules(ranges: Sequence[Range], setting: str) -> bool:
    """Whether some range sets a setting for as long as it is sent, or may."""
    return any(setting in (r.sets or {}) and r.kept not in ("until power off", "stored") for r in ranges)


def _value(way: SlotWay, choice: Choice, located: Located) -> int | None:
    """The value that leads to a choice; None where this range does not."""
    if way.span is not None:
        return value_in_span(way.piece, way.span, choice)
    return safe_value(way.piece, located.ranges) if way.choice == choice.key else None


def _route(
    way: SlotWay, choice: Choice, value: int, located: Located, at: Places, policy: Policy, row: PatchedRow
) -> Route | None:
    piece, parameter = way.piece, way.parameter
    rest = rest_of(parameter, way.setting, located.ranges)
    words, first, doubts, cautions, fading = _needs(way.needs, at, located.part)
    if fading and piece.kept == "while sent":
        return None  # it would act only as long as no cue moves what it needs
    stands = (piece.kept in ("while sent", None) and not fading) or rest.value is None
    stand = (*first, *located.bytes(value)) if stands and not fading else ()
    rests: tuple[Byte, ...] = ()
    if not stand and rest.value is not None and _overrules(located.ranges, way.setting):
        stand = rests = located.bytes(rest.value)
    if piece.hold_s is None and piece.kept != "while sent":
        doubts.append("no hold is printed: try how long it must be sent")
    if way.span is not None:
        doubts.append("a value within a continuous range, taken as even: look at what the fixture shows")
    then = _then(piece, rest, rest.value is None)
    if piece.kept is None:
        doubts.append("whether it is kept is not printed: try it without the value, and after power off")
    if rest.value is None:
        doubts.append(f"what to send afterwards is not known: {rest.why}")
    return Route(
        by="slot",
        setting=way.setting,
        choice=choice.key,
        cost=policy["change-cost-slot"].value,
        seconds=policy["change-time-slot"].value + (piece.hold_s or 0.0),
        kept=_kept(piece),
        bytes=located.bytes(value),
        hold_s=piece.hold_s,
        needs=tuple(words),
        needs_bytes=tuple(first),
        then=then,
        then_bytes=() if stands or rest.value is None else located.bytes(rest.value),
        stand=stand,
        rests=rests,
        needs_settings=tuple(
            (need.setting, tuple(need.choices or ())) for need in way.needs if need.setting is not None
        ),
        position=row.unit.position,
        reach=row.reach or "",
        warnings=(*cautions, *_warnings(located, piece, value, rest)),
        doubts=tuple(doubts),
    )


def _kept(piece: Range) -> Kept:
    return piece.kept or "unknown"


def _then(piece: Range, rest: Rest, unknown_rest: bool) -> str:
    back = "" if unknown_rest else f"back to {rest.value}: {rest.why}"
    if piece.kept == "while sent":
        return "keep sending it: it acts only while sent" + (f"; no longer wanted, {back}" if back else "")
    if unknown_rest:
        return f"leave it there: {rest.why}"
    if piece.kept is None:
        return f"keep sending it until it is tried that it stays without; then {back}"
    return back


def _needs(
    needs: Sequence[Condition], at: Places, part: str | None
) -> tuple[list[str], list[Byte], list[str], list[str], bool]:
    """In words, as bytes, what is in doubt, cautions, and whether cues move what is needed."""
    words, first, doubts, cautions = list[str](), list[Byte](), list[str](), list[str]()
    fading = False
    for need in needs_of(needs):
        located = at.named(need.name, part)
        if need.low > need.high:
            doubts.append(f"the record asks for two values of {need.name} at once: read the manual again")
            continue
        if located is None:
            words.append(f"{need.name} at {need.low}" + (f"-{need.high}" if need.low != need.high else ""))
            doubts.append(f"{need.name} has no slot in this mode: see to it at the fixture")
            continue
        value = value_for_need(need, located.parameter)
        first += located.bytes(value)
        words.append(f"{need.name} at {_told(value, located)}")
        meant = PARAMETERS[located.parameter.parameter]
        fading = fading or meant.continuous
        if meant.family == "intensity":
            cautions.append("the light goes out: the floor warned first, nobody on a ladder relies on it")
        elif meant.family == "movement":
            cautions.append("it moves: people clear of it, the floor warned first")
    for other in needs:
        if other.setting is not None:
            words.append(f"{other.setting} set to {' or '.join(other.choices or ())}")
        if other.given:
            words.append(other.given)
            doubts.append(f"only while {other.given}: look at the fixture")
    return words, first, doubts, cautions, fading


def _told(value: int, located: Located) -> str:
    family = PARAMETERS[located.parameter.parameter].family
    if value == 0 and family == "intensity" and not located.parameter.ranges:
        return "zero"
    return "full" if value == top_of(located.parameter) and not located.parameter.ranges else str(value)


def _warnings(located: Located, piece: Range, value: int, rest: Rest) -> Iterator[str]:
    hazard = piece.hazard
    if hazard in MOVING:
        yield f"{hazard}: it moves; people clear of it, the floor warned first"
    if hazard in DARK:
        yield f"{hazard}: the light may go out or flash; nobody on a ladder relies on it"
    if hazard and hazard not in (*MOVING, *DARK):
        yield f"{hazard}: qualified people first"
    beside = hazards_beside(located.parameter, piece)
    for other in beside:
        yield f"{other.hazard} lies right beside it, at {other.from_}-{other.to}: send exactly {value}"
    if rest.value is not None:
        for other in between(rest.value, value, located.ranges):
            if not any(other is one for one in beside):
                where = f"{other.from_}-{other.to}"
                yield f"{other.hazard} lies on the way, at {where}: in zero time, never through a fade"
