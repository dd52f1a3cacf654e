// A tolerance strip on the screen. Pure.
#pragma once
#include "cells.h"

#include <standbook/judge/assess.h>

// Paints what strip_draw, strip_text or strip_range gave (standbook/sheet/strip.h), a column for
// each of its cells. Only the reading and its doubt (`█ ▒ < >`) have the style of the verdict, one
// for both, since two colours never touch: heed where it fails, unsure where it is in doubt. Line,
// posts, aim, service limit, wear and forecast stay calm. Blanks are painted too. Returns the
// column behind.
guint strip_paint(Canvas *canvas, guint row, guint column, const char *strip, Verdict verdict);
