"""A maker's chart to a draft document: readers, one assembler, doubts, and the second reading."""
