"""A small server for this machine: exact types, squeezed files, and the headers a host should set.

Types are written out because the operating system's own table is wrong on some machines, and
a module with the wrong type is refused by every browser.
"""

import hashlib
import posixpath
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import unquote, urlsplit

TYPES = {
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".mjs": "text/javascript; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".json": "application/json; charset=utf-8",
    ".webmanifest": "application/manifest+json; charset=utf-8",
    ".txt": "text/plain; charset=utf-8",
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".ico": "image/x-icon",
    ".wasm": "application/wasm",
    ".zip": "application/zip",
    ".patch": "application/octet-stream",
}
CONTENT_RULES = (
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; "
    "connect-src 'self'; style-src 'self'; img-src 'self' data:; manifest-src 'self'; "
    "base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; "
    "trusted-types app lit-html"
)
HEADERS = {
    "Content-Security-Policy": f"{CONTENT_RULES}; frame-ancestors 'none'",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
    # Every file may be asked for again at any time; the tag below answers without sending it.
    "Cache-Control": "no-cache",
}


class Handler(BaseHTTPRequestHandler):
    """Serves the files of one folder and nothing else."""

    protocol_version = "HTTP/1.1"
    # Head and body leave together and at once: otherwise each file waits for the head's receipt.
    wbufsize = -1
    disable_nagle_algorithm = True
    server: "FolderServer"

    def do_GET(self) -> None:
        self._answer(with_body=True)

    def do_HEAD(self) -> None:
        self._answer(with_body=False)

    def log_message(self, *_: object) -> None:
        """Keep quiet: one line for each file would bury the address."""

    def _answer(self, *, with_body: bool) -> None:
        path = self.server.find_file(self.path)
        if path is None:
            return self._send(HTTPStatus.NOT_FOUND, {"Content-Type": TYPES[".txt"]}, b"not here\n")
        sent, encoding = self._choose_form(path)
        body = sent.read_bytes()
        tag = f'"{hashlib.sha256(body).hexdigest()[:32]}"'
        headers = {"Content-Type": TYPES.get(path.suffix, "application/octet-stream"), "ETag": tag}
        headers["Vary"] = "Accept-Encoding"
        if encoding:
            headers["Content-Encoding"] = encoding
        if self.headers.get("If-None-Match") == tag:
            return self._send(HTTPStatus.NOT_MODIFIED, headers, None)
        return self._send(HTTPStatus.OK, headers, body, with_body=with_body)

    def _choose_form(self, path: Path) -> tuple[Path, str]:
        """Choose the smallest form that the browser accepts."""
        accepted = self.headers.get("Accept-Encoding", "")
        offered = {word.split(";")[0].strip() for word in accepted.split(",")}
        for name, ending in (("br", ".br"), ("gzip", ".gz")):
            squeezed = path.with_name(path.name + ending)
            if name in offered and squeezed.is_file():
                return squeezed, name
        return path, ""

    def _send(
        self,
        status: HTTPStatus,
        headers: dict[str, str],
        body: bytes | None,
        *,
        with_body: bool = True,
    ) -> None:
        self.send_response(status)
        for name, value in {**HEADERS, **headers}.items():
            self.send_header(name, value)
        if body is not None:
            self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if body is not None and with_body and self.command == "GET":
            self.wfile.write(body)


class FolderServer(ThreadingHTTPServer):
    """A threaded server of one folder below one prefix."""

    daemon_threads = True
    # A browser opens several lines at once; one that finds no room tries again a second later.
    request_queue_size = 128

    def __init__(self, folder: Path, *, host: str, port: int, prefix: str = "/") -> None:
        self.folder = folder.resolve()
        self.prefix = prefix
        self.host = host
        super().__init__((host, port), Handler)

    @property
    def address(self) -> str:
        """The address to open."""
        port = self.server_address[1]
        return f"http://{self.host}:{port}{self.prefix}"

    @contextmanager
    def serve_in_background(self) -> Iterator[str]:
        """Serve from a thread of its own; give the address, and end with the block."""
        # A short poll, because ending waits for it.
        options = {"poll_interval": 0.01}
        threading.Thread(target=self.serve_forever, kwargs=options, daemon=True).start()
        try:
            yield self.address
        finally:
            self.shutdown()
            self.server_close()

    def handle_error(self, request: object, client_address: object) -> None:
        """A browser that goes away in mid-answer is no fault of ours."""

    def find_file(self, target: str) -> Path | None:
        """Return the file for a request, or None: no listing, nothing outside the folder."""
        path = unquote(urlsplit(target).path)
        if not path.startswith(self.prefix):
            return None
        inner = posixpath.normpath("/" + path[len(self.prefix) :]).lstrip("/")
        found = (self.folder / (inner if inner not in ("", ".") else "index.html")).resolve()
        if found.suffix in (".br", ".gz") or not found.is_relative_to(self.folder):
            return None
        return found if found.is_file() else None
