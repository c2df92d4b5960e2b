"""The shortcuts of loading: what is kept out stays out, and comes back for whoever asks afterwards."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from assistant import _quick

ROOT = Path(__file__).parents[2]
COBBLER = ROOT / "corpus" / "recipes" / "river-peach-cobbler.txt"


def loaded_by(code: str) -> set[str]:
    done = subprocess.run(
        [sys.executable, "-c", f"{code}\nimport sys; print(*sys.modules, sep='\\n', file=sys.stderr)"],
        capture_output=True,
        text=True,
        check=True,
        cwd=ROOT,
    )
    return set(done.stderr.split())


def test_a_plan_loads_no_command_line_no_network_and_no_type_checker() -> None:
    loaded = loaded_by(f"from assistant.cli import run; run(['camp', {str(COBBLER)!r}, '--as', 'jsonl'])")
    assert "spacy" in loaded
    assert not loaded & {
        "spacy.cli",
        "weasel",
        "requests",
        "httpx",
        "typeguard",
        "joblib",
        "quantulum3",
        "sklearn",
        "rich",
        "prompt_toolkit",
    }


def test_whoever_wants_the_real_module_gets_it() -> None:
    """The stand-in is gone when the library is loaded."""
    loaded = loaded_by(
        "from assistant import _quick; _quick.load_spacy(); import spacy\n"
        "assert spacy.blank('en')('two cups')[1].text == 'cups'\n"
        "import spacy.cli; assert spacy.cli.__file__"
    )
    assert "spacy.cli" in loaded


def test_a_module_that_is_loaded_is_left_as_it_is() -> None:
    with _quick.stand_ins(json=_quick.module("json")):
        import json

        assert json.dumps([1]) == "[1]"


def test_a_stand_in_goes_away_also_after_a_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delitem(sys.modules, "zorbel", raising=False)

    def load() -> None:
        with _quick.stand_ins(zorbel=_quick.module("zorbel", answer=42)):
            assert sys.modules["zorbel"].answer == 42
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        load()
    assert "zorbel" not in sys.modules


def test_where_the_shortcut_does_not_fit_the_plain_import_is_made() -> None:
    loaded = loaded_by(
        "from assistant import _quick\n"
        "_quick.module = lambda name, **_: None\n"
        "_quick.load_spacy(); import spacy; assert spacy.blank('en')"
    )
    assert "spacy" in loaded
