// Bolts drawn where they sit. Pure.
#pragma once
#include "cells.h"

typedef enum {
    BOLT_TO_COME,
    BOLT_TIGHT,
    BOLT_HERE,     // in hand
    BOLT_QUESTION, // in hand, and nobody knows how it was left
    BOLT_DOUBT,
    BOLT_NOT_NEEDED,
} BoltLook;

typedef struct {
    const char *label;
    guint turn; // when it is taken, from 1
    BoltLook look;
} Bolt;

// The rows (GStrv) in which bolts lie: a plan's `layout` (rows parted by `/`, labels by blanks),
// or, without one, a row for each beginning of the labels (`L1 L2`, `R1 R2`; `1, a` and `1, b` in
// one). `circle` gives one row. The caller frees with g_ptr_array_unref.
GPtrArray *bolt_rows(const char *layout, const Bolt *bolts, guint count) G_GNUC_WARN_UNUSED_RESULT;

// Paints them within `width` columns and `height` rows from `row` on, in the largest boxes in which
// all find room; every label is there once. `circle`: on a circle, the first at the top, clockwise.
// Returns the row behind.
guint bolts_paint(Canvas *canvas, guint row, guint width, guint height, const GPtrArray *rows,
                  gboolean circle, const Bolt *bolts, guint count);
