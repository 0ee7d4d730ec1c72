"""One numbered step for each version a saved job has to climb. Version 1 is the first."""
