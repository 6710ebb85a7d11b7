"""The house: files keep to their size, the tree speaks of the project alone, site imports only downward."""

from __future__ import annotations

import ast
import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "toolkit" / "modebook"
LONGEST = 400


def test_no_module_is_longer_than_400_lines() -> None:
    """Past that there is a seam to look for."""
    files = [*PACKAGE.rglob("*.py"), *(ROOT / "tests").rglob("*.py"), *(ROOT / "site").rglob("*.py")]
    lines = {str(path.relative_to(ROOT)): len(path.read_text().splitlines()) for path in files}
    long = {path: count for path, count in lines.items() if count > LONGEST}
    assert long == {}


def test_every_module_says_in_its_first_line_what_it_is_for() -> None:
    """A docstring whose first line is a sentence."""
    silent = []
    for path in PACKAGE.rglob("*.py"):
        told = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))
        if not told or not re.search(r"[.?!:]$", told.splitlines()[0]):
            silent.append(str(path.relative_to(ROOT)))
    assert silent == []


def test_site_plugins_import_only_downward_from_render() -> None:
    """A page's code is thin: it may call render and what lies below, never the command line."""
    for path in (ROOT / "site").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            names += [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
            assert not [name for name in names if name.startswith("modebook.cli")], path
