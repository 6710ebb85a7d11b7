"""Ordinary charts come out as printed, in every order of columns and layout; what does not is told."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings

from intake.ordinary import Ordinary, charts
from modebook.intake.draft import draft_bytes


def read(chart: Ordinary):
    """The document's modes by footprint and name, and its doubts."""
    document = draft_bytes(chart.content, name=chart.name).document
    return document.modes, document.doubts


@settings(suppress_health_check=list(HealthCheck))
@given(charts())
def test_an_ordinary_chart_comes_out_as_printed(chart):
    """Slots, word and ranges of every parameter are right, or its mode has a doubt: never wrong silently."""
    modes, doubts = read(chart)
    left = list(enumerate(modes))
    for name, footprint, truth in chart.modes:
        named = [one for one in left if name in one[1].name or one[1].name in name]
        some = [one for one in (named or left) if one[1].footprint == footprint]
        doubted = any(doubt.pointer.startswith("/modes") for doubt in doubts)
        if doubted and not some:
            continue
        assert some, f"no mode {name} of {footprint} slots"
        index, mode = some[0]
        left.remove(some[0])
        if any(doubt.pointer.startswith(f"/modes/{index}") for doubt in doubts):
            continue
        found = {tuple(one.slots): one for one in mode.parameters}
        assert set(found) == set(truth)
        for slots, (word, ranges) in truth.items():
            assert found[slots].parameter == word
            read_ranges = [(piece.from_, piece.to) for piece in found[slots].ranges]
            assert read_ranges == ranges or (not ranges and len(read_ranges) < 2)


def test_most_of_them_need_no_doubt():
    """Of two hundred such charts at most one in fifty is doubted at all."""
    seen: list[bool] = []

    @settings(max_examples=200, derandomize=True, database=None, suppress_health_check=list(HealthCheck))
    @given(charts())
    def count(chart: Ordinary) -> None:
        seen.append(bool(read(chart)[1]))

    count()
    assert sum(seen) <= 0.02 * len(seen)
