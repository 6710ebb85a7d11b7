"""The published site on a generated catalog: first byte, whole page, weight, search, 50 readers at once.

    python tests/bench/bench_site.py --fixtures 10000

The floor is datasette's plain table page (100 rows of modes) from the same server in the same run: each line
also says how many times as long as that a page takes. One reader, loopback, warm; one page of a kind is asked
for many different fixtures, so that nothing is answered from what was asked a moment before. The site keeps
what it answered for a table: `table`, `table list`, `table, others` and `view` time that; the floor, filtered
tables, rows, queries and JSON are worked out anew each time.
What each kind took when it was asked for the very first time after the start stands beside (`first ever`).
"""

from __future__ import annotations

import argparse
import http.client
import json
import random
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

from datasette.utils import tilde_encode

sys.path.insert(0, str(Path(__file__).parent))

from generate import write_catalog

FIRST_MS, WHOLE_MS, TYPED_MS, FADE_MS, WEIGHT_KB = 100, 300, 50, 100, 300
READERS = 50
PLANNED_S = 300
WARM = 12
"""Addresses of a kind that are asked before it is timed; where there are many, others than those timed."""
FLOOR = "table (floor)"
READY = "/modebook/who-allows-remote-smoothing-change"


class Took(NamedTuple):
    """One answer."""

    status: int
    first_ms: float
    whole_ms: float
    size: int


def ask(connection: http.client.HTTPConnection, path: str) -> Took:
    """Ask for one page over a connection that stays open."""
    start = time.perf_counter()
    connection.request("GET", path)
    answer = connection.getresponse()
    answer.read(1)
    first = time.perf_counter()
    size = 1 + len(answer.read())
    return Took(answer.status, 1000 * (first - start), 1000 * (time.perf_counter() - start), size)


def p95(values: list[float]) -> float:
    """The 95th percentile."""
    return statistics.quantiles(values, n=20)[-1]


@contextmanager
def served(catalog: Path, database: Path) -> Iterator[int]:
    """The site on a port of 127.0.0.1."""
    command = [sys.executable, "-c", "from modebook.cli.app import main; main()", "serve", "--port", "0"]
    command += ["--catalog", str(catalog), "--db", str(database)]
    server = subprocess.Popen(command, stderr=subprocess.PIPE, text=True)
    assert server.stderr is not None
    try:
        line = ""
        while "http://" not in line:
            line = server.stderr.readline()
            if not line:
                raise SystemExit("the site did not start")
        threading.Thread(target=server.stderr.read, daemon=True).start()
        yield int(line.split("://127.0.0.1:")[1].split("/")[0])
    finally:
        server.terminate()
        server.wait(timeout=30)


