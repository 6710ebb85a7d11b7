"""What a document means, apart from how it was written down: the form in which two are compared."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from modebook.intake.folding import fold

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture
    from modebook.documents.layout import Placed

Json = dict[str, Any]
PLACE = "#"
"""In a range's meaning: its place in the document's list, which is no part of what it means."""
_APART = frozenset({"source", "note", "place", "label", "key", "measured"})
"""Keys that say where something was read, or what it is called, and not what it does."""


class Reader:
    """One document, its references resolved so that keys chosen by different people do not count."""

    def __init__(self, fixture: Fixture) -> None:
        self.fixture = fixture
        self._settings = self._setting_names()

    def _setting_names(self) -> dict[str, str]:
        """Each setting's key as its kind, numbered where there are several of a kind."""
        kinds: dict[str, list[str]] = {}
        for setting in self.fixture.settings:
            kinds.setdefault(setting.setting, []).append(setting.key)
        return {
            key: kind if len(keys) == 1 else f"{kind} {number}"
            for kind, keys in kinds.items()
            for number, key in enumerate(keys, 1)
        }

    def _choice_name(self, setting_key: str, choice_key: str) -> str:
        for setting in self.fixture.settings:
            if setting.key == setting_key:
                for choice in setting.choices:
                    if choice.key == choice_key and choice.label:
                        return fold(choice.label)
        return choice_key.replace("-", " ")

    def settings(self) -> dict[str, tuple[int, Json]]:
        """Settings by kind, with choices by what they are called."""
        found: dict[str, tuple[int, Json]] = {}
        for index, setting in enumerate(self.fixture.settings):
            told = setting.model_dump(mode="json", by_alias=True, exclude_defaults=True)
            choices = {self._choice_name(setting.key, c["key"]): _without(c) for c in told.get("choices", [])}
            ways = []
            for way in told.get("ways", []):
                one = _without(way)
                if "values" in one:
                    one["values"] = {
                        self._choice_name(setting.key, key): n for key, n in sorted(one["values"].items())
                    }
                if "choices" in one:
                    one["choices"] = sorted(self._choice_name(setting.key, key) for key in one["choices"])
                if "path" in one:
                    one["path"] = [fold(step) for step in one["path"]]
                ways.append(one)
            made = _without(told)
            made.update(choices=choices, ways=sorted(ways, key=repr))
            if "acts_on" in made:
                made["acts_on"] = sorted(made["acts_on"])
            found[self._settings[setting.key]] = (index, made)
        return found

    def wheels(self) -> dict[str, tuple[int, Json]]:
        """Wheels by their place in the list; positions by what is in them."""
        found: dict[str, tuple[int, Json]] = {}
        for index, wheel in enumerate(self.fixture.wheels):
            told = wheel.model_dump(mode="json", by_alias=True, exclude_defaults=True)
            numbers = {p["key"]: n for n, p in enumerate(told.get("positions", []))}
            positions = []
            for position in told.get("positions", []):
                one = _without(position)
                if "between" in one:
                    one["between"] = [numbers.get(key, key) for key in one["between"]]
                if position.get("label"):
                    one["label"] = fold(position["label"])
                positions.append(one)
            found[f"wheel {index + 1}"] = (index, {"positions": positions})
        return found

    def emitters(self) -> dict[str, tuple[int, Json]]:
        """Emitters by their key."""
        told = [
            emitter.model_dump(mode="json", by_alias=True, exclude_defaults=True)
            for emitter in self.fixture.emitters
        ]
        return {one["key"]: (index, _without(one)) for index, one in enumerate(told)}

    def parameters(self, mode: int) -> dict[tuple[str, str, int], tuple[str, Json]]:
        """Every placed parameter of a mode: (part, word, count) to its pointer and meaning; cells taken
        apart.
        """
        from modebook.documents.layout import blocks

        found: dict[tuple[str, str, int], tuple[str, Json]] = {}
        for number, block in enumerate(blocks(self.fixture.modes[mode], f"/modes/{mode}")):
            where: dict[str, list[int]] = {}
            for placed in block.placed:
                where.setdefault(placed.parameter.name, list(placed.slots))
            counts: dict[str, int] = {}
            ordered = sorted(
                block.placed, key=lambda p: (min(p.slots, default=0), p.slots, repr(p.parameter.when))
            )
            for placed in ordered:
                word = placed.parameter.parameter
                counts[word] = counts.get(word, 0) + 1
                found[f"part {number}", word, counts[word]] = (placed.pointer, self._parameter(placed, where))
        return found

    def _parameter(self, placed: Placed, where: dict[str, list[int]]) -> Json:
        told = placed.parameter.model_dump(mode="json", by_alias=True, exclude_defaults=True)
        made = _without(told)
        made.pop("parameter", None)
        made["slots"] = list(placed.slots)
        made["bits"] = 8 * len(placed.slots)
        ranges = enumerate(told.get("ranges", []))
        made["ranges"] = [
            {**self._range(entry, where), PLACE: index}
            for index, entry in sorted(ranges, key=lambda one: (one[1]["from"], one[1]["to"]))
        ]
        if not made["ranges"]:
            del made["ranges"]
        if "when" in made:
            made["when"] = self._conditions(made["when"], where)
        if "for" in made:
            made["for"] = sorted(self._reference(key, where) for key in made["for"])
        if "span" in made:
            made["span"] = _span(made["span"])
        return made

    def _range(self, entry: Json, where: dict[str, list[int]]) -> Json:
        made = _without(entry)
        made["meaning"] = fold(entry["meaning"])
        if "span" in made:
            made["span"] = _span(made["span"])
        if "needs" in made:
            made["needs"] = self._conditions(made["needs"], where)
        if "for" in made:
            made["for"] = sorted(self._reference(key, where) for key in made["for"])
        if "sets" in made:
            made["sets"] = {
                self._settings.get(key, key): self._choice_name(key, to) if isinstance(to, str) else _span(to)
                for key, to in sorted(made["sets"].items())
            }
        if "position" in made:
            made["position"] = self._position(made["position"])
        return made

    def _position(self, key: str) -> str:
        for number, wheel in enumerate(self.fixture.wheels, 1):
            for place, position in enumerate(wheel.positions, 1):
                if position.key == key:
                    return f"wheel {number} position {place}"
        return key

    def _conditions(self, conditions: list[Json], where: dict[str, list[int]]) -> list[Json]:
        found = []
        for one in conditions:
            made = dict(one)
            if "parameter" in made:
                made["parameter"] = self._reference(made["parameter"], where)
            if "setting" in made:
                made["choices"] = sorted(
                    self._choice_name(one["setting"], key) for key in made.get("choices", [])
                )
                made["setting"] = self._settings.get(made["setting"], made["setting"])
            if "any_of" in made:
                made["any_of"] = sorted(made["any_of"], key=lambda r: r["from"])
            if "given" in made:
                made["given"] = fold(made["given"])
            found.append(made)
        return sorted(found, key=repr)

    def _reference(self, key: str, where: dict[str, list[int]]) -> str:
        slots = where.get(key)
        return f"slots {', '.join(map(str, slots))}" if slots else key


def _without(part: Json) -> Json:
    return {key: value for key, value in part.items() if key not in _APART}


def _span(span: Any) -> Any:
    if isinstance(span, list):
        return [_span(one) for one in span]
    return {key: value for key, value in span.items() if key != "source"}
