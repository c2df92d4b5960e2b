"""The same world for every test: 80 columns, plain C locale, UTC, no network."""

from __future__ import annotations

import signal
import socket

import pytest
from hypothesis import settings

# The same examples on every machine: a run that fails elsewhere fails here too. For a search of new ones:
# --hypothesis-profile=default.
settings.register_profile("fixed", derandomize=True, deadline=None)
settings.load_profile("fixed")

# A run in the background is started with interrupts ignored, and so would be the processes of the tests about them.
signal.signal(signal.SIGINT, signal.default_int_handler)


@pytest.fixture(autouse=True)
def the_same_world(monkeypatch: pytest.MonkeyPatch, tmp_path_factory: pytest.TempPathFactory) -> None:
    """Width, locale, zone and home folder do not depend on the machine."""
    home = tmp_path_factory.mktemp("home")
    monkeypatch.setenv("COLUMNS", "80")
    monkeypatch.setenv("LC_ALL", "C.UTF-8")
    monkeypatch.setenv("TZ", "UTC")
    monkeypatch.setenv("HOME", str(home))
    for name in ("XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CONFIG_HOME", "NO_COLOR", "FORCE_COLOR"):
        monkeypatch.delenv(name, raising=False)


@pytest.fixture(autouse=True)
def no_network(monkeypatch: pytest.MonkeyPatch) -> None:
    """A test that reaches for the network fails."""

    def refuse(_self: socket.socket, address: object) -> None:
        raise AssertionError(f"a test reached for the network: {address}")

    monkeypatch.setattr(socket.socket, "connect", refuse)
    monkeypatch.setattr(socket.socket, "connect_ex", refuse)
