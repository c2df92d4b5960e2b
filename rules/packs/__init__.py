"""Where everything travels: the packs of a dish (handbook chapter 2)."""

from rules.packs.divide import Contents, divide

__all__ = ["Contents", "divide"]
