// What was typed or scanned and stands in no field, nor in any ledger: it waits until it is taken
// or struck, also beyond the end of the program.
#pragma once
#include <standbook/base/moment.h>

// All texts are freed with it.
typedef struct {
    char *text;
    char *place;   // in whose field it stood, in words; NULL: in none
    char *came;    // when, `2026-03-12T15:08:00`
    gboolean left; // by a program that has ended
} Unplaced;

// Unplaced, oldest first; freed with g_ptr_array_unref.
GPtrArray *unplaced_new(void) G_GNUC_WARN_UNUSED_RESULT;
// One more. `place` may be NULL.
void unplaced_add(GPtrArray *all, const char *text, const char *place, Moment came);
const char *unplaced_text(const GPtrArray *all, guint index);
// Takes so many bytes off its front; with the last of them it is gone.
void unplaced_shorten(GPtrArray *all, guint index, gsize taken);
// `from 15:08 at found crank travel`, which stands behind it; NULL where it came to this program
// itself with no field open. The caller frees with g_free.
char *unplaced_how(const GPtrArray *all, guint index, Moment now) G_GNUC_WARN_UNUSED_RESULT;

// As one text to be kept aside, with the lines of what was begun (GStrv by name); "" for nothing.
// The caller frees with g_free.
char *unplaced_write(const GPtrArray *all, GHashTable *drafts) G_GNUC_WARN_UNUSED_RESULT;
// Reads what a program has left; what is begun here already stays as it is. What cannot be read is
// left out.
void unplaced_read(const char *text, GPtrArray *all, GHashTable *drafts);