def pages(database: Path, count: int) -> dict[str, list[str]]:
    """Addresses of each kind, over fixtures chosen at random."""
    rng = random.Random(7)
    with sqlite3.connect(f"file:{database}?mode=ro", uri=True) as connection:
        ids = [row[0] for row in connection.execute("SELECT id FROM fixtures ORDER BY id")]
        words = [row[0] for row in connection.execute("SELECT DISTINCT maker FROM fixtures ORDER BY maker")]
        rigs = [row[0] for row in connection.execute("SELECT id FROM rigs ORDER BY id LIMIT 1")]
    connection.close()
    some = rng.sample(ids, min(len(ids), 2 * count + WARM))
    typed = [word[:length] for word in rng.choices(words, k=count) for length in (rng.randint(1, len(word)),)]
    typed += ["pan", "smoothing off", "strobe fast", "reset", "cmy"] * (count // 10)
    kinds = {
        "front": ["/"],
        FLOOR: [f"/modebook/modes?_anew={n}" for n in range(count + 62)],
        "table": ["/modebook/modes"],
        "find": [f"/find?smoothing_by={by}" for by in ("remote", "slot", "rdm", "menu", "unknown")]
        + ["/find?smoothing_by=remote&parameter=pan&bits=16", "/find?q=pan"],
        "low": ["/low", "/low?rule=coarse-angle"],
        "fixture": [f"/fixtures/{one}" for one in some[:count]],
        "fixture, one address": [f"/fixtures/{one}?address=101" for one in some[:count]],
        "compare": [f"/compare?a={a}&b={b}" for a, b in zip(some[:count], some[count:], strict=False)],
        "print": [f"/fixtures/{one}/print" for one in some[:count]],
        "rules": ["/rules"],
        "rule": ["/rules/coarse-angle"],
        "words": ["/words"],
        "figures": ["/figures"],
        "api": ["/api"],
        "table list": ["/modebook"],
        "table, filtered": [
            f"/modebook/modes?footprint__gt={n}&maker__contains={rng.choice('abcdefgh')}"
            for n in range(count + WARM)
        ],
        "largest, filtered": [
            f"/modebook/ranges?from_value__gt={n}&meaning__contains=Reset" for n in range(count + WARM)
        ],
        "table, others": [
            f"/modebook/{name}" for name in ("fixtures", "findings", "slots", "ranges", "units")
        ],
        "view": ["/modebook/remote_smoothing", "/modebook/mode_resolution", "/modebook/hazards"],
        "row": [f"/modebook/fixtures/{tilde_encode(one)}" for one in some[: count + WARM]],
        "query": [f"{READY}?parameter=pan&min_bits=16&_anew={n}" for n in range(count + WARM)],
        "SQL": [f"/modebook?sql=select+*+from+modes+limit+100+offset+{n}" for n in range(count + WARM)],
        "table as JSON": [f"/modebook/modes.json?_size=100&_anew={n}" for n in range(count + WARM)],
        "table as CSV": ["/modebook/modes.csv?_size=100", "/modebook/rules.csv"],
        "document as JSON": [f"/fixtures/{one}/document.json" for one in some[:count]],
        "chart as CSV": [f"/fixtures/{one}/chart.csv" for one in some[:count]],
        "fade": ["/fade", "/fade?bits=16&seconds=10", "/fade?packets=8&from=100&seconds=2"],
        "fade of a fixture": [f"/fade?fixture={one}" for one in some[:count]],
        "search as one types": [f"/-/search.json?drafts=1&q={word.replace(' ', '+')}" for word in typed],
        "fade endpoint": [f"/-/fade.json?seconds={s}&from={f}" for s in (1, 2, 4, 8) for f in (20, 60, 100)],
    }
    if rigs:
        kinds["rigs"] = ["/rigs"]
        kinds["rig"] = [f"/rigs/{rigs[0]}", f"/rigs/{rigs[0]}?position=Pipe+1"]
        kinds["plan"] = [f"/rigs/{rigs[0]}/plan"]
    return kinds


def write_shots(rig: Path) -> None:
    """Some shots for the generated rig, so that there is a plan."""
    head = "Day,Scene,Setup,Shot,Cue,At (s),Lights,What,From,To,Sec,Must be,Camera fps,Shutter,Notes"
    cues = [f"1,1,{n} setup,{n}A,cue {n},0,{n}-{n + 9},,40,10,{n},smooth,24,180," for n in range(1, 9)]
    (rig / "shots.csv").write_text("\n".join([head, *cues]) + "\n", encoding="utf-8")


def until_planned(port: int, paths: list[str]) -> None:
    """Wait for the plans, which are worked out behind the page."""
    end = time.monotonic() + PLANNED_S
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    for path in paths:
        while time.monotonic() < end:
            connection.request("GET", path)
            if b"data-again-s" not in connection.getresponse().read():
                break
            time.sleep(1)


def first_ever(port: int, kinds: dict[str, list[str]]) -> dict[str, float]:
    """Milliseconds of the very first answer of each kind; the first of all comes right after the start."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    return {kind: ask(connection, paths[0]).whole_ms for kind, paths in kinds.items()}


def one_reader(
    port: int, kinds: dict[str, list[str]], count: int, ever: dict[str, float]
) -> list[dict[str, object]]:
    """Each kind asked `count` times by one reader, after each address was asked once where there are few."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    rows: list[dict[str, object]] = []
    floor_ms = statistics.median(ask(connection, path).whole_ms for path in kinds[FLOOR][-50:])
    for kind, paths in kinds.items():
        for path in paths[-WARM:]:
            ask(connection, path)
        took = [ask(connection, paths[turn % len(paths)]) for turn in range(count)]
        first, whole = p95([one.first_ms for one in took]), p95([one.whole_ms for one in took])
        median = statistics.median(one.whole_ms for one in took)
        limit = {"search as one types": TYPED_MS, "fade endpoint": FADE_MS}.get(kind, WHOLE_MS)
        size_kb = max(one.size for one in took) / 1000
        bad = [one.status for one in took if one.status != 200]
        held = whole < limit and size_kb < WEIGHT_KB and not bad and first < FIRST_MS
        rows.append(
            {
                "page": kind,
                "first_byte_p95_ms": round(first, 1),
                "whole_p95_ms": round(whole, 1),
                "whole_median_ms": round(median, 1),
                "first_ever_ms": round(ever[kind], 1),
                "of_floor": round(median / floor_ms, 2),
                "heaviest_kb": round(size_kb),
                "errors": len(bad),
                "held": held,
            }
        )
        print(
            f"{kind:22} first p95 {first:7.1f} ms  whole p95 {whole:7.1f} ms  median {median:7.1f} ms  "
            f"{median / floor_ms:5.2f} x floor  first ever {ever[kind]:6.0f} ms  {size_kb:5.0f} kB  "
            f"{len(bad)} errors  "
            f"{'held' if held else 'FALLS SHORT'}"
        )
    return rows


def many_readers(port: int, kinds: dict[str, list[str]], each: int) -> dict[str, object]:
    """READERS readers at once, each with pages of its own choice."""
    every = [path for paths in kinds.values() for path in paths]
    took: list[Took] = []
    failed: list[str] = []

    def read(seed: int) -> None:
        rng = random.Random(seed)
        connection = http.client.HTTPConnection("127.0.0.1", port, timeout=120)
        for _ in range(each):
            path = rng.choice(every)
            try:
                one = ask(connection, path)
            except (OSError, http.client.HTTPException) as error:
                failed.append(f"{path}: {error}")
                connection.close()
                continue
            took.append(one)
            if one.status != 200:
                failed.append(f"{path}: {one.status}")

    start = time.perf_counter()
    threads = [threading.Thread(target=read, args=(seed,)) for seed in range(READERS)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    spent_s = time.perf_counter() - start
    print(
        f"{READERS} readers at once: {len(took)} in {spent_s:.1f} s, {len(took) / spent_s:.0f} a second, "
        f"p95 {p95([one.whole_ms for one in took]):.0f} ms, {len(failed)} errors {failed[:3] or ''}"
    )
    return {"readers": READERS, "pages": len(took), "errors": len(failed), "seconds_s": round(spent_s, 1)}


def main() -> None:
    """Generate, build, serve, ask."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--fixtures", type=int, default=10_000)
    parser.add_argument("--catalog", type=Path, help="a generated catalog that is there already")
    parser.add_argument("--db", type=Path, help="where its database is, or is to be built")
    parser.add_argument("--count", type=int, default=100, help="answers of each kind")
    parser.add_argument("--json", type=Path, help="also write the figures there")
    told = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        catalog = told.catalog or Path(folder) / "catalog"
        if told.catalog is None:
            write_catalog(catalog, told.fixtures, units=200)
            write_shots(catalog / "rigs" / "bench")
        database = told.db or Path(folder) / "modebook.sqlite"
        with served(catalog, database) as port:
            kinds = pages(database, told.count)
            ever = first_ever(port, kinds)
            until_planned(port, kinds.get("plan", []))
            rows = one_reader(port, kinds, told.count, ever)
            together = many_readers(port, kinds, 10)
    if told.json is not None:
        told.json.write_text(json.dumps({"pages": rows, "together": together}, indent=2) + "\n")


if __name__ == "__main__":
    main()
