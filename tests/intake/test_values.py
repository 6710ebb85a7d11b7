"""Printed values in every form that charts use, and what is refused or marked."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.intake.values import read_values


@pytest.mark.parametrize(
    ("printed", "ends"),
    [
        ("0-9", (0, 9)),
        ("000-009", (0, 9)),
        ("10 – 19", (10, 19)),
        ("10…19", (10, 19)),
        ("10..19", (10, 19)),
        ("10 to 19", (10, 19)),
        ("10 bis 19", (10, 19)),
        ("10 à 19", (10, 19)),
        ("10 a 19", (10, 19)),
        ("10 hasta 19", (10, 19)),
        ("10÷19", (10, 19)),
        ("7", (7, 7)),
        ("0x00-0x0F", (0, 15)),
        ("00h-0Fh", (0, 15)),
        ("0-65535", (0, 65535)),
        ("0-65,535", (0, 65535)),
        ("0-65.535", (0, 65535)),
        ("0 – 65 535", (0, 65535)),
        ("0-65'535", (0, 65535)),
        ("090.000–143.255", (23040, 36863)),
        ("2200–9000", (2200, 9000)),
        ("DMX 0-9", (0, 9)),
        ("(0-9)", (0, 9)),
        ("000-009 (00h-09h)", (0, 9)),
        ("0-9 / 0-4%", (0, 9)),
    ],
)
def test_a_stretch_of_values(printed: str, ends: tuple[int, int]) -> None:
    (read,) = read_values(printed)
    assert (read.start, read.end, read.why) == (*ends, "")


def test_several_stretches_in_one_cell() -> None:
    assert [(v.start, v.end) for v in read_values("0-9, 250-255")] == [(0, 9), (250, 255)]


@pytest.mark.parametrize(
    "printed", ["", "Pan", "0-540°", "9-0", "Mode 1", "-", "1-20 Hz", "8ch", "10ch", "*"]
)
def test_what_are_no_values(printed: str) -> None:
    assert read_values(printed) == ()


def test_a_lost_dash_is_marked_and_a_single_number_of_thousands_needs_its_mark() -> None:
    (read,) = read_values("012 047")
    assert (read.start, read.end) == (12, 47)
    assert read.why
    assert [(v.start, v.end) for v in read_values("12,047")] == [(12047, 12047)]


def test_percent_alone_is_marked() -> None:
    (read,) = read_values("0-50%")
    assert (read.start, read.form) == (0, "percent")
    assert read.why


def test_a_hex_column_needs_no_marks_on_its_numbers() -> None:
    (read,) = read_values("10-1F", "hex")
    assert (read.start, read.end) == (16, 31)


def test_pairs_that_may_be_thousands_are_marked() -> None:
    (read,) = read_values("12.128-14.255")
    assert read.why


@given(
    st.integers(0, 65535),
    st.integers(0, 65535),
    st.sampled_from(["-", " - ", "–", "…", "..", " to ", " bis "]),
    st.booleans(),
)
def test_any_two_ends_come_back(a: int, b: int, dash: str, padded: bool) -> None:
    """What is printed without marks is read as it stands, whatever the dash and padding."""
    low, high = sorted((a, b))
    width = 3 if padded else 1
    (read,) = read_values(f"{low:0{width}d}{dash}{high:0{width}d}")
    assert (read.start, read.end, read.why) == (low, high, "")


@given(st.integers(0, 255), st.integers(0, 255), st.integers(0, 255), st.integers(0, 255))
def test_padded_pairs_count_256(a: int, b: int, c: int, d: int) -> None:
    low, high = sorted((a * 256 + b, c * 256 + d))
    (read,) = read_values(f"{low >> 8:03d}.{low & 255:03d}-{high >> 8:03d}.{high & 255:03d}")
    assert (read.start, read.end, read.pairs) == (low, high, True)


@given(st.text(max_size=40))
def test_any_text_is_read_or_not_but_never_fails(text: str) -> None:
    for form in ("dec", "hex", "percent"):
        assert all(v.start <= v.end for v in read_values(text, form))  # type: ignore[arg-type]


def test_all_of_a_percent_scale_is_all_of_the_values_without_a_doubt():
    """A part of it falls on several values; all of it does not."""
    (whole,), (part,) = read_values("0-100%", "percent"), read_values("11-20%", "percent")
    assert (whole.start, whole.end, whole.why) == (0, 255, "")
    assert part.why


@pytest.mark.parametrize("printed", ["000 <-> 255", "0 <=> 255", "0 ↔ 255", "0 -> 255", "0 > 255"])
def test_arrows_join_the_ends_of_a_range(printed: str):
    (read,) = read_values(printed)
    assert (read.start, read.end, read.why) == (0, 255, "")
    assert not read_values("10=20")
