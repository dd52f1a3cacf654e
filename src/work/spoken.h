// Words of a question as people say it: numbers in words, and words that name nothing. Pure.
#pragma once
#include <glib.h>

// A number from 1 to 12 in figures: of `three` or `third` it is `3`; NULL for any other word. The
// word is folded (g_utf8_casefold).
const char *spoken_number(const char *word);

// Whether a folded word only makes a question of the others: `what`, `was`, `the`, `number`.
gboolean spoken_names_nothing(const char *word);
