"""Ratios for the store, measured in one run: build, rebuild after one edit, find, peak memory.

    python tests/bench/bench_store.py --fixtures 10000

The floor of a build: in one process, with the garbage collector as it comes, read and json.loads every
document, then put the very rows of the built database into plain tables with executemany, in one transaction.
"""

from __future__ import annotations

import argparse
import json
import multiprocessing
import os
import random
import resource
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).parent))

from generate import write_catalog

PAGE = 100


def in_child(work: Callable[..., Any], *args: Any) -> tuple[Any, float, float, float]:
    """Run `work` in a process of its own: its result, wall s, CPU s of it and its children, peak MB."""
    context = multiprocessing.get_context("spawn")
    receiver, sender = context.Pipe(duplex=False)
    child = context.Process(target=_measured, args=(sender, work, args))
    child.start()
    told: tuple[Any, float, float, float] = receiver.recv()
    child.join()
    return told


def _measured(sender: Any, work: Callable[..., Any], args: tuple[Any, ...]) -> None:
    start = time.perf_counter()
    result = work(*args)
    wall_s = time.perf_counter() - start
    own, others = resource.getrusage(resource.RUSAGE_SELF), resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu_s = own.ru_utime + own.ru_stime + others.ru_utime + others.ru_stime
    # Two others at most run at a time, each no larger than the largest.
    sender.send((result, wall_s, cpu_s, (own.ru_maxrss + 2 * others.ru_maxrss) / 1000))


def build_once(root: str, database: str, processes: int | None) -> int:
    """Build from nothing; the number of documents."""
    from modebook.shelf.catalog import Catalog
    from modebook.store.build import build

    return build(Catalog(Path(root)), Path(database), anew=True, processes=processes).documents


def floor_parse(root: str) -> int:
    """Read and parse every document, and throw it away."""
    count = 0
    for folder, _, names in os.walk(Path(root) / "fixtures"):
        for name in names:
            with open(os.path.join(folder, name), "rb") as file:  # noqa: PTH118, PTH123 - the floor is plain
                json.loads(file.read())
            count += 1
    return count


def floor_insert(database: str, target: str) -> tuple[int, float, float]:
    """Put the rows of a built database into plain tables; how many, how long it took in s, and CPU s."""
    source = sqlite3.connect(database)
    query = "SELECT name, sql FROM sqlite_master WHERE type = 'table' AND name NOT GLOB '*_fts*'"
    tables = [(n, s) for n, s in source.execute(query).fetchall() if not n.startswith("sqlite_")]
    plain = sqlite3.connect(target, isolation_level=None)
    count, taken_s, cpu_s = 0, 0.0, 0.0
    plain.execute("BEGIN")
    for name, sql in tables:
        rows = source.execute(f"SELECT * FROM {name}").fetchall()
        if not rows:
            continue
        marks = ",".join("?" * len(rows[0]))
        start, start_cpu = time.perf_counter(), time.process_time()
        plain.execute(sql)
        plain.executemany(f"INSERT INTO {name} VALUES ({marks})", rows)
        taken_s += time.perf_counter() - start
        cpu_s += time.process_time() - start_cpu
        count += len(rows)
    start = time.perf_counter()
    plain.execute("COMMIT")
    plain.close()
    return count, taken_s + time.perf_counter() - start, cpu_s


def whole_process(root: Path, database: Path) -> float:
    """Seconds of a whole process that brings the database up to date."""
    code = (
        "import sys; from pathlib import Path; from modebook.shelf.catalog import Catalog; "
        "from modebook.store.build import build; build(Catalog(Path(sys.argv[1])), Path(sys.argv[2]))"
    )
    return _run([sys.executable, "-c", code, str(root), str(database)])


def start_alone() -> float:
    """Seconds of a whole process that only imports what a build does."""
    return _run([sys.executable, "-c", "import modebook.store.build"])


def _run(command: list[str]) -> float:
    start = time.perf_counter()
    subprocess.run(command, check=True)
    return time.perf_counter() - start


