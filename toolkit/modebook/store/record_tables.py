"""The tables of a fixture's record: the fixture, its settings and ways, sources, wheels, doubts."""

from __future__ import annotations

from modebook.store.table import Table

_LENGTH = """length_packets REAL
    length_seconds REAL
    rise_packets REAL
    rise_seconds REAL
    fall_packets REAL
    fall_seconds REAL"""

RECORD_TABLES = (
    Table(
        "fixtures",
        """id TEXT PRIMARY KEY NOT NULL
    maker TEXT NOT NULL
    model TEXT NOT NULL
    category TEXT NOT NULL
    standing TEXT NOT NULL
    rdm_manufacturer TEXT
    rdm_model TEXT
    about TEXT
    latest_source TEXT
    document TEXT NOT NULL REFERENCES documents(path)""",
        of_fixture="id",
        clustered=False,
        indexes=("maker, model", "latest_source"),
    ),
    Table(
        "sources",
        """fixture TEXT NOT NULL REFERENCES fixtures(id)
    key TEXT NOT NULL
    title TEXT NOT NULL
    revision TEXT
    date TEXT
    firmware TEXT
    pages TEXT
    language TEXT
    note TEXT
    PRIMARY KEY (fixture, key)""",
        of_fixture="fixture",
        indexes=("date",),
    ),
    Table(
        "settings",
        """id TEXT PRIMARY KEY NOT NULL
    fixture TEXT NOT NULL REFERENCES fixtures(id)
    key TEXT NOT NULL
    setting TEXT NOT NULL
    label TEXT
    acts_on TEXT
    none INTEGER NOT NULL
    smoothing INTEGER NOT NULL
    source TEXT
    note TEXT""",
        of_fixture="fixture",
        indexes=("fixture", "setting"),
    ),
    Table(
        "choices",
        f"""setting TEXT NOT NULL REFERENCES settings(id)
    key TEXT NOT NULL
    label TEXT
    factory INTEGER NOT NULL
    {_LENGTH}
    assumed_packets REAL
    measures TEXT
    method TEXT
    rate_percent_per_s REAL
    curve TEXT
    points TEXT
    frequency_hz REAL
    given TEXT
    measured TEXT
    source TEXT
    note TEXT
    PRIMARY KEY (setting, key)""",
        of_fixture="setting",
        bulk=True,
    ),
    Table(
        "ways",
        """setting TEXT NOT NULL REFERENCES settings(id)
    choice TEXT NOT NULL
    way TEXT NOT NULL
    place TEXT NOT NULL
    nth INTEGER NOT NULL
    mode TEXT REFERENCES modes(id)
    parameter TEXT
    from_value INTEGER
    to_value INTEGER
    hold_s REAL
    kept TEXT
    needs TEXT
    span_from REAL
    span_to REAL
    unit TEXT
    pid TEXT
    size INTEGER
    value INTEGER
    locked TEXT
    firmware TEXT
    source TEXT
    note TEXT
    PRIMARY KEY (setting, choice, way, place, nth)
    FOREIGN KEY (mode, parameter) REFERENCES parameters(mode, name)""",
        of_fixture="setting",
        bulk=True,
        indexes=("mode",),
    ),
    Table(
        "wheels",
        """fixture TEXT NOT NULL REFERENCES fixtures(id)
    key TEXT NOT NULL
    label TEXT
    source TEXT
    PRIMARY KEY (fixture, key)""",
        of_fixture="fixture",
    ),
    Table(
        "positions",
        """fixture TEXT NOT NULL REFERENCES fixtures(id)
    wheel TEXT NOT NULL
    key TEXT NOT NULL
    place INTEGER NOT NULL
    label TEXT
    x REAL
    y REAL
    filter TEXT
    between_positions TEXT
    PRIMARY KEY (fixture, wheel, key)
    FOREIGN KEY (fixture, wheel) REFERENCES wheels(fixture, key)""",
        of_fixture="fixture",
    ),
    Table(
        "emitters",
        """fixture TEXT NOT NULL REFERENCES fixtures(id)
    key TEXT NOT NULL
    label TEXT
    x REAL
    y REAL
    peak_nm REAL
    source TEXT
    PRIMARY KEY (fixture, key)""",
        of_fixture="fixture",
    ),
    Table(
        "doubts",
        """fixture TEXT NOT NULL REFERENCES fixtures(id)
    pointer TEXT NOT NULL
    nth INTEGER NOT NULL
    slots TEXT
    place TEXT
    printed TEXT
    read TEXT
    why TEXT NOT NULL
    open INTEGER NOT NULL
    settled_by TEXT
    settled_date TEXT
    decision TEXT
    PRIMARY KEY (fixture, pointer, nth)""",
        of_fixture="fixture",
    ),
    Table(
        "accepted",
        """fixture TEXT NOT NULL REFERENCES fixtures(id)
    rule TEXT NOT NULL
    pointer TEXT NOT NULL
    nth INTEGER NOT NULL
    reason TEXT NOT NULL
    by TEXT
    date TEXT
    PRIMARY KEY (fixture, rule, pointer, nth)""",
        of_fixture="fixture",
    ),
    Table(
        "promotions",
        """fixture TEXT NOT NULL REFERENCES fixtures(id)
    standing TEXT NOT NULL
    date TEXT NOT NULL
    by TEXT NOT NULL
    nth INTEGER NOT NULL
    note TEXT
    PRIMARY KEY (fixture, standing, date, by, nth)""",
        of_fixture="fixture",
    ),
)
"""What a fixture becomes, beside its modes."""
