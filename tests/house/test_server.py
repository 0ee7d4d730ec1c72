"""The server of `build.py serve`: exact types, the headers a host should set, nothing beside."""

import gzip
import http.client
from collections.abc import Iterator
from pathlib import Path

import pytest

from web.tools.server import CONTENT_RULES, FolderServer

Answer = tuple[int, dict[str, str], bytes]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small app with a secret beside it."""
    app = tmp_path / "app"
    (app / "parts").mkdir(parents=True)
    for name, text in {
        "index.html": "<!doctype html>", "a.mjs": "1", "b.js": "2", "c.wasm": "3", "d.zip": "4",
        "e.webmanifest": "{}", "f.css": "", "g.svg": "<svg/>", "parts/h.json": "{}",
    }.items():  # fmt: skip
        (app / name).write_text(text)
    (app / "b.js.gz").write_bytes(gzip.compress(b"2"))
    (tmp_path / "secret.txt").write_text("secret")
    return app


@pytest.fixture(params=["/", "/sub/"])
def server(folder: Path, request: pytest.FixtureRequest) -> Iterator[FolderServer]:
    """The folder served at the top and below a path."""
    server = FolderServer(folder, host="127.0.0.1", port=0, prefix=request.param)
    with server.serve_in_background():
        yield server


def ask(server: FolderServer, path: str, **headers: str) -> Answer:
    """Ask for a path as it stands, dots and all."""
    connection = http.client.HTTPConnection("127.0.0.1", server.server_address[1], timeout=20)
    connection.putrequest("GET", path, skip_accept_encoding=True)
    for name, value in headers.items():
        connection.putheader(name.replace("_", "-"), value)
    connection.endheaders()
    answer = connection.getresponse()
    body = answer.read()
    connection.close()
    return answer.status, {name.lower(): value for name, value in answer.getheaders()}, body


@pytest.mark.parametrize(
    ("name", "kind"),
    [("", "text/html"), ("a.mjs", "text/javascript"), ("b.js", "text/javascript"),
     ("c.wasm", "application/wasm"), ("d.zip", "application/zip"), ("f.css", "text/css"),
     ("e.webmanifest", "application/manifest+json"), ("g.svg", "image/svg+xml"),
     ("parts/h.json", "application/json")],
)  # fmt: skip
def test_every_file_goes_out_under_its_exact_type(
    server: FolderServer, name: str, kind: str
) -> None:
    status, headers, _ = ask(server, server.prefix + name)
    assert (status, headers["content-type"].split(";")[0]) == (200, kind)
    assert headers["content-security-policy"].startswith(CONTENT_RULES)
    assert "frame-ancestors 'none'" in headers["content-security-policy"]
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["cache-control"] == "no-cache"


@pytest.mark.parametrize(
    "path",
    ["../secret.txt", "%2e%2e/secret.txt", "parts/../../secret.txt", "parts", "parts/", "none",
     "..%2fsecret.txt", "b.js.gz", "//secret.txt"],
)  # fmt: skip
def test_nothing_outside_the_folder_and_no_listing_goes_out(
    server: FolderServer, path: str
) -> None:
    status, _, body = ask(server, server.prefix + path)
    assert status == 404
    assert b"secret\n" not in body
    assert body == b"not here\n"


def test_a_path_outside_the_prefix_is_not_here(folder: Path) -> None:
    with FolderServer(folder, host="127.0.0.1", port=0, prefix="/sub/") as server:
        assert server.find_file("/b.js") is None
        assert server.find_file("/sub/b.js") == folder / "b.js"


def test_a_file_that_has_not_changed_is_not_sent_again(server: FolderServer) -> None:
    _, headers, _ = ask(server, server.prefix + "a.mjs")
    status, _, body = ask(server, server.prefix + "a.mjs", If_None_Match=headers["etag"])
    assert (status, body) == (304, b"")


def test_a_squeezed_file_goes_out_only_to_those_who_take_it(server: FolderServer) -> None:
    _, plain, whole = ask(server, server.prefix + "b.js")
    _, squeezed, body = ask(server, server.prefix + "b.js", Accept_Encoding="gzip, br")
    assert "content-encoding" not in plain
    assert squeezed["content-encoding"] == "gzip"
    assert gzip.decompress(body) == whole == b"2"
    assert plain["etag"] != squeezed["etag"]
