#include "widget_bolts.h"

#include <math.h>
#include <string.h>

// A size of box.
typedef struct {
    guint width, height;
    guint beside;    // columns beside the label: frame and marks
    guint gap, down; // columns to the next box; rows to the box below
} Size;

// The widths are the least.
static const Size sizes[] = {
    {9, 3, 4, 1, 4}, {9, 3, 4, 1, 3}, {7, 3, 4, 1, 3}, {6, 3, 4, 0, 3},
    {7, 1, 4, 1, 2}, {6, 1, 4, 1, 1}, {5, 1, 3, 0, 1},
};

// Where a box has its left upper corner.
typedef struct {
    guint row, column;
    const Bolt *bolt;
} Spot;

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
        [BOLT_TO_COME] = {" ", " "},  [BOLT_TIGHT] = {"√", "√"},    [BOLT_HERE] = {">", "<"},
        [BOLT_QUESTION] = {"?", "?"}, [BOLT_DOUBT] = {"?", "?"},    [BOLT_LOW] = {"▼", "▼"},
        [BOLT_HIGH] = {"▲", "▲"},     [BOLT_CONCEDED] = {"◆", "◆"}, [BOLT_NOT_NEEDED] = {"−", "−"}};
    *left = marks[look][0];
    *right = marks[look][1];
}

static gboolean is_here(const Bolt *bolt)
{
    return bolt->look == BOLT_HERE || bolt->look == BOLT_QUESTION;
}

static Style style_of_bolt(const Bolt *bolt)
{
    static const Style styles[] = {
        [BOLT_TO_COME] = {TYPE_PLAIN, ROLE_CALM},   [BOLT_TIGHT] = {TYPE_PLAIN, ROLE_CALM},
        [BOLT_HERE] = {TYPE_REVERSE, ROLE_HERE},    [BOLT_QUESTION] = {TYPE_REVERSE, ROLE_HERE},
        [BOLT_DOUBT] = {TYPE_BOLD, ROLE_UNSURE},    [BOLT_LOW] = {TYPE_BOLD, ROLE_HEED},
        [BOLT_HIGH] = {TYPE_BOLD, ROLE_HEED},       [BOLT_CONCEDED] = {TYPE_PLAIN, ROLE_GRANTED},
        [BOLT_NOT_NEEDED] = {TYPE_PLAIN, ROLE_CALM}};
    return styles[bolt->look];
}

// The column in which a label is in the middle, behind the mark at the left.
static guint label_column(const Canvas *canvas, const Bolt *bolt, const Size *size)
{
    guint label = canvas_text_width(canvas, bolt->label), inner = size->width - size->beside;
    guint spare = inner - MIN(label, inner);
    return 2 + (size->beside == 3 ? spare : (spare + 1) / 2);
}

// `│√  3  √│`: the label in the middle, a mark at each side; `│JT 3  √│` by another; `[√ 3]`.
static void put_middle(Canvas *canvas, guint row, guint column, const Size *size, const Bolt *bolt,
                       const char *side_left, const char *side_right)
{
    const char *left, *right;
    Style style = style_of_bolt(bolt);
    guint label = label_column(canvas, bolt, size), end = column + size->width - 1;
    gboolean by = bolt->by && canvas_text_width(canvas, bolt->by) + 2 <= label;
    marks_of(bolt->look, &left, &right);
    canvas_fill(canvas, row, column, size->width, style, " ");
    canvas_put(canvas, row, column, 1, style, side_left);
    canvas_put(canvas, row, column + 1, 0, style, by ? bolt->by : left);
    canvas_put(canvas, row, column + label, 0, style, bolt->label);
    if (size->beside > 3)
        canvas_put(canvas, row, end - 1, 1, style, right);
    canvas_put(canvas, row, end, 1, style, side_right);
}

// In ASCII `║` is a service limit.
static const char *side_of(const Canvas *canvas, const Bolt *bolt)
{
    return !is_here(bolt) ? plain_frame.side : canvas->ascii ? "#" : double_frame.side;
}

