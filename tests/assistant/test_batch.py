"""Many recipes: each gets its row in order, a bad one costs the others nothing, and a broken run goes on."""

from __future__ import annotations

import io
import json
import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.batch import Job, Progress, Run, Source, is_many, results, sources
from assistant.batch.done import Done, go_on
from assistant.show.forms import Look, Result
from rules.problem import BrokenInvariant, FileProblem, UsageProblem
from rules.recipe import Recipe

PIE = "River pie\n\n1 cup flour\n2 apples\n\nMix and bake 30 minutes at 375 F.\n"
ROWS = Job(kind="recipe", look=Look(form="jsonl"))


def run(*words: str, stdin: str | None = None) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-c", "from assistant.cli import main; main()", *words]
    return subprocess.run(command, capture_output=True, text=True, timeout=120, input=stdin)


def named(text: str, file: str) -> Recipe:
    if "odd" in text:
        raise KeyError("salt")
    if "broken" in text:
        raise BrokenInvariant(file, "nothing is lost")
    if "usage" in text:
        raise UsageProblem("--oven", "13", "no")
    return Recipe(title=text, file=file)


def texts(*given: str) -> list[Source]:
    return [Source(file=f"{number}", text=text) for number, text in enumerate(given)]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Two recipes, one of them in a folder of its own; rows; a file that is no recipe and one that is hidden."""
    (tmp_path / "soups").mkdir()
    (tmp_path / "soups" / "bean.md").write_text("Bean soup\n\n2 cups beans\n")
    (tmp_path / "pie.txt").write_text(PIE)
    (tmp_path / ".hidden.txt").write_text(PIE)
    (tmp_path / "photo.png").write_bytes(b"\x89PNG")
    rows = [{"id": "hash", "text": "River hash\n\n2 potatoes\n"}, {"text": "Tea\n\n1 tea bag\n", "more": 1}]
    (tmp_path / "rows.jsonl").write_text("".join(json.dumps(row) + "\n" for row in rows) + "\n{broken\n")
    return tmp_path


def test_a_missing_file_is_a_row_and_the_run_goes_on(tmp_path: Path) -> None:
    good = tmp_path / "pie.txt"
    good.write_text(PIE)
    gone = tmp_path / "gone.txt"
    done = run("read", "--as", "jsonl", str(good), str(gone), str(good))
    rows = [json.loads(row) for row in done.stdout.splitlines()]
    assert [Path(row["file"]).name for row in rows] == ["pie.txt", "gone.txt", "pie.txt"]
    assert rows[0]["title"] == rows[2]["title"] == "River pie"
    assert set(rows[1]) == {"error", "file"}
    assert done.returncode == 1


def test_a_day_that_cannot_be_stops_the_run(tmp_path: Path) -> None:
    good = tmp_path / "pie.txt"
    good.write_text("1 cup flour\n")
    done = run("camp", "--oven", "13", str(good))
    assert done.returncode == 2
    assert "5, 8, 10, 12, 14 and 16 inches" in done.stderr
    assert done.stdout == ""
    with pytest.raises(UsageProblem):
        list(results(texts("usage"), ROWS, make=named))


def test_a_fault_is_a_sentence_and_the_run_goes_on() -> None:
    odd, broken, pie = results(texts("odd", "broken", "pie"), ROWS, make=named)
    assert odd.problem == "0: coalside stumbled over it (KeyError: 'salt'); please report this recipe."
    assert broken.problem is not None
    assert "nothing is lost" in broken.problem
    assert pie == Result(file="2", thing=Recipe(title="pie", file="2"))


def test_recipes_are_looked_at_one_by_one() -> None:
    """A million in a row need no more room than one: they may come as a stream."""
    taken: list[int] = []

    def endless() -> Iterator[Source]:
        for number in range(1000):
            taken.append(number)
            yield Source(file=str(number), text="pie")

    stream = results(endless(), ROWS, make=named)
    next(stream)
    next(stream)
    assert taken == [0, 1]


def test_a_folder_gives_its_recipes_in_order(folder: Path) -> None:
    found = list(sources([str(folder)]))
    assert [source.file.removeprefix(f"{folder}/") for source in found] == [
        "pie.txt",
        "rows.jsonl#hash",
        "rows.jsonl#2",
        "rows.jsonl#4",
        "soups/bean.md",
    ]
    assert [source.text[:9] for source in found] == ["River pie", "River has", "Tea\n\n1 te", "", "Bean soup"]
    assert found[3].problem is not None
    assert 'write one JSON object a line, as {"id": "pie", "text": "…"}' in found[3].problem


def test_a_pattern_gives_what_fits_it(folder: Path) -> None:
    found = list(sources([str(folder / "**" / "*.md"), str(folder / "*.docx")]))
    assert [Path(source.file).name for source in found] == ["bean.md", "*.docx"]
    assert "no file fits this pattern" in (found[1].problem or "")


def test_a_folder_without_recipes_says_so(tmp_path: Path) -> None:
    (only,) = sources([str(tmp_path)])
    assert "no recipe is in this folder" in (only.problem or "")


def test_many_is_told_before_anything_is_read(folder: Path) -> None:
    assert is_many([str(folder)])
    assert is_many([str(folder / "*.txt")])
    assert is_many([str(folder / "rows.jsonl")])
    assert is_many(["pie.txt", "soup.txt"])
    assert not is_many([str(folder / "pie.txt")])


def test_a_row_that_is_too_long_costs_the_next_nothing(tmp_path: Path) -> None:
    rows = tmp_path / "rows.jsonl"
    rows.write_text('{"text": "' + "a" * 9_000_000 + '"}\n' + json.dumps({"text": PIE}) + "\n")
    long, pie = sources([str(rows)])
    assert "larger than 4 MB" in (long.problem or "")
    assert pie.text == PIE


def test_standard_input_takes_rows_or_one_recipe() -> None:
    rows = "".join(json.dumps({"id": name, "text": PIE}) + "\n" for name in ("one", "two"))
    done = run("read", "-", "--as", "jsonl", stdin=rows)
    assert [json.loads(row)["file"] for row in done.stdout.splitlines()] == ["-#one", "-#two"]
    done = run("read", "-", "--as", "jsonl", stdin=PIE)
    assert [json.loads(row)["title"] for row in done.stdout.splitlines()] == ["River pie"]


@pytest.fixture
def rows(tmp_path: Path) -> Path:
    """Sixty recipes, each with a name of its own; one has no text."""
    path = tmp_path / "rows.jsonl"
    made = [{"id": f"pie {number}", "text": PIE if number != 7 else " "} for number in range(60)]
    path.write_text("".join(json.dumps(row) + "\n" for row in made))
    return path


@pytest.mark.skipif(os.name == "nt", reason="signals of POSIX")
def test_a_worker_that_is_killed_loses_no_result(rows: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One worker is ended from outside while results come; they come whole and in order all the same."""
    from joblib.externals.loky import get_reusable_executor

    alone = [result.problem for result in results(sources([str(rows)]), ROWS, Run(jobs=1))]
    together: list[str | None] = []
    stream = results(sources([str(rows)] * 4), ROWS, Run(jobs=2))
    for number, result in enumerate(stream):
        together.append(result.problem)
        if number == 30:
            os.kill(next(iter(get_reusable_executor(reuse=True)._processes)), signal.SIGKILL)
    assert together == alone * 4


