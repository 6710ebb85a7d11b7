"""Writes or checks every generated file: `python tests/house/generated.py --write` or `--check`."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
ROOT = Path(__file__).resolve().parents[2]
COMMAND = "python tests/house/generated.py --write"


def generated() -> dict[Path, bytes]:
    """Every generated file by its path, with what should be in it."""
    from demo_chart import PATH, demo_chart
    from readme import with_outputs

    from modebook.documents.schemas import schemas
    from modebook.shelf.canonical import form

    made = {ROOT / "schema" / name: (form(body, 110) + "\n").encode() for name, body in schemas().items()}
    made[ROOT / PATH] = demo_chart()
    readme = ROOT / "README.md"
    made[readme] = with_outputs(readme.read_text(encoding="utf-8")).encode()
    return made


def stale() -> list[Path]:
    """The generated files that are missing or differ, and those in schema/ that nothing generates."""
    wanted = generated()
    found = [path for path, content in wanted.items() if not path.is_file() or path.read_bytes() != content]
    return found + [path for path in sorted((ROOT / "schema").iterdir()) if path not in wanted]


def main() -> int:
    """Write or check; 1 where the check finds a file that is not as it should be."""
    parser = argparse.ArgumentParser(description=__doc__)
    what = parser.add_mutually_exclusive_group(required=True)
    what.add_argument("--write", action="store_true")
    what.add_argument("--check", action="store_true")
    if parser.parse_args().write:
        for path, content in generated().items():
            path.write_bytes(content)
            print(path.relative_to(ROOT))
        return 0
    found = stale()
    for path in found:
        print(f"{path.relative_to(ROOT)} is not as generated: run {COMMAND}", file=sys.stderr)
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
