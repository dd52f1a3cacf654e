"""Changes of one figure of a table, to see that a row notices each."""
import re

# A number that is no exponent and no part of a name.
FIGURE = re.compile(r"(?<![\w^.])\d+(?:\.\d+)?")


def bumped(text, at):
    return text[:at] + str(int(text[at]) % 9 + 1) + text[at + 1:]


def changes(text):
    """For each figure of a text: the texts with its first digit changed, and with its last."""
    for figure in FIGURE.finditer(text):
        first = re.search(r"[1-9]|\d$", figure.group()).start() + figure.start()
        yield [bumped(text, first), bumped(text, figure.end() - 1)]