def killed_by_a_word(job: Job, chunk: tuple[Source, ...]) -> list[Result]:
    """Stands in for the work of a worker: the word "poison" ends it."""
    if any("poison" in source.text for source in chunk):
        os.kill(os.getpid(), signal.SIGKILL)
    return [Result(file=source.file, text=source.text) for source in chunk]


@pytest.mark.skipif(os.name == "nt", reason="signals of POSIX")
def test_a_recipe_that_ends_its_worker_costs_the_others_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("assistant.batch.run.chunk_done", killed_by_a_word)
    monkeypatch.setattr("assistant.batch.run.CHUNK", 2)
    given = texts("pie", "soup", "poison", "hash", "bread")
    found = list(results(given, ROWS, Run(jobs=2)))
    assert [result.text for result in found] == ["pie", "soup", None, "hash", "bread"]
    assert found[2].problem == "2: a worker died over it; please report this recipe."


def test_jobs_give_the_same_bytes_and_leave_nobody_waiting(rows: Path) -> None:
    began = time.monotonic()
    one = run("camp", str(rows), "--as", "jsonl")
    two = run("camp", str(rows), "--as", "jsonl", "--jobs", "2")
    assert one.stdout == two.stdout
    assert len(one.stdout.splitlines()) == 60
    assert (one.returncode, two.returncode) == (1, 1)
    assert two.stderr.splitlines() == [f"{rows}#pie 7: the text is empty; put the text of a recipe into it."]
    assert time.monotonic() - began < 60  # idle workers would hold the output open for five minutes


