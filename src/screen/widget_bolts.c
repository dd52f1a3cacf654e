#include "widget_bolts.h"

#include <math.h>
#include <string.h>

// A size of box: its columns and rows, and how much room it takes.
typedef struct {
    guint width, height;
    guint across, down; // from one box to the next
} Size;

static const Size sizes[] = {
    {9, 3, 10, 4}, {9, 3, 10, 3}, {7, 3, 8, 3}, {7, 1, 8, 2}, {6, 1, 6, 1}};

// ROWS ------------------------------------------------------------------------------------------

// What labels of one row begin with: letters, or all in front of the comma.
static gsize beginning(const char *label)
{
    const char *comma = strchr(label, ',');
    gsize letters = 0;
    while (g_ascii_isalpha(label[letters]))
        letters++;
    return comma ? 0 : letters;
}

static GPtrArray *rows_by_labels(const Bolt *bolts, guint count)
{
    GPtrArray *rows = g_ptr_array_new_with_free_func((GDestroyNotify)g_strfreev);
    g_autoptr(GPtrArray) row = g_ptr_array_new();
    for (guint i = 0; i < count; i++) {
        gsize now = beginning(bolts[i].label);
        gboolean other = i && (now != beginning(bolts[i - 1].label) ||
                               strncmp(bolts[i].label, bolts[i - 1].label, now) != 0);
        if (other) {
            g_ptr_array_add(row, NULL);
            g_ptr_array_add(rows, g_strdupv((GStrv)row->pdata));
            g_ptr_array_set_size(row, 0);
        }
        g_ptr_array_add(row, (gpointer)bolts[i].label);
    }
    g_ptr_array_add(row, NULL);
    g_ptr_array_add(rows, g_strdupv((GStrv)row->pdata));
    return rows;
}

GPtrArray *bolt_rows(const char *layout, const Bolt *bolts, guint count)
{
    if (!layout || strcmp(layout, "circle") == 0)
        return rows_by_labels(bolts, count);
    GPtrArray *rows = g_ptr_array_new_with_free_func((GDestroyNotify)g_strfreev);
    g_auto(GStrv) parts = g_strsplit(layout, "/", -1);
    for (guint i = 0; parts[i]; i++) {
        g_auto(GStrv) words = g_strsplit(g_strstrip(parts[i]), " ", -1);
        g_autoptr(GPtrArray) row = g_ptr_array_new();
        for (guint w = 0; words[w]; w++)
            if (*words[w])
                g_ptr_array_add(row, words[w]);
        g_ptr_array_add(row, NULL);
        g_ptr_array_add(rows, g_strdupv((GStrv)row->pdata));
    }
    return rows;
}

// BOXES -----------------------------------------------------------------------------------------

typedef struct {
    const char *upper_left, *across, *upper_right, *side, *lower_left, *lower_right;
} Frame;

static const Frame plain_frame = {"┌", "─", "┐", "│", "└", "┘"};
static const Frame double_frame = {"╔", "═", "╗", "║", "╚", "╝"};

static void marks_of(BoltLook look, const char **left, const char **right)
{
    static const char *const marks[][2] = {
        [BOLT_TO_COME] = {" ", " "},  [BOLT_TIGHT] = {"√", "√"}, [BOLT_HERE] = {">", "<"},
        [BOLT_QUESTION] = {"?", "?"}, [BOLT_DOUBT] = {"?", "?"}, [BOLT_NOT_NEEDED] = {"−", "−"}};
    *left = marks[look][0];
    *right = marks[look][1];
}

static gboolean is_here(const Bolt *bolt)
{
    return bolt->look == BOLT_HERE || bolt->look == BOLT_QUESTION;
}

static Style style_of_bolt(const Bolt *bolt)
{
    return is_here(bolt)              ? style_of(TYPE_REVERSE, ROLE_HERE)
           : bolt->look == BOLT_DOUBT ? style_of(TYPE_BOLD, ROLE_UNSURE)
                                      : style_of(TYPE_PLAIN, ROLE_CALM);
}

// `│√  3  √│`: the label in the middle, a mark at each side.
static void put_middle(Canvas *canvas, guint row, guint column, guint width, const Bolt *bolt,
                       const char *side_left, const char *side_right)
{
    const char *left, *right;
    Style style = style_of_bolt(bolt);
    guint label = canvas_text_width(canvas, bolt->label);
    guint inner = width - 4;
    marks_of(bolt->look, &left, &right);
    canvas_put(canvas, row, column, 1, style, side_left);
    canvas_put(canvas, row, column + 1, 1, style, left);
    canvas_fill(canvas, row, column + 2, inner, style, " ");
    canvas_put(canvas, row, column + 2 + (inner - MIN(label, inner) + 1) / 2, inner, style,
               bolt->label);
    canvas_put(canvas, row, column + width - 2, 1, style, right);
    canvas_put(canvas, row, column + width - 1, 1, style, side_right);
}

