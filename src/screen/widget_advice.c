#include "widget_advice.h"

#include "widget_digits.h"

enum { FIGURE_DOT = 2, FIGURE_ROWS = 5, LEFT = 1, WIDTH = 78 };

static guint put_figure(Canvas *canvas, guint row, const Advice *advice)
{
    guint column = LEFT + digits_width(advice->figure, FIGURE_DOT) + 1;
    digits_paint(canvas, row, LEFT, FIGURE_DOT, 1, style_of(0, 0), advice->figure);
    for (guint i = 0; i < advice->beside->len; i++)
        canvas_put(canvas, row + i, column, 0, style_of(0, 0), advice->beside->pdata[i]);
    return row + MAX(FIGURE_ROWS, advice->beside->len) + 1;
}

// Sentences follow one another in a line where they fit whole; what is longer than a line has lines
// of its own.
guint advice_paint(Canvas *canvas, guint row, const Advice *advice)
{
    if (advice->figure)
        row = put_figure(canvas, row, advice);
    guint column = LEFT;
    for (guint i = 0; i < advice->sentences->len; i++) {
        const char *sentence = advice->sentences->pdata[i];
        guint width = canvas_text_width(canvas, sentence);
        if (column > LEFT && column + 1 + width > WIDTH) {
            row++;
            column = LEFT;
        }
        if (width > WIDTH)
            row = canvas_wrap(canvas, row, LEFT, WIDTH, style_of(0, 0), sentence);
        else
            column = canvas_put(canvas, row, column, 0, style_of(0, 0), sentence) + 1;
    }
    return row + 1;
}
