"""Builds a checked, cross-linked workshop manual that a phone reads offline."""
