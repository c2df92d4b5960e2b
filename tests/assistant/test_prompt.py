"""The talk at a terminal: pasted, typed, piped, dumb, narrow, without colours, interrupted, left."""

from __future__ import annotations

import io
import json
import os
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pexpect
import pytest

from assistant.chat.prompt import MORE, READING, Talk, talk
from assistant.chat.session import Session
from assistant.reader.read import read
from tests.talks import CORPUS

ROOT = CORPUS.parent
COBBLER = (CORPUS / "recipes" / "river-peach-cobbler.txt").read_text(encoding="utf-8")
CHILI = (CORPUS / "recipes" / "river-can-chili.txt").read_text(encoding="utf-8")
MAIN = ["-c", "from assistant.cli import main; main()"]
ESCAPES = re.compile(r"\x1b\[[0-?]*[ -/]*[@-~]|\x1b[=>]|\x1b\][^\x07]*\x07")
SECONDS = 30


@pytest.fixture
def home(tmp_path: Path) -> dict[str, str]:
    """An environment of its own: nothing of the user's is read or written."""
    kept = {
        name: value
        for name, value in os.environ.items()
        if not name.startswith(("XDG", "NO_COLOR", "FORCE", "COLUMNS"))
    }
    return {
        **kept,
        "HOME": str(tmp_path),
        "TERM": "xterm-256color",
        "PROMPT_TOOLKIT_NO_CPR": "1",
        "PYTHONPATH": str(ROOT),
    }


def started(home: dict[str, str], columns: int = 80, cwd: Path = ROOT) -> pexpect.spawn[str]:
    child: pexpect.spawn[str] = pexpect.spawn(
        sys.executable,
        MAIN,
        env=home,
        dimensions=(40, columns),
        encoding="utf-8",
        timeout=SECONDS,
        cwd=str(cwd),
    )
    child.delaybeforesend = None
    child.expect("Ctrl-D leaves.")
    child.expect("camp>")
    return child


@pytest.fixture
def terminal(home: dict[str, str]) -> Iterator[pexpect.spawn[str]]:
    child = started(home)
    yield child
    child.close(force=True)


def paste(child: pexpect.spawn[str], text: str) -> None:
    child.send(f"\x1b[200~{text}\x1b[201~")
    child.send("\r")


def test_a_pasted_recipe_is_planned_and_talked_through(terminal: pexpect.spawn[str]) -> None:
    paste(terminal, COBBLER)
    terminal.expect("Coals for the bake: 17 on the lid, 8 under")
    terminal.expect("camp>")
    terminal.send("how many on the bottom?\r")
    terminal.expect("8 under")
    terminal.expect("camp>")
    terminal.send("\x04")
    terminal.expect(pexpect.EOF)
    terminal.close()
    assert terminal.exitstatus == 0


def test_a_recipe_typed_line_by_line_ends_with_two_empty_lines(terminal: pexpect.spawn[str]) -> None:
    for line in (
        "Camp Porridge",
        "",
        "2 cups oats",
        "4 cups water",
        "",
        "Boil the water and simmer the oats 10 minutes.",
        "",
        "",
    ):
        terminal.send(line + "\r")
    terminal.expect(re.escape(READING[:20]))
    terminal.expect("Camp Porridge:")


def test_ctrl_c_clears_a_line_and_ctrl_d_leaves(terminal: pexpect.spawn[str]) -> None:
    terminal.send("half a sente")
    terminal.send("\x03")
    terminal.expect("Ctrl-D leaves.")
    terminal.expect("camp>")
    terminal.send("quit\r")
    terminal.expect(pexpect.EOF)


def test_the_arrow_brings_back_sentences_but_never_a_recipe(home: dict[str, str]) -> None:
    child = started(home)
    paste(child, COBBLER)
    child.expect("camp>")
    child.send("how much ice?\r")
    child.expect("of ice")
    child.expect("camp>")
    child.send("quit\r")
    child.expect(pexpect.EOF)
    (said,) = Path(home["HOME"]).rglob("said")
    assert "+how much ice?" in said.read_text(encoding="utf-8")
    assert "peaches" not in said.read_text(encoding="utf-8")


def test_a_narrow_terminal_is_not_overrun(home: dict[str, str]) -> None:
    child = started(home, columns=60)
    paste(child, COBBLER)
    child.expect("camp>")
    child.send("show me the plan\r")
    child.expect("reasons stand behind this")
    shown = ESCAPES.sub("", (child.before or ""))
    child.expect("camp>")
    child.send("\x04")
    child.expect(pexpect.EOF)
    assert [line for line in shown.replace("\r", "").split("\n") if len(line) > 60] == []
    child.close()


