"""The vocabulary: parameters, families, units, standard ids and the closed lists of words. Data only."""
