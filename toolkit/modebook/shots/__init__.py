"""Settings per shot: which choice each light needs in each setup, and what to change between setups."""
