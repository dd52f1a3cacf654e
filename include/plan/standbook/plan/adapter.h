// The adapter on a wrench, as a plan and a log line write it: `X1`, `X1 at 90°`.
#pragma once
#include <standbook/value/number.h>

// Reads the label, which the caller frees with g_free, and the angle from the wrench's own line, in
// base units; NULL where none is said: in line. Words that are no label (`holding tool at the rim`)
// are one as they stand. FALSE with a sentence: the angle is none from 0 to 180°.
gboolean adapter_read(const char *words, char **label, Number **angle, GError **error);

// What stands in front of the bolts that it is for (`X1 at 90° on bolts 2, 4`), and from where on
// they are listed; NULL for all. The caller frees with g_free.
char *adapter_front(const char *words, const char **bolts) G_GNUC_WARN_UNUSED_RESULT;