static void put_border(Canvas *canvas, guint row, guint column, guint width, const char *left,
                       const char *across, const char *right)
{
    Style style = style_of(TYPE_PLAIN, ROLE_CALM);
    canvas_put(canvas, row, column, 1, style, left);
    canvas_fill(canvas, row, column + 1, width - 2, style, across);
    canvas_put(canvas, row, column + width - 1, 1, style, right);
}

static void put_box(Canvas *canvas, const Spot *spot, const Size *size)
{
    const Bolt *bolt = spot->bolt;
    guint row = spot->row, column = spot->column;
    if (size->height == 1) {
        put_middle(canvas, row, column, size, bolt, "[", "]");
        return;
    }
    const Frame *frame = is_here(bolt) ? &double_frame : &plain_frame;
    const char *side = side_of(canvas, bolt);
    put_border(canvas, row, column, size->width, frame->upper_left, frame->across,
               frame->upper_right);
    if (bolt->turn) {
        g_autofree char *turn = g_strdup_printf("%u.", bolt->turn);
        canvas_put(canvas, row, column + 1, size->width - 2, style_of(0, 0), turn);
    }
    put_middle(canvas, row + 1, column, size, bolt, side, side);
    put_border(canvas, row + 2, column, size->width, frame->lower_left, frame->across,
               frame->lower_right);
}

// WHERE THEY LIE --------------------------------------------------------------------------------

static const Bolt *bolt_of(const Bolt *bolts, guint count, const char *label)
{
    for (guint i = 0; i < count; i++)
        if (strcmp(bolts[i].label, label) == 0)
            return &bolts[i];
    return NULL;
}

static guint label_width(const Canvas *canvas, const Bolt *bolts, guint count)
{
    guint width = 0;
    for (guint i = 0; i < count; i++)
        width = MAX(width, canvas_text_width(canvas, bolts[i].label));
    return width;
}

static Size size_for(gsize index, guint label)
{
    Size size = sizes[index];
    size.width = MAX(size.width, label + size.beside);
    return size;
}

// How many stand in each line of a row for which so many are the most: lines of the same length, as
// far as they can be.
static guint of_a_line(guint count, guint most)
{
    guint lines = MAX(1, (count + most - 1) / most);
    return MAX(1, (count + lines - 1) / lines);
}

// Spots from row 0 in rows as they lie; too long a row goes on in the next line, and *broken says
// so.
static GArray *grid_spots(const GPtrArray *rows, const Size *size, guint width, const Bolt *bolts,
                          guint count, gboolean *broken)
{
    GArray *spots = g_array_new(FALSE, FALSE, sizeof(Spot));
    guint across = size->width + size->gap, row = 0;
    guint most = MAX(1, (width - 1 + size->gap) / across);
    *broken = FALSE;
    for (guint r = 0; r < rows->len; r++, row += size->down) {
        GStrv labels = rows->pdata[r];
        guint each = of_a_line(g_strv_length(labels), most);
        for (guint i = 0; labels[i]; i++) {
            const Bolt *bolt = bolt_of(bolts, count, labels[i]);
            gboolean breaks = i && i % each == 0;
            row += breaks ? size->down : 0;
            *broken = *broken || breaks;
            if (bolt)
                g_array_append_val(spots, ((Spot){row, 1 + (i % each) * across, bolt}));
        }
    }
    return spots;
}

enum { CIRCLE_ROWS = 13, CIRCLE_REACH = 14 };

// The nearest whole number, halves toward 0, so that both sides of a circle are alike.
static gint nearest(double offset)
{
    gint whole = (gint)ceil(fabs(offset) - 0.5 - 1e-6);
    return offset < 0 ? -whole : whole;
}

