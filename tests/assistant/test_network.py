"""No network at run time: whole commands in a process that can open no connection and ask for no address."""

from __future__ import annotations

import subprocess
import sys
from importlib import resources

import pytest

DEAF = (
    "import socket, sys\n"
    "def refuse(*_, **__): raise SystemExit('reached for the network')\n"
    "socket.socket.connect = socket.socket.connect_ex = socket.socket.sendto = refuse\n"
    "socket.getaddrinfo = socket.gethostbyname = socket.create_connection = refuse\n"
    "from assistant.cli import main\n"
    "main()\n"
)
STEW = str(resources.files("corpus") / "recipes" / "river-beef-stew.txt")


def deaf(*words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", DEAF, *words], capture_output=True, text=True, check=False, timeout=60
    )


@pytest.mark.parametrize(
    "words",
    [
        ("demo",),
        ("read", STEW, "--as", "json"),
        ("camp", STEW, "--as", "html", "--eat", "2027-07-03T18:30", "--zone", "America/Boise"),
        ("camp", STEW, "--as", "ics", "--eat", "2027-07-03T18:30", "--zone", "America/Boise"),
        ("ask", STEW, "there will be fourteen of us", "why the coals?"),
        ("why", STEW, "beef"),
        ("coals", "--oven", "12", "--temp", "350F", "--for", "bake"),
    ],
    ids=lambda words: f"{words[0]} {words[3] if len(words) > 4 else ''}".strip(),
)
def test_a_command_does_its_work_without_a_network(words: tuple[str, ...]) -> None:
    done = deaf(*words)
    assert (done.returncode, done.stderr) == (0, "") or "ships with coalside" in done.stderr
    assert len(done.stdout) > 100


def test_the_block_would_be_felt() -> None:
    reached = DEAF.partition("from assistant")[0] + "socket.create_connection(('localhost', 9))"
    done = subprocess.run([sys.executable, "-c", reached], capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert "reached for the network" in done.stderr
