// A log line (standbook-log(5)) read from the left: words, names, places, values and words in
// quotes. What cannot be taken is refused with its column, in characters from 1:
// `column 18: …; write …` (STANDBOOK_ERROR_MISUSE).
#pragma once
#include <standbook/value/axis.h>
#include <standbook/value/reading.h>

enum { WORDS_LENGTH = 4096 }; // bytes of one line

// Where reading stands in a line; copy it to come back to this place.
typedef struct {
    const char *text; // the line
    const char *at;   // the next thing to read, never a blank
} Words;

// Begins to read a line. FALSE if it is too long, no UTF-8, or has characters that hide or turn
// text; a tab counts as a blank. The text outlives the words.
gboolean words_begin(Words *words, const char *text, GError **error);

gboolean words_ended(const Words *words);

// Refuses what stands at `at`: sets the error, with its column in front, and returns FALSE. What
// is formatted is made clean text.
gboolean words_refuse(const Words *words, const char *at, GError **error, const char *format, ...)
    G_GNUC_PRINTF(4, 5);

// If this phrase (one word or several) stands here, ended by a blank, a bracket, a quote or the end
// of the line, goes behind it and returns TRUE.
gboolean words_skip(Words *words, const char *phrase);

// The name that fits here and is the longest; goes behind it. NULL if none fits.
const char *words_name(Words *words, const char *const *names, gsize count);

// What may have been meant where no name fits: the name nearest to the words up to the next
// bracket, quote or number, or to the first few of them. NULL if none is near.
const char *words_meant(const Words *words, const char *const *names, gsize count);

// The next word without going on; NULL at the end. The caller frees with g_free.
char *words_peek(const Words *words) G_GNUC_WARN_UNUSED_RESULT;

// One word, up to a blank, bracket or comma. NULL if there is none; `what` says what is missing:
// `the tool`. The caller frees with g_free.
char *words_word(Words *words, const char *what, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Words in quotes, or one word without. NULL if there is nothing, or a quote is not closed. The
// caller frees with g_free.
char *words_text(Words *words, const char *what, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Whether words in quotes stand here.
gboolean words_are_quoted(const Words *words);

// A whole number from `least`; FALSE if there is none.
gboolean words_whole(Words *words, const char *what, guint least, guint *number, GError **error);

// A place in brackets, if one is here. `axes` (const Axis *) are those of `name`. Sets `picked`
// (room for one per axis) to the label's index, or -1 for an axis that is left out.
gboolean words_place(Words *words, const GPtrArray *axes, const char *name, gssize *picked,
                     GError **error);

// The places that a pick leaves, as indexes into the places of the axes, the last axis running
// fastest (guint). The caller frees with g_array_unref.
GArray *places_picked(const GPtrArray *axes, const gssize *picked) G_GNUC_WARN_UNUSED_RESULT;

// The labels of one place, in order of the axes. The caller frees with g_strfreev.
GStrv places_labels(const GPtrArray *axes, guint place) G_GNUC_WARN_UNUSED_RESULT;

// A value with the place in the line where it stands.
typedef struct {
    Reading reading;
    const char *at;
} WordsValue;

// As many values as there are, at least one: `59.790 59.791 mm`. A unit behind the last holds for
// all that have none of their own; without any they have `unit` (NULL: pure numbers). Returns
// WordsValue *; the caller frees with g_ptr_array_unref. NULL if one cannot be read.
GPtrArray *words_values(Words *words, const Unit *unit, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// The same for exactly one value. The caller clears *reading with reading_clear.
gboolean words_value(Words *words, const Unit *unit, Reading *reading, GError **error);

// The same of a value that has its unit from the caller: no unit is read behind it.
gboolean words_bare_value(Words *words, const Unit *unit, Reading *reading, GError **error);

// A number without a unit.
gboolean words_number(Words *words, Reading *reading, GError **error);

// Whether a value begins here.
gboolean words_begin_value(const Words *words);
// Whether what stands here ends a row of values: a word such as `with` or `due`, a remark, the end.
gboolean words_end_values(const Words *words);

// 1 to 12 of the name of a month, `March`, or of three letters of it and more, `mar`, whatever
// stands behind so many letters; 0 if it is none.
guint words_month(const char *text, gsize letters);

// A date (`2025-03-13`, or `13 March 2025`, which becomes the same) or a time (`11:36`, `11:36:20`)
// if one stands here, and goes behind it; NULL if none does. FALSE if it has that form and there is
// no such day or time. The caller frees with g_free.
gboolean words_date(Words *words, char **date, GError **error);
gboolean words_time(Words *words, char **time, GError **error);

// The text from here up to `end`, without blanks around it, and goes on behind the blanks at `end`,
// which must stand in the line. The caller frees with g_free.
char *words_up_to(Words *words, const char *end) G_GNUC_WARN_UNUSED_RESULT;

// Refuses whatever is left in the line; TRUE if nothing is.
gboolean words_finish(const Words *words, GError **error);
