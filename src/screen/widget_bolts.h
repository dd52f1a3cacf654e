// Bolts drawn where they sit. Pure.
#pragma once
#include "cells.h"

typedef enum {
    BOLT_TO_COME,
    BOLT_TIGHT,
    BOLT_HERE,     // in hand
    BOLT_QUESTION, // in hand, and nobody knows how it was left
    BOLT_DOUBT,
    BOLT_LOW,  // it fails: too little was shown
    BOLT_HIGH, // … or too much
    BOLT_CONCEDED,
    BOLT_NOT_NEEDED,
} BoltLook;

typedef struct {
    const char *label;
    guint turn; // when it is taken, from 1; 0: not said
    BoltLook look;
    const char *by; // initials where another person tightened it, or NULL
} Bolt;

// The rows (GStrv) in which bolts lie: a plan's `layout` (rows parted by `/`, labels by blanks),
// or, without one, a row for each beginning of the labels (`L1 L2`, `R1 R2`); labels of several
// axes (`1, a`) and those of a `circle` lie in one row. The caller frees with g_ptr_array_unref.
GPtrArray *bolt_rows(const char *layout, const Bolt *bolts, guint count) G_GNUC_WARN_UNUSED_RESULT;

// Paints them within columns 1 to `width` - 1 and `height` rows from `row` on. A box has the label
// between two marks, the turn in its upper border, and initials in place of the left mark where
// there is room; that of the bolt in hand is double.
//
// The first of these that fits is taken:
// - `circle`, with 13 rows: the first bolt at the top, the others clockwise, 14 columns from the
//   middle or else as far as the width allows, in the first size that keeps boxes apart;
// - several rows: the first size in which no row is broken;
// - the first size of all, where a row too long goes on in the next line.
// Sizes: 9 × 3 (parted by a row, then not), 7 × 3, 6 × 3 side by side, one line `[√ 3 √]`, `[√
// 3]`; each as much wider as the widest label needs. Should not even the last find room, it goes on
// below `height`: every label is there once, whole.
//
// Puts the column behind the box furthest to the right into *right. Returns the row behind the last.
guint bolts_paint(Canvas *canvas, guint row, guint width, guint height, const GPtrArray *rows,
                  gboolean circle, const Bolt *bolts, guint count, guint *right);
