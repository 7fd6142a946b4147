"""Hypothesis without a stopwatch: on a busy machine a slow first call is no failure."""

from hypothesis import settings

settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")
