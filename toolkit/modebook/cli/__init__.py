"""The command line: one file a command; parses, calls, renders."""
