"""Parameters of an address: what is understood, and what is refused in one sentence."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.render.pages.reply import PageError, choice, known_only, number, one


@given(st.integers(1, 512))
def test_a_whole_number_within_its_bounds_is_read(value: int) -> None:
    """As it is written, spaces around it aside."""
    assert number({"address": [f" {value} "]}, "address", 1, 512) == value


@given(st.text(max_size=12))
def test_any_other_text_is_refused_with_a_400(text: str) -> None:
    """Signs, fractions, digits of other scripts, numbers out of bounds; only an empty one is the default."""
    told = text.strip()
    if not told:
        assert number({"address": [text]}, "address", 1, 512, 7) == 7
    elif told.isascii() and told.isdecimal() and len(told) < 10 and 1 <= int(told) <= 512:
        assert number({"address": [text]}, "address", 1, 512) == int(told)
    else:
        with pytest.raises(PageError) as refused:
            number({"address": [text]}, "address", 1, 512)
        assert refused.value.status == 400
        assert "1 to 512" in refused.value.message


@pytest.mark.parametrize("text", ["0", "513", "-1", "+5", "1e2", "١٠", "1_0", "10.0", "9" * 40])
def test_numbers_that_only_look_right_are_refused(text: str) -> None:
    """What int() takes and an address is not."""
    with pytest.raises(PageError, match="whole number"):
        number({"address": [text]}, "address", 1, 512)


def test_the_last_of_several_values_counts() -> None:
    """As a form that was sent twice means it."""
    assert one({"q": ["a", " b "]}, "q") == "b"
    assert one({}, "q", "c") == "c"


def test_an_unknown_parameter_is_named_with_those_there_are() -> None:
    """A slip of the pen is not answered as if it were not there."""
    known_only({"q": ["x"]}, "q", "page")
    with pytest.raises(PageError, match=r"no parameter 'Q' here; there are: q, page\.") as refused:
        known_only({"Q": ["x"]}, "q", "page")
    assert refused.value.status == 400


def test_a_long_value_is_cut_in_the_message() -> None:
    """A message stays a line."""
    with pytest.raises(PageError) as refused:
        choice({"by": ["x" * 10_000]}, "by", ("slot", "rdm"))
    assert len(refused.value.message) < 120
