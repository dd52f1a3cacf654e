// The order in which bolts are taken, from the words of a plan's `order:` and `layout:`.
#pragma once
#include <glib.h>

// Returns bolt indexes (guint, 0-based into `bolts`), one per bolt, in the order in which they are
// taken; the caller frees with g_array_unref. `bolts` are the `count` labels as numbered, all
// different. `words` NULL or empty means as numbered; `layout` may be NULL.
//
//   as numbered   the order of `bolts`
//   row           from the middle to both ends, of two equally far the lower number first:
//                 4-5-3-6-2-7-1-8; 2-1-3. For bolts in one row.
//   criss-cross   bolts numbered round a circle. Four at a time at right angles where the number
//                 divides by four (1-3-2-4; 1-5-3-7-2-6-4-8), the next four as far from the last as
//                 can be; else in opposite pairs, each beginning two further round (1-4-3-6-5-2);
//                 an odd number always goes to the nearly opposite bolt (1-3-5-2-4).
//   spiral        from the centre of the layout's rows outwards, each bolt followed by the one
//                 opposite it through the centre, of equally far ones the upper row and then the
//                 right first: rows 1-5 and 6-10 give 3-8-4-7-2-9-5-6-1-10. Rows may differ in
//                 length: each is centred.
//   3-4-1-2-5-6   a list of labels, parted by hyphens, commas or blanks, each bolt once
//
// `layout` is `circle`, or all labels in rows as they lie, rows parted by `/`, labels by blanks; it
// is checked even where the order needs none.
//
// Sources: row, spiral and criss-cross of 4 and 6 are common practice, no published source;
// criss-cross of 8, 12, 16, 20 and 24 is the legacy pattern of ASME PCC-1 (from memory). The
// maker's own order comes first: a plan that has one lists it.
//
// NULL with STANDBOOK_ERROR_NO when a bolt is left out, twice or unknown (the nearest label is
// named), when there is no such order, or when order and layout do not fit. The message begins
// `order:` or `layout:`.
GArray *pattern_order(const char *words, const char *layout, const char *const *bolts, gsize count,
                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
