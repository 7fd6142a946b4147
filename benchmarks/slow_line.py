"""A line as in a shop: so many bits a second for all connections together, and late.

A browser slows only what its pages fetch, and not what a service worker does; so the line itself is
slow here. It can be cut, and it counts what came through to the phone.
"""

from __future__ import annotations

import asyncio
import contextlib
import time
from threading import Thread

PIECE = 4096
"""Bytes handed on at once: small beside what a line carries in a round trip."""


class SlowLine:
    """Carries connections on to `target`, a port of this machine."""

    def __init__(self, target: int, megabits: float, round_trip: float = 0.15) -> None:
        self.target = target
        self.megabits = megabits
        self.round_trip = round_trip
        """In seconds."""
        self.carried = 0
        """Bytes to the phone, those of TLS and HTTP included."""
        self.cut_at: int | None = None
        """The line is cut once it has carried so many bytes."""
        self.is_cut = False
        self._free = 0.0
        self._open: set[asyncio.StreamWriter] = set()
        self._loop = asyncio.new_event_loop()
        Thread(target=self._loop.run_forever, daemon=True).start()
        serving = asyncio.start_server(self._carry, "localhost", 0)
        self._server = asyncio.run_coroutine_threadsafe(serving, self._loop).result()
        self.port: int = self._server.sockets[0].getsockname()[1]

    @property
    def url(self) -> str:
        """The host's front page at the slow end of the line."""
        return f"https://localhost:{self.port}/"

    def cut(self) -> None:
        """Break every connection and let none through until `is_cut` is set back."""
        self.is_cut, self.cut_at = True, None
        self._loop.call_soon_threadsafe(self._break)

    def lead_to(self, target: int) -> None:
        """Carry on to another port; connections to the one before end."""
        self.target = target
        self._loop.call_soon_threadsafe(self._break)

    def end(self) -> None:
        """Be gone."""
        self.cut()
        self._loop.call_soon_threadsafe(self._server.close)

    def _break(self) -> None:
        for writer in self._open:
            writer.transport.abort()

    async def _carry(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        if self.is_cut:
            writer.transport.abort()
            return
        host_reader, host_writer = await asyncio.open_connection("localhost", self.target)
        both = {writer, host_writer}
        self._open |= both
        with contextlib.suppress(OSError):
            async with asyncio.TaskGroup() as pumps:
                pumps.create_task(self._pump(reader, host_writer, is_counted=False))
                pumps.create_task(self._pump(host_reader, writer, is_counted=True))
        self._open -= both
        for each in both:
            each.close()

    async def _pump(
        self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter, *, is_counted: bool
    ) -> None:
        """Hand on what arrives, each piece half a round trip after it came through the line."""
        under_way: asyncio.Queue[tuple[float, bytes]] = asyncio.Queue(64)
        async with asyncio.TaskGroup() as group:
            group.create_task(self._arrive(under_way, writer))
            while piece := await reader.read(PIECE):
                if is_counted:
                    await self._squeeze(len(piece))
                await under_way.put((time.monotonic() + self.round_trip / 2, piece))
            await under_way.put((0, b""))

    async def _arrive(
        self, under_way: asyncio.Queue[tuple[float, bytes]], writer: asyncio.StreamWriter
    ) -> None:
        while True:
            due, piece = await under_way.get()
            if not piece:
                break
            await asyncio.sleep(max(0.0, due - time.monotonic()))
            writer.write(piece)
            await writer.drain()
        if writer.can_write_eof():
            writer.write_eof()

    async def _squeeze(self, size: int) -> None:
        """Wait until the line has carried these bytes, after all that came before them."""
        self._free = max(self._free, time.monotonic()) + size * 8 / (self.megabits * 1e6)
        await asyncio.sleep(max(0.0, self._free - time.monotonic()))
        self.carried += size
        if self.cut_at is not None and self.carried >= self.cut_at:
            self.is_cut, self.cut_at = True, None
            self._break()
