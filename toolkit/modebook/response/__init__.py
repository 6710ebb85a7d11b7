"""What the light does with what it is sent: timing, quantizing, curves, color, visibility, modulation.

Pure functions on numbers and numpy arrays that know no documents. Nothing is imported here, so that
a program pays only for the module it uses.
"""
