"""Talking a plan through."""
