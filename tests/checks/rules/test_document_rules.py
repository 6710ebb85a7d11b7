"""Rules about the document as a whole: sources, paths, acceptances, doubts, names, units, hazards."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import pytest

from modebook.checks.examples import complete, reading_of
from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading
from modebook.checks.rules.path_mismatch import RULE as PATH
from modebook.words.parameters import PARAMETERS

Json = dict[str, Any]
Run = Callable[[str, Mapping[str, object]], list[Fault]]
RED = {"parameter": "red", "slots": [1]}
OFF = {"key": "off", "length": {"packets": 0}}


def smoothing(**more: Any) -> Json:
    return {"key": "smoothing", "setting": "smoothing", **more}


@pytest.mark.parametrize(
    ("content", "places"),
    [
        ({"modes": [{"parameters": [RED | {"source": "x"}]}]}, ["/modes/0/parameters/0/source"]),
        (
            {"modes": [{"parameters": [RED | {"span": {"from": 0, "to": 1, "unit": "%", "source": "x"}}]}]},
            ["/modes/0/parameters/0/span/source"],
        ),
        (
            {
                "modes": [
                    {
                        "parameters": [
                            RED | {"ranges": [{"from": 0, "to": 255, "meaning": "a", "source": "x"}]}
                        ]
                    }
                ]
            },
            ["/modes/0/parameters/0/ranges/0/source"],
        ),
        (
            {
                "modes": [
                    {"cells": [{"count": 1, "first": 1, "stride": 1, "parameters": [RED], "source": "x"}]}
                ]
            },
            ["/modes/0/cells/0/source"],
        ),
        ({"settings": [smoothing(none=True, source="x")]}, ["/settings/0/source"]),
        (
            {"settings": [smoothing(choices=[OFF | {"source": "x"}], source="guide")]},
            ["/settings/0/choices/0/source"],
        ),
        ({"settings": [smoothing(ways=[{"by": "menu", "source": "x"}])]}, ["/settings/0/ways/0/source"]),
        ({"wheels": [{"key": "w", "positions": [], "source": "x"}]}, ["/wheels/0/source"]),
        ({"emitters": [{"key": "red", "source": "x"}]}, ["/emitters/0/source"]),
    ],
)
def test_a_source_that_is_not_there_is_an_error_wherever_it_is_named(
    run: Run, content: Json, places: list[str]
) -> None:
    found = run("source-missing", content)
    assert [fault.pointer for fault in found] == places
    assert all(fault.severity is None for fault in found)


@pytest.mark.parametrize(
    ("content", "places"),
    [
        ({"settings": [smoothing(none=True)]}, ["/settings/0"]),
        ({"settings": [smoothing(choices=[OFF])]}, ["/settings/0/choices/0"]),
        ({"settings": [smoothing(choices=[{"key": "a", "factory": True}])]}, ["/settings/0/choices/0"]),
        ({"settings": [smoothing(choices=[{"key": "a"}])]}, []),
        ({"settings": [smoothing(choices=[OFF | {"source": "guide"}])]}, []),
        ({"settings": [], "sources": []}, ["/standing"]),
        ({"settings": [], "sources": [], "standing": "draft"}, []),
        ({"sources": [{"key": k, "title": k} for k in ("guide", "b")]}, ["/modes/0"]),
        (
            {
                "sources": [{"key": k, "title": k} for k in ("guide", "b")],
                "modes": [{"parameters": [RED], "source": "b"}],
            },
            [],
        ),
    ],
)
def test_a_fact_without_an_origin_is_a_warning(run: Run, content: Json, places: list[str]) -> None:
    found = run("source-missing", content)
    assert [fault.pointer for fault in found] == places
    assert all(fault.severity == "warning" for fault in found)


@pytest.mark.parametrize(
    ("maker", "model", "place", "fits"),
    [
        ("Invented Maker", "Spot 200", "invented-maker/spot-200", True),
        ("Île & Sons", "Nº 2 (B)", "ile-sons/no-2-b", True),
        ("Invented Maker", "Spot 200", "invented-maker/spot200", False),
        ("Invented Maker", "Spot  200", "invented-maker/spot--200", False),
        ("Invented Maker", "Spot -", "invented-maker/spot--", False),
        ("Invented Maker", "Spot 200", "Invented-Maker/spot-200", False),
        ("Invented Maker", "№", "invented-maker/no", True),
        ("Invented Maker", "灯", "invented-maker/lamp", False),
    ],
)
def test_the_place_is_maker_and_model_as_a_path(maker: str, model: str, place: str, fits: bool) -> None:
    fixture = complete({"maker": maker, "model": model})
    assert (not list(PATH.check(FixtureReading(fixture, identity=place)))) is fits


def test_a_document_outside_a_catalog_has_no_place() -> None:
    assert not list(PATH.check(FixtureReading(complete({}), identity=None)))


def accepted(rule: str, pointer: str, slots: list[int]) -> Json:
    return {
        "modes": [{"parameters": [{"parameter": "dimmer", "slots": slots}]}],
        "accepted": [{"rule": rule, "pointer": pointer, "reason": "Work light."}],
    }


def test_an_acceptance_holds_at_its_pointer_and_below(run: Run) -> None:
    assert run("stale-acceptance", accepted("coarse-dimmer", "/modes/0", [1])) == []
    assert run("stale-acceptance", accepted("coarse-dimmer", "", [1])) == []
    assert run("stale-acceptance", accepted("coarse-dimmer", "/modes/0/parameters/0", [1])) == []
    assert run("stale-acceptance", accepted("coarse-dimmer", "/modes/1", [1]))
    assert run("stale-acceptance", accepted("coarse-dimmer", "/modes/0/param", [1]))


def test_an_acceptance_of_no_rule_names_the_nearest(run: Run) -> None:
    (fault,) = run("stale-acceptance", accepted("course-dimmer", "/modes/0", [1]))
    assert fault.pointer == "/accepted/0/rule"
    assert "coarse-dimmer" in fault.help


def test_that_an_acceptance_is_stale_cannot_be_accepted(run: Run) -> None:
    assert run("stale-acceptance", accepted("stale-acceptance", "", [1]))


def test_open_doubts_are_an_error_above_draft_and_information_in_a_draft(run: Run) -> None:
    doubts = [{"pointer": "/modes/0", "why": "Smudged."}] * 2
    (fault,) = run("doubts-open", {"standing": "proved", "doubts": doubts})
    assert (fault.severity, fault.pointer, fault.figure["open"]) == (None, "/standing", 2)
    (fault,) = run("doubts-open", {"standing": "draft", "doubts": doubts})
    assert (fault.severity, fault.pointer) == ("info", "/doubts")


def modes(*told: Json) -> Json:
    sources = [{"key": key, "title": key} for key in ("guide", "b")]
    return {"sources": sources, "modes": [{"parameters": [RED], **one} for one in told]}


@pytest.mark.parametrize(
    ("first", "second", "rule"),
    [
        ({"name": "A", "number": 1}, {"name": "B", "number": 1}, "mode-number-twice"),
        ({"name": "A", "number": 1}, {"name": "B", "number": 2}, None),
        ({"name": "A"}, {"name": "B"}, None),
        ({"name": "A", "number": 1, "given": "x"}, {"name": "B", "number": 1, "given": "y"}, None),
        ({"name": "A", "number": 1, "given": "x"}, {"name": "B", "number": 1}, "mode-number-twice"),
        (
            {"name": "A", "number": 1, "given": "x"},
            {"name": "B", "number": 1, "given": "x"},
            "mode-number-twice",
        ),
        ({"name": "A", "number": 1, "source": "guide"}, {"name": "B", "number": 1, "source": "b"}, None),
        ({"name": "A", "number": 1}, {"name": "A", "number": 1}, "duplicate-key-name"),
        ({"name": "A"}, {"name": "A"}, "duplicate-key-name"),
        ({"name": "A", "number": 1, "given": "x"}, {"name": "A", "number": 1, "given": "y"}, None),
    ],
)
def test_two_modes_are_told_apart_by_number_state_or_source(
    run: Run, first: Json, second: Json, rule: str | None
) -> None:
    for one in ("mode-number-twice", "duplicate-key-name"):
        assert [fault.pointer.rpartition("/")[0] for fault in run(one, modes(first, second))] == (
            ["/modes/1"] if one == rule else []
        )


def test_parameters_may_share_a_name_that_nobody_refers_to(run: Run) -> None:
    two = [RED, {"parameter": "red", "slots": [2]}]
    assert run("duplicate-key-name", {"modes": [{"parameters": two}]}) == []
    speed = {"parameter": "color-speed", "slots": [3], "for": ["red"]}
    (fault,) = run("duplicate-key-name", {"modes": [{"parameters": [*two, speed]}]})
    assert fault.figure["pointers"] == ["/modes/0/parameters/0", "/modes/0/parameters/1"]


def test_for_may_mean_all_of_a_word_and_a_condition_may_not(run: Run) -> None:
    wheels = [{"parameter": "gobo-wheel", "key": key, "slots": [at]} for at, key in ((1, "one"), (2, "two"))]
    speed = {"parameter": "beam-speed", "slots": [3], "for": ["gobo-wheel"]}
    assert run("duplicate-key-name", {"modes": [{"parameters": [*wheels, speed]}]}) == []
    hung = {
        "parameter": "gobo-index",
        "slots": [3],
        "when": [{"parameter": "gobo-wheel", "from": 0, "to": 9}],
    }
    assert run("duplicate-key-name", {"modes": [{"parameters": [*wheels, hung]}]})
    hung["when"] = [{"parameter": "two", "from": 0, "to": 9}]
    assert run("duplicate-key-name", {"modes": [{"parameters": [*wheels, hung]}]}) == []


def test_parameters_that_never_exist_at_once_may_share_a_name(run: Run) -> None:
    speed = {"parameter": "color-speed", "slots": [3], "for": ["red"]}
    two = [RED | {"when": [{"given": state}]} for state in ("A", "B")]
    assert run("duplicate-key-name", {"modes": [{"parameters": [*two, speed]}]}) == []


def test_within_a_cell_its_own_parameter_is_meant(run: Run) -> None:
    speed = {"parameter": "color-speed", "slots": [2], "for": ["red"]}
    block = {"count": 2, "stride": 2, "parameters": [RED, speed]}
    cells = [block | {"first": 1}, block | {"first": 5}]
    assert run("duplicate-key-name", {"modes": [{"cells": cells}]}) == []
    outer = speed | {"slots": [9]}
    assert run("duplicate-key-name", {"modes": [{"cells": cells, "parameters": [outer]}]})


def spanned(word: str, unit: str, **more: Any) -> Json:
    span = {"from": 0, "to": 1, "unit": unit, **more}
    return {"modes": [{"parameters": [{"parameter": word, "slots": [1], "span": span}]}]}


@pytest.mark.parametrize(
    ("word", "unit", "fits"),
    [
        ("pan", "deg", True),
        ("pan", "rpm", False),
        ("hue", "K", False),
        ("color-temperature", "mired", True),
        ("color-temperature", "deg", False),
        ("strobe", "Hz", True),
        ("strobe", "ms", True),
        ("strobe", "deg", False),
        ("cie-x", "1", True),
        ("cie-x", "%", False),
        ("dimmer", "%", True),
        ("dimmer", "Hz", False),
        ("blade-position", "deg", True),
        ("movement-time", "s", True),
        ("movement-time", "packets", True),
    ],
)
def test_a_unit_fits_its_quantity(run: Run, word: str, unit: str, fits: bool) -> None:
    assert (run("span-unit", spanned(word, unit)) == []) is fits


@pytest.mark.parametrize("word", PARAMETERS)
def test_every_parameter_may_be_told_in_its_natural_unit(run: Run, word: str) -> None:
    assert run("span-unit", spanned(word, PARAMETERS[word].unit)) == []


def test_a_range_that_moves_may_be_told_in_speeds_and_one_that_indexes_not(run: Run) -> None:
    def piece(does: str) -> Json:
        span = {"from": 0, "to": 20, "unit": "rpm"}
        pieces = [{"from": 0, "to": 255, "meaning": "a", "does": does, "span": span}]
        return {"modes": [{"parameters": [{"parameter": "gobo-index", "slots": [1], "ranges": pieces}]}]}

    assert run("span-unit", piece("rotate")) == []
    assert [fault.pointer for fault in run("span-unit", piece("index"))] == [
        "/modes/0/parameters/0/ranges/0/span"
    ]


def test_a_coordinate_lies_within_the_diagram(run: Run) -> None:
    assert run("span-unit", spanned("cie-y", "1", to=1.5))
    assert run("span-unit", spanned("cie-y", "1", raw=True))


@pytest.mark.parametrize("word", ["flame", "pyrotechnics", "hoist-position", "hoist-speed", "motor-position"])
def test_what_e111_keeps_off_dmx_is_an_error(run: Run, word: str) -> None:
    (fault,) = run("hazard-on-dmx", {"modes": [{"parameters": [{"parameter": word, "slots": [1]}]}]})
    assert "qualified people" in fault.message + fault.help


def test_hazards_of_ranges_and_of_the_category(run: Run) -> None:
    pieces = [
        {"from": 0, "to": 99, "meaning": "Up", "hazard": "hoist"},
        {"from": 100, "to": 199, "meaning": "Fire", "parameter": "flame"},
        {"from": 200, "to": 255, "meaning": "Reset", "hazard": "reset"},
    ]
    control = {"parameter": "control", "slots": [1], "ranges": pieces}
    found = run("hazard-on-dmx", {"category": "pyrotechnic", "modes": [{"parameters": [control]}]})
    assert [fault.pointer for fault in found] == [
        "/category",
        "/modes/0/parameters/0/ranges/0",
        "/modes/0/parameters/0/ranges/1",
    ]


@pytest.mark.parametrize("word", ["pan", "track-position", "laser-output", "uv", "reset"])
def test_other_hazards_are_no_matter_of_this_rule(run: Run, word: str) -> None:
    assert run("hazard-on-dmx", {"modes": [{"parameters": [{"parameter": word, "slots": [1]}]}]}) == []


def test_a_reading_of_an_example_has_the_place_it_names() -> None:
    assert reading_of({"path": "a/b"}).identity == "a/b"
