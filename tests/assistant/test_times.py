"""What each stretch of time in a method is for, in the ways that cooks tell it, and which times are no stretch.

Every case pins a decision of ours: the kinds follow from the verb of the clause, the verb that goes on, the vessel and
the place. No source.
"""

from __future__ import annotations

import pytest

from assistant.reader.read import read

FOODS = (
    "2 lb beef chuck\n1 lb chicken thighs\n2 cups flour\n1 tsp yeast\n1 cup water\n2 tbsp butter\n2 tbsp oil\n"
    "1 onion\n3 carrots\n1 lb potatoes\n1 can tomatoes\n2 cups stock\n1 cup milk\n1 cup cream\n1 cup rice\n"
    "2 eggs\n1 cup sugar\n1 tsp salt\n"
)
CASES: list[tuple[str, list[str]]] = [
    (
        "Fry the fritters in hot oil until brown. Dip them in the glaze. Wait ten minutes for the glaze to set.",
        ["rest"],
    ),
    ("Brown the chicken in oil. Wait 2 minutes, then turn.", ["fry"]),
    ("Bake at 350F for 40 minutes. Give it ten minutes before you cut.", ["bake", "rest"]),
    ("Bake for 20 min, then lower the heat to 170C and give them 35 to 40 min more.", ["bake", "bake"]),
    ("Bake 15 minutes, reduce the oven to 325F and bake for another 40.", ["bake"]),
    ("Warm the sauce in a small pan with a little water, stirring, 4-5 minutes.", ["simmer"]),
    (
        "Put the stock and milk in a pot. Bring slowly to a simmer and let it steep for 10 minutes, never boiling hard. Add the chicken, cook 6-8 minutes.",
        ["simmer", "simmer"],
    ),
    ("Heat the milk until it steams. Take it off the heat and let it steep 20 minutes.", ["rest"]),
    (
        "Roast the chicken in a tin for 1 hour at 400F. Stir the flour into what is in the tin and cook for 1 min over a flame. Add the stock and simmer 5 minutes.",
        ["bake", "fry", "simmer"],
    ),
    (
        "Fry in butter. Flip when bubbles break, after about 2 minutes, then cook 1-2 minutes on the other side.",
        ["fry", "fry"],
    ),
    (
        "Bake 10-12 min. They'll still look soft; leave them on the tray 5 min before you move them.",
        ["bake", "rest"],
    ),
    (
        "Bring the water to the boil with the salt. Take the pot off the heat and let the cornmeal fall in. Put it back on the lowest flame you have. Stir it about once every five minutes, for 40 minutes altogether.",
        ["simmer"],
    ),
    ("Simmer the beef for 2 hours. Remove from the heat and let stand 15 minutes.", ["simmer", "rest"]),
    (
        "Simmer the beef for 2 hours, covered. Add the potatoes and carrots and cook for another 30 minutes.",
        ["simmer", "simmer"],
    ),
    ("Cook the onion in the oil for 5 minutes. Add the stock and cook 20 minutes more.", ["fry", "simmer"]),
    ("Cook the onion in the oil until soft, about 8 minutes.", ["fry"]),
    ("Mix the dough. Cover and leave in a warm place for 1 hour.", ["rise"]),
    ("Mix the yeast, flour and water. Let sit for 1 hour, until doubled.", ["rise"]),
    ("Dissolve the yeast in warm water and let stand 10 minutes until foamy.", ["rest"]),
    (
        "Knead the dough for 10 minutes. Let it rise for 90 minutes. Punch down, shape and leave for a further 30 minutes to prove.",
        ["other", "rise", "rise"],
    ),
    ("Shape into a loaf. Let rise again, 45 minutes. Bake 35 minutes at 375F.", ["rise", "bake"]),
    ("Cover the dough and let rest in the fridge overnight, 8 to 12 hours.", ["chill"]),
    ("Wrap the pastry and rest in the fridge for 30 minutes.", ["chill"]),
    ("Put the chicken in the marinade and refrigerate for 4 hours.", ["marinate"]),
    ("Rub the chicken with the salt and sugar. Leave it for 2 hours to marinate.", ["marinate"]),
    ("Soak the beans in cold water for 8 hours.", ["rest"]),
    ("Let cool in the tin for 10 minutes, then turn out.", ["rest"]),
    ("Cool completely, about 2 hours.", ["rest"]),
    ("Chill for at least 2 hours or overnight.", ["chill"]),
    ("Freeze for 20 minutes.", ["chill"]),
    ("Boil the potatoes in salted water for 15 minutes.", ["boil"]),
    ("Cook the rice in boiling water for 12 minutes. Drain.", ["boil"]),
    (
        "Bring the rice and water to a boil, cover, turn down to low and cook for 18 minutes. Let stand off the heat, covered, for 5 minutes.",
        ["simmer", "rest"],
    ),
    ("Put the eggs in cold water, bring to the boil and cook for 8 minutes.", ["boil"]),
    ("Place the beef in a slow cooker with the stock. Cook on low for 8 hours or on high for 4.", ["simmer"]),
    ("Put everything in the crock pot. Cook on LOW 6-8 hours.", ["simmer"]),
    ("Whisk the eggs for 3 minutes until pale.", ["other"]),
    ("Beat the butter and sugar with a mixer for 5 min.", ["other"]),
    ("Preheat the grill. Grill the chicken 5 minutes per side.", ["other"]),
    ("Broil for 3 minutes, until bubbly.", ["bake"]),
    ("Put under a hot grill for 3-4 minutes until the top is golden.", ["bake"]),
    ("Return to the oven for 10 minutes.", ["bake"]),
    ("Slide the tin into the oven and leave it there for 25 minutes.", ["bake"]),
    ("Into the oven it goes for 45 minutes.", ["bake"]),
    ("Oven, 350, 25 minutes.", ["bake"]),
    ("Bake uncovered 30 minutes, covered 30 minutes longer.", ["bake", "bake"]),
    ("Cover with foil and bake for 1 hour. Uncover and bake 15 minutes more.", ["bake", "bake"]),
    ("Roast the potatoes for 40 minutes, turning once. Add the carrots and return for another 20.", ["bake"]),
    (
        "Melt the butter, stir in the flour and cook for 2 minutes. Gradually add the milk and cook, stirring, until thick, 5 minutes.",
        ["fry", "simmer"],
    ),
    ("Sear the beef 3 minutes on each side. Remove and let rest 5 minutes.", ["fry", "rest"]),
    ("Deep fry the chicken at 350F for 12 minutes.", ["fry"]),
    ("Toast the rice in a dry skillet for 3 minutes.", ["fry"]),
    ("Add the stock, bring to a boil, reduce heat and simmer, partially covered, 45 minutes.", ["simmer"]),
    ("Bring to a boil and boil hard for 1 minute.", ["boil"]),
    ("Boil for 5 minutes, then turn down and bubble gently for 40.", ["boil"]),
    ("Pour boiling water over the onion and leave for 10 minutes.", ["rest"]),
    ("Pour boiling water over the rice, cover and let stand 20 minutes.", ["rest"]),
    ("Steam the pudding for 2 hours.", ["boil"]),
    ("Steam the carrots, covered, for 8 minutes.", ["boil"]),
    ("Poach the chicken in the stock for 15 minutes.", ["simmer"]),
    ("Stew gently for an hour and a half.", ["simmer"]),
    ("Braise in the oven at 325F for 3 hours.", ["bake"]),
    ("Cover the pot and put it in a 325F oven for 3 hours.", ["bake"]),
    (
        "Bring the pot to a simmer on the stove, cover and transfer to the oven. Cook for 2 1/2 hours.",
        ["bake"],
    ),
    ("Rest the batter for 30 minutes.", ["rest"]),
    ("Let the batter stand half an hour. Fry in butter 2 minutes a side.", ["rest", "fry"]),
    ("Let the meat stand for 15 minutes before carving.", ["rest"]),
    ("Take the meat out an hour before cooking.", []),
    ("Stir every 5 minutes.", []),
    ("For the last 10 minutes, remove the lid.", []),
    ("Keeps 3 days in the fridge.", []),
    ("Leave to infuse for 30 minutes.", ["rest"]),
    ("Salt the carrots and leave for 20 minutes, then squeeze dry.", ["rest"]),
    ("Sprinkle the onion with vinegar and set aside for 15 minutes.", ["rest"]),
    ("Toss the chicken with the oil and salt and set aside for 15 minutes to marinate.", ["marinate"]),
    ("Let the sauce simmer away for half an hour while you boil the potatoes.", ["simmer"]),
    ("Meanwhile boil the rice for 10 minutes.", ["boil"]),
    (
        "Add the rice and stock. Bring to a boil. Cover and leave on the lowest heat for 15 minutes.",
        ["simmer"],
    ),
    (
        "Fry the onion, 5 minutes. Then the carrots, another 5. Then in goes the stock; 25 minutes at a gentle bubble.",
        ["fry", "simmer"],
    ),
    ("Sweat the onion in butter for 10 minutes with the lid on.", ["fry"]),
    ("Scald the milk, then let cool 10 minutes.", ["rest"]),
    ("Bloom the gelatine in cold water, 5 minutes.", ["rest"]),
    ("Place in the refrigerator for an hour to firm up.", ["chill"]),
    ("Cook the custard over a low heat, stirring, for 10 minutes. Do not let it boil.", ["simmer"]),
    ("Let dry at room temperature for 24 hours.", ["rest"]),
    ("Press the cabbage with a weight and let it ferment 2 weeks.", ["other"]),
    ("Pack into jars and process in a boiling water bath for 10 minutes.", ["boil"]),
    ("Smoke at 225F for 4 hours.", ["other"]),
    ("Barbecue over medium coals, 6 minutes each side.", ["other"]),
    ("Turn the chicken and cook 5 minutes longer.", ["fry"]),
    ("Brown the chicken in the oil for 4 minutes. Turn and cook 5 minutes longer.", ["fry", "fry"]),
    ("Add the garlic; cook 1 minute.", ["fry"]),
    ("Return the beef to the pot with the stock, cover and cook over low heat 1 1/2 hours.", ["simmer"]),
    ("Bake in a moderate oven about 25 minutes.", ["bake"]),
    ("Time in oven: 40 minutes.", ["bake"]),
    ("Let the dough double, about an hour and a half.", ["rise"]),
    ("Second rise: 40 minutes.", ["rise"]),
    ("Proof for 1 hour.", ["rise"]),
    ("Second proof, 45 minutes, until puffy.", ["rise"]),
    ("Cover with a towel and let it double in size (about 1 hr).", ["rise"]),
    ("Autolyse for 30 minutes.", ["rest"]),
    ("Bulk ferment 4 hours at room temperature, folding every 30 minutes.", ["rise"]),
    ("Refrigerate the dough for 24 hours.", ["chill"]),
    ("Bring to room temperature, about 1 hour.", ["rest"]),
    ("Let it sit on the counter for 5 minutes to thicken.", ["rest"]),
    ("Cook on the griddle 2-3 minutes each side.", ["fry"]),
    ("Cook the pancakes 2 minutes, flip, 1 more minute.", ["fry", "fry"]),
    ("Stir constantly for 3 minutes over medium heat until it smells nutty.", ["fry"]),
    ("Stir the sauce over medium heat for 3 minutes until thick.", ["simmer"]),
    ("Reduce the sauce for 10 minutes.", ["simmer"]),
    (
        "Stand the dish in a roasting tin of hot water and bake 35-40 min until just set. Give it ten minutes.",
        ["bake", "rest"],
    ),
    ("Strain it over the bread. Push the bread under and let it drink for 30 min.", ["rest"]),
    ("Add the water and knead it well: 8 to 10 minutes.", ["other"]),
    (
        "Put in a preheated oven for twenty minutes, turn the oven off and leave it in there for 10 minutes more.",
        ["bake", "rest"],
    ),
    ("Turn off the heat and let it sit, covered, 10 minutes.", ["rest"]),
    ("Blanch the carrots for 2 minutes, then plunge into ice water.", ["boil"]),
    ("Parboil the potatoes 5 minutes.", ["boil"]),
    (
        "Simmer until thick, 10 minutes or so. Stir in the cream and heat through, 2 minutes.",
        ["simmer", "simmer"],
    ),
    ("Preheat the oven for 10 minutes.", ["other"]),
    ("Caramelise the onion over low heat for 40 minutes.", ["fry"]),
    ("Render the bacon over a low flame for 10 minutes.", ["fry"]),
    ("Microwave 2 minutes.", ["other"]),
    ("Soften the yeast in warm water, 5 minutes.", ["rest"]),
    ("Preheat the oven. Set the dough in a greased tin. Brush the top with butter. 12-14 min.", ["bake"]),
    ("Bring the rice to the boil and let it tick over for an hour and a quarter.", ["simmer"]),
    ("About 2 hours before serving shape into balls, cover and let rise 1 1/2 hours.", ["rise"]),
    ("Brown the beef. Lid on, coals on top, 20-25 mins till set.", ["bake"]),
    ("Bring the rice to the boil and cook partly covered for 35-40 mins.", ["simmer"]),
    ("Bake 12 minutes for soft ones, 14 minutes for crisp.", ["bake", "bake"]),
    ("Cook under the lid for 45 minutes, basting every 15.", ["simmer"]),
    ("Allow to cool for ten minutes or so before turning out on a rack.", ["rest"]),
    ("After 20 minutes add the potatoes, and after another 15 the carrots.", []),
    ("Prep time: 20 minutes. Bake 30 minutes.", ["bake"]),
    (
        "Simmer the beef with the stock, turn the heat down low, put a lid on and leave it for 20 minutes.",
        ["simmer"],
    ),
    ("Pressure cook on high for 35 minutes.", ["other"]),
    ("In a soup pot cook the onion in butter 5 minutes.", ["fry"]),
    ("In a second bowl beat the eggs with the milk.", []),
]


@pytest.mark.parametrize(
    ("method", "kinds"), CASES, ids=lambda case: case[:60] if isinstance(case, str) else ""
)
def test_a_time_is_for_what_goes_on_when_it_is_told(method: str, kinds: list[str]) -> None:
    recipe = read(f"Supper\n\nIngredients\n\n{FOODS}\nMethod\n\n1. {method}\n")
    assert [duration.what for step in recipe.steps for duration in step.durations] == kinds
