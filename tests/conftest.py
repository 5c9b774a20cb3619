"""Settings for every test: no deadline, since a slow or busy machine proves nothing."""

from hypothesis import settings

settings.register_profile("wallwise", deadline=None, max_examples=50)
settings.load_profile("wallwise")
