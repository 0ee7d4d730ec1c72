"""Equations on plain floats; each cites its source. They know nothing of jobs."""
