"""The world around a run: closed, full and foreign streams, other locales, no network. One sentence, never a traceback."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

RECIPES = Path(__file__).parents[2] / "corpus" / "recipes"
COBBLER = str(RECIPES / "river-peach-cobbler.txt")
MAIN = "from assistant.cli import main; main()"
NO_ROOM = "The output cannot be written (No space left on device); make room or write to another place.\n"
posix = pytest.mark.skipif(not Path("/dev/full").is_char_device(), reason="no /dev/full here")


def shell(command: str, **world: str) -> subprocess.CompletedProcess[str]:
    """Run a command of the shell; $RUN is coalside and $PIE a recipe."""
    env = {**os.environ, "RUN": f"{sys.executable} -c '{MAIN}'", "PIE": COBBLER, **world}
    words = ["bash", "-c", command.replace("$RUN", env["RUN"])]
    return subprocess.run(words, capture_output=True, text=True, env=env, cwd=RECIPES.parents[1], timeout=120)


@posix
@pytest.mark.parametrize(
    "words", ["camp $PIE", "camp $PIE --as json", "coals", "--help", "camp $PIE $PIE --as jsonl --jobs 2"]
)
def test_a_full_disk_is_one_sentence(words: str) -> None:
    done = shell(f"$RUN {words} > /dev/full")
    assert (done.returncode, done.stderr) == (1, NO_ROOM)


@posix
@pytest.mark.parametrize("words", ["--out /dev/full --force", "--as jsonl --done /dev/full"])
def test_a_device_is_neither_written_over_nor_read_to_its_end(words: str) -> None:
    done = shell(f"$RUN camp $PIE {words}")
    assert done.returncode == 1
    assert done.stderr.startswith("/dev/full: this is ")
    assert Path("/dev/full").is_char_device()


@pytest.mark.skipif(os.name == "nt", reason="pipes of POSIX")
@pytest.mark.parametrize("words", ["--as json", "--as jsonl", "--as jsonl --jobs 2"])
def test_who_has_read_enough_hears_nothing_more(words: str) -> None:
    done = shell(f"$RUN camp corpus/recipes {words} | head -c 1")
    assert (len(done.stdout), done.stderr) == (1, "")


@pytest.mark.skipif(os.name == "nt", reason="redirections of POSIX")
@pytest.mark.parametrize(("redirection", "code"), [(">&-", 0), ("2>&-", 0), (">&- 2>&-", 0)])
def test_closed_streams_do_no_harm(redirection: str, code: int) -> None:
    done = shell(f"$RUN camp $PIE {redirection}")
    assert (done.returncode, done.stderr) == (code, "")


@pytest.mark.skipif(os.name == "nt", reason="redirections of POSIX")
def test_closed_standard_input_is_an_empty_file() -> None:
    done = shell("$RUN camp - <&-")
    assert (done.returncode, done.stderr) == (1, "-: the file is empty; put the text of a recipe into it.\n")


@pytest.mark.skipif(os.name == "nt", reason="names in bytes of POSIX")
@pytest.mark.parametrize("form", ["text", "json", "jsonl", "md", "html", "csv"])
def test_a_name_in_another_code_is_no_fault(tmp_path: Path, form: str) -> None:
    Path(os.fsdecode(os.fsencode(tmp_path) + b"/pie\xff.txt")).write_text("River pie\n\n1 cup flour\n")
    out = tmp_path / "plan"
    for where in ("", f"--out {out}"):
        done = shell(f"$RUN camp {tmp_path}/pie* --as {form} {where}")
        assert (done.returncode, done.stderr) == (0, "")
    assert out.read_text(encoding="utf-8")


@pytest.mark.parametrize("form", ["json", "text", "md", "html"])
def test_the_same_bytes_everywhere(form: str) -> None:
    """Neither the order of hashes nor locale nor time zone shows in a plan."""
    words = f"$RUN camp corpus/recipes/river-bean-pot.txt --as {form}"
    worlds = (
        {"PYTHONHASHSEED": "0", "LC_ALL": "C.UTF-8", "TZ": "UTC"},
        {"PYTHONHASHSEED": "4711", "LC_ALL": "tr_TR.UTF-8", "TZ": "Asia/Kathmandu"},
        {"PYTHONHASHSEED": "random", "LC_ALL": "de_DE.UTF-8", "TZ": "America/Boise", "COLUMNS": "200"},
    )
    outs = {(done.returncode, done.stdout) for done in (shell(words, **world) for world in worlds)}
    assert len(outs) == 1
    assert outs.pop()[0] == 0


def test_a_whole_run_opens_no_connection() -> None:
    """Reading, planning, the page, the calendar and the rows, in a process in which every socket fails."""
    code = """
import socket
def refuse(*_, **__): raise AssertionError("the network was asked")
socket.socket = socket.create_connection = socket.getaddrinfo = refuse
from assistant.cli import run
import sys
for form in ("text", "json", "jsonl", "md", "html", "ics", "csv"):
    assert run(["camp", sys.argv[1], "--as", form, "--eat", "2027-07-03T18:30"]) == 0
assert run(["ask", sys.argv[1], "why so many coals"]) == 0
"""
    words = [sys.executable, "-c", code, COBBLER]
    done = subprocess.run(words, capture_output=True, text=True, cwd=RECIPES.parents[1], timeout=120)
    assert (done.returncode, done.stderr) == (0, "")
    assert "BEGIN:VCALENDAR" in done.stdout


@pytest.mark.parametrize("command", [["--help"], ["coals", "--oven", "12", "--temp", "350F"]])
def test_what_needs_no_recipe_loads_no_reader(command: list[str]) -> None:
    words = [sys.executable, "-X", "importtime", "-c", MAIN, *command]
    done = subprocess.run(words, capture_output=True, text=True, check=True, cwd=RECIPES.parents[1])
    loaded = {line.rpartition("|")[2].strip().partition(".")[0] for line in done.stderr.splitlines()}
    assert "assistant" in loaded
    assert not loaded & {"spacy", "pint", "quantulum3", "numpy", "jinja2", "joblib", "prompt_toolkit"}


def test_schema_and_rows_are_utf_8_whatever_the_locale() -> None:
    done = shell("$RUN camp $PIE --as jsonl", LC_ALL="C", PYTHONUTF8="0", PYTHONIOENCODING="utf-8")
    assert json.loads(done.stdout)["file"] == COBBLER
