"""Findings by cause: forty units with one wrong mode are one paragraph."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.checks.finding import Finding
from modebook.rig.audit import audit
from modebook.rig.examples import rig_of
from modebook.rig.grouping import by_cause, unit_ranges


def test_forty_units_with_one_wrong_mode_are_one_cause():
    """And two with another are a second one."""
    rows = [f"{n},Invented 1,Wrong,1/{n * 4}" for n in range(1, 41)]
    rows += ["50,Invented 1,Other,2/1", "51,Invented 1,Other,2/10"]
    reading = rig_of({"fixtures": [{}], "patch": "unit,fixture,mode,address\n" + "\n".join(rows) + "\n"})
    first, second = by_cause(audit(reading).findings)
    assert (first.rule, first.units, len(first.findings), len(first.messages)) == (
        "unknown-mode",
        "1-40",
        40,
        1,
    )
    assert first.rows == tuple(range(2, 42))
    assert (second.mode, second.units) == ("Other", "50, 51")


@settings(deadline=None)
@given(
    st.lists(
        st.tuples(
            st.sampled_from(["a", "b"]),
            st.sampled_from(["error", "warning", "info"]),
            st.sampled_from(["x/y", "x/z"]),
            st.sampled_from(["/modes/0", "/modes/1"]),
            st.integers(2, 9),
        ),
        max_size=20,
    )
)
def test_no_finding_is_lost_and_the_worst_come_first(told):
    """Every finding is in one cause; causes are ordered by severity, findings by row."""
    findings = [
        Finding(
            rule, severity, "f", "", "m", {"fixture": fixture, "mode": "m", "pointer": place}, "", "1", row
        )
        for rule, severity, fixture, place, row in told
    ]
    causes = by_cause(findings)
    assert sorted(map(repr, (f for cause in causes for f in cause.findings))) == sorted(map(repr, findings))
    ranks = [("error", "warning", "info").index(cause.severity) for cause in causes]
    assert ranks == sorted(ranks)
    for cause in causes:
        assert list(cause.rows) == sorted({finding.row for finding in cause.findings})
        assert (
            len({(f.rule, f.severity, f.figure["fixture"], f.figure["pointer"]) for f in cause.findings}) == 1
        )


@pytest.mark.parametrize(
    ("units", "told"),
    [
        (["1", "2", "3", "5"], "1-3, 5"),
        (["1", "2"], "1, 2"),
        (["12", "12A", "13"], "12, 12A, 13"),
        (["S1", "S2", "S3"], "S1-S3"),
        (["1A", "2A", "3A"], "1A-3A"),
        (["9", "10", "11"], "9-11"),
        (["3", "2", "1"], "3, 2, 1"),
        (["1", "1", None, ""], "1"),
        ([], ""),
    ],
)
def test_unit_numbers_are_drawn_together(units, told):
    """Neighbors in the order given; letters stay apart."""
    assert unit_ranges(units) == told
