"""Wallwise: a workbench for people who teach line dance."""

__version__ = "0.1.0"
