// The inside of an Array, for the files that work on shapes.
#pragma once
#include <standbook/value/array.h>

struct Array {
    GPtrArray *axes;  // of Axis
    GArray *places;   // of Place, row-major
    char *dropped;    // see array_dropped
    gboolean shifted; // an `[axis - 1]` is in it: the places it lacks are meant to be lacking
    gint references;
};

void array_put(Array *array, gsize place, Place value); // takes the place's content over
// The shape several arrays line up to, all places open; NULL and an error if they do not.
Array *array_line_up(const Array *const *arrays, gsize count, GError **error);
// The place of `array` that is seen at a place of a shape it was lined up into.
const Place *array_seen(const Array *array, const Array *shape, gsize place);
// The shape without the axes marked in `gone` (one flag per axis), all places open, and where a
// place of the whole stands in it.
Array *array_without(const Array *array, const gboolean *gone);
gsize array_place_without(const Array *array, gsize place, const gboolean *gone);
// `cylinder 1, 2, 3; height top, mid`, or `no axes`. The caller frees.
char *array_axes_text(const Array *array);
