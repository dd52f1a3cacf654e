// The trials of a setting as a table whose last column is a chart: each try a strip in a window of
// one scale, whose ends stand above it. Pure.
#pragma once
#include "cells.h"

#include <standbook/work/advice.h>

// Paints the trials, struck moves and readings under the try they were made in, and the row and
// cell of what is asked next, with what stands in the field. Returns the row behind; `*focus` is
// the row of the try in hand.
guint trials_paint(Canvas *canvas, guint row, const Trials *trials, const TrialNext *next,
                   const char *typed, guint *focus);

// Paints the advice: its figure, what stands beside it, and its sentences, filled into lines.
// Returns the row behind.
guint advice_paint(Canvas *canvas, guint row, const Advice *advice);

// The strip of one trial; empty where nothing was read tightened. The caller frees with g_free.
char *trial_strip(const Trials *trials, const Trial *trial) G_GNUC_WARN_UNUSED_RESULT;
