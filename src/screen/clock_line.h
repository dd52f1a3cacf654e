// The soonest clock of the build in hand, for the status row; the clocks of all builds in the shop.
#pragma once
#include "cells.h"
#include "desk.h"

// `sump FIT BEFORE 11:48, 6 min`; NULL if none runs. The caller frees with g_free.
char *clock_line(Desk *desk) G_GNUC_WARN_UNUSED_RESULT;
// The same of the soonest clock of all builds that are open by now.
char *clock_line_of_all(const Desk *desk);

// Paints the clocks of a build, one a line, from `row` on. Returns the row behind.
guint clocks_paint(Canvas *canvas, guint row, Session *session, const char *number, Moment now);
