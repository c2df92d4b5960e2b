from __future__ import annotations

import pytest

from rules.instructions.saying import with_foods, without_foods
from rules.recipe import Action, Deed, Duration


def act(does: Deed, word: str | None = None, **more: object) -> Action:
    return Action(does=does, word=word or does, **more)


TEN = Duration(what="other", low_min=10, high_min=10)


@pytest.mark.parametrize(
    ("action", "first", "hot", "said"),
    [
        (act("mix"), True, False, "mix 2 eggs in the bowl"),
        (act("mix"), False, False, "stir in 2 eggs"),
        (act("add"), True, True, "put in 2 eggs in the pot"),
        (act("coat", "dip"), False, False, "dip 2 eggs in it"),
        (act("fry", minutes=TEN), False, True, "add 2 eggs and fry it for 10 minutes"),
        (act("simmer", until="until thick"), True, True, "simmer 2 eggs in the pot, until thick"),
    ],
)
def test_a_deed_with_foods_is_one_plain_sentence(action: Action, first: bool, hot: bool, said: str) -> None:
    assert with_foods(action, ["2 eggs"], first=first, hot=hot, laid=False, fats=False) == said


def test_fat_alone_is_heated_for_what_is_fried_in_it() -> None:
    said = with_foods(
        act("fry", until="until golden"), ["2 tablespoons oil"], first=True, hot=True, laid=False, fats=True
    )
    assert said == "heat 2 tablespoons oil in the pot and fry it, until golden"


@pytest.mark.parametrize(
    ("action", "said"),
    [
        (act("simmer", minutes=TEN), "simmer it for 10 minutes"),
        (act("rest"), ""),
        (act("rest", minutes=TEN), "let it rest for 10 minutes"),
        (act("turn", "turn out"), ""),
        (act("turn", "flip"), "turn it over"),
        (act("other", "check"), ""),
        (act("other", "cook", minutes=TEN), "cook it for 10 minutes"),
        (act("pour", things=("batter", "butter")), "pour the batter over the butter"),
        (act("spread", things=("plums",)), "spread it on the plums"),
        (act("pour", things=("batter",)), "pour the batter in"),
        (act("pour"), ""),
        (act("shape", "press"), "press it"),
    ],
)
def test_a_deed_without_foods_is_told_only_when_it_says_something(action: Action, said: str) -> None:
    assert without_foods(action, empty=False) == said


def test_an_empty_pot_is_not_baked() -> None:
    assert without_foods(act("bake", minutes=TEN), empty=True) == ""
