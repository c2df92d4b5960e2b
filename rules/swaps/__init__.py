"""Foods that the cook wants replaced or left out (handbook chapter 2, "a swap that the cook asked for")."""

from rules.swaps.apply import apply

__all__ = ["apply"]
