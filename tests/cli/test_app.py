"""The entry: light to start, every command told, known errors in one line."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest

from modebook.cli.app import COMMANDS
from support.program import ROOT, Program

HEAVY = ("pydantic", "numpy", "rich", "sqlite_utils", "datasette", "jsonschema", "rapidfuzz", "matplotlib")


def test_help_loads_no_heavy_package() -> None:
    """`modebook --help` must stay as light as typer itself."""
    code = (
        "import sys; sys.argv=['modebook','--help']\n"
        "from modebook.cli.app import main\n"
        "try: main()\nexcept SystemExit: pass\n"
        f"print([name for name in {HEAVY!r} if name in sys.modules], file=sys.stderr)"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stderr.strip() == "[]"


def test_help_names_every_command(modebook: Program) -> None:
    """Each command has its line in the help."""
    told = modebook("--help").out
    assert [name for name in COMMANDS if f"\n  {name} " not in told] == []


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_stands_in_the_readme_with_its_options(name: str) -> None:
    """README.md documents each command and each option that its help prints."""
    from typer.main import get_command

    from modebook.cli.app import app

    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    command = get_command(app).commands[name]  # type: ignore[attr-defined]
    assert f"**`modebook {name}" in readme
    options = [opt for one in command.params for opt in one.opts if opt.startswith("--")]
    told = {
        word
        for line in readme.splitlines()
        if line.startswith("| `-")
        for word in re.findall(r"--[a-z-]+", line)
    }
    assert [option for option in options if option not in told] == []


def test_a_missing_catalog_is_one_line_and_status_2(modebook: Program, tmp_path: Path) -> None:
    """A folder that is not there: which, and what would be right."""
    run = modebook("check", catalog=tmp_path / "nowhere")
    assert (run.status, run.out) == (2, "")
    assert run.err == (
        f"modebook: {tmp_path}/nowhere: no such folder; "
        "a catalog is a folder with fixtures/ and rigs/ in it\n"
    )


def test_an_unknown_option_is_told_with_status_2(modebook: Program) -> None:
    """Bad usage is status 2, without a traceback."""
    run = modebook("check", "--nonsense")
    assert run.status == 2
    assert "--nonsense" in run.err
    assert "Traceback" not in run.err


def test_version(modebook: Program) -> None:
    """The version is the package's."""
    from modebook import __version__

    assert modebook("--version").out == f"modebook {__version__}\n"
