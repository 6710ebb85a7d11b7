"""The database: built from the catalog, and asked."""
