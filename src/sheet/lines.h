// Widths of text in columns, and its breaking into lines; for the text printer only.
#pragma once
#include <glib.h>

enum { MARGIN = 2 }; // columns on either side

guint span_width(const char *text, gsize bytes);
guint text_width(const char *text);

// Breaks clean text into lines of at most `width` columns (char *), at blanks; a word is broken
// only where it is wider than that. The caller frees with g_ptr_array_unref.
GPtrArray *break_lines(const char *text, guint width) G_GNUC_WARN_UNUSED_RESULT;

// The widths of its words (guint), and how many lines they take in so many columns. The caller
// frees with g_array_unref.
GArray *word_widths(const char *text) G_GNUC_WARN_UNUSED_RESULT;
guint lines_of_words(const GArray *widths, guint width);

void put_blanks(GString *out, guint count);
// Ends a line without blanks at its end.
void end_line(GString *out);
// A line across the page, from margin to margin.
void put_rule(GString *out);
