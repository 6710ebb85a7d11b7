"""Makes a rig to read out of an example of a patch rule: fixtures, a patch as CSV, and what rig.json says."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from modebook.checks.examples import complete
from modebook.documents.rig import Rig
from modebook.rig.fixtures import GivenFixtures
from modebook.rig.patch_reading import patch_from_text
from modebook.rig.reading import RigReading, policy_of


def rig_of(content: Mapping[str, Any]) -> RigReading:
    """The rig of an example: `fixtures` (see checks.examples), `patch` (CSV), `rig` (as in rig.json)."""
    rig = Rig.model_validate_json(json.dumps({"name": "Example"} | dict(content.get("rig", {}))))
    fixtures = [complete(document) for document in content.get("fixtures", [{}])]
    return RigReading(
        rig.name, rig, patch_from_text(content["patch"]), GivenFixtures(fixtures), policy_of(rig)
    )
