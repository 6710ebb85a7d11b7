"""What is written down, as pydantic models, and what follows from a document alone."""
