"""What holds for all tests: hypothesis without a deadline (a loaded machine is not a fault), color off.

Where CI is set in the environment the same examples are tried each time, so that a change is judged by what
it changed. Everywhere else they are new ones each time; `--hypothesis-profile hunt` tries many more.
"""

from __future__ import annotations

import os

import pytest
from hypothesis import HealthCheck, settings

settings.register_profile(
    "modebook",
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow],
    derandomize="CI" in os.environ,
    print_blob=True,
)
settings.register_profile("hunt", settings.get_profile("modebook"), max_examples=1500)
settings.load_profile("modebook")


@pytest.fixture(autouse=True)
def _own_cache(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    """No test writes into the user's cache folder or follows the user's environment."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.getbasetemp() / "cache"))
    monkeypatch.delenv("MODEBOOK_CATALOG", raising=False)
    monkeypatch.setenv("NO_COLOR", "1")
    monkeypatch.setenv("COLUMNS", "100")
