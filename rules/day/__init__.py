"""The day: everything that needs hands, backwards from the moment of eating (handbook, section 8)."""

from rules.day.figures import figure
from rules.day.home import longest_wait
from rules.day.road import first_use
from rules.day.timeline import timeline

__all__ = ["figure", "first_use", "longest_wait", "timeline"]
