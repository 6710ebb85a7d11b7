"""The rules of one or more packages, found by looking: a module there is a rule."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

from modebook.checks.rule import Rule

FIXTURE_RULES = "modebook.checks.rules"
"""The package of the rules about fixture documents."""


class RegistryError(RuntimeError):
    """A rule package that is not in order: a fault of the program, not of its input."""


@cache
def rules_of(package: str) -> Mapping[str, Rule[Any]]:
    """The rules of a package by name, in the order of their names.

    Raises RegistryError for a module without RULE, or one whose name is not its rule's.
    """
    found: dict[str, Rule[Any]] = {}
    for module_info in iter_modules(import_module(package).__path__):
        if module_info.name.startswith("_"):
            continue
        module = import_module(f"{package}.{module_info.name}")
        rule = getattr(module, "RULE", None)
        if not isinstance(rule, Rule):
            raise RegistryError(f"{module.__name__} holds no RULE")
        if rule.name.replace("-", "_") != module_info.name:
            raise RegistryError(f"{module.__name__} holds the rule {rule.name!r}: the two names must agree")
        found[rule.name] = rule
    return dict(sorted(found.items()))


def all_rules(*packages: str) -> dict[str, Rule[Any]]:
    """The rules of several packages by name; RegistryError where two share one."""
    found: dict[str, Rule[Any]] = {}
    for package in packages:
        for name, rule in rules_of(package).items():
            if name in found:
                raise RegistryError(f"two rules are called {name!r}")
            found[name] = rule
    return dict(sorted(found.items()))
