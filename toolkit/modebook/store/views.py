"""The views that a person browses: what slots do, who allows remote smoothing, where resolution is low."""

from __future__ import annotations

VIEWS: dict[str, str] = {
    "mode_chart": """
SELECT slots.mode, slots.part, slots.slot, slots.cell,
  parameters.name AS parameter, words.name AS controls, parameters.label,
  CASE WHEN parameters.bits = 8 THEN 'only byte' WHEN slots.byte = 1 THEN 'coarse'
    WHEN parameters.bits = 16 THEN 'fine' ELSE 'fine ' || (slots.byte - 1) END AS byte,
  parameters.bits, parameters.default_value, parameters.span_from, parameters.span_to, parameters.unit,
  parameters.only_while,
  (SELECT group_concat(r.from_value || '-' || r.to_value || ' ' || r.meaning, '; ') FROM ranges AS r
    WHERE r.mode = slots.mode AND r.parameter = slots.parameter AND slots.byte = 1) AS ranges,
  slot_types.name AS slot_type, slots.slot_label,
  CASE WHEN slots.slot_type = 0 THEN slot_labels.name END AS slot_label_name
FROM slots
JOIN parameters ON parameters.mode = slots.mode AND parameters.name = slots.parameter
JOIN words ON words.word = parameters.word
JOIN slot_types ON slot_types.number = slots.slot_type
LEFT JOIN slot_labels ON slot_labels.number = slots.slot_label
""",
    "remote_smoothing": """
SELECT modes.id AS mode, modes.maker, modes.model, modes.mode AS mode_name, modes.number, modes.standing,
  settings.label AS setting, settings.acts_on, ways.way, choices.label AS choice,
  choices.length_packets, choices.length_seconds, choices.method,
  ways.parameter, ways.from_value, ways.to_value, ways.hold_s, ways.kept, ways.needs,
  ways.pid, ways.size, ways.value, ways.locked
FROM modes
JOIN settings ON settings.fixture = modes.fixture AND settings.smoothing
JOIN ways ON ways.setting = settings.id
  AND (ways.mode = modes.id OR (ways.mode IS NULL AND ways.choice <> ''))
LEFT JOIN choices ON choices.setting = ways.setting AND choices.key = ways.choice
WHERE modes.remote AND ways.way IN ('slot', 'rdm')
""",
    "low_resolution": """
SELECT findings.severity, findings.rule, findings.message, findings.figure, findings.help,
  modes.id AS mode, modes.maker, modes.model, modes.mode AS mode_name, modes.number,
  parameters.name AS parameter, parameters.bits
FROM findings
JOIN modes ON modes.id = findings.mode
LEFT JOIN parameters ON parameters.mode = modes.id AND (parameters.pointer = findings.pointer
  OR substr(findings.pointer, 1, length(parameters.pointer) + 1) = parameters.pointer || '/')
WHERE findings.rule LIKE 'coarse-%' AND findings.rig IS NULL
""",
    "mode_resolution": """
SELECT modes.id AS mode, modes.maker, modes.model, modes.mode AS mode_name, modes.number,
  parameters.word, max(parameters.bits) AS bits, min(parameters.bits) AS bits_of_coarsest,
  count(*) AS parameters
FROM parameters JOIN modes ON modes.id = parameters.mode
GROUP BY modes.id, parameters.word
""",
    "hazards": """
SELECT modes.id AS mode, modes.maker, modes.model, modes.mode AS mode_name, ranges.parameter,
  ranges.from_value, ranges.to_value, ranges.meaning, ranges.hazard, ranges.hold_s, ranges.needs
FROM ranges JOIN modes ON modes.id = ranges.mode WHERE ranges.hazard IS NOT NULL
""",
    "open_doubts": """
SELECT fixtures.id AS fixture, fixtures.maker, fixtures.model, doubts.pointer, doubts.slots, doubts.place,
  doubts.printed, doubts.read, doubts.why
FROM doubts JOIN fixtures ON fixtures.id = doubts.fixture WHERE doubts.open
""",
    "rig_smoothing": """
SELECT rig, count(*) AS units, sum(smoothing = 'slot') AS by_slot, sum(smoothing = 'rdm') AS by_rdm,
  sum(smoothing = 'hand') AS by_hand_only, sum(smoothing = 'none') AS none,
  sum(smoothing = 'unknown') AS unknown
FROM units WHERE counts GROUP BY rig
""",
}
"""Name and query."""
