"""The register of rules, and the reasons that they give.

A decision is made through a `Rule`: an id (`chapter.word`), one sentence with slots, and a source. `Rule.says` fills
the sentence and gives the `Reason`. A rule whose figures stand in a table passes the table's row, and the reason
quotes that row's source: nobody can quote the wrong one. What is decided while a plan is made collects in a `Ledger`.
"""

from __future__ import annotations

from collections.abc import Iterable
from string import Formatter
from typing import Protocol

from rules.plan import Question, Reason

COMMON = "common practice, no source"

RULES: dict[str, Rule] = {}


class Sourced(Protocol):
    """Anything that knows where it comes from: a table's row."""

    @property
    def source(self) -> str:
        """The source as it is quoted."""
        ...


class Rule:
    """One rule of the book.

    `because` is a sentence a cook understands, with `{slots}` for the figures; `source` is where the rule comes from,
    `common practice, no source` where that is the truth.
    """

    def __init__(self, *, id: str, because: str, source: str = COMMON) -> None:  # noqa: A002
        if id in RULES:
            raise ValueError(f"the rule {id} is registered twice")
        self.id = id
        self.because = because
        self.source = source
        RULES[id] = self

    @property
    def slots(self) -> frozenset[str]:
        """The names of the slots in the sentence."""
        return frozenset(name for _, name, _, _ in Formatter().parse(self.because) if name)

    def says(self, about: str, row: Sourced | None = None, **figures: object) -> Reason:
        """The reason for one decision about `about`; a `row` that was read lends its source."""
        return Reason(
            rule=self.id,
            about=about,
            because=self.because.format(**figures),
            source=row.source if row is not None else self.source,
        )


class Ledger:
    """What was decided so far while one plan is made: reasons and questions, each once, in order."""

    def __init__(self) -> None:
        self._reasons: dict[Reason, None] = {}
        self._questions: dict[Question, None] = {}

    def note(self, *reasons: Reason) -> None:
        """Write reasons down."""
        self._reasons.update(dict.fromkeys(reasons))

    def ask(self, about: str, text: str, default: str) -> None:
        """Write a question down, with the default that is taken meanwhile."""
        self._questions[Question(about=about, text=text, default=default)] = None

    def extend(self, questions: Iterable[Question]) -> None:
        """Write several questions down."""
        self._questions.update(dict.fromkeys(questions))

    @property
    def reasons(self) -> tuple[Reason, ...]:
        """All reasons, in the order they were given."""
        return tuple(self._reasons)

    @property
    def questions(self) -> tuple[Question, ...]:
        """All questions, in the order they were asked."""
        return tuple(self._questions)
