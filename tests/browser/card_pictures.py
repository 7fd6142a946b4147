"""Pictures as cameras and folders give them, made for the tests."""

from __future__ import annotations

import base64
import struct
import zlib

PAINT = """async () => {
  const canvas = new OffscreenCanvas(4000, 3000);
  const pen = canvas.getContext("2d");
  for (let at = 0; at < 4000; at += 1) {
    pen.fillStyle = `rgb(${at * 37 % 255}, ${at * 91 % 255}, ${at * 13 % 255})`;
    pen.fillRect(2000 + Math.sin(at) * 2000, 1500 + Math.cos(at * 1.7) * 1500, 60, 60);
  }
  pen.fillStyle = "white";
  pen.fillRect(0, 0, 4000, 300);
  const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: 0.95 });
  const reader = new FileReader();
  await new Promise((done) => { reader.onload = done; reader.readAsDataURL(blob); });
  return reader.result.split(",")[1];
}"""


_PAINTED: list[bytes] = []
"""The picture, painted once for all tests of a process: that takes seconds."""


def camera_photo(page) -> dict:
    """A 12-megapixel JPEG on its side, with the camera's mark to turn it and a position.

    Exif 2.32: tag 0x0112 is the orientation (6: turn a quarter clockwise), 0x8825 the position.
    The upper edge of the file is white: upright, the right edge is.
    """
    if not _PAINTED:
        _PAINTED.append(base64.b64decode(page.evaluate(PAINT)))
    [plain] = _PAINTED
    turn = struct.pack(">HHIHH", 0x0112, 3, 1, 6, 0)
    position = struct.pack(">HHII", 0x8825, 4, 1, 38)
    latitude = struct.pack(">HHI4s", 1, 2, 2, b"N\0\0\0")
    tags = struct.pack(">H", 2) + turn + position + struct.pack(">I", 0)
    tags += struct.pack(">H", 1) + latitude + struct.pack(">I", 0)
    exif = b"Exif\0\0MM\0*" + struct.pack(">I", 8) + tags
    marked = plain[:2] + b"\xff\xe1" + struct.pack(">H", len(exif) + 2) + exif + plain[2:]
    return {"name": "IMG_0001.jpg", "mimeType": "image/jpeg", "buffer": marked}


def huge_picture() -> dict:
    """A PNG of 101 million pixels in some kilobytes: one bit each, all alike."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    width, height = 11_600, 8_700
    row = bytes(1 + (width + 7) // 8)
    packer = zlib.compressobj(9)
    rows = b"".join(packer.compress(row) for _ in range(height)) + packer.flush()
    head = struct.pack(">IIBBBBB", width, height, 1, 0, 0, 0, 0)
    parts = chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")
    return {"name": "plan.png", "mimeType": "image/png", "buffer": b"\x89PNG\r\n\x1a\n" + parts}


NO_PHOTOS = [
    (
        {"name": "notes.txt", "mimeType": "text/plain", "buffer": b"no picture"},
        "“notes.txt” is not a picture that this browser can read. Choose a photo, or take one.",
    ),
    (
        {"name": "a.heic", "mimeType": "image/heic", "buffer": b"\0\0\0\x18ftypheic" + bytes(80)},
        "This browser cannot read HEIC pictures such as “a.heic”. Set the camera to take JPEG, or "
        "take the photo again from here.",
    ),
    (
        {"name": "b.jpg", "mimeType": "image/jpeg", "buffer": b""},
        "“b.jpg” is empty. Take the photo again.",
    ),
    (
        huge_picture(),
        "“plan.png” has 101 million pixels; this phone can make up to 64 million small. Set the "
        "camera to a smaller size and take it again.",
    ),
]
"""Files that cannot become a photo, and what is said about each."""
