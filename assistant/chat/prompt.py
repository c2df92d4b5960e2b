"""The talk at a terminal: what is typed or pasted goes to the session, the answer comes back.

A paste of several lines is a recipe; a recipe typed line by line ends with two empty lines. Works in a terminal with
line editing, in a dumb one, and with lines from a pipe.
"""

from __future__ import annotations

import os
import sys
import textwrap
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from assistant.show.plain import one_line
from assistant.streams import stumble
from rules.problem import Problem

if TYPE_CHECKING:
    from assistant.chat.session import Session
    from rules.recipe import Recipe

WELCOME = """\
coalside makes the camp version of a kitchen recipe: paste one, press Enter.
Typing it instead? Leave two lines empty behind it. In a file? Type its name.
Then talk: "we will be twelve", "how many briquettes?", "why is the milk apart?"
"undo" takes a step back, "help" lists what you can say, Ctrl-D leaves."""
PROMPT, MORE = "camp> ", "  ... "
READING = "Reading a recipe; two empty lines end it."
LEAVING = ("quit", "exit", "bye", "q", ":q")
#: What shows a long answer a page at a time, said behind a sentence.
PAGED = ("page by page", "in a pager", "in the pager")
#: Entries kept for the arrow keys; recipes are never kept.
MOST_HISTORY = 500
#: A paste with fewer lines is a sentence.
RECIPE_LINES = 3
#: What may be said before there is a recipe, where a line could as well be a recipe's first.
EARLY_ACTS = frozenset(["help", "kept", "open", "forget", "undo", "new"])


class Talk:
    """One talk: takes entries, gives what is to be shown. `read` makes a recipe of a text."""

    def __init__(self, session: Session, read: Callable[[str], Recipe], *, is_typed: bool) -> None:
        self._session = session
        self._read = read
        #: Whether a single line can only be a sentence: where pastes arrive whole.
        self._is_typed = is_typed
        self._lines: list[str] | None = None

    @property
    def is_collecting(self) -> bool:
        """Whether lines of a recipe are being collected."""
        return self._lines is not None

    def take(self, entry: str) -> str:
        """One entry: a line, or a paste of several lines."""
        if self._lines is not None:
            return self._collect(entry)
        lines = entry.strip().split("\n")
        if len(lines) >= RECIPE_LINES or (len(lines) > 1 and self._session.recipe is None):
            return self._load(entry)
        sentence = " ".join(lines).strip()
        if not sentence:
            return ""
        if _is_file(sentence):
            return self._load_file(sentence)
        if self._session.recipe is None and not self._is_early(sentence):
            return self._collect(entry)
        return self._session.say(sentence).answer

    def end(self) -> str:
        """Nothing more comes: what was collected is the recipe."""
        lines, self._lines = self._lines, None
        return self._load("\n".join(lines)) if lines and any(line.strip() for line in lines) else ""

    def offers(self, before: str) -> Sequence[tuple[str, int]]:
        """What may follow the words before the cursor, each with the place it begins at, counted back from there."""
        if self.is_collecting or "\n" in before:
            return ()
        from assistant.chat.completing import completions

        context = self._session.context()
        return completions(before, recipe=context.recipe, kept=context.kept)

    def drop(self) -> bool:
        """Forget the lines collected so far; whether there were any."""
        collected, self._lines = self._lines, None
        return collected is not None

    def _is_early(self, sentence: str) -> bool:
        """Whether a sentence said before any recipe is one, and not the recipe's first line."""
        from assistant.chat.acts import understand
        from assistant.chat.context import Context

        meant = understand(sentence, Context())
        if self._session.takes_early(sentence, is_typed=self._is_typed):
            return True
        if self._is_typed or self._session.is_under_way:
            return bool(meant)
        return bool(meant) and all(one.act in EARLY_ACTS for one in meant)

    def _collect(self, entry: str) -> str:
        opening = "" if self._lines is not None else READING
        self._lines = [*(self._lines or []), *entry.split("\n")]
        is_over = len(self._lines) > 2 and not any(line.strip() for line in self._lines[-2:])
        return self.end() if is_over else opening

    def _load_file(self, name: str) -> str:
        from assistant.files import text_of

        try:
            return self._load(text_of(str(Path(name).expanduser())), file=name)
        except Problem as problem:
            return str(problem)

    def _load(self, text: str, file: str | None = None) -> str:
        import msgspec

        recipe = self._read(text)
        if not recipe.ingredients and not recipe.steps:
            return "No recipe was found in that: it needs a list of ingredients or a method. Paste it again."
        told = self._session.load(msgspec.structs.replace(recipe, file=file))
        if recipe.unread:
            count = len(recipe.unread)
            lines = "1 line was" if count == 1 else f"{count} lines were"
            told += f'\n{lines} not understood: "show me the recipe" lists them.'
        return told


def _is_file(sentence: str) -> bool:
    try:
        return "." in sentence and Path(sentence).expanduser().is_file()
    except (OSError, ValueError, RuntimeError):
        return False


