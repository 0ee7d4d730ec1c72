"""Findings to paper: tables as data that the page draws and a spreadsheet reads."""
