"""What can go wrong at the desk.

    DeskError       one sentence, fit to be shown as it stands
      Unreadable    the file is no step sheet or no song, or cannot be opened
      Unwritable    the place to write to does not take it
      NoSuchEntry   no rule, figure or term has this name
      NotToldRight  what was told of a song cannot be

Everything that a readable sheet can do wrong is a finding, never an error.
"""


class DeskError(Exception):
    """A request that cannot be met; the text is one sentence that says why."""


class Unreadable(DeskError):
    """The file is no step sheet or no song, or cannot be opened."""


class Unwritable(DeskError):
    """The place to write to does not take it."""


class NotToldRight(DeskError):
    """What was told of a song cannot be."""


class NoSuchEntry(DeskError):
    """No rule, figure or term has this name."""
