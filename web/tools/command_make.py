"""build.py make"""

import argparse

from web.tools.make import make_dist
from web.tools.patches import ENDING
from web.tools.places import DIST
from web.tools.say import tell


def run(known: argparse.Namespace, _rest: list[str]) -> int:
    """Build dist/ and say what is in it."""
    make_dist(known.before)
    files = [path for path in DIST.rglob("*") if path.is_file()]
    plain = [path for path in files if path.suffix not in (".br", ".gz")]
    squeezed_bytes = 0
    fetched = [path for path in plain if path.suffix != ENDING]
    for path in fetched:
        small = path.with_name(path.name + ".br")
        squeezed_bytes += (small if small.is_file() else path).stat().st_size
    whole_bytes = sum(path.stat().st_size for path in fetched)
    tell(
        f"dist/ is ready: a first visit fetches {len(fetched)} files, {whole_bytes / 1e6:.2f} MB, "
        f"{squeezed_bytes / 1e6:.2f} MB over the wire with brotli."
    )
    return 0
