"""Runs every benchmark in turn: `python tests/bench/run.py`; each prints its ratios and targets."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).parent


def main() -> int:
    """Run them all; 1 where one of them failed to run."""
    status = 0
    for script in sorted(HERE.glob("bench_*.py")):
        print(f"\n== {script.stem}", flush=True)
        status |= int(subprocess.run([sys.executable, str(script)], check=False).returncode != 0)
    return status


if __name__ == "__main__":
    sys.exit(main())
