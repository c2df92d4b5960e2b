"""A real Chromium for the tests of pages, spoken to over its debugging pipe (Chrome DevTools Protocol)."""

from __future__ import annotations

import base64
import fcntl
import json
import os
import shutil
import signal
import tempfile
from pathlib import Path
from typing import Any

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
ABSENT = "no Chromium on this machine: the page itself is not measured"
FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--hide-scrollbars", "--remote-debugging-pipe",
)  # fmt: skip
#: Paper in inches.
PAPERS = {"Letter": (8.5, 11.0), "A4": (8.27, 11.69)}


class Browser:
    """One browser with one tab; close it when done."""

    def __init__(self) -> None:
        self._folder = tempfile.mkdtemp(prefix="page-test-")
        to_it, from_us = (_high(fd) for fd in os.pipe())
        from_it, to_us = (_high(fd) for fd in os.pipe())
        assert CHROMIUM is not None
        self.pid = os.posix_spawn(
            CHROMIUM,
            [CHROMIUM, *FLAGS, f"--user-data-dir={self._folder}"],
            dict(os.environ),
            file_actions=[
                (os.POSIX_SPAWN_OPEN, 2, os.devnull, os.O_WRONLY, 0),
                (os.POSIX_SPAWN_DUP2, to_it, 3),
                (os.POSIX_SPAWN_DUP2, to_us, 4),
            ],
        )
        os.close(to_it)
        os.close(to_us)
        self._out, self._in = from_us, from_it
        self._rest, self._number, self._session = b"", 0, ""
        self.heard: list[dict[str, Any]] = []
        target = self.call("Target.createTarget", url="about:blank")["targetId"]
        self._session = self.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Page", "Runtime", "Network", "Log"):
            self.call(f"{domain}.enable")

    def call(self, method: str, **params: Any) -> dict[str, Any]:
        """One command and its answer; what else is heard meanwhile is kept in `heard`."""
        self._number += 1
        message = {"id": self._number, "method": method, "params": params}
        if self._session:
            message["sessionId"] = self._session
        os.write(self._out, json.dumps(message).encode() + b"\0")
        while True:
            said = self._next()
            if said.get("id") == self._number:
                assert "error" not in said, said["error"]
                return dict(said["result"])
            self.heard.append(said)

    def _next(self) -> dict[str, Any]:
        while b"\0" not in self._rest:
            more = os.read(self._in, 1 << 20)
            assert more, "Chromium closed its pipe"
            self._rest += more
        first, _, self._rest = self._rest.partition(b"\0")
        return dict(json.loads(first))

    def open(self, page: Path, *, width: int = 1100, dark: bool = False, script: bool = True) -> None:
        """Show a page in a window of that width and colour scheme, and wait for it."""
        self.heard.clear()
        self.call("Emulation.setScriptExecutionDisabled", value=not script)
        self.call(
            "Emulation.setDeviceMetricsOverride", width=width, height=900, deviceScaleFactor=1, mobile=False
        )
        scheme = [{"name": "prefers-color-scheme", "value": "dark" if dark else "light"}]
        self.call("Emulation.setEmulatedMedia", features=scheme)
        self.call("Page.navigate", url=page.as_uri())
        while not any(said.get("method") == "Page.loadEventFired" for said in self.heard):
            self.heard.append(self._next())

    def asked(self) -> list[str]:
        """Every address that was asked for since the page was opened."""
        return [
            said["params"]["request"]["url"]
            for said in self.heard
            if said.get("method") == "Network.requestWillBeSent"
        ]

    def complaints(self) -> list[str]:
        """What the browser logged since the page was opened: errors, and what its policy refused."""
        return [
            said["params"]["entry"]["text"] for said in self.heard if said.get("method") == "Log.entryAdded"
        ]

    def value(self, expression: str) -> Any:
        """What an expression of the page's language gives."""
        result = self.call("Runtime.evaluate", expression=expression, returnByValue=True, awaitPromise=True)
        assert "exceptionDetails" not in result, result["exceptionDetails"]
        return result["result"].get("value")

    def printed(self, paper: str) -> bytes:
        """The page as a PDF on that paper, with the margins of its own style."""
        width, height = PAPERS[paper]
        answer = self.call("Page.printToPDF", paperWidth=width, paperHeight=height, printBackground=True)
        return base64.b64decode(answer["data"])

    def close(self) -> None:
        """End the browser and leave nothing behind."""
        os.close(self._out)
        os.close(self._in)
        os.kill(self.pid, signal.SIGTERM)
        os.waitpid(self.pid, 0)
        shutil.rmtree(self._folder, ignore_errors=True)


def _high(fd: int) -> int:
    """The same pipe end at a number well above those that Chromium wants."""
    moved = fcntl.fcntl(fd, fcntl.F_DUPFD_CLOEXEC, 20)
    os.close(fd)
    return moved
