// Inside the room: what an open place waits for, shared and never changed once made, so that a
// formula over many places costs one node an operation.
#pragma once
#include <standbook/value/array.h>

// One reading that is not there. The caller frees.
Awaited *awaited_one(gint source) G_GNUC_WARN_UNUSED_RESULT;
// What either waits for, `one` before `other`; NULL is nothing. A reference of its own.
Awaited *awaited_both(Awaited *one, Awaited *other) G_GNUC_WARN_UNUSED_RESULT;
Awaited *awaited_copy(Awaited *awaited) G_GNUC_WARN_UNUSED_RESULT; // shared; NULL is allowed
void awaited_free(Awaited *awaited);                               // NULL is allowed
