"""The few lines of the WebSocket protocol (RFC 6455) that driving a browser needs."""

import base64
import os
import socket
import struct

TEXT, CONTINUED, PING, PONG, CLOSE = 0x1, 0x0, 0x9, 0xA, 0x8


class WebSocket:
    """A client on this machine: sends text, receives text."""

    def __init__(self, port: int, path: str, *, patience_seconds: float) -> None:
        self._socket = socket.create_connection(("127.0.0.1", port), timeout=patience_seconds)
        key = base64.b64encode(os.urandom(16)).decode()
        self._socket.sendall(
            f"GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nUpgrade: websocket\r\n"
            f"Connection: Upgrade\r\nSec-WebSocket-Key: {key}\r\n"
            "Sec-WebSocket-Version: 13\r\n\r\n".encode()
        )
        self._stream = self._socket.makefile("rb")
        status = self._stream.readline()
        if b" 101 " not in status:
            raise ConnectionError(f"no WebSocket: {status!r}")
        while self._stream.readline() not in (b"\r\n", b""):
            pass

    def send(self, text: str) -> None:
        """Send one text in one frame, masked as clients must."""
        self._send_frame(TEXT, text.encode())

    def receive(self) -> str:
        """Wait for the next whole text."""
        parts: list[bytes] = []
        while True:
            kind, last, content = self._read_frame()
            if kind == PING:
                self._send_frame(PONG, content)
            elif kind == CLOSE:
                raise ConnectionError("the browser closed the connection")
            elif kind in (TEXT, CONTINUED):
                parts.append(content)
                if last:
                    return b"".join(parts).decode()

    def close(self) -> None:
        """Hang up."""
        self._stream.close()
        self._socket.close()

    def _send_frame(self, kind: int, content: bytes) -> None:
        mask = os.urandom(4)
        length = len(content)
        if length < 126:
            head = struct.pack("!BB", 0x80 | kind, 0x80 | length)
        elif length < 65536:
            head = struct.pack("!BBH", 0x80 | kind, 0x80 | 126, length)
        else:
            head = struct.pack("!BBQ", 0x80 | kind, 0x80 | 127, length)
        masked = bytes(byte ^ mask[place % 4] for place, byte in enumerate(content))
        self._socket.sendall(head + mask + masked)

    def _read_frame(self) -> tuple[int, bool, bytes]:
        first, second = self._read(2)
        length = second & 0x7F
        if length == 126:
            (length,) = struct.unpack("!H", self._read(2))
        elif length == 127:
            (length,) = struct.unpack("!Q", self._read(8))
        return first & 0x0F, bool(first & 0x80), self._read(length)

    def _read(self, length: int) -> bytes:
        content = self._stream.read(length)
        if len(content) < length:
            raise ConnectionError("the browser went away")
        return content
