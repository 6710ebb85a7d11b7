"""What strategies for documents are made of: figures, words, and the settings of a fixture.

Each strategy names every field of its model, and the import fails where a model has gained or lost one, so
that a new field cannot stay out of the tests.
"""

from __future__ import annotations

from typing import Any, get_args

from hypothesis import strategies as st

from modebook.documents.base import Part
from modebook.documents.settings import Choice, Duration, Length, Measured, Setting, Way
from modebook.words.families import Family
from modebook.words.settings import Method, SettingKind

Json = dict[str, Any]

SOURCES = ("guide", "sheet")
SETTINGS = ("smoothing", "color-smoothing", "curve")
CHOICES = ("off", "short", "long")


def piece(
    model: type[Part],
    required: dict[str, st.SearchStrategy[Any]],
    optional: dict[str, st.SearchStrategy[Any]],
    elsewhere: tuple[str, ...] = (),
) -> st.SearchStrategy[Json]:
    """An object of a model; `elsewhere` names the fields that the caller fills in."""
    fields = {field.alias or name for name, field in model.model_fields.items()}
    told = {*required, *optional, *elsewhere}
    assert fields == told, f"{model.__name__}: {sorted(fields ^ told)} is missing here or no field any more"
    return st.fixed_dictionaries(required, optional=optional)


def words(literal: Any) -> st.SearchStrategy[str]:
    return st.sampled_from(get_args(literal))


KEYS = st.sampled_from(("a", "b2", "gobo-wheel-2", "0")) | st.text("abcxyz019", min_size=1, max_size=8)
_AWKWARD = ("Full", 'The "key": {x}', "50 : 60, [°]", "a\\b\n\tc", "Île ’ 灯", "\x7f\u2028")
TEXTS = st.sampled_from(_AWKWARD) | st.text(st.characters(codec="utf-8"), min_size=1, max_size=12)
_MAKERS = ("Ardenfell", "Bryn Olwen", "Çavuş", "№")
NAMES = st.builds("{} {}".format, st.sampled_from(_MAKERS), st.integers(0, 99))
DATES = st.sampled_from(("2024", "2026-03", "2025-11-30"))
HEX = st.integers(0, 0xFFFF).map("0x{:04X}".format)
POINTERS = st.sampled_from(("", "/modes/0", "/modes/0/parameters/1/slots", "/a~1b/~0"))
SOURCE = st.sampled_from(SOURCES)
YES_NO = st.booleans()
COUNTS = st.integers(0, 600)
FIGURES = st.integers(-1000, 70_000) | st.floats(-1e6, 1e6, allow_nan=False)
POSITIVE = st.integers(1, 3000) | st.floats(0.001, 3000, allow_nan=False)
LENGTHS = st.integers(0, 100) | st.floats(0, 100, allow_nan=False)
SHARES = st.sampled_from((0, 1)) | st.floats(0, 1, allow_nan=False)


def durations() -> st.SearchStrategy[Json]:
    """Packets or seconds."""
    piece(Duration, {}, {}, ("packets", "seconds"))
    return st.fixed_dictionaries({"packets": LENGTHS}) | st.fixed_dictionaries({"seconds": LENGTHS})


def lengths() -> st.SearchStrategy[Json]:
    """Packets, seconds, or both rise and fall."""
    piece(Length, {}, {}, ("packets", "seconds", "rise", "fall", "measures"))
    counts = {"measures": st.sampled_from(("whole", "time constant", "10-90"))}
    in_packets = st.fixed_dictionaries({"packets": LENGTHS}, optional=counts)
    in_seconds = st.fixed_dictionaries({"seconds": LENGTHS}, optional=counts)
    return (
        in_packets
        | in_seconds
        | st.fixed_dictionaries({"rise": durations(), "fall": durations()}, optional=counts)
    )


_MEASURED = piece(
    Measured,
    {"length": lengths(), "date": DATES, "by": TEXTS},
    {
        "method": words(Method),
        "interval_packets": st.tuples(LENGTHS, LENGTHS).map(sorted),
        "delay_s": SHARES,
        "refresh_hz": POSITIVE,
        "camera_fps": POSITIVE,
        "how": TEXTS,
        "file_sha256": st.just("0f" * 32),
    },
)

_CHOICE = piece(
    Choice,
    {},
    {
        "label": TEXTS,
        "length": lengths(),
        "method": words(Method),
        "rate_percent_per_s": POSITIVE,
        "curve": st.sampled_from(("linear", "square", "s", "inverse-square")),
        "points": st.lists(st.tuples(SHARES, SHARES).map(list), max_size=3),
        "frequency_hz": POSITIVE,
        "factory": YES_NO,
        "given": TEXTS,
        "source": SOURCE,
        "measured": _MEASURED,
        "note": TEXTS,
    },
    elsewhere=("key",),
)


def choices() -> st.SearchStrategy[list[Json]]:
    """All the choices of a setting: those of CHOICES, in this order, so that ranges may refer to them."""
    return st.tuples(*(_CHOICE for _ in CHOICES)).map(
        lambda drawn: [{"key": key, **rest} for key, rest in zip(CHOICES, drawn, strict=True)]
    )


def ways() -> st.SearchStrategy[Json]:
    """A way of any kind with what belongs to its kind."""
    any_way: dict[str, st.SearchStrategy[Any]] = {
        "locked": YES_NO | TEXTS,
        "firmware": TEXTS,
        "kept": st.sampled_from(("until power off", "stored")),
        "source": SOURCE,
        "note": TEXTS,
    }
    values = st.dictionaries(st.sampled_from(CHOICES), st.integers(0, 255), max_size=3)
    rdm: dict[str, st.SearchStrategy[Any]] = {"pid": HEX, "size": st.integers(1, 231), "values": values}
    hand: dict[str, st.SearchStrategy[Any]] = {
        "path": st.lists(TEXTS, max_size=3),
        "choices": st.lists(st.sampled_from(CHOICES), unique=True),
    }
    by_hand = {"by": st.sampled_from(("menu", "app", "page"))}
    return piece(Way, {"by": st.just("rdm")}, {**any_way, **rdm}, tuple(hand)) | piece(
        Way, by_hand, {**any_way, **hand}, tuple(rdm)
    )


def settings(key: str = "smoothing") -> st.SearchStrategy[Json]:
    """A setting of any kind, with all of CHOICES or with none."""
    least = {"key": st.just(key), "setting": st.just("smoothing") | words(SettingKind)}
    more: dict[str, st.SearchStrategy[Any]] = {
        "label": TEXTS,
        "acts_on": st.lists(words(Family), unique=True),
        "source": SOURCE,
        "note": TEXTS,
    }
    whole = piece(
        Setting, {**least, "choices": choices()}, {**more, "ways": st.lists(ways(), max_size=3)}, ("none",)
    )
    return whole | piece(Setting, {**least, "none": st.just(True)}, more, ("choices", "ways"))
