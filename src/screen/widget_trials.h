// The trials of a setting as a table whose last column is a chart: each try a strip in a window of
// one scale, whose ends stand above it. Pure.
#pragma once
#include "cells.h"

#include <standbook/work/advice.h>

// Paints the trials, each with what it was before and what was struck in the order of entry, and
// the row and cell of what is asked next, with what stands in the field. Where a move is advised,
// the row of the next try shows what it should come to. Returns the row behind; `*focus` is the row
// of the try in hand.
guint trials_paint(Canvas *canvas, guint row, const Trials *trials, const TrialNext *next,
                   const NextMove *advised, const char *typed, guint *focus);

// The strip of one trial; empty where nothing was read tightened. The caller frees with g_free.
char *trial_strip(const Trials *trials, const Trial *trial) G_GNUC_WARN_UNUSED_RESULT;
