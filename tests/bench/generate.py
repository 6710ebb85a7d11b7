"""Generates a catalog for benchmarks: N believable fixtures with 3N modes and about 50N slots, from a seed.

    python tests/bench/generate.py DIR --fixtures 10000 --units 2000

The names are invented to sound of nothing but a benchmark; the same arguments write the same bytes.
"""

from __future__ import annotations

import argparse
import csv
import random
import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).parent))

from written import written

Json = dict[str, Any]

FAULTY_SHARE = 0.04
"""Of the documents, how many carry a fault on purpose; the others are meant to be clean."""

_TREES = ["Alder", "Birch", "Cedar", "Dogwood", "Ebony", "Fir", "Ginkgo", "Hazel", "Ironwood", "Juniper"]
_TREES += ["Katsura", "Larch", "Maple", "Nutmeg", "Oak", "Poplar", "Quince", "Rowan", "Spruce", "Teak"]
_TREES += ["Viburnum", "Willow", "Yew", "Zelkova"]
_SIZES = [40, 60, 80, 120, 200, 300, 450, 600, 900, 1200]
_SOURCE = "guide"


def _percent() -> Json:
    return {"from": 0, "to": 100, "unit": "%"}


def _span(start: float, end: float, unit: str) -> Json:
    return {"from": start, "to": end, "unit": unit}


class Chart:
    """A mode's parameters as they are laid out one after another."""

    def __init__(self, rng: random.Random) -> None:
        self.rng = rng
        self.parameters: list[Json] = []
        self.next = 1

    def add(self, word: str, size: int = 1, **more: Any) -> Json:
        """Put a parameter of `size` bytes at the next free slots."""
        entry: Json = {"parameter": word}
        label = more.pop("label", None)
        if label:
            entry["label"] = label
        key = more.pop("key", None)
        if key:
            entry["key"] = key
        entry["slots"] = list(range(self.next, self.next + size))
        self.next += size
        entry.update(more)
        self.parameters.append(entry)
        return entry

    def dimmer(self) -> None:
        self.add("dimmer", 2, label=self.rng.choice(("Intensity", "Dimmer", "Master")), span=_percent())

    def strobe(self) -> None:
        self.add(
            "strobe",
            label="Strobe",
            ranges=[
                {"from": 0, "to": 9, "meaning": "Open", "does": "open"},
                {"from": 10, "to": 199, "meaning": "Slow to fast", "span": _span(1, 25, "Hz")},
                {"from": 200, "to": 249, "meaning": "Random flashes", "does": "random"},
                {"from": 250, "to": 255, "meaning": "Open", "does": "open"},
            ],
        )

    def move(self, size: int = 2) -> None:
        middle = 256**size // 2
        self.add("pan", size, default=middle, span=_span(-270, 270, "deg"))
        self.add("tilt", size, default=middle, span=_span(-130, 130, "deg"))

    def wheel(self, word: str, key: str, positions: int, label: str) -> None:
        width = 192 // positions
        ranges: list[Json] = [{"from": 0, "to": width - 1, "meaning": "Open", "does": "open"}]
        for index in range(1, positions):
            ranges.append(
                {"from": index * width, "to": index * width + width - 1, "meaning": f"{label} {index}"}
            )
        turn = {"from": positions * width, "to": 255, "meaning": "Turns, slow to fast", "does": "rotate"}
        self.add(word, label=label, key=key, ranges=[*ranges, turn])

    def whites(self) -> None:
        self.add("color-temperature", 2, label="CCT", span=_span(2800, 6500, "K"))
        self.add("tint", label="Green to magenta", span=_span(-100, 100, "%"))

    def hue(self) -> None:
        self.add("hue", 2, span=_span(0, 360, "deg"))
        self.add("saturation", 2, span=_percent())

    def lens(self) -> None:
        self.add("zoom", 2, label="Zoom", span=_span(6, 48, "deg"), travel=0.9)
        self.add("focus", 2, label="Focus")

    def emitters(self, *words: str, size: int = 1) -> None:
        for word in words:
            self.add(word, size, label=word.replace("-", " ").capitalize(), span=_percent())

    def control(self, lengths: list[tuple[str, str]]) -> None:
        """A control slot; `lengths` are the smoothing choices that it reaches, as key and label."""
        ranges: list[Json] = [{"from": 0, "to": 9, "meaning": "No function", "does": "nothing"}]
        at = 10
        for key, label in lengths:
            ranges.append(
                {
                    "from": at,
                    "to": at + 9,
                    "meaning": f"Response: {label}",
                    "sets": {"smoothing": key},
                    "hold_s": 3,
                    "kept": "until power off",
                }
            )
            at += 10
        ranges.append({"from": at, "to": 89, "meaning": "No function", "does": "nothing"})
        for index, name in enumerate(("Fans automatic", "Fans quiet", "Fans full")):
            sets = {"fan": ("automatic", "quiet", "full")[index]}
            start = 90 + index * 10
            ranges.append({"from": start, "to": start + 9, "meaning": name, "sets": sets, "kept": "stored"})
        ranges.append({"from": 120, "to": 249, "meaning": "No function", "does": "nothing"})
        ranges.append({"from": 250, "to": 255, "meaning": "Reset", "hold_s": 5, "hazard": "reset"})
        self.add("control", label="Control", default=0, ranges=ranges)


