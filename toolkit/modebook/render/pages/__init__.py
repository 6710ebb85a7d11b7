"""The published pages: what each shows, assembled from the store and the engine; templates only draw it."""
