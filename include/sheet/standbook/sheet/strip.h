// The tolerance strip: a dimension line of 25 cells on which limits always stand on cells 4 and 20,
// whatever the unit, so that posts stand in one column and the eye learns one picture.
#pragma once
#include <standbook/judge/assess.h>

enum { STRIP_CELLS = 25, STRIP_LOWER = 4, STRIP_UPPER = 20 };

// `    ├────▒▒█▒▒▒─────┤    ` for 0.064 ±.005 between 0.050 and 0.080: `█` the value, `▒` what its
// gauge cannot tell (±U), `┼` the aim, `║` the service limit where it lies on the strip, `<` or `>`
// a value off it. A value is put on the nearest cell, but never across a post: one on a limit
// stands inside. With one limit the free side has no post: at most X is drawn from 0 (from 2X where
// X is below 0), at least X up to 2X (up to 0). Empty without limits or without a value. The caller
// frees with g_free.
char *strip_text(const Requirement *requirement) G_GNUC_WARN_UNUSED_RESULT;

// The same for several places of one check with the same limits: `█` from the least value to the
// greatest.
char *strip_range(const Requirement *requirement, const Number *least,
                  const Number *greatest) G_GNUC_WARN_UNUSED_RESULT;
