"""Free text to Recipe."""

from assistant import _quick

# Before any room here asks for it.
_quick.load_spacy()
