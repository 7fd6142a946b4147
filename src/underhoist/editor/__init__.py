"""A language server: what the check knows, shown in the editor while a page is written."""
