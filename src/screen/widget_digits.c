#include "widget_digits.h"

enum { ROWS = 5 };

// Rows of a shape from above; a bit is a dot, the leftmost the highest.
typedef struct {
    gunichar character;
    guint width;
    guint8 rows[ROWS];
} Shape;

static const Shape shapes[] = {
    {'0', 3, {7, 5, 5, 5, 7}}, {'1', 3, {2, 6, 2, 2, 7}},      {'2', 3, {7, 1, 7, 4, 7}},
    {'3', 3, {7, 1, 7, 1, 7}}, {'4', 3, {5, 5, 7, 1, 1}},      {'5', 3, {7, 4, 7, 1, 7}},
    {'6', 3, {7, 4, 7, 5, 7}}, {'7', 3, {7, 1, 1, 1, 1}},      {'8', 3, {7, 5, 7, 5, 7}},
    {'9', 3, {7, 5, 7, 1, 7}}, {'.', 1, {0, 0, 0, 0, 1}},      {'/', 3, {1, 1, 2, 4, 4}},
    {'-', 3, {0, 0, 7, 0, 0}}, {'+', 3, {0, 2, 7, 2, 0}},      {0xB0, 2, {3, 3, 0, 0, 0}},
    {' ', 1, {0, 0, 0, 0, 0}}, {'A', 3, {7, 5, 7, 5, 5}},      {'B', 3, {6, 5, 6, 5, 6}},
    {'C', 3, {7, 4, 4, 4, 7}}, {'D', 3, {6, 5, 5, 5, 6}},      {'E', 3, {7, 4, 6, 4, 7}},
    {'F', 3, {7, 4, 6, 4, 4}}, {'G', 3, {7, 4, 5, 5, 7}},      {'H', 3, {5, 5, 7, 5, 5}},
    {'I', 3, {7, 2, 2, 2, 7}}, {'J', 3, {1, 1, 1, 5, 7}},      {'K', 3, {5, 5, 6, 5, 5}},
    {'L', 3, {4, 4, 4, 4, 7}}, {'M', 5, {17, 27, 21, 17, 17}}, {'N', 4, {9, 13, 11, 9, 9}},
    {'O', 3, {7, 5, 5, 5, 7}}, {'P', 3, {7, 5, 7, 4, 4}},      {'Q', 3, {7, 5, 5, 7, 1}},
    {'R', 3, {6, 5, 6, 5, 5}}, {'S', 3, {3, 4, 2, 1, 6}},      {'T', 3, {7, 2, 2, 2, 2}},
    {'U', 3, {5, 5, 5, 5, 7}}, {'V', 3, {5, 5, 5, 5, 2}},      {'W', 5, {17, 17, 21, 27, 17}},
    {'X', 3, {5, 5, 2, 5, 5}}, {'Y', 3, {5, 5, 2, 2, 2}},      {'Z', 3, {7, 1, 2, 4, 7}},
};

static const Shape *shape_of(gunichar character)
{
    gunichar capital = g_unichar_toupper(character);
    for (gsize i = 0; i < G_N_ELEMENTS(shapes); i++)
        if (shapes[i].character == capital)
            return &shapes[i];
    return NULL;
}

static guint gap_of(guint dot)
{
    return (dot + 3) / 2;
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

guint digits_dot(const char *text, guint most, guint columns)
{
    for (guint dot = most; dot >= 2; dot--)
        if (digits_width(text, dot) <= columns)
            return dot;
    return 0;
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
