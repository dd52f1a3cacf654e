// Figures that can be read from the stand, out of one table of shapes 3 dots wide and 5 high. Pure.
#pragma once
#include "cells.h"

// The columns a text takes with dots `dot` cells wide: digits, letters (drawn as capitals), `.`,
// `/`, `-`, `+`, `°` and blanks; a point and a blank are one dot wide, `°` two, N four, M and W
// five. Between shapes stands a gap of half a dot and a column and a half: 2, 3, 3, 4 columns at
// dots of 2, 3, 4 and 5. What has no shape takes no room.
guint digits_width(const char *text, guint dot);

// The widest dot, `most` at most and 2 at least, with which the text fits into so many columns; 0
// if it does not fit.
guint digits_dot(const char *text, guint most, guint columns);

// Paints the text, 5 × `high` rows high, with its left upper corner there; what has no shape is
// left out. `█` (ASCII `#`), blanks are left as they were.
void digits_paint(Canvas *canvas, guint row, guint column, guint dot, guint high, Style style,
                  const char *text);
