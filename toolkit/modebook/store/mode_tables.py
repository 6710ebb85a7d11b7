"""The tables of what a mode's slots do, and of what a mode is found by."""

from __future__ import annotations

from modebook.store.table import Table

MODE_TABLES = (
    Table(
        "modes",
        """id TEXT PRIMARY KEY NOT NULL
    fixture TEXT NOT NULL REFERENCES fixtures(id)
    maker TEXT NOT NULL
    model TEXT NOT NULL
    mode TEXT NOT NULL
    number INTEGER
    footprint INTEGER NOT NULL
    category TEXT NOT NULL
    standing TEXT NOT NULL
    smoothing_by TEXT NOT NULL
    remote INTEGER NOT NULL
    given TEXT
    continues INTEGER NOT NULL
    source TEXT
    place TEXT
    note TEXT
    pointer TEXT NOT NULL""",
        of_fixture="fixture",
        clustered=False,
        indexes=("fixture", "maker, model, number, mode"),
    ),
    Table(
        "parameters",
        """mode TEXT NOT NULL REFERENCES modes(id)
    name TEXT NOT NULL
    word TEXT NOT NULL REFERENCES words(word)
    label TEXT
    part TEXT NOT NULL
    slots TEXT NOT NULL
    bits INTEGER NOT NULL
    cells INTEGER NOT NULL
    default_value INTEGER
    coarse_default INTEGER
    span_from REAL
    span_to REAL
    unit TEXT
    span_raw INTEGER
    span_given TEXT
    more_spans TEXT
    only_while TEXT
    acts_on TEXT
    travel_s REAL
    snap INTEGER NOT NULL
    source TEXT
    place TEXT
    note TEXT
    pointer TEXT NOT NULL
    PRIMARY KEY (mode, name)""",
        of_fixture="mode",
        indexes=("word, bits, mode",),
        bulk=True,
    ),
    Table(
        "slots",
        """mode TEXT NOT NULL REFERENCES modes(id)
    part TEXT NOT NULL
    slot INTEGER NOT NULL
    parameter TEXT NOT NULL
    cell TEXT NOT NULL
    byte INTEGER NOT NULL
    slot_type INTEGER NOT NULL REFERENCES slot_types(number)
    slot_label INTEGER NOT NULL
    PRIMARY KEY (mode, part, slot, parameter, cell, byte)
    FOREIGN KEY (mode, parameter) REFERENCES parameters(mode, name)""",
        of_fixture="mode",
    ),
    Table(
        "ranges",
        """mode TEXT NOT NULL REFERENCES modes(id)
    parameter TEXT NOT NULL
    from_value INTEGER NOT NULL
    to_value INTEGER NOT NULL
    nth INTEGER NOT NULL
    meaning TEXT NOT NULL
    word TEXT REFERENCES words(word)
    key TEXT
    does TEXT
    span_from REAL
    span_to REAL
    unit TEXT
    more_spans TEXT
    position TEXT
    sets TEXT
    hold_s REAL
    kept TEXT
    needs TEXT
    hazard TEXT
    acts_on TEXT
    snap INTEGER NOT NULL
    source TEXT
    note TEXT
    PRIMARY KEY (mode, parameter, from_value, to_value, nth)
    FOREIGN KEY (mode, parameter) REFERENCES parameters(mode, name)""",
        of_fixture="mode",
        bulk=True,
    ),
    Table(
        "conditions",
        """mode TEXT NOT NULL REFERENCES modes(id)
    parameter TEXT NOT NULL
    pointer TEXT NOT NULL
    on_parameter TEXT
    from_value INTEGER
    to_value INTEGER
    on_setting TEXT
    choices TEXT
    given TEXT
    PRIMARY KEY (mode, pointer)
    FOREIGN KEY (mode, parameter) REFERENCES parameters(mode, name)""",
        of_fixture="mode",
    ),
    Table(
        "search",
        """mode TEXT NOT NULL REFERENCES modes(id)
    maker TEXT
    model TEXT
    name TEXT
    category TEXT
    parameters TEXT
    labels TEXT
    meanings TEXT
    settings TEXT
    marks TEXT""",
        of_fixture="mode",
        clustered=False,
        indexes=("mode",),
    ),
)
"""What a mode becomes."""
