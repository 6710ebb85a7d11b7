"""The fade page says what the engine says, draws it as sound SVG, and plays grays as a screen codes them."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from xml.etree import ElementTree

import colour
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.documents.cases import CaseError
from modebook.documents.fixture import Fixture
from modebook.render.pages.fade import fade_page
from modebook.render.pages.fade_question import (
    LONGEST_S,
    MOST_CASES,
    FadeQuestion,
    QuestionError,
    fade_of,
    question_of,
)
from modebook.render.pages.fade_svg import COLUMNS, LEFT, _Frame, _line
from modebook.response.fade import answer
from modebook.response.smoothing import OFF, Smoothing
from modebook.response.traces import trace


def record(**dimmer: object) -> Fixture:
    return Fixture.model_validate(
        {
            "maker": "Invented",
            "model": "One",
            "category": "fixed",
            "standing": "transcribed",
            "sources": [{"key": "guide", "title": "Guide"}],
            "settings": [
                {
                    "key": "smoothing",
                    "setting": "smoothing",
                    "choices": [
                        {"key": "off", "length": {"packets": 0}},
                        *(
                            {"key": f"n{n}", "length": {"packets": n}, "method": "average"}
                            for n in range(1, 6)
                        ),
                        {"key": "unknown", "label": '<b>"Cine" & more</b>'},
                    ],
                    "ways": [{"by": "menu", "path": ["Setup"]}],
                }
            ],
            "modes": [
                {
                    "name": "Plain",
                    "footprint": 2,
                    "source": "guide",
                    "parameters": [{"parameter": "dimmer", "slots": [1, 2], **dimmer}],
                }
            ],
        }
    )


def test_a_plain_question_is_answered_without_smoothing_and_with_it_by_the_engine():
    asked = question_of({"seconds": ["3"], "packets": ["4"], "loss": ["2"], "gateway": ["40"]})
    told = fade_page(asked, None).to_json()
    assert json.loads(json.dumps(told)) == told
    fade = fade_of(asked)
    for case, smoothing in zip(told["cases"], (OFF, Smoothing("average", packets=4)), strict=True):
        expected = answer(replace(fade, smoothing=smoothing)).to_dict()
        expected.pop("assumptions")
        case["answer"].pop("label")
        assert case["answer"] == expected


def test_a_snap_has_times_and_no_stepping():
    told = fade_page(question_of({"seconds": ["0"], "from": ["100"]}), None)
    assert [title for title, _ in told.columns[0].figures][:3] == [
        "starts within",
        "half done within",
        "done within",
    ]
    assert all(column.verdict == "" and 'class="stepping"' not in column.svg for column in told.columns)


def test_a_fixture_gives_its_bits_and_choices_and_says_which_are_left_out():
    told = fade_page(FadeQuestion(fixture="invented/one"), record())
    assert len(told.columns) == MOST_CASES
    assert "average over 5 packets" in told.left_out
    named = fade_page(FadeQuestion(fixture="invented/one", choices=("n5", "unknown")), record())
    assert [bool(column.svg) for column in named.columns] == [True, False], "no length, no one light"
    assert named.columns[1].verdict in ("depends", "perhaps", "seen", "not seen")


def test_a_choice_that_the_record_lacks_is_told_with_those_that_it_has():
    with pytest.raises(CaseError, match="there is no choice 'soft'; there are off, n1"):
        fade_page(FadeQuestion(choices=("soft",)), record())


def test_a_hostile_label_is_text_in_the_picture():
    mean = record().model_dump(by_alias=True, exclude_none=True)
    mean["settings"][0]["choices"] = [
        {"key": "off", "label": "<script>\"&'</script>", "length": {"packets": 0}}
    ]
    (column,) = fade_page(FadeQuestion(), Fixture.model_validate(mean)).columns
    picture = ElementTree.fromstring(column.svg)
    assert picture.get("aria-label", "").startswith("<script>\"&'</script>")
    assert "<script" not in column.svg


@given(
    st.dictionaries(
        st.sampled_from(
            ["from", "to", "seconds", "refresh", "camera", "gateway", "loss", "bits", "colour", "method"]
        ),
        st.lists(st.text(max_size=6) | st.integers(-5, 2000).map(str) | st.floats().map(str), max_size=2),
    )
)
def test_any_address_is_a_question_or_one_clear_line(told):
    try:
        asked = question_of(told)
    except QuestionError as error:
        said = str(error)
    else:
        said = f"there are {asked.seconds_s} s"
        assert 0 <= asked.seconds_s <= LONGEST_S
        assert 0 <= asked.from_percent <= 100
    assert "\n" not in said
    assert "may be" in said or "there are" in said


@given(st.integers(2, 9000), st.integers(0, 2**32 - 1))
def test_a_thinned_line_keeps_the_ends_and_every_columns_extremes(count, seed):
    draw = np.random.default_rng(seed)
    times_s, levels = np.sort(draw.random(count)), draw.random(count)
    times_s[0], times_s[-1] = 0.0, 1.0
    frame = _Frame(0.0, 1.0, 1.0, 2.0)
    points = [tuple(map(float, each.split())) for each in _line(frame, times_s, levels)[1:].split("L")]
    assert points[0] == pytest.approx((LEFT, frame.y(levels[0])), abs=0.06)
    assert points[-1] == pytest.approx((LEFT + COLUMNS, frame.y(levels[-1])), abs=0.06)
    assert len(points) <= 4 * COLUMNS + 4
    for pick in (levels.argmin(), levels.argmax()):
        assert any(abs(y - frame.y(levels[pick])) < 0.06 for _, y in points)


def test_frames_and_stairs_lie_where_the_trace_has_them():
    asked = FadeQuestion(seconds_s=1.0)
    page = fade_page(asked, None)
    picture = ElementTree.fromstring(page.columns[0].svg)
    told = trace(replace(fade_of(asked), smoothing=OFF))
    dots = [each for each in picture.iter() if each.get("class") == "frame-dot"]
    inside = (told.samples_s >= told.light_s[0]) & (told.samples_s + 0.5 / 24 <= told.light_s[-1])
    assert abs(len(dots) - int(inside.sum())) <= 2, "the scale is that of the longer case beside it"
    stairs = next(each for each in picture.iter() if each.get("class") == "sent").get("d", "")
    heights = set(re.findall(r" ([0-9.]+)", stairs))
    assert len(heights) == len(np.unique(told.held)), "a stair for each value that is sent"


def test_grays_are_the_lights_srgb_code():
    """Outside check: the sRGB encoding of colour-science (IEC 61966-2-1)."""
    asked = FadeQuestion(from_percent=100, seconds_s=2.0, fill_percent=10)
    play = fade_page(asked, None).columns[0].play
    told = trace(replace(fade_of(asked), smoothing=OFF))
    at_s = play["from_s"] + play["step_s"] * np.arange(len(play["light"]))
    light = np.interp(at_s, told.light_s, told.light)
    coded = 255 * colour.models.eotf_inverse_sRGB(0.1 + 0.9 * light)
    np.testing.assert_allclose(play["light"], coded, atol=0.4)
    assert play["frame_s"] == pytest.approx(1 / 24, abs=1e-6)
