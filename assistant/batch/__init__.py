"""Many recipes: where they come from, what is made of each, over how many processors, and what is done already.

Everything here is a stream: memory does not grow with the number of recipes, and what comes out is in the order of
what went in.
"""

from assistant.batch.progress import Progress
from assistant.batch.run import Run, results
from assistant.batch.sources import Source, is_many, sources
from assistant.batch.work import Job, Maker, result

__all__ = ["Job", "Maker", "Progress", "Run", "Source", "is_many", "result", "results", "sources"]
