// The body of an entry against the table of kinds.
#pragma once
#include <jansson.h>
#include <standbook/record/kind.h>

// Whether the text is a UUID in lower case.
gboolean id_is_valid(const char *text);

// Whether the body has all needed fields of the kind, no others, and each of its type.
gboolean body_check(const EntryKind *kind, json_t *body, GError **error);

// A copy of a checked body with all keys in the table's order.
json_t *body_ordered(const EntryKind *kind, json_t *body);
