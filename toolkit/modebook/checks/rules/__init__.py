"""The rules about fixture documents, one a file."""
