"""How printed content becomes truth: resolution, defaults, fine bytes, and the manners of printing values."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.corpus.building import Builder
from intake.corpus.content import M, P, R, truth
from intake.corpus.values import Values, hexed, percent, thousands


def parameter(p: P) -> dict:
    return truth("A", "B", [M("", (), 4, (p,))])["document"]["modes"][0]["parameters"][0]


def test_a_coarse_range_stands_in_full_resolution():
    """By hand: 90 x 256 = 23040 and 143 x 256 + 255 = 36863; at one byte it stays as it is."""
    r = (R(90, 143, "On"),)
    wide = parameter(P(("zoom",), "Zoom", (1, 2), ranges=r))["ranges"][0]
    narrow = parameter(P(("zoom",), "Zoom", (1,), ranges=r))["ranges"][0]
    assert (wide["from"], wide["to"]) == (23040, 36863)
    assert (narrow["from"], narrow["to"]) == (90, 143)


def test_a_range_printed_in_full_resolution_is_kept():
    """0-65535 beside two numbers is not scaled again."""
    made = parameter(P(("zoom",), "Zoom", (1, 2), ranges=(R(0, 32767, "a"), R(32768, 65535, "b")), wide=True))
    assert [(r["from"], r["to"]) for r in made["ranges"]] == [(0, 32767), (32768, 65535)]


@pytest.mark.parametrize(
    ("slots", "coarse", "fine", "expected"),
    [
        ((1,), 128, None, {"default": 128}),
        ((1, 2), 128, 0, {"default": 32768}),
        ((1, 2), 128, 128, {"default": 32896}),
        ((1, 2), 128, None, {"coarse_default": 128}),
        ((1, 2), None, None, {}),
    ],
)
def test_a_lone_coarse_default_leaves_the_fine_byte_unknown(slots, coarse, fine, expected):
    """By hand: 128 x 256 = 32768, + 128 = 32896."""
    made = parameter(P(("pan",), "Pan", slots, default=coarse, fine_default=fine))
    assert {key: made[key] for key in ("default", "coarse_default") if key in made} == expected


@given(st.integers(2, 40), st.integers(0, 10_000))
def test_cuts_cover_all_values_once(count, seed):
    """As many stretches as asked for, from 0 to 255, each beginning behind the last."""
    cuts = Builder("en", Random(seed)).cuts(count)
    assert len(cuts) == count
    assert [value for lo, hi in cuts for value in range(lo, hi + 1)] == list(range(256))


def test_values_are_printed_in_the_trade_s_manners():
    """Each written out by hand."""
    assert Values("hyphen")(0, 9) == "0-9"
    assert Values("hyphen", zeros=True)(0, 9) == "000-009"
    assert Values("spaceden")(10, 19) == "10 – 19"
    assert Values("ellipsis")(10, 19) == "10…19"
    assert Values("to", word="bis")(10, 19) == "10 bis 19"
    assert Values("en")(7, 7) == "7"
    assert hexed(0, 10, "h") == "00h-0Ah"
    assert hexed(16, 255, "0x") == "0x10-0xFF"
    assert percent(0, 127) == "0-50%"
    assert thousands(65535, ".") == "65.535"
