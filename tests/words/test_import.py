"""The vocabulary is light: it brings in nothing of the project's other rooms and no heavy library."""

from __future__ import annotations

import subprocess
import sys

PROGRAM = """
import importlib, pkgutil, sys
import modebook.words
assert not [name for name in sys.modules if name.startswith("modebook.words.")], "the room imports its parts"
for module in pkgutil.iter_modules(modebook.words.__path__, "modebook.words."):
    importlib.import_module(module.name)
print("\\n".join(sys.modules))
"""


def test_importing_all_words_brings_in_nothing_else() -> None:
    """Run in a fresh interpreter, since this one has long imported everything."""
    done = subprocess.run([sys.executable, "-c", PROGRAM], capture_output=True, text=True, check=True)
    names = done.stdout.split()
    rooms = {name.split(".")[1] for name in names if name.startswith("modebook.")}
    assert rooms == {"words"}
    assert not {"pydantic", "numpy", "rich", "typer", "jsonschema"} & set(names)