def rebuild(root: Path, database: Path, edits: int = 5) -> None:
    """Time whole processes after one edit each, against the same with nothing to do and with start alone."""
    files = sorted((root / "fixtures").glob("*/*.json"))
    whole_process(root, database)
    time.sleep(2.5)  # so that the documents count as settled, as they are on any day after their writing
    whole_process(root, database)
    alone = statistics.median(start_alone() for _ in range(5))
    idle = statistics.median(whole_process(root, database) for _ in range(5))
    rng = random.Random(3)
    times = []
    for number in range(edits):
        file = rng.choice(files[len(files) // 2 :])
        file.write_bytes(file.read_bytes().replace(b'"label": "Control', b'"label": "Control%d' % number, 1))
        times.append(whole_process(root, database))
    after = statistics.median(times)
    print(f"start alone {alone:.2f} s; nothing to do +{idle - alone:.2f} s; ", end="")
    print(f"one edit +{after - alone:.2f} s over the start (target below 0.5)")


def queries(rng: random.Random, count: int) -> list[Any]:
    """A mixture of questions as people ask them."""
    from modebook.store.search import ModeQuery

    words = [
        "panel",
        "beam",
        "alder",
        "oak ext",
        "profile 300",
        "film",
        "batten 60 std",
        "no 0075",
        "blade",
        "smo",
    ]
    by = ["slot", "rdm", "remote", "menu", "none", "unknown"]
    made: list[ModeQuery] = []
    for _ in range(count):
        given: dict[str, Any] = {}
        kinds = rng.sample(range(7), rng.choice((1, 2, 2, 3)))
        if 0 in kinds:
            given["text"] = rng.choice(words)
        if 1 in kinds:
            given["smoothing_by"] = rng.choice(by)
        if 2 in kinds:
            given["min_bits"] = {rng.choice(["pan", "dimmer", "hue", "zoom", "red"]): rng.choice((8, 16))}
        if 3 in kinds:
            given["has"] = rng.sample(["hue", "color-temperature", "strobe", "iris", "frost", "lime"], 2)
        if 4 in kinds:
            given["max_footprint"] = rng.choice((8, 12, 16, 24))
        if 5 in kinds:
            given["category"] = rng.choice(["fixed", "moving yoke"])
        if 6 in kinds:
            given["standing"] = rng.choice(["transcribed", "second-read", "proved"])
        if rng.random() < 0.2:
            given["smoothing_length_packets"] = rng.choice((0, 2, 8, 15))
        made.append(ModeQuery(**given))
    return made


def search(database: Path, limit: int | None) -> None:
    """Time a mixture of questions inside this process."""
    from modebook.store.opening import open_database
    from modebook.store.search import find

    connection = open_database(database)
    taken_ms: list[float] = []
    totals: list[int] = []
    asked = queries(random.Random(5), 300)
    for query in asked[:20]:
        find(connection, query, limit)
    for query in asked:
        start = time.perf_counter()
        totals.append(find(connection, query, limit).total)
        taken_ms.append((time.perf_counter() - start) * 1000)
    connection.close()
    cuts = statistics.quantiles(taken_ms, n=20)
    told = f"first {limit}" if limit is not None else "all"
    print(
        f"find, {told} of a median of {statistics.median(totals):.0f} modes: "
        f"p50 {cuts[9]:.1f} ms, p95 {cuts[18]:.1f} ms, worst {max(taken_ms):.1f} ms (target p95 below 20)"
    )


def main() -> None:
    """The command line."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--fixtures", type=int, default=10_000)
    parser.add_argument("--catalog", type=Path, help="a generated catalog; it will be edited")
    told = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        os.environ["XDG_CACHE_HOME"] = f"{folder}/cache"
        root = told.catalog or Path(folder) / "catalog"
        if not root.exists():
            write_catalog(root, told.fixtures, units=2000)
        database = Path(folder) / "db.sqlite"
        floor_parse(str(root))  # so that neither side pays for a cold disk
        documents, built_s, built_cpu_s, peak_mb = in_child(build_once, str(root), str(database), None)
        _, parse_s, parse_cpu_s, _ = in_child(floor_parse, str(root))
        (rows, insert_s, insert_cpu_s), _, _, _ = in_child(
            floor_insert, str(database), f"{folder}/plain.sqlite"
        )
        floor_s = parse_s + insert_s
        print(f"load of the machine {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")
        print(f"{documents} documents, {rows} rows, {database.stat().st_size / 1e6:.0f} MB")
        floor_cpu_s = parse_cpu_s + insert_cpu_s
        print(
            f"floor {floor_s:.1f} s (json.loads {parse_s:.1f} s, plain inserts {insert_s:.1f} s), "
            f"CPU {floor_cpu_s:.1f} s"
        )
        print(
            f"build from nothing {built_s:.1f} s = {built_s / floor_s:.2f} times the floor (target 2.5); "
            f"CPU {built_cpu_s:.1f} s = {built_cpu_s / floor_cpu_s:.2f} times; "
            f"peak memory {peak_mb:.0f} MB at most (target 1500)"
        )
        rebuild(root, database)
        search(database, PAGE)
        search(database, None)


if __name__ == "__main__":
    main()
