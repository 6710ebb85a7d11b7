"""`modebook find` and `modebook build`: searches in any combination, over a database kept up to date."""

from __future__ import annotations

import json
import shutil
import sqlite3
from pathlib import Path

import pytest

from support.program import CATALOG, Program

KEYS = {"maker", "model", "mode", "number", "footprint", "smoothing_by"}


def names(told: dict[str, list[dict[str, object]]]) -> set[tuple[object, object]]:
    """Model and mode of what was found."""
    return {(mode["model"], mode["mode"]) for mode in told["modes"]}


def test_json_has_the_documented_keys(modebook: Program) -> None:
    """Every mode has them."""
    told = modebook("find", "--json").json
    assert told["modes"]
    assert all(set(mode) >= KEYS for mode in told["modes"])


def test_conditions_combine(modebook: Program) -> None:
    """What holds under two conditions is what holds under each."""
    pan = names(modebook("find", "--min-bits", "pan=16", "--json").json)
    remote = names(modebook("find", "--smoothing-by", "remote", "--json").json)
    both = names(modebook("find", "--min-bits", "pan=16", "--smoothing-by", "remote", "--json").json)
    assert both == pan & remote
    assert both not in (set(), pan, remote)


def test_words_and_parameters_and_footprint(modebook: Program) -> None:
    """Free text finds by names and labels; --has by the vocabulary."""
    assert names(modebook("find", "torvane", "exten", "--json").json) == {("Torvane 40", "Extended")}
    found = modebook("find", "--has", "hue,color-temperature", "--max-footprint", 12, "--json").json
    assert found["modes"]
    assert all(mode["footprint"] <= 12 for mode in found["modes"])


def test_drafts_are_left_out_unless_asked(modebook: Program) -> None:
    """Torvane 12 is a draft."""
    assert names(modebook("find", "torvane 12", "--json").json) == set()
    assert {model for model, _ in names(modebook("find", "torvane 12", "--drafts", "--json").json)} == {
        "Torvane 12"
    }


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--has", "hew"), "hue"),
        (("--min-bits", "pan"), "pan=16"),
        (("--category", "moving yoek"), "moving yoke"),
        (("--standing", "prooved"), "proved"),
        (("--smoothing-by", "magic"), "magic"),
    ],
)
def test_unknown_words_are_told_with_the_nearest(
    modebook: Program, words: tuple[str, ...], told: str
) -> None:
    """Status 2 and one line."""
    run = modebook("find", *words)
    assert run.status == 2
    assert told in run.err
    assert "Traceback" not in run.err


@pytest.mark.parametrize("text", ['"', "'; drop table modes", "a OR b NEAR", "*", "(", "-", "ä ö", "\x00"])
def test_free_text_of_any_kind_is_words(modebook: Program, text: str) -> None:
    """No sign has a meaning of its own."""
    assert modebook("find", "--json", "--", text).status == 0


def test_an_edit_is_found_at_once_and_the_catalog_stays_clean(modebook: Program, tmp_path: Path) -> None:
    """A changed document is read again; no database lands in the catalog's folder."""
    catalog = tmp_path / "catalog"
    shutil.copytree(CATALOG, catalog)
    before = sorted(catalog.rglob("*"))
    assert modebook("find", "zebrafish", "--json", catalog=catalog).json["modes"] == []
    path = catalog / "fixtures" / "zandroveil" / "glawm-60.json"
    document = json.loads(path.read_text(encoding="utf-8"))
    document["modes"][0]["name"] = "Zebrafish"
    path.write_text(json.dumps(document), encoding="utf-8")
    assert len(modebook("find", "zebrafish", "--json", catalog=catalog).json["modes"]) == 1
    assert sorted(catalog.rglob("*")) == before


def test_build_names_its_file_and_does_nothing_twice(modebook: Program, tmp_path: Path) -> None:
    """The file is SQLite; a second build reads nothing."""
    database = tmp_path / "here.sqlite"
    first = modebook("build", "--db", database, "--json").json
    assert (first["database"], first["changed"], first["read"]) == (str(database), True, first["documents"])
    second = modebook("build", "--db", database, "--json").json
    assert (second["changed"], second["read"]) == (False, 0)
    with sqlite3.connect(database) as connection:
        assert connection.execute("SELECT count(*) FROM fixtures").fetchone()[0] == first["documents"]
    connection.close()


def test_a_file_that_is_not_ours_is_never_overwritten(modebook: Program, tmp_path: Path) -> None:
    """--db pointed at a person's file: refused in one line, and the file is as it was."""
    mine = tmp_path / "letter.txt"
    mine.write_text("Dear aunt", encoding="utf-8")
    run = modebook("build", "--db", mine)
    assert run.status == 2
    assert "letter.txt" in run.err
    assert mine.read_text(encoding="utf-8") == "Dear aunt"
