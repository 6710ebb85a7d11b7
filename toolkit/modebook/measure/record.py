"""Writes a measured length beside the maker's words in a fixture's record; never over them."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from modebook.documents.fixture import Fixture
from modebook.documents.settings import Choice, Measured, Setting
from modebook.measure.answer import Answer
from modebook.measure.errors import MeasureError
from modebook.measure.judgement import Judgement
from modebook.shelf.canonical import as_written, canonical
from modebook.shelf.reading import read_fixture
from modebook.shelf.writing import write_whole

PACKET_PLACES = 2
"""Decimals of a length that is written: the data hold no more."""


def measured_of(answers: Sequence[Answer], judgement: Judgement, by: str, date: str) -> dict[str, Any]:
    """Give what a record keeps of a measurement, as plain data in the form of `Measured`.

    date: such as 2026-05-31. Raises MeasureError where the clips tell no length: nothing is written then.
    """
    if judgement.length_packets is None or judgement.interval_packets is None:
        raise MeasureError(
            answers[0].trace.path,
            f"tells no length, so nothing is written: {judgement.why}",
            remedy=judgement.help[0] if judgement.help else "",
        )
    first = answers[0]
    method = judgement.method
    length: dict[str, Any] = {"packets": round(judgement.length_packets, PACKET_PLACES)}
    if method == "lag":
        length["measures"] = "time constant"
    told: dict[str, Any] = {"length": length}
    if method is not None and method != "none":
        told["method"] = method
    low, high = judgement.interval_packets
    told["interval_packets"] = [round(low, PACKET_PLACES), round(high, PACKET_PLACES)]
    delays = [answer.delay_s for answer in answers if answer.delay_s is not None]
    if delays and method != "interpolate":
        told["delay_s"] = round(max(sum(delays) / len(delays), 0.0), 4)
    if first.refresh_hz is not None:
        told["refresh_hz"] = first.refresh_hz
    if first.trace.fps is not None:
        told["camera_fps"] = round(first.trace.fps, 3)
    told["date"] = date
    told["by"] = by
    told["how"] = _how(answers)
    if first.trace.sha256 is not None:
        told["file_sha256"] = first.trace.sha256
    return told


def _how(answers: Sequence[Answer]) -> str:
    events = [name for answer in answers for name in answer.events]
    counts = [f"{events.count(name)} {name}" for name in dict.fromkeys(events)]
    what = "filmed" if answers[0].trace.kind == "clip" else "logged"
    repeats = f" over {len(answers)} files, hash of the first" if len(answers) > 1 else ""
    return f"{what}{repeats}: {'; '.join(counts)}"


def write_measured(path: Path, setting: str | None, choice: str, measured: dict[str, Any]) -> Path:
    """Put `measured` on a choice of the document at a path, and give the path.

    Everything else stays as it is; what was measured before is replaced. Raises MeasureError where the
    choice is not there or stands in several settings, ShelfError where the file cannot be read or written.
    """
    fixture = read_fixture(path)
    place, index = _place(fixture, path, setting, choice)
    document = as_written(fixture)
    old = document["settings"][place]["choices"][index]
    names = list(Choice.model_fields)
    changed = {**old, "measured": measured}
    document["settings"][place]["choices"][index] = {
        key: changed[key] for key in sorted(changed, key=names.index)
    }
    from pydantic import ValidationError

    try:
        Measured.model_validate(measured)
        made = Fixture.model_validate(document)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        where = ".".join(str(part) for part in first["loc"])
        raise MeasureError(
            path, f"{where}: {first['msg']}", remedy="give such as --date 2026-05-31"
        ) from error
    write_whole(path, canonical(made))
    return path


def _place(fixture: Fixture, path: Path, setting: str | None, choice: str) -> tuple[int, int]:
    found: list[tuple[int, int]] = []
    for n, one in enumerate(fixture.settings):
        if setting is not None and one.key != setting:
            continue
        found += [(n, k) for k, each in enumerate(one.choices) if each.key == choice and _may_smooth(one)]
    if len(found) == 1:
        return found[0]
    if found:
        keys = ", ".join(fixture.settings[n].key for n, _ in found)
        raise MeasureError(
            path, f"several settings have a choice {choice!r}", remedy=f"give --setting: {keys}"
        )
    there = ", ".join(
        f"{one.key}: {', '.join(each.key for each in one.choices)}"
        for one in fixture.settings
        if _may_smooth(one) and one.choices
    )
    raise MeasureError(path, f"has no smoothing choice {choice!r}", remedy=f"it has {there or 'none'}")


def _may_smooth(setting: Setting) -> bool:
    return setting.setting in ("smoothing", "dimmer-curve", "movement-speed", "output-mode", "other")
