// How well a worked-out value is known: the variance u² (standard uncertainty squared) from the
// weights of the readings in it. All rational, no root is taken. First order, JCGM 100:2008, 5.1.2;
// one gauge keeps its error within one value, different gauges are independent.
#pragma once
#include <standbook/value/array.h>

// What is known of the gauge that took a reading. All in base units, widths (no offset).
typedef struct {
    const char *gauge;        // identity of the gauge with its calibration; NULL: none was named
    const Number *expanded;   // U, k = 2, of its calibration; NULL: not calibrated
    const Number *repeat;     // how well it repeats, r, k = 2, at most U; NULL: not known
    const Number *graduation; // its graduation, or the last place typed when no gauge is named
} ReadingDoubt;

// The gauge of a reading, by the id used as its source; NULL adds nothing for that reading.
typedef const ReadingDoubt *(*ReadingDoubtOf)(gint source, gpointer user);

// u² of a place, never NULL, 0 where it holds no value. Per gauge:
//   calibrated:           max((Σc)², Σc²) · U²/4
//   with its repeat:      ((Σc)² (U² - r²) + Σc² r²) / 4
//   graduation alone:     Σc² g² / 12                       (JCGM 100:2008, 4.3.7)
// and for each constant's ±: c² U²/4. The readings of one gauge have the same U and r. The caller
// frees.
Number *uncertainty_variance(const Place *place, ReadingDoubtOf doubt_of,
                             gpointer user) G_GNUC_WARN_UNUSED_RESULT;
// U = 2u, the root of 4u². The caller frees.
Number *uncertainty_expanded(const Number *variance) G_GNUC_WARN_UNUSED_RESULT;
// u² + U²/4: adds an independent expanded uncertainty (a check's `doubt`). The caller frees.
Number *uncertainty_add(const Number *variance, const Number *expanded) G_GNUC_WARN_UNUSED_RESULT;
