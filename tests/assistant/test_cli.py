"""The command line as a user meets it: forms, files, failures, exit codes, where messages go."""

from __future__ import annotations

import csv
import io
import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from assistant import cli
from assistant.reader.read import read

COALSIDE = [sys.executable, "-c", "from assistant.cli import main; main()"]
RECIPES = Path(__file__).parents[2] / "corpus" / "recipes"
COBBLER = str(RECIPES / "river-peach-cobbler.txt")
SLAW = str(RECIPES / "river-cabbage-slaw.txt")


def test_a_plan_is_told_with_its_coals(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.run(["camp", COBBLER, "--eat", "18:30"]) == cli.DONE
    out, err = capsys.readouterr()
    assert "17 on the lid" in out
    assert "8 under" in out
    assert "we eat 18:30" in out
    assert err == ""


def test_json_of_one_file_is_one_object_and_of_several_an_array(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.run(["camp", COBBLER, "--as", "json"]) == cli.DONE
    assert json.loads(capsys.readouterr().out)["file"] == COBBLER
    assert cli.run(["read", COBBLER, SLAW, "--as", "json"]) == cli.DONE
    assert [recipe["file"] for recipe in json.loads(capsys.readouterr().out)] == [COBBLER, SLAW]


def test_a_file_that_fails_gives_its_own_row_and_the_run_goes_on(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    gone, poem = str(tmp_path / "gone.txt"), tmp_path / "poem.txt"
    poem.write_text("The river runs,\nthe river runs,\nand no one asks it why.\n")
    assert cli.run(["camp", gone, COBBLER, str(poem), "--as", "jsonl"]) == cli.FAILED
    out, err = capsys.readouterr()
    first, second, third = map(json.loads, out.splitlines())
    assert {"error": f"{gone}: there is no such file; check the name and the folder.", "file": gone} == first
    assert "error" not in second
    assert {"error", "file"} == set(third)
    assert "no recipe was found in it" in third["error"]
    assert [first["error"], third["error"]] == err.splitlines()


def test_several_plans_stream_one_by_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """The first plan is on its way before the second file is looked at: a fault there takes nothing back."""
    seen: list[str] = []

    class Out(io.StringIO):
        def write(self, text: str) -> int:
            seen.append(text)
            return len(text)

    monkeypatch.setattr(sys, "stdout", Out())
    asked: list[int] = []

    def watched(text: str, *, file: str) -> object:
        asked.append(len(seen))
        return read(text, file=file)

    monkeypatch.setattr("assistant.reader.read.read", watched)
    assert cli.run(["read", COBBLER, SLAW, "--as", "jsonl"]) == cli.DONE
    assert asked == [0, 1]
    assert len(seen) == 2


def test_standard_input_is_a_file_called_minus() -> None:
    done = subprocess.run(
        [*COALSIDE, "read", "-", "--as", "json"],
        input=Path(COBBLER).read_bytes(),
        capture_output=True,
        check=True,
    )
    assert json.loads(done.stdout)["file"] == "-"


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["camp"], "FILE (none): name a recipe file, or - for standard input."),
        (["camp", COBBLER, "--oven", "13"], "--oven 13: camp pots come in 5, 8, 10, 12, 14 and 16 inches."),
        (["camp", COBBLER, "--people", "-3"], "--people -3: write a whole number from 1 to 200."),
        (["camp", COBBLER, "--temp", "50F"], "--temp 50F: write an oven temperature from 200F to 550F (93C to 288C)."),
        (["camp", COBBLER, "--as", "pdf"], "--as pdf: a plan comes as text, json, jsonl, md, html, ics or csv."),
        (["read", COBBLER, "--as", "csv"], "--as csv: a recipe comes as text, json, jsonl or md."),
        (["camp", COBBLER, "--ovne", "12"], "--ovne: there is no such option; did you mean --oven."),
        (["read", COBBLER, "--as"], "coalside read: option '--as' requires an argument; coalside read --help says more."),
        (["cmap", COBBLER], "coalside: there is no command cmap; did you mean camp? coalside --help lists all."),
        (["why", COBBLER], "coalside why: missing argument 'ABOUT...'; coalside why --help says more."),
        (["coals", "--for", "stew"], "--for stew: write one of bake, roast, simmer, fry."),
        (["coals", "--oven", "10", "--oven", "12"], "coals --oven 10 --oven 12: one pot at a time."),
        (["schema", "menu"], "schema menu: there are recipe, plan, coals, trip."),
    ],
    ids=lambda value: " ".join(value[:3:2]) if isinstance(value, list) else "",
)  # fmt: skip
def test_wrong_usage_is_one_sentence_on_standard_error(
    capsys: pytest.CaptureFixture[str], arguments: list[str], sentence: str
) -> None:
    assert cli.run(arguments) == cli.WRONG_USAGE
    out, err = capsys.readouterr()
    assert out == ""
    assert sentence == err.strip()


