"""Completes a chart sheet that a person typed: words for printed names, footprints, settings."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from modebook.intake.sheet_layout import Json
from modebook.words.parameters import PARAMETERS
from modebook.words.settings import SETTING_KINDS

if TYPE_CHECKING:
    from modebook.intake.draft import About


def finish_typed(document: Json, blocks: set[str], about: About, places: Mapping[int, str]) -> Json:
    """The document with what a typed sheet may leave out. A sheet that was written out lacks nothing.

    places: for the id of each parameter and range, the row of the sheet at which it stands.
    """
    made = dict(document)
    for key, value in (
        ("maker", about.maker),
        ("model", about.model),
        ("category", about.category),
        ("standing", "draft"),
    ):
        made.setdefault(key, value)
    if "source" not in blocks and about.source_title:
        made["sources"] = [{"key": "chart", "title": about.source_title}]
    doubts: list[Json] = []
    for index, mode in enumerate(made.get("modes", [])):
        _finish_mode(mode, f"/modes/{index}", doubts, places)
    if "setting" not in blocks:
        settings = _settings(made)
        if settings:
            made["settings"] = settings
    if doubts:
        made["doubts"] = [*made.get("doubts", []), *doubts]
        made["standing"] = "draft"
    return made


def _finish_mode(mode: Json, pointer: str, doubts: list[Json], places: Mapping[int, str]) -> None:
    for parameter, at in _parameters(mode, pointer):
        about = {"pointer": at, **_at(places, parameter)}
        if all(isinstance(slot, int) for slot in parameter.get("slots", [])):
            about["slots"] = parameter.get("slots", [])
        word = parameter.get("parameter")
        if isinstance(word, str) and word not in PARAMETERS:
            from modebook.intake.names import read_name

            name = read_name(word)
            parameter.setdefault("label", word)
            parameter["parameter"] = name.word or "other"
            if not name.sure:
                why = (
                    "the name is not in the list of synonyms"
                    if name.word is None
                    else f"the name may mean {name.word}; that is not sure"
                )
                doubts.append({**about, "printed": word, "read": parameter["parameter"], "why": why})
        elif word is None and "parameter" not in parameter:
            parameter["parameter"] = "other"
            doubts.append({**about, "read": "other", "why": "no parameter is named"})
        for number, entry in enumerate(parameter.get("ranges", [])):
            if "meaning" not in entry:
                entry["meaning"] = parameter.get("label") or parameter["parameter"]
                doubts.append(
                    {
                        **about,
                        "pointer": f"{at}/ranges/{number}",
                        **_at(places, entry),
                        "read": entry["meaning"],
                        "why": "no meaning is written",
                    }
                )
    if "footprint" not in mode:
        mode["footprint"] = max(
            (
                slot
                for p, _ in _parameters(mode, pointer)
                for slot in p.get("slots", [])
                if isinstance(slot, int)
            ),
            default=0,
        )
        for block in mode.get("cells", []):
            highest = max((s for p in block.get("parameters", []) for s in p.get("slots", [])), default=0)
            mode["footprint"] = max(
                mode["footprint"], block["first"] - 1 + (block["count"] - 1) * block["stride"] + highest
            )
    if "name" not in mode:
        mode["name"] = f"{mode['footprint']} slots"


def _at(places: Mapping[int, str], entry: Json) -> Json:
    return {"place": places[id(entry)]} if id(entry) in places else {}


def _parameters(holder: Json, pointer: str) -> Iterator[tuple[Json, str]]:
    for index, parameter in enumerate(holder.get("parameters", [])):
        yield parameter, f"{pointer}/parameters/{index}"
    for key in ("cells", "parts"):
        for index, inner in enumerate(holder.get(key, [])):
            yield from _parameters(inner, f"{pointer}/{key}/{index}")


def _settings(document: Json) -> list[Json]:
    found: dict[str, Json] = {}
    for index, mode in enumerate(document.get("modes", [])):
        for parameter, _ in _parameters(mode, f"/modes/{index}"):
            for entry in parameter.get("ranges", []):
                for key, to in entry.get("sets", {}).items():
                    setting = found.setdefault(
                        key, {"key": key, "setting": key if key in SETTING_KINDS else "other", "choices": []}
                    )
                    if isinstance(to, str) and all(choice["key"] != to for choice in setting["choices"]):
                        setting["choices"].append({"key": to})
    return list(found.values())
