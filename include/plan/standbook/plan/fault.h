// Faults of a plan file: each has the place in the file and one sentence saying what is wrong and
// what to write instead. A list of them is kept in the order found and sorted once at the end.
#pragma once
#include <glib.h>

typedef struct {
    guint line;    // from 1
    guint column;  // from 1, in characters
    char *message; // clean text, without the place
} Fault;

typedef struct Faults Faults;

// An empty list. The caller frees with faults_free.
Faults *faults_new(void) G_GNUC_WARN_UNUSED_RESULT;
void faults_free(Faults *faults);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Faults, faults_free)

// Adds a fault; what is formatted is made clean text (base/text.h).
void faults_add(Faults *faults, guint line, guint column, const char *format, ...)
    G_GNUC_PRINTF(4, 5);

guint faults_count(const Faults *faults);

// The fault at `index` (0 to count - 1). It belongs to the list.
const Fault *faults_at(const Faults *faults, guint index);

// Sorts by line, then column; faults of one place keep the order in which they were found.
void faults_sort(Faults *faults);

// Returns `file:line:column: message`. The caller frees with g_free.
char *fault_text(const Fault *fault, const char *file) G_GNUC_WARN_UNUSED_RESULT;