def _yoke(chart: Chart, grade: int) -> None:
    chart.dimmer()
    chart.move()
    chart.strobe()
    if grade >= 1:
        chart.wheel("color-wheel", "color-wheel-1", 8, "Color")
        chart.wheel("gobo-wheel", "gobo-wheel-1", 12, "Gobo")
        chart.lens()
    if grade >= 2:
        chart.wheel("gobo-wheel", "gobo-wheel-2", 6, "Pattern")
        chart.emitters("cyan", "magenta", "yellow")
        chart.add("iris")
        chart.add("frost", span=_percent())
        chart.add("prism", ranges=[{"from": 0, "to": 255, "meaning": "Prism out to in"}])
        chart.add("movement-speed", **{"for": ["pan", "tilt"]})


def _panel(chart: Chart, grade: int) -> None:
    chart.dimmer()
    chart.whites()
    chart.strobe()
    if grade >= 1:
        chart.hue()
        chart.add("white-color-crossfade", 2, span=_percent())
        chart.add("fan", span=_percent())
    if grade >= 2:
        chart.emitters("red", "green", "blue", "amber", "lime", size=2)


def _profile(chart: Chart, grade: int) -> None:
    chart.dimmer()
    chart.strobe()
    chart.emitters("red", "green", "blue", "white")
    if grade >= 1:
        chart.whites()
        chart.lens()
    if grade >= 2:
        for blade in range(1, 5):
            chart.add("blade-position", key=f"blade-{blade}", span=_percent())
            chart.add("blade-angle", key=f"blade-angle-{blade}", span=_span(-30, 30, "deg"))


def _batten(chart: Chart, grade: int) -> None:
    chart.dimmer()
    chart.strobe()
    if grade:
        chart.whites()


_KINDS = (
    ("moving yoke", "Beam", _yoke),
    ("fixed", "Panel", _panel),
    ("fixed", "Profile", _profile),
    ("fixed", "Batten", _batten),
)
_MODE_NAMES = ("Basic", "Standard", "Extended")
_CHOICES = (
    ("off", "Fast", {"packets": 0}, "none"),
    ("short", "Smooth", {"packets": 2}, "average"),
    ("long", "Film", {"packets": 8}, "interpolate"),
    ("very-long", "Slow", {"seconds": 0.5}, "lag"),
)


