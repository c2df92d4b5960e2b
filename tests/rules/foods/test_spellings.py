from __future__ import annotations

from rules.foods.spellings import Asked, before_join, makes_another, spellings, without_states


def spelled(name: str, **line: object) -> list[str]:
    return [one.name for one in spellings(name, Asked(**line))]  # type: ignore[arg-type]


def test_what_the_line_says_besides_comes_before_the_bare_name() -> None:
    surest = spelled("corn", unit="can", state=("yellow",))[:4]
    assert surest == ["yellow corn", "canned corn", "corn can", "corn"]


def test_a_spoon_means_dried_for_herbs_alone() -> None:
    first = next(spellings("thyme", Asked(unit="teaspoon")))
    assert (first.name, first.only_herbs) == ("dried thyme", True)


def test_a_name_from_an_index_is_turned() -> None:
    assert "bread flour" in spelled("flour, bread")
    assert "basil leaves" in spelled("leaves of basil")


def test_words_of_state_go_one_by_one() -> None:
    assert "active dry yeast" in spelled("large active dry yeast")


def test_what_is_done_to_the_food_and_what_may_take_its_place_come_last() -> None:
    assert spelled("medium shrimp, peeled and deveined")[-1] == "shrimp"
    assert spelled("fresh basil or mint")[-1] == "basil"


def test_words_of_state_and_figures_name_no_food() -> None:
    assert without_states(["2", "large", "ripe", "mangoes", "peeled"]) == ["mangoes"]


def test_a_name_ends_before_with_and_in() -> None:
    assert before_join(["tuna", "in", "oil"]) == ["tuna"]
    assert before_join(["in", "season", "fruit"]) == ["in", "season", "fruit"]


def test_an_empty_name_has_no_spelling() -> None:
    assert spelled(" , ") == []


def test_a_word_that_makes_another_food_is_noticed() -> None:
    assert makes_another(["vegan", "cheese"])
    assert makes_another(["sugar", "free", "jam"])
    assert not makes_another(["free", "range", "eggs"])
