"""Modebook: fixture modes recorded, checked, and computed for a rig."""

__version__ = "0.1.0"
