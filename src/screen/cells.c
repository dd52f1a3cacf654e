#include "cells.h"

#include <string.h>

// Every sign the screens use outside ASCII, and how it is spelled there.
typedef struct {
    const char *sign, *ascii;
} Spelling;

static const Spelling spellings[] = {
    {"√", "+"}, {"·", "."}, {"▲", "^"}, {"▼", "v"}, {"×", "x"}, {"◆", "@"},  {"−", "-"},
    {"─", "-"}, {"│", "|"}, {"├", "|"}, {"┤", "|"}, {"┼", "+"}, {"▒", "~"},  {"█", "#"},
    {"║", "!"}, {"═", "="}, {"░", ":"}, {"┌", "+"}, {"┐", "+"}, {"└", "+"},  {"┘", "+"},
    {"╔", "#"}, {"╗", "#"}, {"╚", "#"}, {"╝", "#"}, {"…", "~"}, {"±", "+-"}, {"°", "deg"},
    {"²", "2"}, {"³", "3"}, {"–", "-"}, {"’", "'"}, {"µ", "u"}, {"÷", "/"},  {"≈", "~"},
    {"≤", "<"}, {"≥", ">"}, {"→", ">"},
};

static const char *spelling_of(gunichar character)
{
    for (gsize i = 0; i < G_N_ELEMENTS(spellings); i++)
        if (g_utf8_get_char(spellings[i].sign) == character)
            return spellings[i].ascii;
    return "?";
}

static void clear_from(Canvas *canvas, guint first)
{
    Cell *cells = (Cell *)(gpointer)canvas->cells->data;
    for (guint i = first; i < canvas->cells->len; i++)
        cells[i].character = ' ';
}

Canvas *canvas_new(guint width, guint height, gboolean ascii)
{
    Canvas *canvas = canvas_new_growing(width, ascii);
    canvas->grows = FALSE;
    canvas->height = height;
    g_array_set_size(canvas->cells, width * height);
    clear_from(canvas, 0);
    return canvas;
}

Canvas *canvas_new_growing(guint width, gboolean ascii)
{
    Canvas *canvas = g_new0(Canvas, 1);
    canvas->width = width;
    canvas->ascii = ascii;
    canvas->grows = TRUE;
    canvas->cells = g_array_new(FALSE, TRUE, sizeof(Cell));
    return canvas;
}

void canvas_free(Canvas *canvas)
{
    if (!canvas)
        return;
    g_array_unref(canvas->cells);
    g_free(canvas);
}

static void grow_to(Canvas *canvas, guint height)
{
    if (!canvas->grows || height <= canvas->height || height > ROWS_MOST)
        return;
    guint from = canvas->cells->len;
    g_array_set_size(canvas->cells, canvas->width * height);
    clear_from(canvas, from);
    canvas->height = height;
}

// The cell to be written to, or NULL outside.
static Cell *cell_at(Canvas *canvas, guint row, guint column)
{
    grow_to(canvas, row + 1);
    if (row >= canvas->height || column >= canvas->width)
        return NULL;
    return &g_array_index(canvas->cells, Cell, row * canvas->width + column);
}

const Cell *canvas_cell(const Canvas *canvas, guint row, guint column)
{
    if (row >= canvas->height || column >= canvas->width)
        return NULL;
    return &g_array_index(canvas->cells, Cell, row * canvas->width + column);
}

// What hides or turns text: zero width, joiners, bidirectional marks.
static gboolean acts_on_text(gunichar character)
{
    return g_unichar_iszerowidth(character) || (character >= 0x200B && character <= 0x200F) ||
           (character >= 0x202A && character <= 0x202E) ||
           (character >= 0x2060 && character <= 0x206F) || character == 0xFEFF;
}

// The characters that are put for one of a text; `out` has room for four.
static guint spelled(const Canvas *canvas, gunichar character, gunichar *out)
{
    out[0] = character;
    if (character >= ' ' && character < 0x7F)
        return 1;
    if (g_unichar_iscntrl(character) || acts_on_text(character) || character == 0xFFFD)
        out[0] = '?';
    else if (canvas->ascii && character >= 0x80) {
        const char *ascii = spelling_of(character);
        guint count = (guint)strlen(ascii);
        for (guint i = 0; i < count; i++)
            out[i] = (gunichar)ascii[i];
        return count;
    }
    return 1;
}

// A text as it is put: characters, each one column or two.
typedef struct {
    gunichar *characters;
    guint count;
} Spelled;

