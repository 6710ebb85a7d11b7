"""The built wheel works from any folder: schema, demo catalog and site are inside."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel as it would lie among a machine's packages."""
    folder = tmp_path_factory.mktemp("wheel")
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(folder), str(ROOT)]
    run = subprocess.run(build, capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stdout[-2000:] + run.stderr[-2000:]
    (wheel,) = folder.glob("*.whl")
    packages = folder / "packages"
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(packages)
    return packages


def run_from(unpacked: Path, folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """The program out of the wheel, in another folder, without the checkout."""
    environment = {key: value for key, value in os.environ.items() if key != "MODEBOOK_CATALOG"}
    environment |= {"PYTHONPATH": str(unpacked), "XDG_CACHE_HOME": str(folder / "cache")}
    code = "import sys; from modebook.cli.app import main; sys.argv[0] = 'modebook'; main()"
    return subprocess.run(
        [sys.executable, "-c", code, *words],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )


def test_the_demo_runs_out_of_the_wheel(unpacked: Path, tmp_path: Path) -> None:
    """Build, check, audit and the answer, with the catalog that the wheel carries."""
    run = run_from(unpacked, tmp_path, "demo")
    assert run.returncode == 0, run.stderr
    assert "4. Which units can change smoothing remotely?" in run.stdout


def test_the_wheel_carries_schema_catalog_and_site(unpacked: Path, tmp_path: Path) -> None:
    """And `find` answers from it."""
    data = unpacked / "modebook" / "_data"
    assert (data / "schema" / "fixture.schema.json").is_file()
    assert (data / "site" / "metadata.json").is_file()
    run = run_from(unpacked, tmp_path, "find", "--min-bits", "pan=16", "--json")
    assert run.returncode == 0, run.stderr
    assert json.loads(run.stdout)["total"] > 0
