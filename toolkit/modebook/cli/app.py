"""The program's entry: gathers the commands, and turns every known error into one line at the edge."""

from __future__ import annotations

import gc
import os
import sys
from collections.abc import Sequence
from importlib import import_module

import typer

COMMANDS = (
    "demo",
    "check",
    "find",
    "chart",
    "draft",
    "compare",
    "promote",
    "rigs",
    "audit",
    "repatch",
    "verify",
    "sheets",
    "plan",
    "fade",
    "flicker",
    "measure",
    "build",
    "serve",
)
"""In the order of the help: what a new user tries first, then the day's work, then the housekeeping."""


def program(names: Sequence[str] = COMMANDS) -> typer.Typer:
    """The program with some of its commands, or all."""
    made = typer.Typer(
        name="modebook",
        help="Fixture modes recorded, checked, and computed for a rig.",
        epilog="Start with: modebook demo",
        no_args_is_help=True,
        rich_markup_mode=None,
        pretty_exceptions_enable=False,
        add_completion=True,
        context_settings={"help_option_names": ["-h", "--help"]},
    )
    made.callback()(_root)
    for name in names:
        import_module(f"modebook.cli.{name}").register(made)
    return made


def _version(wanted: bool) -> None:
    if wanted:
        from modebook import __version__

        typer.echo(f"modebook {__version__}")
        raise typer.Exit


def _root(
    version: bool = typer.Option(
        False, "--version", callback=_version, is_eager=True, help="Print the version and leave."
    ),
) -> None:
    """Fixture modes recorded, checked, and computed for a rig."""


def __getattr__(name: str) -> typer.Typer:
    """`app`, the program with all its commands, is made when it is asked for."""
    if name == "app":
        return program()
    raise AttributeError(name)


def main() -> None:
    """Run the program. Exit status: 0 nothing wrong, 1 findings of severity error, 2 work not done."""
    # A command that is named first is the only one that is needed: declaring them all takes time.
    named = sys.argv[1:2]
    # Plugins for pydantic that other packages bring are looked for at every start; none is of use here.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    # Starting makes many objects that all stay: looking through them again and again finds no garbage.
    gc.set_threshold(50_000, 20, 50)
    try:
        program([name for name in COMMANDS if name in named] or COMMANDS)()
    except BrokenPipeError:
        # The reader has gone (a pager that was quit): nobody is left to tell.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(1)
    except KeyboardInterrupt:
        typer.echo("modebook: stopped", err=True)
        sys.exit(2)
    except Exception as error:
        line = _line_for(error)
        if line is None:
            raise
        typer.echo(f"modebook: {line}", err=True)
        sys.exit(2)


def _line_for(error: Exception) -> str | None:
    """One clear line for an error that the program knows; None for one that is its own fault."""
    # Each floor has its own named errors, raised where they are understood; a RuntimeError is our fault.
    ours = any(kind.__module__.startswith("modebook.") for kind in type(error).__mro__)
    if ours and not isinstance(error, RuntimeError):
        return str(error)
    if isinstance(error, OSError) and error.filename:
        return f"{error.filename}: {(error.strerror or str(error)).lower()}"
    return None