#: What a cook says about a pasted recipe, and what the answer holds.
TALK = (
    ("make it a camp recipe", "Coals for the bake: 17 on the lid, 8 under"),
    ("we will be twelve", "For 12. Amounts: 1.33 times the recipe"),
    ("I only have a ten inch", "In a 10-inch pot."),
    ("it's 40 out and windy", "40 °F (4 °C) out, windy."),
    ("why is the baking powder dry?", "Baking powder rides dry"),
    ("why so many on top?", "14 above and 7 below"),
    ("undo", "Took back: the air and the wind."),
    ("undo", "Took back: the pot."),
    ("save it as friday.json", "Wrote friday.json."),
)


@pytest.mark.parametrize(
    ("columns", "world"),
    [(80, {}), (80, {"NO_COLOR": "1"}), (60, {}), (60, {"NO_COLOR": "1"}), (80, {"TERM": "dumb"})],
    ids=["plain", "no colour", "narrow", "narrow and no colour", "dumb"],
)
def test_a_whole_talk_from_paste_to_export(
    home: dict[str, str], tmp_path: Path, columns: int, world: dict[str, str]
) -> None:
    child = started({**home, **world}, columns=columns, cwd=tmp_path)
    if "TERM" in world:
        child.send(COBBLER.replace("\n\n\n", "\n\n") + "\n\n\n")
    else:
        paste(child, COBBLER)
    child.expect("Coals outside only")
    child.expect("camp>")
    for said, answered in TALK:
        child.send(said + "\r")
        child.expect(r"\s+".join(map(re.escape, answered.split())))
        child.expect("camp>")
    child.send("quit\r")
    child.expect(pexpect.EOF)
    child.close()
    assert child.exitstatus == 0
    plan = json.loads((tmp_path / "friday.json").read_text(encoding="utf-8"))
    assert plan["people"] == 12


def test_the_same_talk_from_a_pipe(home: dict[str, str], tmp_path: Path) -> None:
    lines = "\n".join([COBBLER, "", "", *(said for said, _ in TALK), "quit", ""])
    done = subprocess.run(
        [sys.executable, *MAIN],
        input=lines,
        capture_output=True,
        text=True,
        env=home,
        cwd=tmp_path,
        timeout=90,
    )
    assert (done.returncode, done.stderr) == (0, "")
    shown = " ".join(done.stdout.split())
    for said, answered in TALK:
        assert f"> {said}" in shown
        assert answered in shown
    assert "\x1b" not in done.stdout
    assert max(map(len, done.stdout.splitlines())) <= 80
    assert json.loads((tmp_path / "friday.json").read_text(encoding="utf-8"))["people"] == 12


def test_tab_completes_a_food_and_an_example(terminal: pexpect.spawn[str]) -> None:
    paste(terminal, COBBLER)
    terminal.expect("Coals outside only")
    terminal.expect("camp>")
    terminal.send("leave out the van\t")
    terminal.expect("illa extract")
    terminal.send("\r")
    terminal.expect("Without vanilla extract.")
    terminal.expect("camp>")
    terminal.send("how much i\t")
    terminal.expect(r"ce\?")
    terminal.send("\r")
    terminal.expect("of ice")


def test_a_long_answer_comes_in_pages_where_that_is_asked(home: dict[str, str]) -> None:
    child = started({**home, "PAGER": "sed s/^/page:/"})
    paste(child, COBBLER)
    child.expect("camp>")
    child.send("show me the plan, page by page\r")
    child.expect("page:")
    child.expect("camp>")
    child.send("show me the plan\r")
    child.expect("OVER THE COALS")
    assert "page:" not in ESCAPES.sub("", child.before or "").replace("page by page", "")
    child.close(force=True)


def test_an_interrupted_talk_goes_on(terminal: pexpect.spawn[str]) -> None:
    paste(terminal, COBBLER)
    terminal.send("\x03")
    terminal.send("\x03")
    terminal.send("\x03")
    terminal.expect("camp>")
    terminal.send("what can you do?\r")
    terminal.expect("Say it in your own words")
    terminal.expect("camp>")
    terminal.send("\x04")
    terminal.expect(pexpect.EOF)


