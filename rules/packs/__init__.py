"""Where everything travels: the packs of a dish (handbook chapter 2)."""

from rules.packs.divide import divide

__all__ = ["divide"]