def _smoothing(rng: random.Random) -> tuple[Json, list[tuple[str, str]]]:
    """A smoothing setting that leaves nothing to find, and the choices that a control slot reaches."""
    if rng.random() < 0.2:
        return {"key": "smoothing", "setting": "smoothing", "none": True, "source": _SOURCE}, []
    offered = _CHOICES[: rng.choice((2, 3, 3, 4))]
    choices = []
    for key, label, length, method in offered:
        choice: Json = {"key": key, "label": label, "length": length}
        if method != "none":
            choice["method"] = method
        choices.append(choice)
    # Off or short: nothing longer, so that it never counts as slow by default.
    choices[rng.random() < 0.3]["factory"] = True
    for choice in choices:
        choice["source"] = _SOURCE
    by_slot = rng.random() < 0.5
    ways: list[Json] = [{"by": "menu", "path": ["Setup", "Response"]}]
    if not by_slot or rng.random() < 0.4:
        values = {key: number for number, (key, *_) in enumerate(offered, 1)}
        ways.append({"by": "rdm", "pid": "0x8345", "size": 1, "values": values})
    acts_on = rng.choice((["intensity"], ["intensity", "color"], ["intensity", "color", "movement"]))
    setting = {
        "key": "smoothing",
        "setting": "smoothing",
        "label": "Response",
        "acts_on": acts_on,
        "choices": choices,
        "ways": ways,
        "source": _SOURCE,
    }
    return setting, [(key, label) for key, label, *_ in offered] if by_slot else []


def _cells(grade: int, first: int, rng: random.Random) -> tuple[list[Json], int]:
    words = ("red", "green", "blue") if rng.random() < 0.5 else ("red", "green", "blue", "white")
    count = (2, 5, 7)[grade]
    parameters = [{"parameter": word, "slots": [slot]} for slot, word in enumerate(words, 1)]
    block = {"count": count, "first": first, "stride": len(words), "parameters": parameters}
    return [block], count * len(words)


