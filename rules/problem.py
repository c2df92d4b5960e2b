"""Ways to be wrong that a person can put right.

Every error that coalside raises on purpose is a `Problem`: it keeps its parts as attributes and says one sentence
(where, what was found, what is wanted). Only the command line turns a Problem into an exit code.
"""

from __future__ import annotations


class Problem(Exception):
    """Something a person can put right; `str()` of it is the sentence they read."""

    def sentence(self) -> str:
        """The one sentence, built from the parts."""
        return " ".join(str(part) for part in self.args)

    def __str__(self) -> str:
        return self.sentence()


class UsageProblem(Problem):
    """An option or a circumstance that cannot be: exit code 2."""

    def __init__(self, option: str, found: str, wanted: str) -> None:
        super().__init__(option, found, wanted)
        self.option = option
        self.found = found
        self.wanted = wanted

    def sentence(self) -> str:
        """Option, what was found, what is allowed."""
        return f"{self.option} {self.found}: {self.wanted}."


class FileProblem(Problem):
    """A file that cannot be read or written: exit code 1."""

    def __init__(self, file: str, found: str, wanted: str) -> None:
        super().__init__(file, found, wanted)
        self.file = file
        self.found = found
        self.wanted = wanted

    def sentence(self) -> str:
        """File, what was found, what to do."""
        return f"{self.file}: {self.found}; {self.wanted}."


class BrokenInvariant(Problem):
    """A plan that would break a promise (an ingredient lost, coals that do not add up); it never leaves the house."""

    def __init__(self, where: str, promise: str) -> None:
        super().__init__(where, promise)
        self.where = where
        self.promise = promise

    def sentence(self) -> str:
        """Where it broke and which promise."""
        return f"{self.where}: the plan would break a promise ({self.promise}); please report this recipe."
