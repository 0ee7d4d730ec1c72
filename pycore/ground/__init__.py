"""Units, sources, problems, words and workings: what every other floor stands on."""
