"""The generators: each runs, its truth is a document, and what is true can be found in the file."""

from __future__ import annotations

import html
import io
import json
import re
import zipfile
from collections import Counter

import pytest

from intake.corpus.content import Made
from intake.corpus.registry import SUFFIXES, Chart, charts
from modebook.documents.fixture import Fixture

EVERY = [*charts("open"), *charts("aside")]
_MADE: dict[tuple[str, int], Made] = {}


def made(chart: Chart, seed: int | None = None) -> Made:
    key = (chart.name, chart.seed if seed is None else seed)
    if key not in _MADE:
        _MADE[key] = chart.make(key[1])
    return _MADE[key]


def squeezed(text: str) -> str:
    """Without blanks: a name may be broken over two lines of its cell."""
    return re.sub(r"\s+", "", text)


def printed(chart: Chart, data: bytes) -> str:
    """All words of a file, by other means than the writers: by pdfplumber, and from the XML of sheets."""
    if chart.suffix == "pdf":
        import pdfplumber

        with pdfplumber.open(io.BytesIO(data)) as pdf:
            # Words by column: a cell of two lines is not read in one go from lines that cross the table.
            pages = [page.extract_text() for page in pdf.pages]
            words = [word["text"] for page in pdf.pages for word in page.extract_words(use_text_flow=True)]
        return "\n".join(pages) + "\n" + " ".join(words)
    if chart.suffix in ("xlsx", "ods"):
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            return "".join(
                archive.read(name).decode() for name in archive.namelist() if name.endswith(".xml")
            )
    if data.startswith(b"\xff\xfe"):
        return data.decode("utf-16")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252")


def test_there_are_enough_charts_in_enough_layouts():
    """At least 40 open charts and 16 aside, in at least 18 layouts, six formats and five languages."""
    kept_open, aside = charts("open"), charts("aside")
    assert len(kept_open) >= 40
    assert len(aside) >= 16
    assert len({c.layout for c in EVERY}) >= 18
    assert {c.suffix for c in EVERY} == set(SUFFIXES)
    assert {c.language for c in EVERY} == {"en", "de", "fr", "es", "it"}


def test_names_are_told_apart():
    """No two charts have one name, and no two fixtures one maker and model."""
    assert not [name for name, n in Counter(c.name for c in EVERY).items() if n > 1]
    assert not [pair for pair, n in Counter((c.maker, c.model) for c in EVERY).items() if n > 1]


def test_layouts_aside_are_new():
    """The charts aside stand in layouts that the open ones do not have."""
    known = {c.layout for c in charts("open")}
    aside = {c.layout for c in charts("aside")}
    assert len(aside - known) >= 14


def test_every_trap_is_set():
    """All fifteen traps have an open chart."""
    assert {c.trap for c in charts("open")} - {None} == set(range(1, 16))


@pytest.mark.parametrize("chart", EVERY, ids=lambda c: c.name)
def test_the_truth_is_a_document(chart: Chart):
    """It validates as the models want it, names the chart's maker, and its pointers lead somewhere."""
    truth = made(chart).truth
    document = Fixture.model_validate_json(json.dumps(truth["document"]))
    assert (document.maker, document.model) == (chart.maker, chart.model)
    pointers = [d["pointer"] for d in truth["doubt"]]
    for key in ("words", "spans", "meanings", "may", "names", "texts"):
        pointers += list(truth[key])
    for pointer in pointers:
        here = truth["document"]
        for step in pointer.split("/")[1:]:
            here = here[int(step)] if isinstance(here, list) else here[step]


@pytest.mark.parametrize("chart", EVERY, ids=lambda c: c.name)
def test_the_truth_hangs_together(chart: Chart):
    """Every slot lies within the footprint, and no two unconditional parameters share one."""
    for mode in made(chart).truth["document"]["modes"]:
        used = Counter(slot for p in mode["parameters"] if not p.get("when") for slot in p["slots"])
        assert [slot for slot, n in used.items() if n > 1] == []
        assert max(used) <= mode["footprint"]


@pytest.mark.parametrize("chart", EVERY, ids=lambda c: c.name)
def test_what_is_true_is_printed(chart: Chart):
    """Each label stands in the file, and each range's meaning but those that an elision leaves out."""
    one = made(chart)
    text = squeezed(html.unescape(printed(chart, one.data))).replace("->", "→")
    missing = []
    for mode in one.truth["document"]["modes"]:
        for p in mode["parameters"]:
            words = [p["label"], *(r["meaning"] for r in p.get("ranges", ()) if chart.name != "elision")]
            missing += [word for word in words if squeezed(word) not in text and not _scattered(word, text)]
    assert missing == []


def _scattered(words: str, text: str) -> bool:
    """Words of a cell that wraps stand apart where lines cross the table; each must be there."""
    return " " in words and all(word in text for word in words.replace("->", "→").split())


@pytest.mark.parametrize("chart", [c for c in EVERY if c.suffix != "ods"], ids=lambda c: c.name)
def test_the_same_seed_gives_the_same_truth(chart: Chart):
    """A second run with one seed has the same truth, and but for an ODS's time the same bytes."""
    again = chart.make(chart.seed)
    assert again.truth == made(chart).truth
    assert again.data == made(chart).data


@pytest.mark.parametrize(
    "chart", [c for c in EVERY if c.trap is None and c.layout != "prose"], ids=lambda c: c.name
)
def test_other_seeds_run(chart: Chart):
    """Another seed gives a valid truth, too."""
    Fixture.model_validate_json(json.dumps(made(chart, 7).truth["document"]))


def test_the_long_manual_has_its_pages():
    """40 pages by pdfplumber's count, with a mode's title on each of the six chart pages."""
    import pdfplumber

    from intake.corpus.long_manual import FIRST, LAST, PAGES, long_manual

    with pdfplumber.open(io.BytesIO(long_manual())) as pdf:
        titled = [n for n, page in enumerate(pdf.pages, 1) if "Layout" in page.extract_text()]
        assert len(pdf.pages) == PAGES
    assert titled == list(range(FIRST, LAST + 1))
