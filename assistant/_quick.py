"""Imports made quick: libraries that drag in what nothing here needs are loaded without it.

The only place for such shortcuts. Each stands in for a module while a library loads and takes itself away again, so
that whoever wants the real module afterwards gets it; where a shortcut does not fit the library's version, the plain
import is made. Measured: spaCy without its command line loads in two thirds of the time.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from types import ModuleType


@contextmanager
def stand_ins(**modules: ModuleType) -> Iterator[None]:
    """Modules that stand for others (dots in their names written as two underscores) until the block ends.

    A module that is loaded already is left as it is.
    """
    names = {name.replace("__", "."): module for name, module in modules.items()}
    ours = {name: module for name, module in names.items() if name not in sys.modules}
    sys.modules.update(ours)
    try:
        yield
    finally:
        for name, module in ours.items():
            if sys.modules.get(name) is module:
                del sys.modules[name]


def module(name: str, **members: object) -> ModuleType:
    """A module with these members and nothing else."""
    made = ModuleType(name)
    vars(made).update(members)
    return made


def load_spacy() -> None:
    """Load spaCy without its command line, which would bring a package manager and a network client along."""
    if "spacy" in sys.modules:
        return
    cli = module("spacy.cli", __path__=[])
    info = module("spacy.cli.info", info=lambda *_, **__: {})
    try:
        with stand_ins(spacy__cli=cli, spacy__cli__info=info):
            import_module("spacy")
    except Exception:
        for name in [name for name in sys.modules if name.partition(".")[0] == "spacy"]:
            del sys.modules[name]
        import_module("spacy")
    else:
        for name in ("cli", "info"):
            vars(sys.modules["spacy"]).pop(name, None)
