"""The pages' templates: what is no text of ours is escaped, what turns or hides text never arrives."""

from __future__ import annotations

import pytest
from jinja2 import UndefinedError

from assistant.show.template import own_text, policy, template


def test_a_name_that_is_missing_is_an_error_and_no_blank() -> None:
    with pytest.raises(UndefinedError):
        template("card_steps.html.j2").render(steps=["Stir."])


def test_recipe_text_is_escaped_and_turns_nothing() -> None:
    page = template("card_steps.html.j2").render(steps=["<b>stir\u202e"], where="camp", prefix="")
    assert "&lt;b&gt;stir" in page.lower().replace("Stir", "stir")
    assert "\u202e" not in page
    assert 'data-tick="camp-1"' in page


def test_the_policy_lets_one_script_run_and_nothing_be_fetched() -> None:
    """Content Security Policy Level 3: the hash of the page's own script, in base 64."""
    told = policy(script=own_text("card.js"))
    assert told.startswith("default-src 'none';")
    assert told.count("'sha256-") == 1