static void put_box(Canvas *canvas, guint row, guint column, const Size *size, const Bolt *bolt)
{
    if (size->height == 1) {
        put_middle(canvas, row, column, size->width, bolt, "[", "]");
        return;
    }
    const Frame *frame = is_here(bolt) ? &double_frame : &plain_frame;
    Style style = style_of(TYPE_PLAIN, ROLE_CALM);
    g_autofree char *turn = g_strdup_printf("%u.", bolt->turn);
    canvas_put(canvas, row, column, 1, style, frame->upper_left);
    canvas_fill(canvas, row, column + 1, size->width - 2, style, frame->across);
    if (bolt->turn)
        canvas_put(canvas, row, column + 1, 0, style, turn);
    canvas_put(canvas, row, column + size->width - 1, 1, style, frame->upper_right);
    put_middle(canvas, row + 1, column, size->width, bolt, frame->side, frame->side);
    canvas_put(canvas, row + 2, column, 1, style, frame->lower_left);
    canvas_fill(canvas, row + 2, column + 1, size->width - 2, style, frame->across);
    canvas_put(canvas, row + 2, column + size->width - 1, 1, style, frame->lower_right);
}

static const Bolt *bolt_of(const Bolt *bolts, guint count, const char *label)
{
    for (guint i = 0; i < count; i++)
        if (strcmp(bolts[i].label, label) == 0)
            return &bolts[i];
    return NULL;
}

// GRID ------------------------------------------------------------------------------------------

static guint label_width(const Canvas *canvas, const Bolt *bolts, guint count)
{
    guint width = 0;
    for (guint i = 0; i < count; i++)
        width = MAX(width, canvas_text_width(canvas, bolts[i].label));
    return width;
}

// The rows a grid takes where rows too long for the width are broken.
static guint grid_rows(const GPtrArray *rows, const Size *size, guint width)
{
    guint most = MAX(1, width / size->across), lines = 0;
    for (guint i = 0; i < rows->len; i++)
        lines += MAX(1, (g_strv_length(rows->pdata[i]) + most - 1) / most);
    return lines;
}

static const Size *size_for(const GPtrArray *rows, guint label, guint width, guint height)
{
    for (gsize i = 0; i < G_N_ELEMENTS(sizes); i++) {
        gboolean tight = sizes[i].width < label + 4;
        guint lines = grid_rows(rows, &sizes[i], width);
        if (!tight && (lines - 1) * sizes[i].down + sizes[i].height <= height)
            return &sizes[i];
    }
    return &sizes[G_N_ELEMENTS(sizes) - 1];
}

static guint paint_grid(Canvas *canvas, guint row, guint width, const Size *size,
                        const GPtrArray *rows, const Bolt *bolts, guint count)
{
    guint most = MAX(1, width / size->across);
    for (guint r = 0; r < rows->len; r++) {
        GStrv labels = rows->pdata[r];
        for (guint i = 0; labels[i]; i++) {
            const Bolt *bolt = bolt_of(bolts, count, labels[i]);
            if (i && i % most == 0)
                row += size->down;
            if (bolt)
                put_box(canvas, row, 1 + (i % most) * size->across, size, bolt);
        }
        row += size->down;
    }
    return row;
}

// CIRCLE ----------------------------------------------------------------------------------------

enum { CIRCLE_ROWS = 13, CIRCLE_COLUMNS = 46, CIRCLE_MOST = 8 };

// Where boxes sit is only drawn, never judged.
static void paint_circle(Canvas *canvas, guint row, const Bolt *bolts, guint count)
{
    static const Size box = {9, 3, 10, 3};
    for (guint i = 0; i < count; i++) {
        double angle = 2 * G_PI * i / count;
        double down = (CIRCLE_ROWS - box.height) / 2.0 * (1 - cos(angle));
        double across = (CIRCLE_COLUMNS - box.width) / 2.0 * (1 + sin(angle));
        put_box(canvas, row + (guint)lround(down), 1 + (guint)lround(across), &box, &bolts[i]);
    }
}

guint bolts_paint(Canvas *canvas, guint row, guint width, guint height, const GPtrArray *rows,
                  gboolean circle, const Bolt *bolts, guint count)
{
    gboolean round = circle && count > 2 && count <= CIRCLE_MOST && width > CIRCLE_COLUMNS &&
                     height >= CIRCLE_ROWS;
    if (round) {
        paint_circle(canvas, row, bolts, count);
        return row + CIRCLE_ROWS;
    }
    const Size *size = size_for(rows, label_width(canvas, bolts, count), width, height);
    return paint_grid(canvas, row, width, size, rows, bolts, count);
}
