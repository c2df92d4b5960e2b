"""The work at home and at camp, in plain sentences and in order (handbook chapters 1 to 3)."""

from rules.instructions.write import write

__all__ = ["write"]
