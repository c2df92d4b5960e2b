"""Free text to Recipe."""
