"""Checks: one rule a file, the finding, the registry and the runner."""
