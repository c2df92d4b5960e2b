"""Standard input and output when they are not what they should be: closed, full, cut off."""

from __future__ import annotations

import errno
import os
import sys

#: What the system says where output has no room.
NO_ROOM = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG, errno.EIO)


def open_what_is_closed() -> None:
    """Stand an empty stream in for each that whoever started this has closed."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            setattr(sys, name, open(os.devnull, mode, encoding="utf-8"))  # noqa: PTH123, SIM115 - until the end


def stumble(error: Exception) -> str:
    """The sentence for a fault that no room took care of."""
    if isinstance(error, OSError) and error.errno in NO_ROOM:
        return f"The output cannot be written ({error.strerror}); make room or write to another place."
    return f"coalside stumbled ({type(error).__name__}: {error}); please report what you asked of it."
