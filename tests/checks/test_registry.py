"""The registry: rules are found by looking, and a package that is not in order is refused."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from modebook.checks.registry import FIXTURE_RULES, RegistryError, all_rules, rules_of


@pytest.mark.parametrize(
    ("source", "why"),
    [
        ("", "holds no RULE"),
        ("from modebook.checks.rules.slot_gap import RULE\n", "the two names must agree"),
    ],
)
def test_a_module_that_is_no_rule_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, source: str, why: str
) -> None:
    package = f"rules_{abs(hash(source))}"
    (tmp_path / package).mkdir()
    (tmp_path / package / "__init__.py").write_text("")
    (tmp_path / package / "_shared.py").write_text("raise RuntimeError('never looked at')\n")
    (tmp_path / package / "some_fault.py").write_text(source)
    monkeypatch.syspath_prepend(str(tmp_path))
    with pytest.raises(RegistryError, match=why):
        rules_of(package)
    sys.modules.pop(f"{package}.some_fault", None)


def test_one_name_for_two_rules_is_refused() -> None:
    with pytest.raises(RegistryError, match="two rules are called"):
        all_rules(FIXTURE_RULES, FIXTURE_RULES)


def test_rules_come_in_the_order_of_their_names() -> None:
    assert list(rules_of(FIXTURE_RULES)) == sorted(rules_of(FIXTURE_RULES))