// The caller frees the characters. A character of more than one byte is spelled by four at most.
static Spelled spell(const Canvas *canvas, const char *text)
{
    g_autofree char *made = g_utf8_validate(text, -1, NULL) ? NULL : g_utf8_make_valid(text, -1);
    const char *valid = made ? made : text;
    Spelled spelt = {g_new(gunichar, 2 * strlen(valid) + 1), 0};
    for (const char *at = valid; *at; at = g_utf8_next_char(at))
        spelt.count += spelled(canvas, g_utf8_get_char(at), spelt.characters + spelt.count);
    return spelt;
}

static guint columns_of(gunichar character)
{
    static const gunichar first_wide = 0x1100; // Unicode, EastAsianWidth.txt
    return character >= first_wide && g_unichar_iswide(character) ? 2 : 1;
}

static guint width_of(const Spelled *spelt)
{
    guint width = 0;
    for (guint i = 0; i < spelt->count; i++)
        width += columns_of(spelt->characters[i]);
    return width;
}

// How many columns it takes; a part of it that would stand outside is left out.
static guint put_one(Canvas *canvas, guint row, guint column, Style style, gunichar character)
{
    guint columns = columns_of(character);
    for (guint i = 0; i < columns; i++) {
        Cell *cell = cell_at(canvas, row, column + i);
        if (cell)
            *cell = (Cell){i ? 0 : character, style};
    }
    return columns;
}

guint canvas_put(Canvas *canvas, guint row, guint column, guint width, Style style,
                 const char *text)
{
    const Spelled spelt = spell(canvas, text);
    guint room = column < canvas->width ? canvas->width - column : 0;
    room = width ? MIN(width, room) : room;
    gboolean cut = width_of(&spelt) > room;
    guint end = column + room - (cut && room ? 1 : 0);
    for (guint i = 0; i < spelt.count; i++) {
        if (column + columns_of(spelt.characters[i]) > end)
            break;
        column += put_one(canvas, row, column, style, spelt.characters[i]);
    }
    if (cut && room)
        column += put_one(canvas, row, column, style, canvas->ascii ? '~' : 0x2026);
    g_free(spelt.characters);
    return column;
}

void canvas_put_right(Canvas *canvas, guint row, guint end, Style style, const char *text)
{
    guint width = canvas_text_width(canvas, text);
    canvas_put(canvas, row, end > width ? end - width : 0, MIN(width, end), style, text);
}

guint canvas_wrap(Canvas *canvas, guint row, guint column, guint width, Style style,
                  const char *words)
{
    g_auto(GStrv) each = g_strsplit(words, " ", -1);
    guint used = 0;
    for (guint i = 0; each[i]; i++) {
        guint wide = canvas_text_width(canvas, each[i]);
        if (used && used + 1 + wide > width) {
            row++;
            used = 0;
        }
        guint at = column + used + (used ? 1 : 0);
        used = canvas_put(canvas, row, at, 0, style, each[i]) - column;
    }
    return row + 1;
}

void canvas_fill(Canvas *canvas, guint row, guint column, guint count, Style style,
                 const char *sign)
{
    const Spelled spelt = spell(canvas, sign);
    for (guint i = 0; i < count && spelt.count; i++)
        put_one(canvas, row, column + i, style, spelt.characters[0]);
    g_free(spelt.characters);
}

void canvas_style(Canvas *canvas, guint row, guint column, guint count, Style style)
{
    for (guint i = 0; i < count; i++) {
        Cell *cell = cell_at(canvas, row, column + i);
        if (cell)
            cell->style = style;
    }
}

void canvas_copy(Canvas *canvas, guint row, guint column, const Canvas *other, guint from,
                 guint count)
{
    for (guint r = 0; r < count; r++) {
        const Cell *source = canvas_cell(other, from + r, 0);
        Cell *cells = source ? cell_at(canvas, row + r, column) : NULL;
        if (cells)
            memcpy(cells, source, sizeof *cells * MIN(other->width, canvas->width - column));
    }
}

guint canvas_text_width(const Canvas *canvas, const char *text)
{
    const Spelled spelt = spell(canvas, text);
    guint width = width_of(&spelt);
    g_free(spelt.characters);
    return width;
}

char *canvas_text(const Canvas *canvas)
{
    GString *text = g_string_new(NULL);
    for (guint row = 0; row < canvas->height; row++) {
        for (guint column = 0; column < canvas->width; column++) {
            gunichar character = canvas_cell(canvas, row, column)->character;
            if (character)
                g_string_append_unichar(text, character);
        }
        while (text->len && text->str[text->len - 1] == ' ')
            g_string_truncate(text, text->len - 1);
        g_string_append_c(text, '\n');
    }
    return g_string_free(text, FALSE);
}