def test_a_file_name_in_the_place_of_a_command_is_told_the_command(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert cli.run([COBBLER]) == cli.WRONG_USAGE
    assert f"coalside: that is a file; coalside camp {COBBLER} plans it." == capsys.readouterr().err.strip()


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2 cups flour\n1 cup milk\n1 tsp salt\n", "flour"),
        ("1. Whisk the flour with the milk.\n2. Bake at 350 degrees for 30 minutes.\n", "Whisk the flour"),
        ("Soup\n\n1 onion\n\n\n\nBoil it.\n", "onion"),
        ("x" * 5000 + "\n2 cups sugar\n", "sugar"),
    ],
    ids=["a list alone", "a method alone", "sparse", "a long line"],
)
def test_half_a_recipe_gives_an_honest_partial_plan(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, text: str, expected: str
) -> None:
    path = tmp_path / "half.txt"
    path.write_text(text)
    assert cli.run(["camp", str(path), "--as", "json"]) == cli.DONE
    plan = json.loads(capsys.readouterr().out)
    assert expected in json.dumps(plan["recipe"])
    packed = {item["ingredient"] for pack in plan["packs"] for item in pack["items"]}
    assert set(range(len(plan["recipe"]["ingredients"]))) == packed


def test_a_megabyte_of_text_is_answered_in_time(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    path = tmp_path / "long.txt"
    path.write_text("The river ran high and brown that spring, and nobody cooked at all.\n" * 15000)
    started = time.monotonic()
    assert cli.run(["camp", str(path), "--as", "jsonl"]) in (cli.DONE, cli.FAILED)
    assert path.name in capsys.readouterr().out
    assert time.monotonic() - started < 60


def test_no_sign_of_a_recipe_steers_the_terminal(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    path = tmp_path / "trick.txt"
    path.write_text(
        "\x1b]0;owned\x07Pie\x1b[2J\n\nIngredients\n\n2 cups flour\x1b[31m\n1 cup\u202e milk\n\nMethod\n\n"
        "1. Bake\x9b5m at 350 F for 30 minutes, \u2066turn.\n"
    )
    for form in ("text", "json", "jsonl", "md", "csv"):
        for command in ("read", "camp"):
            if (command, form) != ("read", "csv"):
                assert cli.run([command, str(path), "--as", form]) == cli.DONE
    shown = capsys.readouterr().out
    assert "flour" in shown
    assert not set(shown) & {"\x1b", "\x07", "\x9b", "\u202e", "\u2066"}


def test_no_line_of_a_text_plan_is_over_eighty_columns(capsys: pytest.CaptureFixture[str]) -> None:
    files = sorted(map(str, RECIPES.glob("river-*.txt")))
    assert cli.run(["camp", "--eat", "18:30", *files]) == cli.DONE
    lines = capsys.readouterr().out.splitlines()
    assert [line for line in lines if len(line) > 80] == []
    assert [line for line in lines if line != line.rstrip()] == []


def test_out_writes_in_the_form_of_its_ending_and_not_over_a_file(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    path = tmp_path / "lists.csv"
    assert cli.run(["camp", COBBLER, "--out", str(path)]) == cli.DONE
    assert next(csv.reader(io.StringIO(path.read_text()))) == ["list", "where", "item", "amount", "note"]
    assert cli.run(["camp", COBBLER, "--out", str(path)]) == cli.FAILED
    assert (
        f"{path}: it exists already; say --force to write over it, or another name."
        == capsys.readouterr().err.strip()
    )
    assert cli.run(["camp", COBBLER, "--out", str(path), "--force"]) == cli.DONE


def test_demo_plans_a_recipe_that_ships_with_the_package(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.run(["demo"]) == cli.DONE
    out, err = capsys.readouterr()
    assert out.startswith("Peach Cobbler")
    assert "coalside camp FILE" in err


def test_why_gives_sentences_with_their_sources(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.run(["why", COBBLER, "baking", "powder"]) == cli.DONE
    out = capsys.readouterr().out
    assert "rides dry" in out
    assert "[dry.leavener]" in out


def test_why_about_nothing_known_names_what_there_is(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.run(["why", COBBLER, "quantum", "gravity"]) == cli.FAILED
    assert "there are reasons about" in capsys.readouterr().err


def test_ask_plays_a_talk_with_one_row_for_each_sentence(capsys: pytest.CaptureFixture[str]) -> None:
    said = ["it's windy and 40 out", "how many briquettes?", "undo", "xyzzy"]
    assert cli.run(["ask", COBBLER, *said, "--as", "jsonl"]) == cli.DONE
    turns = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert said == [turn["said"] for turn in turns]
    assert [turn["did"] for turn in turns] == [["weather"], ["coals"], ["undo"], ["not understood"]]
    assert turns[0]["with"] == {"air_f": 40, "wind": "windy"}
    assert "heat" in turns[0]["changed"]
    assert [] == turns[1]["changed"] == turns[3]["changed"]
    assert turns[0]["changed"] == turns[2]["changed"]
    assert {COBBLER} == {turn["file"] for turn in turns}


def test_help_answers_without_the_heavy_libraries() -> None:
    done = subprocess.run(
        [
            sys.executable,
            "-X",
            "importtime",
            "-c",
            "from assistant.cli import main; main()",
            "camp",
            "--help",
        ],
        capture_output=True,
        text=True,
        check=True,
        env={**os.environ, "PYTHONPATH": str(RECIPES.parents[1])},
    )
    assert "Usage: coalside camp" in done.stdout
    loaded = {line.rpartition("|")[2].strip().partition(".")[0] for line in done.stderr.splitlines()}
    assert not loaded & {
        "spacy",
        "pint",
        "quantulum3",
        "numpy",
        "rich",
        "prompt_toolkit",
        "msgspec",
        "jinja2",
    }


@pytest.mark.skipif(os.name == "nt", reason="signals and pipes of POSIX")
def test_a_closed_pipe_is_quiet() -> None:
    command = (
        f"{sys.executable} -c 'from assistant.cli import main; main()' camp {COBBLER} {COBBLER} | head -1"
    )
    done = subprocess.run(
        ["bash", "-c", command], capture_output=True, text=True, check=True, cwd=RECIPES.parents[1]
    )
    assert "Peach Cobbler" in done.stdout
    assert done.stderr == ""


@pytest.mark.skipif(os.name == "nt", reason="signals of POSIX")
def test_an_interrupt_is_quiet() -> None:
    running = subprocess.Popen(
        [*COALSIDE, "camp", "-"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        cwd=RECIPES.parents[1],
    )
    time.sleep(2.5)
    running.send_signal(signal.SIGINT)
    out, err = running.communicate(timeout=20)
    assert (running.returncode, out, err.strip()) == (cli.INTERRUPTED, "", "")


def test_a_fault_of_our_own_is_one_sentence(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object, **__: object) -> None:
        raise ZeroDivisionError("nought")

    monkeypatch.setattr("assistant.reader.read.read", broken)
    assert cli.run(["read", COBBLER]) == cli.FAILED
    assert (
        f"{COBBLER}: coalside stumbled over it (ZeroDivisionError: nought); please report this recipe."
        == capsys.readouterr().err.strip()
    )
