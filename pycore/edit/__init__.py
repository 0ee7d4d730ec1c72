"""Commands: what a person wants done to a job, and doing it."""

from pycore.edit.apply import COMMANDS, Command, apply, read_command

__all__ = ["COMMANDS", "Command", "apply", "read_command"]
