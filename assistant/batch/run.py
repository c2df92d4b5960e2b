"""A run over many recipes: one by one, over the processors of this machine, or over a cluster.

Results come in the order of the recipes. A worker that dies costs nothing: what was handed out and has not come back
is handed out again; a recipe over which a worker dies alone, too, gets a sentence in place of its result.
"""

from __future__ import annotations

import os
import signal
import threading
import warnings
from collections import deque
from collections.abc import Iterable, Iterator
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from itertools import count, islice

from assistant.batch.sources import Source
from assistant.batch.work import Job, Maker, chunk_done, forgetful, maker
from assistant.show.forms import Result
from rules.problem import FileProblem, UsageProblem
from rules.recipe import Struct

#: Recipes that travel together: large enough that sending costs nothing beside the work, small enough to be lost.
CHUNK = 25
#: How often the same recipes are handed out before they are tried one by one.
TRIES = 2
CLUSTER_SECONDS = 10

#: What is raised when a worker dies.
Died = tuple[type[Exception], ...]


class Run(Struct, frozen=True, kw_only=True):
    """How a run is spread: over so many processes, or over the cluster behind an address."""

    jobs: int = 1
    cluster: str | None = None
    #: the file of done recipes
    done: str | None = None

    @property
    def is_spread(self) -> bool:
        """Whether anything but this process works."""
        return self.jobs > 1 or self.cluster is not None


#: One process, this one.
HERE = Run()


def results(
    sources: Iterable[Source], job: Job, run: Run = HERE, *, make: Maker | None = None
) -> Iterator[Result]:
    """What becomes of each recipe, in order; `make` stands in for the job's own maker where one process works.

    Raises:
        UsageProblem: a circumstance that cannot be, or a cluster that cannot be reached.
    """
    if not run.is_spread:
        return forgetful(sources, make or maker(job))
    return _spread(sources, job, run)


def _spread(sources: Iterable[Source], job: Job, run: Run) -> Iterator[Result]:
    with _workers(run) as died:
        chunks = _Chunks(sources)
        head, tries = -1, 0
        while True:
            try:
                _call_in(run)
                for rows in _handed_out(chunks, job, run):
                    chunks.came_back()
                    yield from rows
                return
            except died:
                head, tries = chunks.count, tries + 1 if head == chunks.count else 1
                if tries >= TRIES:
                    yield from _one_by_one(chunks.first(), job, run, died)
                    chunks.came_back()


class _Chunks:
    """The chunks of a stream: what was handed out and has not come back is handed out first.

    Handing out is done by threads of the library, of which one may still be at it after its workers died.
    """

    def __init__(self, sources: Iterable[Source]) -> None:
        self._rest = iter(sources)
        self._out: deque[tuple[Source, ...]] = deque()
        self._lock = threading.Lock()
        self.count = 0

    def __iter__(self) -> Iterator[tuple[Source, ...]]:
        for number in count(self.count):
            with self._lock:
                if number - self.count == len(self._out):
                    self._out.append(tuple(islice(self._rest, CHUNK)))
                chunk = self._out[number - self.count]
            if not chunk:
                return
            yield chunk

    def first(self) -> tuple[Source, ...]:
        """The chunk that is waited for."""
        return self._out[0]

    def came_back(self) -> None:
        """The first chunk is done with."""
        with self._lock:
            self._out.popleft()
            self.count += 1


def _handed_out(chunks: Iterable[tuple[Source, ...]], job: Job, run: Run) -> Iterator[list[Result]]:
    from joblib import Parallel, delayed

    hands = Parallel(
        n_jobs=-1 if run.cluster else run.jobs,
        return_as="generator",
        batch_size=1,
        pre_dispatch="4*n_jobs",
        max_nbytes=None,
    )
    done: Iterator[list[Result]] = hands(delayed(chunk_done)(job, chunk) for chunk in chunks)
    return done


def _one_by_one(chunk: tuple[Source, ...], job: Job, run: Run, died: Died) -> Iterator[Result]:
    for source in chunk:
        try:
            yield from next(iter(_handed_out([(source,)], job, run)))
        except died:
            sentence = FileProblem(source.file, "a worker died over it", "please report this recipe")
            yield Result(file=source.file, problem=str(sentence))


@contextmanager
def _workers(run: Run) -> Iterator[Died]:
    """The workers of a run, and what is raised when one of them dies."""
    if run.cluster is None:
        with _quiet_ends():
            try:
                yield (BrokenProcessPool,)
            finally:
                _send_home()
        return
    try:
        from distributed import Client, KilledWorker
        from joblib import parallel_config
    except ImportError as error:
        wanted = "install coalside with its extra batch (pip install 'coalside[batch]')"
        raise UsageProblem("--cluster", run.cluster, wanted) from error
    try:
        client = Client(run.cluster, timeout=CLUSTER_SECONDS)
    except (OSError, ValueError, TimeoutError) as error:
        raise UsageProblem("--cluster", run.cluster, f"no cluster answers there ({error})") from error
    with client, parallel_config(backend="dask"):
        yield (KilledWorker,)


def _call_in(run: Run) -> None:
    """Start the processes deaf to an interrupt at the terminal: it is for this process to answer and to end them.

    The library's keeper of locks starts with them; it would warn of locks that were put away while it looked.
    """
    if run.cluster is not None or threading.current_thread() is not threading.main_thread():
        return
    from joblib import Parallel, delayed

    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    warnings_wanted = os.environ.get("PYTHONWARNINGS")
    os.environ["PYTHONWARNINGS"] = "ignore"
    try:
        Parallel(n_jobs=run.jobs, max_nbytes=None)([delayed(int)()])
    finally:
        signal.signal(signal.SIGINT, before)
        if warnings_wanted is None:
            del os.environ["PYTHONWARNINGS"]
        else:
            os.environ["PYTHONWARNINGS"] = warnings_wanted


def _send_home() -> None:
    """End the processes that worked; they would wait for more work, and hold standard output open meanwhile."""
    from joblib.externals.loky import get_reusable_executor

    get_reusable_executor(reuse=True).shutdown(wait=True, kill_workers=True)


@contextmanager
def _quiet_ends() -> Iterator[None]:
    """An interrupted run ends without noise: the library's thread stumbles over work that was taken back from it."""
    before = threading.excepthook

    def hook(fault: threading.ExceptHookArgs) -> None:
        if not (fault.thread and fault.thread.name == "ExecutorManagerThread" and fault.exc_type is KeyError):
            before(fault)

    threading.excepthook = hook
    try:
        with warnings.catch_warnings():
            warnings.filterwarnings("ignore", message=".*tasks which were still being processed")
            warnings.filterwarnings("ignore", message="A worker stopped while some jobs were given")
            yield
    finally:
        threading.excepthook = before
