#include "widget_strip.h"

#include "widget_groups.h"

#include <string.h>

guint strip_paint(Canvas *canvas, guint row, guint column, const char *strip, Verdict verdict)
{
    const Style calm = style_of(TYPE_PLAIN, ROLE_CALM), reading = verdict_style(verdict);
    for (const char *at = strip; *at; at = g_utf8_next_char(at)) {
        g_autofree char *cell = g_strndup(at, (gsize)(g_utf8_next_char(at) - at));
        column = canvas_put(canvas, row, column, 0, strstr("█▒<>", cell) ? reading : calm, cell);
    }
    return column;
}
