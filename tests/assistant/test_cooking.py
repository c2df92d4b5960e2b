"""What "cook" does where it stands: it bakes, fries, boils, simmers or is pressed."""

from __future__ import annotations

import pytest

from assistant.reader.read import read

FOODS = "1 lb chicken\n1 onion\n2 tbsp oil\n2 cups stock\n1 cup rice\n1 lb pasta\n1 cup milk\n2 eggs\n"


@pytest.mark.parametrize(
    ("method", "deed"),
    [
        ("Put the chicken in a 350 F oven and cook for an hour.", "bake"),
        ("Heat the oil in a skillet, add the onion and cook for 8 minutes.", "fry"),
        ("Heat the oil in a skillet, add the onion and cook until translucent.", "saute"),
        ("Put the chicken and stock in a pot and cook for 40 minutes.", "simmer"),
        ("Cook the pasta for 9 minutes.", "boil"),
        ("Cook the rice in boiling water.", "boil"),
        ("Bring the rice and stock to the boil, turn the heat down low and cook for 18 minutes.", "simmer"),
        ("Cook the sauce for 5 minutes.", "simmer"),
        ("In a soup pot cook the onion in oil.", "fry"),
        ("Cook the chicken on the grill.", "grill"),
        ("Cook in a pressure cooker for 20 minutes.", "pressure cook"),
        ("Bake the chicken in a tin. Stir the onion into the tin and cook over a flame for a minute.", "fry"),
    ],
)
def test_cooking_is_what_the_place_makes_of_it(method: str, deed: str) -> None:
    found = read(f"Supper\n\nIngredients\n\n{FOODS}\nMethod\n\n1. {method}\n")
    assert found.steps[-1].actions[-1].does == deed
