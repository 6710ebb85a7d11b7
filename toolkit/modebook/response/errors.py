"""The one error that the response engine raises for numbers it cannot work with."""


class ResponseError(ValueError):
    """A rate, time, level or other figure is outside what the computation holds for."""
