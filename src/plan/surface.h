// The bytes of a plan file before and beside libyaml: what it would let pass and should not.
#pragma once
#include <standbook/plan/fault.h>

// Checks size, encoding, control characters and tabs. Returns FALSE, with a fault, if the bytes
// are no text that can be parsed.
gboolean surface_check(const char *bytes, gsize length, Faults *faults);

// Finds each `#` behind a space with no space after it, which would silently begin a comment.
// `quoted` holds pairs of gsize, start and end in characters, of the texts where a `#` is only a
// `#`, in order.
void surface_find_comments(const char *bytes, gsize length, const GArray *quoted, Faults *faults);

// Whether a character turns, hides or controls text instead of showing. A line feed does too.
gboolean surface_is_hidden(gunichar character);
