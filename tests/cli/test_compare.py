"""`modebook compare`: fixtures, files, readings, modes, firmwares, by meaning; status 1 where they differ."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from support.program import CATALOG, Program

TORVANE = CATALOG / "fixtures" / "pelluwick" / "torvane-40.json"


@pytest.fixture
def catalog(tmp_path: Path) -> Path:
    """A catalog of one fixture with a reading of it that says the same in other words."""
    fixtures = tmp_path / "fixtures" / "pelluwick"
    readings = tmp_path / "readings" / "pelluwick" / "torvane-40"
    for folder in (fixtures, readings):
        folder.mkdir(parents=True)
    shutil.copy(TORVANE, fixtures)
    document = json.loads(TORVANE.read_text())
    document["modes"][0]["note"] = "Read again, on paper."
    document["modes"][0]["parameters"].reverse()
    del document["promotions"]
    document["standing"] = "transcribed"
    (readings / "second.json").write_text(json.dumps(document), encoding="utf-8")
    return tmp_path


def change(path: Path, **more: Any) -> None:
    """Change the footprint and one span of a document's first mode."""
    document = json.loads(path.read_text())
    document["modes"][0].update(more)
    path.write_text(json.dumps(document), encoding="utf-8")


def test_the_same_is_status_0(modebook: Program, catalog: Path) -> None:
    """Order of parameters, notes and standing do not count; a fixture's one reading is found by itself."""
    run = modebook("compare", "pelluwick/torvane-40", "--json", catalog=catalog)
    assert (run.status, run.json) == (0, {"same": True, "differences": []})
    run = modebook("compare", "pelluwick/torvane-40", "pelluwick/torvane-40/second", catalog=catalog)
    assert "They say the same" in run.out


def test_a_difference_is_status_1_with_pointer_and_both_values(modebook: Program, catalog: Path) -> None:
    """Keys as documented."""
    change(catalog / "readings" / "pelluwick" / "torvane-40" / "second.json", footprint=17)
    run = modebook("compare", "pelluwick/torvane-40", "--json", catalog=catalog)
    assert run.status == 1
    assert run.json == {
        "same": False,
        "differences": [{"pointer": "/modes/0/footprint", "a": 16, "b": 17}],
    }
    out = modebook("compare", "pelluwick/torvane-40", catalog=catalog).out
    assert "Mode Basic" in out
    assert "1 difference." in out


def test_two_modes_of_one_fixture(modebook: Program) -> None:
    """Bits stand beside the slots that they come from."""
    run = modebook("compare", "pelluwick/torvane-40", "--mode", "Basic", "--mode", "standard")
    assert run.status == 1
    assert "mode Basic" in run.out
    assert "1, 2 (16 bits)" in run.out
    told = modebook("compare", "pelluwick/torvane-40", "--mode", "1", "--mode", "2", "--json").json
    assert {"pointer": "/modes/0/parameters/0/bits", "a": 8, "b": 16} in told["differences"]


def test_two_firmwares_of_one_fixture(modebook: Program) -> None:
    """The modes that a source for each tells of."""
    words = ("compare", "zandroveil/glawm-200", "--firmware", "2.1", "--firmware", "3.0")
    run = modebook(*words)
    assert run.status == 1
    assert "Everything" in run.out
    assert {"pointer": "/modes/7", "a": None, "b": "Everything"} in modebook(*words, "--json").json[
        "differences"
    ]


def test_a_fixture_and_its_stand_in(modebook: Program) -> None:
    """Two fixtures, by a mode each."""
    words = ("hoddlefen/strimble-16", "hoddlefen/strimble-72", "--mode", "16 pixels", "--mode", "72 pixels")
    told = modebook("compare", *words, "--json").json
    assert {d["pointer"]: (d["a"], d["b"]) for d in told["differences"]}["/modes/1/footprint"] == (67, 290)


def test_a_chart_may_be_compared_as_it_is_read(modebook: Program, tmp_path: Path) -> None:
    """Any file that draft reads: here the chart sheet of the fixture itself."""
    sheet = tmp_path / "sheet.csv"
    sheet.write_bytes(modebook("chart", "pelluwick/torvane-40", "--csv").out.encode())
    assert modebook("compare", "pelluwick/torvane-40", sheet).status == 0


@pytest.mark.parametrize("columns", [80, 120])
def test_no_line_is_wider_than_the_terminal(
    modebook: Program, monkeypatch: pytest.MonkeyPatch, columns: int
) -> None:
    """Two fixtures that have little in common."""
    monkeypatch.setenv("COLUMNS", str(columns))
    out = modebook("compare", "pelluwick/torvane-40", "zandroveil/glawm-200").out
    assert max(len(line) for line in out.splitlines()) <= columns


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("pelluwick/torvane-40",), "no reading is in"),
        (("pelluwick/torvane-40", "--mode", "Basik", "--mode", "Standard"), "Basic"),
        (("generic/rgb", "generic/rgba", "--mode", "1", "--firmware", "2"), "not both"),
        (("generic/rgb", "generic/rgba", *("--mode", "1") * 3), "twice at most"),
        (("generic/rgb", "generic/rgba", "--firmware", "2"), "none names a firmware"),
        (("generic/rgb", "generik/rgba"), "generic/rgba"),
    ],
)
def test_what_cannot_be_compared_is_told(modebook: Program, words: tuple[str, ...], told: str) -> None:
    """Status 2, so that a script can tell it from a difference."""
    run = modebook("compare", *words)
    assert run.status == 2
    assert told in " ".join(run.err.split())
    assert "Traceback" not in run.err


def test_the_demo_has_a_reading_that_differs_in_one_border(modebook: Program) -> None:
    """The Brumlet 7's second reading: other names do not count, one range does, and it is not second-read."""
    (file,) = (CATALOG / "readings").rglob("*.json")
    assert file.parent.relative_to(CATALOG / "readings").as_posix() == "pelluwick/brumlet-7"
    told = modebook("compare", "pelluwick/brumlet-7", "--json").json
    assert {d["pointer"].rpartition("/ranges")[0] for d in told["differences"]} == {"/modes/0/parameters/3"}
    assert next((d["a"], d["b"]) for d in told["differences"]) == (245, 240)