@pytest.mark.parametrize(("name", "value"), [("NO_COLOR", "1"), ("TERM", "dumb")])
def test_no_colour_where_none_is_wanted(home: dict[str, str], name: str, value: str) -> None:
    child = started({**home, name: value})
    if name == "TERM":
        child.send(COBBLER.replace("\n\n\n", "\n\n") + "\n\n\n")
    else:
        paste(child, COBBLER)
    child.expect("Coals outside only")
    child.send("show me the plan\r")
    child.expect("OVER THE COALS")
    assert "\x1b[1" not in (child.before or "")
    assert "38;5" not in (child.before or "")
    child.close(force=True)


def test_a_dumb_terminal_takes_interrupts_as_well(home: dict[str, str]) -> None:
    child = started({**home, "TERM": "dumb"})
    child.send("Porridge\n")
    child.expect(re.escape(READING[:20]))
    child.expect(re.escape(MORE))
    child.send("\x03")
    child.expect("Dropped those lines.")
    child.send("\x04")
    child.expect(pexpect.EOF)
    child.close()
    assert child.exitstatus == 0


def test_lines_from_a_pipe_are_answered_without_a_welcome(home: dict[str, str]) -> None:
    lines = f"{COBBLER}\n\n\nhow many briquettes?\nwhat is the capital of France\nanother recipe\n{CHILI}"
    done = subprocess.run(
        [sys.executable, *MAIN],
        input=lines,
        capture_output=True,
        text=True,
        env=home,
        cwd=ROOT,
        check=True,
        timeout=60,
    )
    assert done.stderr == ""
    assert "Paste one" not in done.stdout
    assert "> how many briquettes?\n25 briquettes for the bake" in done.stdout
    assert "I did not understand that, and nothing changed." in done.stdout
    assert "Can-Opener Chili:" in done.stdout
    assert "\x1b" not in done.stdout
    assert [line for line in done.stdout.splitlines() if len(line) > 80] == []


# The same without a terminal: what each entry does.


def talking(*, is_typed: bool = True, recipe: str | None = COBBLER) -> Talk:
    session = Session(read(recipe) if recipe else None)
    return Talk(session, lambda text: read(text), is_typed=is_typed)


def test_the_name_of_a_file_reads_it(tmp_path: Path) -> None:
    path = tmp_path / "chili.txt"
    path.write_text(CHILI)
    assert talking(recipe=None).take(str(path)).startswith("Can-Opener Chili:")


def test_a_file_that_is_no_text_is_one_sentence(tmp_path: Path) -> None:
    path = tmp_path / "chili.txt"
    path.write_bytes(b"\x89PNG\r\n")
    assert "looks like" not in talking().take(str(path))
    assert "not a text file" in talking().take(str(path))


def test_a_poem_is_no_recipe() -> None:
    answer = talking(recipe=None).take("The river runs,\nthe river runs,\nand no one asks it why.")
    assert answer.startswith("No recipe was found in that")


def test_lines_that_were_not_understood_are_counted() -> None:
    text = "Porridge\n\nIngredients\n\n2 cups oats\nzzz qqq\n\nMethod\n\nBoil the oats.\n"
    told = talking(recipe=None).take(text)
    assert ("not understood" in told) == bool(read(text).unread)


def test_before_a_recipe_a_typed_sentence_is_heard_and_a_piped_line_is_the_recipes_first() -> None:
    assert talking(recipe=None).take("we will be twelve").startswith("For 12.")
    assert talking(recipe=None, is_typed=False).take("Chili for twelve") == READING
    assert (
        talking(recipe=None, is_typed=False).take("what can you do?").startswith("Say it in your own words")
    )


def test_a_paste_while_talking_is_another_recipe() -> None:
    assert talking().take(CHILI).startswith("Can-Opener Chili:")


def test_one_empty_line_inside_a_recipe_does_not_end_it() -> None:
    talk = talking(recipe=None)
    for line in ("Porridge", "", "2 cups oats", ""):
        talk.take(line)
    assert talk.is_collecting
    assert talk.end().startswith("Porridge:")
    assert talk.end() == ""


def test_a_fault_costs_one_sentence_and_not_the_talk(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    session = Session(read(COBBLER))
    say = session.say

    def stumbles(utterance: str) -> object:
        if "ice" in utterance:
            raise KeyError("ice")
        return say(utterance)

    monkeypatch.setattr(session, "say", stumbles)
    lines = io.TextIOWrapper(io.BytesIO(b"how much ice?\nwe are twelve\n"))
    monkeypatch.setattr(sys, "stdin", lines)
    assert talk(lambda: (session, read), width=80, is_plain=True, state_folder=tmp_path) == 0
    shown = capsys.readouterr().out
    assert "coalside stumbled (KeyError: 'ice')" in shown
    assert "For 12." in shown