def talk(
    start: Callable[[], tuple[Session, Callable[[str], Recipe]]],
    *,
    width: int,
    is_plain: bool,
    state_folder: Path,
) -> int:
    """Talk until the user leaves; the exit code.

    `start` loads the session, which takes a moment: the welcome stands there meanwhile. `is_plain` is a terminal
    without line editing, or no terminal.
    """
    is_piped = not sys.stdin.isatty()
    if not is_piped:
        print(_wrapped(WELCOME, width) + "\n", flush=True)
    session, read = start()
    conversation = Talk(session, read, is_typed=not (is_plain or is_piped))
    entries = (
        _piped() if is_piped else _typed(conversation) if is_plain else _edited(conversation, state_folder)
    )
    is_over = False
    while not is_over:
        try:
            for entry in entries:
                if entry.strip().lower() in LEAVING and not conversation.is_collecting:
                    break
                is_talk = session.recipe is not None or session.is_under_way
                if is_piped and not conversation.is_collecting and is_talk and entry.strip():
                    print(f"> {one_line(entry, most=width - 2)}")
                sentence, is_paged = _paging(entry) if not is_plain and not is_piped else (entry, False)
                _tell(_answered(conversation, sentence), width, is_paged=is_paged)
            _tell(conversation.end(), width)
            is_over = True
        except KeyboardInterrupt:  # while an answer was made or shown: the talk goes on, unless nobody types
            print("\n" + ("" if is_piped else _interrupted(conversation)))
            is_over = is_piped
    return 0


def _answered(conversation: Talk, sentence: str) -> str:
    """The answer; a fault of ours costs one sentence, never the talk."""
    try:
        return conversation.take(sentence)
    except Exception as error:
        if os.environ.get("COALSIDE_TRACEBACK"):
            raise
        return stumble(error)


def _paging(entry: str) -> tuple[str, bool]:
    """The sentence without "page by page", and whether it was there."""
    stripped = entry.rstrip(" .!")
    for wish in PAGED:
        if stripped.lower().endswith(wish):
            return stripped[: -len(wish)].rstrip(" ,"), True
    return entry, False


def _tell(answer: str, width: int, *, is_paged: bool = False) -> None:
    if not answer:
        return
    if is_paged:
        from pydoc import pager

        os.environ.setdefault("LESS", "-FRX")
        pager(_wrapped(answer, width) + "\n")
    else:
        print(_wrapped(answer, width) + "\n", flush=True)


def _wrapped(text: str, width: int) -> str:
    """Each line broken at the width, its continuations indented as its beginning is."""
    broken: list[str] = []
    for line in text.split("\n"):
        if "\x1b" in line:  # drawn in colours, and to the width
            broken.append(line)
            continue
        indent = " " * (len(line) - len(line.lstrip()) + (2 if line.lstrip().startswith("- ") else 0))
        broken += textwrap.wrap(
            line, width, subsequent_indent=indent, drop_whitespace=True, replace_whitespace=False
        ) or [""]
    return "\n".join(broken)


def _piped() -> Iterator[str]:
    for line in sys.stdin.buffer:
        yield line.decode("utf-8", errors="replace").rstrip("\r\n")


def _typed(conversation: Talk) -> Iterator[str]:
    """Lines of a terminal without editing."""
    while True:
        try:
            yield input(MORE if conversation.is_collecting else PROMPT)
        except EOFError:
            print()
            return
        except KeyboardInterrupt:
            print("\n" + _interrupted(conversation))


def _interrupted(conversation: Talk) -> str:
    return "Dropped those lines." if conversation.drop() else "Ctrl-D leaves."


def _edited(conversation: Talk, folder: Path) -> Iterator[str]:
    """Lines of a terminal with editing, history and completion by Tab; a paste comes as one entry."""
    from prompt_toolkit import PromptSession

    session: PromptSession[str] = PromptSession(
        history=_history(folder),
        completer=_completer(conversation),
        complete_while_typing=False,
        enable_open_in_editor=False,
    )
    while True:
        try:
            yield session.prompt(MORE if conversation.is_collecting else PROMPT)
        except EOFError:
            return
        except KeyboardInterrupt:
            print(_interrupted(conversation))


def _completer(conversation: Talk) -> Any:
    """Tab offers what may follow; while a recipe is typed it offers nothing."""
    from prompt_toolkit.completion import CompleteEvent, Completer, Completion
    from prompt_toolkit.document import Document

    class Offers(Completer):
        def get_completions(self, document: Document, complete_event: CompleteEvent) -> Iterator[Completion]:
            del complete_event
            for text, start in conversation.offers(document.text_before_cursor):
                yield Completion(text, start)

    return Offers()


def _history(folder: Path) -> Any:
    """The sentences of earlier talks, without recipes; in memory alone where the folder cannot be written."""
    from prompt_toolkit.history import FileHistory, InMemoryHistory

    class Sentences(FileHistory):
        def store_string(self, string: str) -> None:
            if "\n" not in string.strip():
                super().store_string(string)

    try:
        folder.mkdir(parents=True, exist_ok=True)
        path = folder / "said"
        path.touch()
        _shorten(path)
        return Sentences(str(path))
    except OSError:
        return InMemoryHistory()


def _shorten(path: Path) -> None:
    """Keep the latest entries; an entry is a line with a time and one with the sentence, an empty line before."""
    lines = path.read_text(encoding="utf-8", errors="replace").split("\n")
    if len(lines) > 6 * MOST_HISTORY:
        path.write_text("\n".join(lines[-3 * MOST_HISTORY :]), encoding="utf-8")
