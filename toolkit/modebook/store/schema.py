"""The database as data: all its tables, in the order in which they are made."""

from __future__ import annotations

from modebook.store.mode_tables import MODE_TABLES
from modebook.store.record_tables import RECORD_TABLES
from modebook.store.table import Table

FORMAT = 2
"""Raised with every change of tables or rows, so that older files are built anew."""

APPLICATION_ID = 0x4D6F6465
"""SQLite's mark of the program that a file belongs to: 'Mode'. A file without it is never overwritten."""


VOCABULARY = (
    Table("about", "key TEXT PRIMARY KEY NOT NULL\n value TEXT"),
    Table(
        "slot_labels",
        "number INTEGER PRIMARY KEY NOT NULL\n name TEXT\n family TEXT\n meaning TEXT",
    ),
    Table("slot_types", "number INTEGER PRIMARY KEY NOT NULL\n name TEXT\n meaning TEXT"),
    Table(
        "words",
        """word TEXT PRIMARY KEY NOT NULL
    name TEXT
    family TEXT
    slot_label INTEGER REFERENCES slot_labels(number)
    slot_type INTEGER REFERENCES slot_types(number)
    quantity TEXT
    unit TEXT
    continuous INTEGER
    about TEXT""",
    ),
    Table(
        "rules",
        "rule TEXT PRIMARY KEY NOT NULL\n severity TEXT\n summary TEXT\n checks TEXT\n why TEXT",
    ),
    Table(
        "thresholds",
        "key TEXT PRIMARY KEY NOT NULL\n what TEXT\n value REAL\n unit TEXT\n severity TEXT\n source TEXT",
    ),
)
"""What comes with the program and not from the catalog."""

FIXTURE_TABLES = (*RECORD_TABLES, *MODE_TABLES)
"""What a fixture document becomes."""

FILE_TABLES = (
    Table(
        "documents",
        """path TEXT PRIMARY KEY NOT NULL
    kind TEXT NOT NULL
    bytes INTEGER NOT NULL
    sha256 TEXT NOT NULL""",
    ),
    # Beside `documents`, not in it: whoever compares files' hashes must not read all of their contents.
    Table("texts", "path TEXT PRIMARY KEY NOT NULL REFERENCES documents(path)\n content BLOB NOT NULL"),
    Table(
        "findings",
        """file TEXT NOT NULL
    rule TEXT NOT NULL REFERENCES rules(rule)
    pointer TEXT NOT NULL
    nth INTEGER NOT NULL
    severity TEXT NOT NULL
    message TEXT NOT NULL
    figure TEXT
    help TEXT
    fixture TEXT REFERENCES fixtures(id)
    mode TEXT REFERENCES modes(id)
    rig TEXT REFERENCES rigs(id)
    unit TEXT
    row INTEGER
    PRIMARY KEY (file, rule, pointer, nth)""",
        indexes=("rule", "severity", "fixture", "mode", "rig"),
    ),
)
"""What is told of files: fixtures and rigs alike."""

RIG_TABLES = (
    Table(
        "rigs",
        """id TEXT PRIMARY KEY NOT NULL
    name TEXT NOT NULL
    about TEXT
    refresh_hz REAL
    camera_fps REAL
    camera_shutter_deg REAL
    document TEXT REFERENCES documents(path)
    patch TEXT REFERENCES documents(path)""",
    ),
    Table(
        "links",
        """rig TEXT NOT NULL REFERENCES rigs(id)
    universe TEXT NOT NULL
    gateway_hz REAL
    delay_s REAL
    loss REAL
    burst_packets REAL
    rdm TEXT NOT NULL
    about TEXT
    PRIMARY KEY (rig, universe)""",
    ),
    Table(
        "units",
        """rig TEXT NOT NULL REFERENCES rigs(id)
    row INTEGER NOT NULL
    unit TEXT NOT NULL
    fixture_written TEXT NOT NULL
    mode_written TEXT NOT NULL
    fixture TEXT REFERENCES fixtures(id)
    mode TEXT REFERENCES modes(id)
    part TEXT
    universe INTEGER
    address INTEGER
    footprint INTEGER
    position TEXT
    purpose TEXT
    "group" TEXT
    throw_m REAL
    smoothing TEXT NOT NULL
    smoothing_by TEXT NOT NULL
    rdm_reaches TEXT NOT NULL
    counts INTEGER NOT NULL
    uid TEXT
    serial TEXT
    firmware TEXT
    reach TEXT
    note TEXT
    PRIMARY KEY (rig, row)""",
        indexes=("fixture", "mode"),
    ),
)
"""What a rig becomes."""

ORDER = Table(
    "mode_order",
    """number INTEGER PRIMARY KEY NOT NULL
    place INTEGER NOT NULL
    footprint INTEGER NOT NULL""",
    clustered=False,
)
"""Where each mode stands among all, by maker, model and number. `number` is that of its row."""

FILL_ORDER = """INSERT INTO mode_order (number, place, footprint)
SELECT rowid, row_number() OVER (ORDER BY maker, model, number, mode, id), footprint
FROM modes ORDER BY rowid"""

TABLES = (*VOCABULARY, *FILE_TABLES, *FIXTURE_TABLES, *RIG_TABLES, ORDER)
BY_NAME = {table.name: table for table in TABLES}