def test_a_run_goes_on_where_it_stopped(rows: Path, tmp_path: Path) -> None:
    """Cut off in the middle of a row: after the second run every row stands there once, whole."""
    out, noted = tmp_path / "out.jsonl", tmp_path / "noted"
    job, spread = ROWS, Run(done=str(noted))

    def up_to(limit: int) -> Iterator[Source]:
        for number, source in enumerate(sources([str(rows)])):
            if number == limit:
                raise KeyboardInterrupt
            yield source

    with pytest.raises(KeyboardInterrupt):
        go_on(up_to(20), lambda left: results(left, job), job, spread, str(out))
    with out.open("ab") as stream:
        stream.write(b'{"title": "half a ro')
    with noted.open("ab") as stream:
        stream.write(b'{"file": "pi')
    go_on(sources([str(rows)]), lambda left: results(left, job), job, spread, str(out))
    found = [json.loads(row) for row in out.read_text().splitlines()]
    names = [row["file"].rpartition("#")[2] for row in found if "title" in row]
    assert names == [f"pie {number}" for number in range(60) if number != 7]
    with Done(noted) as done:
        assert len(done) == 59


def test_what_is_done_is_not_done_again_and_what_failed_is(rows: Path, tmp_path: Path) -> None:
    words = ("read", str(rows), "--as", "jsonl", "--done", str(tmp_path / "noted"))
    assert len(run(*words).stdout.splitlines()) == 60
    again = run(*words).stdout.splitlines()
    assert [set(json.loads(row)) for row in again] == [{"error", "file"}]


def test_done_wants_rows_and_a_file_of_its_own(rows: Path, tmp_path: Path) -> None:
    done = run("read", str(rows), "--as", "md", "--done", str(tmp_path / "noted"))
    assert (done.returncode, done.stdout) == (2, "")
    assert "say --as jsonl" in done.stderr
    with pytest.raises(FileProblem, match="no file of done recipes"):
        Done(rows)


def test_a_name_in_another_code_is_known_again(tmp_path: Path) -> None:
    with Done(tmp_path / "noted") as done:
        done.note("pie \udcff.txt")
    with Done(tmp_path / "noted") as done:
        assert "pie \udcff.txt" in done
        assert "pie.txt" not in done


@pytest.mark.parametrize("jobs", ["0", "-1", "many", "1000"])
def test_jobs_are_a_number_of_processes(rows: Path, jobs: str) -> None:
    done = run("read", str(rows), "--jobs", jobs)
    assert (done.returncode, done.stdout) == (2, "")
    assert "--jobs" in done.stderr


def test_a_cluster_that_is_not_there_is_one_sentence(rows: Path) -> None:
    """Without the extra, the sentence says how to get it."""
    done = run("read", str(rows), "--cluster", "tcp://127.0.0.1:9")
    assert done.returncode == 2
    assert done.stderr.startswith("--cluster tcp://127.0.0.1:9: ")
    assert done.stdout == ""


def test_a_cluster_gives_what_one_process_gives(rows: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    distributed = pytest.importorskip("distributed", reason="the extra batch is not installed")
    monkeypatch.undo()  # the cluster talks to itself over this machine's own network
    with distributed.LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster:
        spread = Run(cluster=cluster.scheduler_address)
        there = [result.text for result in results(sources([str(rows)]), ROWS, spread)]
    here = run("read", str(rows), "--as", "jsonl").stdout.splitlines(keepends=True)
    assert [text for text in there if text] == [row for row in here if "error" not in json.loads(row)]


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_progress_is_drawn_on_a_terminal_and_taken_away() -> None:
    ticks = iter(range(100))
    screen = Terminal()
    said: list[str] = []
    progress = Progress(screen, lambda: float(next(ticks)), said.append, draws=True)
    given = [Result(file="a", thing=Recipe()), Result(file="b", problem="b: gone.")]
    assert list(progress.counted(given)) == given
    progress.clear()
    assert said == ["b: gone."]
    assert "1 recipes, " in screen.getvalue()
    assert "2 recipes, 1 failed, " in screen.getvalue()
    assert screen.getvalue().endswith("\r\x1b[K")


def test_progress_is_silent_elsewhere() -> None:
    stream = io.StringIO()
    progress = Progress(stream, time.monotonic, lambda _: None, draws=True)
    list(progress.counted([Result(file="a", problem="a: gone.")]))
    progress.clear()
    assert (stream.getvalue(), progress.failed) == ("", 1)


@pytest.mark.skipif(os.name == "nt", reason="signals of POSIX")
def test_an_interrupt_of_many_workers_is_quiet(tmp_path: Path) -> None:
    rows = tmp_path / "rows.jsonl"
    rows.write_text((json.dumps({"text": PIE}) + "\n") * 4000)
    words = ("camp", str(rows), "--as", "jsonl", "--jobs", "2")
    child = subprocess.Popen(
        [sys.executable, "-c", "from assistant.cli import main; main()", *words],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
    )
    assert child.stdout is not None
    child.stdout.readline()
    threading.Timer(0.2, os.killpg, (child.pid, signal.SIGINT)).start()
    _, said = child.communicate(timeout=60)
    assert child.returncode == 130
    assert "Traceback" not in said
