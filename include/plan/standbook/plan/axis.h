// Axes and labels as a plan writes them: `1..4`, `L1..L3/R1..R3`, `top/mid/bottom`. Errors are
// STANDBOOK_ERROR_MISUSE; `offset` then says where in the text, in characters from its start.
#pragma once
#include <glib.h>

enum { AXIS_LABELS = 1000 }; // at most, on one axis

typedef struct {
    char *name;
    GStrv labels; // in order, each once, never empty
} PlanAxis;

// Copies both. The caller frees with plan_axis_free.
PlanAxis *plan_axis_new(const char *name, const char *const *labels) G_GNUC_WARN_UNUSED_RESULT;
void plan_axis_free(PlanAxis *axis);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(PlanAxis, plan_axis_free)

// The index of a label on the axis, -1 if it is not there.
gint plan_axis_index(const PlanAxis *axis, const char *label);

// Reads labels: parts with `/` between, each a label (letters and digits) or a range `FIRST..LAST`
// of whole numbers with the same letters before them (upwards or downwards), or of single letters.
// The caller frees with g_strfreev. NULL: an empty part, a character that is none of a label, a
// label twice, ends of a range that do not match, or more than AXIS_LABELS.
GStrv labels_read(const char *text, gsize *offset, GError **error) G_GNUC_WARN_UNUSED_RESULT;
