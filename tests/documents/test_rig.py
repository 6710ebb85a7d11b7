"""Rigs: links and their fallback, RDM in every way of writing it, bare figures in the policy."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import settings as calm
from pydantic import ValidationError

from modebook.documents.policy import Override
from modebook.documents.rig import Link, Loss, Rig
from support.documents import Json, rigs

CALM = calm(deadline=None, max_examples=60)


def _rig(**told: object) -> Rig:
    return Rig.model_validate_json(json.dumps({"name": "Night shoot", **told}), by_alias=True, by_name=False)


@pytest.mark.parametrize(
    ("link", "rdm"),
    [
        ({"rdm": True}, "yes"),
        ({"rdm": False}, "no"),
        ({"rdm": None}, "unknown"),
        ({}, "unknown"),
        ({"rdm": "yes"}, "yes"),
        ({"rdm": "no"}, "no"),
        ({"rdm": "unknown"}, "unknown"),
    ],
)
def test_rdm_passes_or_not_or_nobody_knows(link: Json, rdm: str) -> None:
    """Absent is unknown, never no."""
    assert _rig(links={"1": link}).link(1).rdm == rdm


@pytest.mark.parametrize("rdm", [1, 0, "true", "maybe", ""])
def test_rdm_in_other_words_is_refused(rdm: object) -> None:
    """What is neither yes nor no is not guessed."""
    with pytest.raises(ValidationError):
        _rig(links={"1": {"rdm": rdm}})


def test_a_universe_falls_back_to_other_and_then_to_nothing_known() -> None:
    """Its own link, else that of `other`, else one of which nothing is known."""
    rig = _rig(links={"2": {"gateway_hz": 44}, "other": {"gateway_hz": 25}})
    assert rig.link(2).gateway_hz == 44
    assert rig.link(20).gateway_hz == rig.link(1).gateway_hz == 25
    assert _rig(links={"2": {}}).link(3) == Link()
    assert (Link().rdm, Link().delay_s, Link().loss, Link().gateway_hz) == ("unknown", 0, None, None)


def test_an_empty_link_of_its_own_wins_over_other() -> None:
    """A universe that is named and of which nothing is said does not inherit."""
    assert _rig(links={"2": {}, "other": {"gateway_hz": 25}}).link(2).gateway_hz is None


@pytest.mark.parametrize("key", ["0", "01", "64000", "99999", "-1", "1.5", "", "Other", "all"])
def test_universes_that_do_not_exist(key: str) -> None:
    """ANSI E1.31 numbers universes from 1 to 63999."""
    for good in ("1", "9999", "10000", "59999", "63999", "other"):
        _rig(links={good: {}})
    with pytest.raises(ValidationError):
        _rig(links={key: {}})


def test_losses_are_a_share_or_a_share_with_its_bursts() -> None:
    """Both are kept as written; all packets lost, or less than none, is no link."""
    assert _rig(links={"1": {"loss": 0.02}}).link(1).loss == 0.02
    assert _rig(links={"1": {"loss": {"rate": 0.02, "burst_packets": 3}}}).link(1).loss == Loss(
        rate=0.02, burst_packets=3
    )
    for loss in (1, -0.1, "2 %", {"rate": 1}, {}, True):
        with pytest.raises(ValidationError):
            _rig(links={"1": {"loss": loss}})


def test_a_bare_figure_stands_for_the_value() -> None:
    """`"hue-step": 2` is short for `{"value": 2}`."""
    policy = _rig(policy={"hue-step": 2, "zoom-step": 0.25, "pan-tilt-step": {"severity": "warning"}}).policy
    assert policy == {
        "hue-step": Override(value=2),
        "zoom-step": Override(value=0.25),
        "pan-tilt-step": Override(severity="warning"),
    }


@pytest.mark.parametrize("figure", [True, "2", [2], None, {"figure": 2}, {"severity": "bad"}, 10**400])
def test_figures_that_are_none(figure: object) -> None:
    """Nothing else is read as a figure, nor does a number past all bounds get through."""
    with pytest.raises(ValidationError):
        _rig(policy={"hue-step": figure})


def test_a_rig_needs_a_name_alone() -> None:
    """Defaults: 30 packets a second, no camera, nothing else known."""
    rig = _rig()
    assert (rig.refresh_hz, rig.camera, rig.links, rig.policy, rig.units) == (30, None, {}, {}, {})
    with pytest.raises(ValidationError):
        Rig.model_validate_json("{}")


@CALM
@given(rigs())
def test_every_rig_that_strategies_make_is_taken(told: Json) -> None:
    """All ways of writing are read, and what is written back is read as the same rig."""
    rig = Rig.model_validate_json(json.dumps(told), by_alias=True, by_name=False)
    again = rig.model_dump_json(by_alias=True, exclude_unset=True)
    assert Rig.model_validate_json(again, by_alias=True, by_name=False) == rig
