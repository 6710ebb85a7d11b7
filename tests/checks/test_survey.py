"""The survey and the readings agree with the layout that they stand in for."""

from __future__ import annotations

import json

from hypothesis import HealthCheck, given, settings

from modebook.checks.reading import FixtureReading
from modebook.documents.bits import full_scale, stretches
from modebook.documents.fixture import Fixture
from modebook.documents.layout import all_parameters, blocks
from modebook.documents.modes import spans_of
from modebook.documents.ways import slot_ways
from support.documents import Json, fixtures


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(fixtures())
def test_what_the_survey_says_is_what_a_closer_look_finds(document: Json) -> None:
    reading = FixtureReading(Fixture.model_validate_json(json.dumps(document)))
    for index, mode in enumerate(reading.modes):
        at = f"/modes/{index}"
        written = list(all_parameters(mode.mode, at))
        survey = mode.survey
        assert [mode.at(i) for i in range(len(written))] == written
        exact = all(
            sorted(slot for placed in block.placed for slot in placed.slots)
            == list(range(1, block.footprint + 1))
            for block in blocks(mode.mode)
        )
        assert mode.bytes_are_exact is exact
        assert survey.conditional == [i for i, (p, _) in enumerate(written) if p.when is not None]
        assert survey.spanned == [
            i for i, (p, _) in enumerate(written) if spans_of(p.span) or any(r.span for r in p.ranges)
        ]
        untidy = []
        for i, (parameter, _) in enumerate(written):
            edges = [(piece.from_, piece.to) for piece in parameter.ranges]
            joined = [
                0,
                *(edge for pair in edges for edge in (pair[0], pair[1] + 1)),
                full_scale(parameter) + 1,
            ]
            if edges and any(a != b for a, b in zip(joined[::2], joined[1::2], strict=True)):
                untidy.append(i)
        assert survey.ranges_to_judge == untidy
        ways = slot_ways(mode.mode, at)
        assert mode.slot_ways == ways
        assert sum(map(len, survey.sets.values())) == len(ways)
        told = [(one.pointer, one.stretch) for stretched in mode.continuous.values() for one in stretched]
        expected = [(pointer, stretch) for p, pointer in written for stretch in stretches(p)]
        assert sorted(told, key=repr) == sorted(expected, key=repr)
        sources = {p.source for p, _ in written} | {r.source for p, _ in written for r in p.ranges}
        sources |= {s.source for p, _ in written for s in spans_of(p.span)}
        sources |= {s.source for p, _ in written for r in p.ranges for s in spans_of(r.span)}
        assert survey.sources == sources - {None}
