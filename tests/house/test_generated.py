"""Generated files are committed as the program generates them."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).parent


def test_committed_files_are_what_the_generator_makes() -> None:
    """A schema that differs from its models fails here; the message names the command that mends it."""
    run = subprocess.run(
        [sys.executable, str(HERE / "generated.py"), "--check"], capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stderr
