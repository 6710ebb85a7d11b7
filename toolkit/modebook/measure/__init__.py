"""A filmed or logged response to a fitted smoothing model: length, method, interval, and what is not told."""
