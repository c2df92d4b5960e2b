"""Many files: each gets its row in order, and a bad one costs the others nothing."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path


def run(*words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-c", "from assistant.cli import main; main()", *words]
    return subprocess.run(command, capture_output=True, text=True, timeout=120)


def test_a_missing_file_is_a_row_and_the_run_goes_on(tmp_path: Path) -> None:
    good = tmp_path / "pie.txt"
    good.write_text("River pie\n\n1 cup flour\n2 apples\n\nMix and bake 30 minutes at 375 F.\n")
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
