"""`modebook draft --interactive`: one doubt at a time, written after each answer."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from cli.test_draft import DEMO, WHO, feed
from support.program import Program, Run


@pytest.fixture
def drafted(modebook: Program, tmp_path: Path) -> Path:
    """The demo's chart as a draft with two open doubts."""
    file = tmp_path / "q.json"
    assert modebook("draft", DEMO, *WHO, "-o", file).status == 0
    return file


def answer(modebook: Program, monkeypatch: pytest.MonkeyPatch, file: Path, *lines: str) -> Run:
    """Go on with a draft, typing lines."""
    feed(monkeypatch, "".join(f"{line}\n" for line in lines).encode())
    return modebook("draft", file, "--interactive", "--by", "R. Quill")


def doubts(file: Path) -> list[dict[str, Any]]:
    """The doubts in a file."""
    found: list[dict[str, Any]] = json.loads(file.read_text(encoding="utf-8"))["doubts"]
    return found


def test_each_doubt_is_shown_with_all_that_is_known_of_it(
    modebook: Program, drafted: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Number, place in the document and in the source, printed, read, why, and the ranges around it."""
    out = answer(modebook, monkeypatch, drafted, "l", "l").out
    for told in (
        "1 of 2  Basic, slot 3, pan, span  page 2, table 1, row 6",
        "printed  540°",
        "read     0 to 540 deg",
        "why      One figure is printed: where it begins is not.",
        "2 of 2  Extended, slot 12, control, 15-29  page 3, table 1, row 15",
        "> 3:      15-29  Response: smooth",
        "0 settled and written, 2 open.",
    ):
        assert told in out


def test_answers_are_kept_with_who_and_when(
    modebook: Program, drafted: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One put right, one accepted; the next command is to promote."""
    run = answer(modebook, monkeypatch, drafted, "-270 to 270 deg", "a")
    assert "2 settled and written, 0 open." in run.out
    assert f"modebook promote {drafted} --to transcribed" in run.out
    first, second = doubts(drafted)
    assert first["settled"]["by"] == second["settled"]["by"] == "R. Quill"
    assert first["settled"]["decision"] == "right is: -270 to 270 deg"
    assert second["settled"]["decision"] == "as read"
    pan = json.loads(drafted.read_text())["modes"][0]["parameters"][2]
    assert pan["span"] == {"from": -270, "to": 270, "unit": "deg"}


def test_it_can_be_stopped_and_gone_on_with(
    modebook: Program, drafted: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """After `s` the first answer is in the file; the next start asks only for the other one."""
    run = answer(modebook, monkeypatch, drafted, "a", "s")
    assert "Stopped: 1 settled and written, 1 open." in run.out
    assert ["settled" in one for one in doubts(drafted)] == [True, False]
    run = answer(modebook, monkeypatch, drafted, "2: 10-14")
    assert "1 of 1  Extended, slot 12" in run.out
    assert ["settled" in one for one in doubts(drafted)] == [True, True]
    assert "No doubt is open." in answer(modebook, monkeypatch, drafted).out


def test_the_end_of_the_input_loses_nothing(
    modebook: Program, drafted: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A terminal that is closed, or a broken line: what was answered is written."""
    run = answer(modebook, monkeypatch, drafted, "a")
    assert run.status == 0
    assert "Stopped: 1 settled and written, 1 open." in run.out
    assert ["settled" in one for one in doubts(drafted)] == [True, False]


def test_an_answer_that_is_not_understood_is_asked_again(
    modebook: Program, drafted: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Told what would be right, and nothing is written until one is."""
    before = drafted.read_bytes()
    run = answer(modebook, monkeypatch, drafted, "?", "about 540", "s")
    assert "accept" in run.out
    assert "is no span: write such as" in run.out
    assert drafted.read_bytes() == before


def test_without_a_name_nothing_is_settled(
    modebook: Program, drafted: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It is asked for; a name that is typed serves for all answers."""
    feed(monkeypatch, b"\n")
    before = drafted.read_bytes()
    assert "needs a name" in modebook("draft", drafted, "--interactive").out
    assert drafted.read_bytes() == before
    feed(monkeypatch, b"I. Quessing\na\na\n")
    modebook("draft", drafted, "--interactive")
    assert [one["settled"]["by"] for one in doubts(drafted)] == ["I. Quessing"] * 2


def test_a_chart_may_be_read_and_settled_in_one_go(
    modebook: Program, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With -o, which holds the answers; a second time it is not read over them."""
    file = tmp_path / "q.json"
    feed(monkeypatch, b"a\ns\n")
    run = modebook("draft", DEMO, *WHO, "-o", file, "--interactive", "--by", "A")
    assert "1 settled and written, 1 open" in run.out
    assert ["settled" in one for one in doubts(file)] == [True, False]
    again = modebook("draft", DEMO, *WHO, "-o", file, "--interactive", "--by", "A")
    assert again.status == 2
    assert f"modebook draft {file} --interactive" in again.err
    assert ["settled" in one for one in doubts(file)] == [True, False]


def test_what_someone_else_wrote_meanwhile_is_not_written_over(
    modebook: Program, drafted: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The file is changed while a question waits: told, and the change stays."""

    def typed(_question: str) -> str:
        document = json.loads(drafted.read_text())
        document["about"] = "Edited elsewhere."
        drafted.write_text(json.dumps(document), encoding="utf-8")
        return "a"

    monkeypatch.setattr("builtins.input", typed)
    run = modebook("draft", drafted, "--interactive", "--by", "A")
    assert run.status == 2
    assert "has changed since it was read" in run.err
    assert json.loads(drafted.read_text())["about"] == "Edited elsewhere."


def test_an_equals_sign_answers_as_before(
    modebook: Program, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One row that is a doubt in two modes: put right in the first, and again with =."""
    chart, file = tmp_path / "c.txt", tmp_path / "c.json"
    chart.write_text(
        "4ch | 5ch | Function | Value | Detail\n1 | 1 | Dimmer | 0-255 |\n2 | 2 | Strobe | 0-9 | Open\n"
        " | | | 8-255 | Slow to fast\n3 | 3 | Red | 0-255 |\n4 | 4 | Green | 0-255 |\n"
        "- | 5 | Blue | 0-255 |\n",
        encoding="utf-8",
    )
    assert modebook("draft", chart, "-o", file).status == 0
    assert len(doubts(file)) == 2
    out = answer(modebook, monkeypatch, file, "=", "10-255", "=").out
    assert "There is no answer before this one." in out
    assert "2 settled and written, 0 open." in out
    for mode in json.loads(file.read_text())["modes"]:
        assert [(r["from"], r["to"]) for r in mode["parameters"][1]["ranges"]] == [(0, 9), (10, 255)]


def test_typing_that_is_no_text_stops_and_loses_nothing(
    modebook: Program, drafted: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Bytes of another encoding: told, and the file is as it was."""
    before = drafted.read_bytes()
    feed(monkeypatch, b"\xff\xfe\n")
    run = modebook("draft", drafted, "--interactive", "--by", "A")
    assert run.status == 0
    assert "not UTF-8" in run.out
    assert drafted.read_bytes() == before
