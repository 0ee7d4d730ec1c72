"""build.py serve"""

import argparse
import errno
import webbrowser

from web.tools.make import make_dist
from web.tools.places import DIST
from web.tools.say import Halt, tell
from web.tools.server import FolderServer

USUAL_PORT = 8070


def run(known: argparse.Namespace, _rest: list[str]) -> int:
    """Build, serve, and open the browser."""
    make_dist()
    with open_server(known.host, known.port) as server:
        tell(f"Rungline is at {server.address} - stop with Ctrl+C.")
        if not known.no_open:
            webbrowser.open(server.address)
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            tell("\nStopped.")
    return 0


def open_server(host: str, port: int | None) -> FolderServer:
    """Take the port asked for, else the usual one, else any that is free."""
    try:
        return FolderServer(DIST, host=host, port=USUAL_PORT if port is None else port)
    except OSError as error:
        if error.errno not in (errno.EADDRINUSE, errno.EACCES):
            raise
        if port is not None:
            raise Halt(
                f"port {port} is taken", remedy="name another with --port, or leave --port out"
            ) from error
    tell(f"Port {USUAL_PORT} is taken; taking a free one.")
    return FolderServer(DIST, host=host, port=0)
