"""Several foods in one name."""

from __future__ import annotations

import pytest

from assistant.reader.joined import foods, is_kind, of_one_kind, share
from assistant.reader.names import Taken
from assistant.reader.pieces import Line


@pytest.mark.parametrize(
    ("wanted", "instead", "text"),
    [
        (["salt", "pepper"], [], "salt and pepper"),
        (["salt", "pepper"], [], "salt/pepper"),
        (["butter"], ["bacon fat"], "butter or bacon fat"),
        (["butter"], ["margarine"], "butter/margarine"),
        (["white rice"], ["brown rice"], "white or brown rice"),
        (["rye flour"], ["whole wheat flour"], "rye or whole wheat flour"),
        (["red onions", "white onions"], [], "red and white onions"),
        (["onion powder", "garlic powder"], [], "onion and garlic powder"),
        (["coriander", "chili powder"], [], "coriander and chili powder"),
        (["honey"], ["dijon mustard"], "honey or dijon mustard"),
        (["macaroni and cheese"], [], "macaroni and cheese"),
        (["half and half"], [], "half and half"),
        (["peas and carrots"], [], "peas and carrots"),
        (["lime and pepper seasoning"], [], "lime and pepper seasoning"),
        (["gravel berry syrup"], ["thorn berry syrup"], "gravel berry/thorn berry syrup"),
        (["milk"], ["cold water"], "milk or cold water"),
    ],
)
def test_foods_are_told_apart(wanted: list[str], instead: list[str], text: str) -> None:
    line = Line(text)
    assert (wanted, instead) == foods(line, 0, len(line), Taken())


def test_a_word_that_holds_for_all_is_given_to_all() -> None:
    assert of_one_kind("ground beef", ["veal", "pork", "salt"]) == ["ground veal", "ground pork", "salt"]
    assert of_one_kind("onion", ["garlic"]) == ["garlic"]


def test_shared_words_need_a_kind_or_a_known_food() -> None:
    assert share(["red", "green pepper"], tight=False, together=True) == ["red pepper", "green pepper"]
    assert share(["butter", "olive oil"], tight=False, together=False) == ["butter", "olive oil"]


def test_a_kind_is_no_food_by_itself() -> None:
    assert is_kind("red")
    assert not is_kind("potato")
