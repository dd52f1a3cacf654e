// A plain array of character cells: what widgets paint and the terminal shows. Pure.
#pragma once
#include <glib.h>

// What a colour may repeat; it never says anything that words and marks do not.
typedef enum {
    ROLE_CALM,    // no colour
    ROLE_HEED,    // FAIL and LATE
    ROLE_UNSURE,  // DOUBT and clocks
    ROLE_GRANTED, // conceded
    ROLE_HERE,    // the field
    ROLE_FAINT,   // rules, and what was struck
} Role;

enum { ROLES = 6 };

// Ways of type, as bits.
typedef enum {
    TYPE_PLAIN = 0,
    TYPE_BOLD = 1,      // the one thing
    TYPE_REVERSE = 2,   // where the hand is
    TYPE_UNDERLINE = 4, // column heads
} Type;

typedef struct {
    guint8 type; // bits of Type
    guint8 role;
} Style;

typedef struct {
    gunichar character; // 0: the right half of a wide character
    Style style;
} Cell;

// Rows of cells, all blank at first. Whatever is put outside its width is left out; a canvas that
// grows adds rows below, up to ROWS_MOST, else rows outside are left out too.
typedef struct {
    guint width, height;
    gboolean ascii; // signs are put in their ASCII spelling
    gboolean grows;
    GArray *cells; // Cell, row by row
} Canvas;

enum { ROWS_MOST = 4096 };

// The caller frees with canvas_free.
Canvas *canvas_new(guint width, guint height, gboolean ascii) G_GNUC_WARN_UNUSED_RESULT;
// One that begins with no rows and grows.
Canvas *canvas_new_growing(guint width, gboolean ascii) G_GNUC_WARN_UNUSED_RESULT;
void canvas_free(Canvas *canvas); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Canvas, canvas_free)

static inline Style style_of(guint8 type, guint8 role)
{
    return (Style){type, role};
}

// The cell, or NULL outside.
const Cell *canvas_cell(const Canvas *canvas, guint row, guint column);

// Puts text from that column on, at most `width` columns of it (0: up to the right edge); where it
// is longer, its last column says so with `…` (ASCII `~`). Characters that would act on a terminal
// (controls, what hides or turns text) are put as `?`. Signs outside ASCII are spelled in ASCII
// where the canvas is so: `±` as `+-`, `√` as `+`. Returns the column behind.
guint canvas_put(Canvas *canvas, guint row, guint column, guint width, Style style,
                 const char *text);
// The same, ending in front of column `end`.
void canvas_put_right(Canvas *canvas, guint row, guint end, Style style, const char *text);
// Words on as many rows as they need, broken at blanks. Returns the row behind.
guint canvas_wrap(Canvas *canvas, guint row, guint column, guint width, Style style,
                  const char *words);
// `count` times the one character of `sign`.
void canvas_fill(Canvas *canvas, guint row, guint column, guint count, Style style,
                 const char *sign);
// Gives cells that are there another style.
void canvas_style(Canvas *canvas, guint row, guint column, guint count, Style style);
// Copies rows `from` to `from + count - 1` of another canvas to row `row`, column `column`.
void canvas_copy(Canvas *canvas, guint row, guint column, const Canvas *other, guint from,
                 guint count);

// How many columns a text takes on this canvas.
guint canvas_text_width(const Canvas *canvas, const char *text);

// The canvas as text, a line per row without blanks at its end. The caller frees with g_free.
char *canvas_text(const Canvas *canvas) G_GNUC_WARN_UNUSED_RESULT;
