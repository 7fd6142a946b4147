"""Beginning: a new manual, a page drafted from answers, and what an editor needs to help."""
