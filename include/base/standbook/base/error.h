// Errors that a person can cause. Every function that can fail takes a GError **: the caller owns
// the error, NULL is allowed, and the first error wins (GLib's own rules). The message is one
// sentence that says what is wrong, where, and what to do instead; it has no full stop and is
// clean text (see text.h).
#pragma once
#include <glib.h>

#define STANDBOOK_ERROR (standbook_error_quark())

// The code of a STANDBOOK_ERROR is the exit status that standbook(1) documents.
typedef enum {
    STANDBOOK_ERROR_NO = 1,     // the answer is no: plan not valid, gate not complete, digest differs
    STANDBOOK_ERROR_MISUSE = 2, // what was typed cannot be taken
    STANDBOOK_ERROR_STORE = 3,  // trouble with the store or a file
} StandbookErrorCode;

GQuark standbook_error_quark(void);
