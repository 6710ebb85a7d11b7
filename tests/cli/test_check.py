"""`modebook check`: its formats, its exit status, and what it does with bad documents."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from support.documents import fixture
from support.program import CATALOG, Program

GOOD = CATALOG / "fixtures" / "generic" / "dimmer.json"
BAD = CATALOG / "fixtures" / "botchmere" / "faulty-on-purpose-1.json"


def test_json_has_the_documented_keys_also_when_the_status_is_1(modebook: Program) -> None:
    """The object is whole; every finding has every key."""
    run = modebook("check", BAD, "--json")
    assert run.status == 1
    assert run.json["documents"] == 1
    keys = {"rule", "severity", "file", "pointer", "message", "figure", "help"}
    assert run.json["findings"]
    assert all(set(finding) == keys for finding in run.json["findings"])


def test_the_catalog_holds_exactly_its_planted_findings(modebook: Program) -> None:
    """Every finding is in planted.json, every planted one is found, and none twice."""
    found = [
        (finding["rule"], str(Path(finding["file"]).relative_to(CATALOG)), finding["pointer"])
        for finding in modebook("check", "--json").json["findings"]
    ]
    planted = json.loads((CATALOG / "planted.json").read_text(encoding="utf-8"))
    listed = planted if isinstance(planted, list) else planted["planted"]
    assert sorted(found) == sorted((one["rule"], one["file"], one["pointer"]) for one in listed)


def test_coarse_findings_carry_bits_and_step(modebook: Program) -> None:
    """The figure of a coarse rule: bits, bits needed, and the step with its unit in its name."""
    steps = {
        "coarse-angle": "step_deg",
        "coarse-hue": "step_deg",
        "coarse-chromaticity": "step_delta_uv_prime",
        "coarse-color-temperature": "step_delta_uv_prime",
        "coarse-dimmer": "step_jnd",
    }
    seen = set()
    for finding in modebook("check", "--json").json["findings"]:
        if finding["rule"] in steps:
            seen.add(finding["rule"])
            assert {"bits", "bits_needed", steps[finding["rule"]]} <= set(finding["figure"])
    assert seen == set(steps)


def test_a_clean_document_is_status_0(modebook: Program) -> None:
    """Nothing found: a line that says so."""
    run = modebook("check", GOOD)
    assert run.status == 0
    assert run.out == "1 document checked: nothing to find.\n"


def test_one_rule_alone(modebook: Program) -> None:
    """--rule runs that rule and no other; an unknown one is told with the nearest."""
    found = modebook("check", BAD, "--rule", "slot-gap", "--json").json["findings"]
    assert {finding["rule"] for finding in found} == {"slot-gap"}
    run = modebook("check", "--rule", "slot-gab")
    assert run.status == 2
    assert "slot-gap" in run.err


def test_lines_of_github_format_lead_to_the_place(modebook: Program) -> None:
    """An annotation names file, line and rule, and that line holds what the pointer leads to."""
    found = modebook("check", BAD, "--rule", "slot-overlap", "--format", "github").out.splitlines()
    assert len(found) == 1
    assert found[0].startswith("::error file=")
    line = int(found[0].split("line=")[1].split(",")[0])
    assert '"green"' in BAD.read_text(encoding="utf-8").splitlines()[line - 1]


def test_sarif_names_the_rules_that_fired(modebook: Program) -> None:
    """SARIF 2.1.0: one run, each result refers to a described rule and a line."""
    log = modebook("check", BAD, "--format", "sarif").json
    run = log["runs"][0]
    described = [rule["id"] for rule in run["tool"]["driver"]["rules"]]
    assert log["version"] == "2.1.0"
    assert run["results"]
    for result in run["results"]:
        assert described[result["ruleIndex"]] == result["ruleId"]
        assert result["locations"][0]["physicalLocation"]["region"]["startLine"] >= 1


def test_explain_has_the_fixed_headings(modebook: Program) -> None:
    """Every explanation is built alike."""
    told = modebook("check", "--explain", "address-overlap").out
    places = [
        told.index(f"\n{head}\n")
        for head in ("What it checks", "Why it matters", "Bad", "Good", "References")
    ]
    assert places == sorted(places)


def test_fix_writes_the_canonical_form_and_only_that(modebook: Program, tmp_path: Path) -> None:
    """Keys in disorder are brought into form, their meaning stays; a second time nothing happens."""
    path = tmp_path / "fixtures" / "maker" / "model.json"
    path.parent.mkdir(parents=True)
    document = fixture(maker="Maker", model="Model")
    path.write_text(json.dumps(dict(reversed(list(document.items())))), encoding="utf-8")
    assert "fixed" in modebook("check", "--fix", path).err
    once = path.read_bytes()
    assert json.loads(once) == document
    assert next(iter(json.loads(once))) in ("$schema", "maker")
    assert "0 of 1" in modebook("check", "--fix", path).err
    assert path.read_bytes() == once


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"", "empty"),
        (b"{", "not JSON"),
        (b"\xff\xfe", "UTF-8"),
        (b"[" * 100_000, "nested too deeply"),
        (b'{"maker": 5}', "/maker"),
        (b'{"maker": "A", "maker": "B"}', "twice"),
        (b" " * 50_000_000, "larger than"),
    ],
    ids=["empty", "cut off", "encoding", "deep", "type", "duplicate key", "50 MB"],
)
def test_a_bad_document_is_a_finding_and_the_others_are_checked(
    modebook: Program, tmp_path: Path, content: bytes, told: str
) -> None:
    """One document that cannot be taken in costs nothing else; --fix leaves it as it is."""
    bad = tmp_path / "bad.json"
    bad.write_bytes(content)
    run = modebook("check", bad, GOOD, "--json", "--fix")
    assert run.status == 1
    assert run.json["documents"] == 2
    findings = run.json["findings"]
    assert {(finding["rule"], finding["file"]) for finding in findings} == {("document-invalid", str(bad))}
    assert any(told in f"{finding['pointer']} {finding['message']}" for finding in findings)
    assert bad.read_bytes() == content
