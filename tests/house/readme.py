"""README.md's console blocks with the real output of their commands, and its list of options."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
BLOCK = re.compile(
    r"^```console\n\$ (?P<command>.*modebook .*)\n(?P<output>(?:(?!```).*\n)*)```$", re.MULTILINE
)


STORY = re.compile(r"<!-- in a copy -->\n.*?<!-- /in a copy -->\n", re.DOTALL)
COMMANDS = re.compile(r"(?<=<!-- commands -->\n).*?(?=<!-- /commands -->)", re.DOTALL)


def with_outputs(text: str) -> str:
    """The text with every block that begins with `$ modebook ...` followed by what that prints now.

    Between the marks `commands` stands every command with its options, as the program knows them. Blocks
    between the marks `in a copy` are one story: they run one after another in a folder of their own that
    begins with a copy of the catalog, so that they may write into it.
    """
    text = COMMANDS.sub(lambda _: commands(), text)
    with tempfile.TemporaryDirectory() as cache:
        text = STORY.sub(lambda found: _story(found[0], cache), text)
        stories = STORY.findall(text)
        told = [BLOCK.sub(lambda found: _block(found["command"], cache), part) for part in STORY.split(text)]
    return "".join(part + story for part, story in zip(told, [*stories, ""], strict=True))


def _story(text: str, cache: str) -> str:
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(ROOT / "catalog", Path(folder, "catalog"))
        return BLOCK.sub(lambda found: _block(found["command"], cache, Path(folder)), text)


def _block(command: str, cache: str, folder: Path = ROOT) -> str:
    environment = {
        **os.environ,
        "PATH": f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}",
        "COLUMNS": "100",
        "NO_COLOR": "1",
        "XDG_CACHE_HOME": cache,
        "PYTHONWARNINGS": "ignore",
    }
    environment.pop("MODEBOOK_CATALOG", None)
    run = subprocess.run(
        ["bash", "-c", command], cwd=folder, env=environment, capture_output=True, text=True, check=False
    )
    if run.returncode not in (0, 1):
        raise SystemExit(f"README.md: {command}: {run.stderr}")
    return f"```console\n$ {command}\n{run.stdout.rstrip()}\n```"


def commands() -> str:
    """Every command and option of the program, as its own help tells them."""
    from typer.main import get_command

    from modebook.cli.app import app

    out: list[str] = []
    group: Any = get_command(app)
    for name, command in group.commands.items():
        context = command.make_context(name, [], resilient_parsing=True)
        pieces = " ".join(["modebook", name, *command.collect_usage_pieces(context)])
        rows: list[str] = []
        for one in command.get_params(context):
            told = one.get_help_record(context)
            if one.param_type_name == "option" and told and one.name != "help":
                option, meaning = (" ".join(words.replace("|", "\\|").split()) for words in told)
                rows.append(f"| `{option}` | {meaning} |")
        out += [f"**`{pieces}`** {command.help}", ""]
        if rows:
            out += ["| option | meaning |", "| --- | --- |", *rows, ""]
    return "\n".join(out) + "\n"
