"""Documents and people's files on disk: find, read, write whole and in canonical form."""
