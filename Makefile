# Two commands for a newcomer: `make manual` and `make test`. tasks.py does the work, so that
# Windows, which has no make, can call it directly.
PYTHON ?= $(shell command -v python3.13 || command -v python3)

.PHONY: manual test serve bench lock

manual test serve bench lock:
	@$(PYTHON) tasks.py $@
