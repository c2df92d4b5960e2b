"""A recipe that is hostile to whatever shows it: markup, formulas, direction marks, endless words."""

from __future__ import annotations

from msgspec.structs import replace

from assistant.reader.read import read
from rules.circumstances import Day
from rules.convert import camp
from rules.plan import Label, Moment, Plan, Purchase

DAY = Day(people=9, eat="2027-07-03T18:30", trip_hours=30)
LONG = "w" * 200
MARK = "\u202e"  # RIGHT-TO-LEFT OVERRIDE
TEXT = f"""<script>window.hurt = 1</script> & "Pie" 🥧 {MARK}eip

Serves 9

Ingredients
2 cups flour <img src=x onerror="window.hurt = 2">
1 tsp baking powder & 'salt'
=HYPERLINK("http://example.invalid/"&A1,"free sugar") 1 cup sugar
1 cup {LONG}
3 peaches, sliced {MARK}🍑 "ripe" </style><svg onload=window.hurt=3>
1/2 cup butter --> <!--
1 cup milk

Method
Heat the oven to 350 degrees F. Mix flour, baking powder and sugar <b onclick=alert(1)>well</b>.
Stir in the milk {LONG}, pour over the melted butter & bake 45 minutes until golden </script>.
"""
NAME = f'<script>window.hurt = 1</script> & "Pie" 🥧 {MARK}eip'


def plan() -> Plan:
    """The plan of the hostile text, with hostile words wherever a plan has words of a recipe."""
    made = camp(read(TEXT, file="hostile.txt"), DAY)
    words = (*TEXT.splitlines()[4:13], NAME, f"=1+1 {LONG}")
    return replace(
        made,
        recipe=replace(made.recipe, title=NAME),
        packs=tuple(replace(pack, label=f"{pack.label} {NAME} {LONG}") for pack in made.packs),
        home_steps=(*made.home_steps, *words),
        camp_steps=(*made.camp_steps, *words),
        timeline=(*made.timeline, *(Moment(at_min=0, clock="18:30", do=word) for word in words)),
        shopping=(*made.shopping, *(Purchase(food=word, buy=word, need=word) for word in words)),
        kit=replace(made.kit, camp=(*made.kit.camp, *words)),
        labels=(*made.labels, *(Label(pack="dry-1", text=f"{word}\n{LONG}") for word in words[:3])),
    )
