"""Temperatures in prose: which scale, told once or twice. Conversions are held against NIST in `outside/test_nist_units.py`."""

from __future__ import annotations

import pytest

from assistant.reader.prose import quantities
from assistant.reader.warmth import STATED, fahrenheit, is_celsius, temperatures


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("bake at 350 F", [350]),
        ("bake at 180 C", [355]),
        ("bake at 180 C (350 F)", [350]),
        ("bake at 350 F / 175 C", [350]),
        ("200 degrees, then 350 degrees", [390, 350]),
        ("at 425 F, then at 350 F", [425, 350]),
        ("for 40 minutes", []),
    ],
)
def test_every_heat_is_told_once_in_fahrenheit(text: str, found: list[float]) -> None:
    assert [temperature.fahrenheit for temperature in temperatures(quantities(text))] == found


def test_a_figure_without_a_letter_is_celsius_where_no_oven_is_set_so_low() -> None:
    assert [is_celsius(figure) for figure in (180, 240, 250, 350)] == [True, True, False, False]
    assert fahrenheit(180) == 355


@pytest.mark.parametrize("said", ["gas mark 4", "a moderate oven", "a slow oven", "oven on low"])
def test_words_for_an_ovens_heat_are_kept(said: str) -> None:
    assert STATED.search(f"Bake in {said} until done")
