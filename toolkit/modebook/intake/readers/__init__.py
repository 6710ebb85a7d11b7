"""Readers, one file a format: each yields lines and grids of cells with their place."""
