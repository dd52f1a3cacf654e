// Labels as a plan writes them: `1..4`, `L1..L3/R1..R3`, `top/mid/bottom`. Errors are
// STANDBOOK_ERROR_MISUSE; `offset` then says where in the text, in characters from its start.
#pragma once
#include <glib.h>

enum { LABELS_MOST = 1000 }; // at most, on one axis

// Reads labels: parts with `/` between, each a label (letters and digits) or a range `FIRST..LAST`
// of whole numbers with the same letters before them (upwards or downwards), or of single letters.
// The caller frees with g_strfreev. NULL: an empty part, a character that is none of a label, a
// label twice, ends of a range that do not match, or more than LABELS_MOST.
GStrv labels_read(const char *text, gsize *offset, GError **error) G_GNUC_WARN_UNUSED_RESULT;
