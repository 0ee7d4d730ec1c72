"""The calculation core of Rungline: no clock, no chance, no files, no network, no browser."""

__version__ = "0.1.0"
