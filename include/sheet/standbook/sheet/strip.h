// The tolerance strip: a dimension line of 25 cells on which limits always stand on cells 4 and 20,
// whatever the unit, so that posts stand in one column and the eye learns one picture.
#pragma once
#include <standbook/judge/assess.h>

enum { STRIP_CELLS = 25, STRIP_LOWER = 4, STRIP_UPPER = 20, STRIP_MOST = 200 };

// What is drawn. Numbers belong to the caller, all of one unit; NULL where there is none.
//
// The scale is straight: v stands on cell 4 + 16 (v - lower) / (upper - lower), rounded to the
// nearest, halves up. With one limit X the free side has no post, and its end is 0 (at most X) or
// 2X (at least X); for X below 0 it is 2X and 0. A window of another scale (`from`, `to`, `cells`)
// has `from` on its first cell and `to` on its last; whoever paints it prints its ends.
//
// What is rounded never crosses a limit: a mark outside stands outside its post, one inside or
// equal to the limit inside. The wear limit is such a post too, and a cell is left between it and
// the limit. Whatever is off the strip is left out, but a value is `<` or `>` on the last cell.
typedef struct {
    const Number *lower, *upper; // limits `├` `┤`; `─` between them
    const Number *wear;          // service limit `║`
    const Number *aim;           // `┼`
    const Number *least, *most;  // forecast `░`
    const Number *as_new;        // `═` from here to the first value
    const Number *const *values; // `█`
    guint count;                 // of values
    gboolean filled;             // `█` from the least value to the greatest
    const Number *variance;      // u² of each value: `▒` from value - U to value + U, U = 2u
    Bound bound;                 // of the values: `▒` to the end where the true one may be
    const Number *from, *to;     // a window of another scale, or NULL
    guint cells;                 // of that window: 2 to STRIP_MOST
} Strip;

// `    ├────▒▒█▒▒▒─────┤    `: always as many cells, in UTF-8. Empty without limits (unless there
// is a window). The caller frees with g_free.
char *strip_draw(const Strip *strip) G_GNUC_WARN_UNUSED_RESULT;

// That of one requirement: its value, U, limits, service limit and an aim that is a value. Empty
// without limits. The caller frees with g_free.
char *strip_text(const Requirement *requirement) G_GNUC_WARN_UNUSED_RESULT;