// Spots on a circle in the middle of the width. Where boxes sit is only drawn, never judged.
static GArray *circle_spots(const Size *size, guint width, guint reach, const Bolt *bolts,
                            guint count)
{
    GArray *spots = g_array_new(FALSE, FALSE, sizeof(Spot));
    gint high = (gint)(CIRCLE_ROWS - size->height) / 2, middle = (gint)(width - size->width) / 2;
    for (guint i = 0; i < count; i++) {
        double angle = 2 * G_PI * i / count;
        gint row = high - nearest(high * cos(angle));
        gint column = middle + nearest(reach * sin(angle));
        g_array_append_val(spots, ((Spot){(guint)row, (guint)column, &bolts[i]}));
    }
    return spots;
}

static const Spot *spot_at(const GArray *spots, guint index)
{
    return &g_array_index(spots, Spot, index);
}

static gboolean meet(const Spot *one, const Spot *other, const Size *size)
{
    guint down = MAX(one->row, other->row) - MIN(one->row, other->row);
    guint across = MAX(one->column, other->column) - MIN(one->column, other->column);
    return down < size->height && across < size->width + size->gap;
}

static gboolean are_apart(const GArray *spots, const Size *size)
{
    for (guint i = 0; i < spots->len; i++)
        for (guint j = 0; j < i; j++)
            if (meet(spot_at(spots, i), spot_at(spots, j), size))
                return FALSE;
    return TRUE;
}

static guint end_of(const GArray *spots, const Size *size)
{
    guint end = 0;
    for (guint i = 0; i < spots->len; i++)
        end = MAX(end, spot_at(spots, i)->row + size->height);
    return end;
}

// WHICH FITS ------------------------------------------------------------------------------------

// What is to be drawn, and the room for it.
typedef struct {
    const GPtrArray *rows;
    const Bolt *bolts;
    guint count, label, width, height;
} Task;

static GArray *on_circle(const Task *task, Size *size)
{
    for (gsize i = 0; i < G_N_ELEMENTS(sizes) && task->height >= CIRCLE_ROWS; i++) {
        *size = size_for(i, task->label);
        guint widest = task->width > size->width + 2 ? (task->width - size->width) / 2 - 1 : 0;
        const guint reaches[] = {MIN(CIRCLE_REACH, widest), widest};
        for (gsize r = 0; r < G_N_ELEMENTS(reaches); r++) {
            g_autoptr(GArray) spots =
                circle_spots(size, task->width, reaches[r], task->bolts, task->count);
            if (widest > 0 && are_apart(spots, size))
                return g_steal_pointer(&spots);
        }
    }
    return NULL;
}

// In rows; the last size in any case where rows may be broken.
static GArray *in_rows(const Task *task, gboolean may_break, Size *size)
{
    for (gsize i = 0; i < G_N_ELEMENTS(sizes); i++) {
        gboolean broken, last = i + 1 == G_N_ELEMENTS(sizes);
        *size = size_for(i, task->label);
        g_autoptr(GArray) spots =
            grid_spots(task->rows, size, task->width, task->bolts, task->count, &broken);
        gboolean fits = end_of(spots, size) <= task->height && 1 + size->width <= task->width;
        if (may_break ? fits || last : fits && !broken)
            return g_steal_pointer(&spots);
    }
    return NULL;
}

guint bolts_paint(Canvas *canvas, guint row, guint width, guint height, const GPtrArray *rows,
                  gboolean circle, const Bolt *bolts, guint count, guint *right)
{
    const Task task = {rows, bolts, count, label_width(canvas, bolts, count), width, height};
    Size size;
    g_autoptr(GArray) spots = circle ? on_circle(&task, &size) : NULL;
    if (!spots && rows->len > 1)
        spots = in_rows(&task, FALSE, &size);
    if (!spots)
        spots = in_rows(&task, TRUE, &size);
    *right = 0;
    for (guint i = 0; i < spots->len; i++) {
        Spot spot = *spot_at(spots, i);
        spot.row += row;
        put_box(canvas, &spot, &size);
        *right = MAX(*right, spot.column + size.width);
    }
    return row + end_of(spots, &size);
}
