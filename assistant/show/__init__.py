"""A plan as text, page, calendar or table."""
