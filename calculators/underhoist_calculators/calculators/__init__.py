"""One calculator, one file, each with a CALCULATOR; all are found by being here."""
