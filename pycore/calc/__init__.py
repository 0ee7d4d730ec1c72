"""A job in, findings out."""
