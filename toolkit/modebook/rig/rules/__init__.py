"""The rules about a patch against the catalog: one a file."""

PACKAGE = "modebook.rig.rules"
"""The package of the rules about patches, for the registry."""
