#include "widget_digits.h"

enum { ROWS = 5 };

// Rows of a shape from above; a bit is a dot, the leftmost the highest.
typedef struct {
    gunichar character;
    guint width;
    guint8 rows[ROWS];
} Shape;

static const Shape shapes[] = {
    {'0', 3, {7, 5, 5, 5, 7}}, {'1', 3, {2, 6, 2, 2, 7}}, {'2', 3, {7, 1, 7, 4, 7}},
    {'3', 3, {7, 1, 7, 1, 7}}, {'4', 3, {5, 5, 7, 1, 1}}, {'5', 3, {7, 4, 7, 1, 7}},
    {'6', 3, {7, 4, 7, 5, 7}}, {'7', 3, {7, 1, 1, 1, 1}}, {'8', 3, {7, 5, 7, 5, 7}},
    {'9', 3, {7, 5, 7, 1, 7}}, {'.', 1, {0, 0, 0, 0, 1}}, {'/', 3, {1, 1, 2, 4, 4}},
    {'-', 3, {0, 0, 7, 0, 0}}, {'+', 3, {0, 2, 7, 2, 0}}, {0xB0, 2, {3, 3, 0, 0, 0}},
    {' ', 1, {0, 0, 0, 0, 0}},
};

static const Shape *shape_of(gunichar character)
{
    for (gsize i = 0; i < G_N_ELEMENTS(shapes); i++)
        if (shapes[i].character == character)
            return &shapes[i];
    return NULL;
}

static guint gap_of(guint dot)
{
    return MAX(dot, 2) - 1;
}

guint digits_width(const char *text, guint dot)
{
    guint width = 0;
    for (const char *at = text; *at; at = g_utf8_next_char(at)) {
        const Shape *shape = shape_of(g_utf8_get_char(at));
        if (shape)
            width += shape->width * dot + (width ? gap_of(dot) : 0);
    }
    return width;
}

static void put_shape(Canvas *canvas, guint row, guint column, guint dot, guint high, Style style,
                      const Shape *shape)
{
    for (guint r = 0; r < ROWS * high; r++)
        for (guint c = 0; c < shape->width; c++)
            if (shape->rows[r / high] & (1u << (shape->width - 1 - c)))
                canvas_fill(canvas, row + r, column + c * dot, dot, style, "█");
}

void digits_paint(Canvas *canvas, guint row, guint column, guint dot, guint high, Style style,
                  const char *text)
{
    for (const char *at = text; *at; at = g_utf8_next_char(at)) {
        const Shape *shape = shape_of(g_utf8_get_char(at));
        if (!shape)
            continue;
        put_shape(canvas, row, column, dot, high, style, shape);
        column += shape->width * dot + gap_of(dot);
    }
}
