// An axis: a name and its labels in order, `cylinder: 1 2 3 4`. It never changes; copies are
// shared.
#pragma once
#include <glib.h>

typedef struct Axis Axis;

// `labels` is NULL-terminated, without repeats, and copied.
Axis *axis_new(const char *name, const char *const *labels) G_GNUC_WARN_UNUSED_RESULT;
Axis *axis_copy(const Axis *axis) G_GNUC_WARN_UNUSED_RESULT;
void axis_free(Axis *axis); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Axis, axis_free)

const char *axis_name(const Axis *axis);
gsize axis_size(const Axis *axis);
const char *axis_label(const Axis *axis, gsize index); // index below axis_size
gssize axis_find(const Axis *axis, const char *label); // -1 if it is not there