def fixture(number: int, maker: str, rng: random.Random) -> Json:
    """One fixture document."""
    category, name, build = _KINDS[number % len(_KINDS)]
    setting, by_slot = _smoothing(rng)
    modes: list[Json] = []
    for grade, mode_name in enumerate(_MODE_NAMES):
        chart = Chart(rng)
        build(chart, grade)
        chart.control(by_slot)
        mode: Json = {"name": mode_name, "number": grade + 1, "footprint": chart.next - 1, "source": _SOURCE}
        mode["parameters"] = chart.parameters
        if name == "Batten":
            mode["cells"], more = _cells(grade, chart.next, rng)
            mode["footprint"] += more
        modes.append(mode)
    fan = {
        "key": "fan",
        "setting": "fan",
        "choices": [
            {"key": "automatic", "factory": True, "source": _SOURCE},
            {"key": "quiet", "source": _SOURCE},
            {"key": "full", "source": _SOURCE},
        ],
        "ways": [{"by": "menu", "path": ["Setup", "Fans"]}],
        "source": _SOURCE,
    }
    source = {
        "key": _SOURCE,
        "title": f"{name} user guide",
        "revision": rng.choice("ABCD"),
        "date": f"202{rng.randint(0, 5)}-{rng.randint(1, 12):02}",
        "pages": f"{rng.randint(10, 40)}-{rng.randint(41, 60)}",
    }
    size = _SIZES[number // len(_KINDS) % len(_SIZES)]
    document = {
        "$schema": "../../../schema/fixture.schema.json",
        "maker": maker,
        "model": f"{name} {size} No {number:05}",
        "category": category,
        "standing": rng.choices(("draft", "transcribed", "second-read", "proved"), weights=(1, 60, 30, 9))[0],
        "rdm": {"manufacturer": f"0x7FF{number % 16:X}", "model": f"0x{number // 16 % 65536:04X}"},
        "sources": [source],
        "settings": [setting, fan],
        "modes": modes,
    }
    if rng.random() < FAULTY_SHARE:
        _spoil(document, rng)
    return document


def _spoil(document: Json, rng: random.Random) -> None:
    """Plant one fault: no way but the menu, nothing recorded, a missing fine byte, a wrong footprint."""
    kind = rng.randrange(4)
    if kind == 0:
        for mode in document["modes"]:
            for piece in mode["parameters"][-1]["ranges"]:
                piece.get("sets", {}).pop("smoothing", None)
                if piece.get("sets") == {}:
                    del piece["sets"]
        document["settings"][0]["ways"] = [{"by": "menu", "path": ["Setup", "Response"]}]
        if document["settings"][0].pop("none", None):
            document["settings"][0]["choices"] = [{"key": "off", "length": {"packets": 0}}]
    elif kind == 1:
        for mode in document["modes"]:
            for piece in mode["parameters"][-1]["ranges"]:
                if "smoothing" in piece.get("sets", {}):
                    del piece["sets"]
        del document["settings"][0]
    elif kind == 2:
        dimmer = document["modes"][0]["parameters"][0]
        dimmer["slots"] = dimmer["slots"][:1]
    else:
        document["modes"][-1]["footprint"] += 1


def slug(name: str) -> str:
    """The form a plain ASCII name takes in a path."""
    return "-".join(name.lower().split())


def write_catalog(root: Path, fixtures: int = 10_000, units: int = 0, seed: int = 1) -> None:
    """Write `fixtures` documents below root/fixtures, and a rig of `units` units where that is above 0."""
    rng = random.Random(seed)
    makers = [f"Bench {tree} {part}" for part in ("North", "South", "East", "West") for tree in _TREES]
    folders: dict[str, Path] = {}
    patched: list[tuple[str, str, int]] = []
    memory: dict[tuple[str, int, int], str] = {}
    for number in range(fixtures):
        maker = makers[number % len(makers)]
        document = fixture(number, maker, rng)
        folder = folders.get(maker)
        if folder is None:
            folder = folders[maker] = root / "fixtures" / slug(maker)
            folder.mkdir(parents=True, exist_ok=True)
        text = written(document, 0, 0, memory) + "\n"
        (folder / f"{slug(document['model'])}.json").write_text(text, encoding="utf-8")
        if number < max(1, units // 10):
            mode = document["modes"][number % 3]
            patched.append((f"{maker} {document['model']}", mode["name"], mode["footprint"]))
    if units:
        _write_rig(root / "rigs" / "bench", patched, units)


def _write_rig(folder: Path, patched: list[tuple[str, str, int]], units: int) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    rig: Json = {
        "$schema": "../../../schema/rig.schema.json",
        "name": "Bench rig",
        "refresh_hz": 30,
        "links": {"1": {"rdm": True}, "2": {"rdm": False}, "other": {"rdm": "unknown"}},
    }
    (folder / "rig.json").write_text(written(rig, 0, 0, {}) + "\n", encoding="utf-8")
    universe, address = 1, 1
    with (folder / "patch.csv").open("w", newline="", encoding="utf-8") as file:
        table = csv.writer(file)
        table.writerow(["Unit", "Fixture", "Mode", "Universe", "Address", "Position", "Throw"])
        for number in range(1, units + 1):
            fixture_name, mode, footprint = patched[number % len(patched)]
            if address + footprint > 513:
                universe, address = universe + 1, 1
            position = f"Pipe {number % 12 + 1}"
            table.writerow([number, fixture_name, mode, universe, address, position, 4 + number % 9])
            address += footprint


def main() -> None:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("root", type=Path, help="the folder to write the catalog into")
    parser.add_argument("--fixtures", type=int, default=10_000)
    parser.add_argument("--units", type=int, default=0, help="also write a rig with so many units")
    parser.add_argument("--seed", type=int, default=1)
    told = parser.parse_args()
    write_catalog(told.root, told.fixtures, told.units, told.seed)


if __name__ == "__main__":
    main()
