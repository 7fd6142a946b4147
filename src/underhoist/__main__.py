"""`python -m underhoist`, for where the command is not on the path."""

from underhoist.cli import main

if __name__ == "__main__":
    main()
