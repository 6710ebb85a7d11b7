"""Printable pages for the crew: lists by position and universe, maps, control cards, a swapped spare."""
