// Figures that can be read from the stand, out of one table of shapes 3 dots wide and 5 high. Pure.
#pragma once
#include "cells.h"

// The columns a text takes with dots `dot` cells wide: digits, `.`, `/`, `-`, `+`, `°` and blanks;
// a point is one dot wide. Between figures stands a gap of one cell less than a dot, at least one.
guint digits_width(const char *text, guint dot);

// Paints the text, 5 × `high` rows high, with its left upper corner there. What has no shape is
// left out.
void digits_paint(Canvas *canvas, guint row, guint column, guint dot, guint high, Style style,
                  const char *text);
