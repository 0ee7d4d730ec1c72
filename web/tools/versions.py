"""The one version number of the app."""

import re

from web.tools.places import PYCORE
from web.tools.say import Halt


def read_core_version() -> str:
    """Read `__version__` out of pycore without importing it."""
    text = (PYCORE / "__init__.py").read_text(encoding="utf-8")
    match = re.search(r'^__version__ = "([^"]+)"$', text, re.MULTILINE)
    if not match:
        raise Halt(
            "pycore/__init__.py has no version", remedy='put back a line __version__ = "1.2.3"'
        )
    return match.group(1)
