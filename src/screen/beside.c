#include "beside.h"

#include "about.h"

enum {
    COLUMN_WIDTH = 50, // of what is told where there is a third column
    THIRD_LEAST = 38,  // columns it needs
    ENTRIES = 24,
};

static gboolean has_third(guint width)
{
    return width > COLUMN_WIDTH + THIRD_LEAST;
}

Canvas *beside_begin(const Page *page)
{
    guint width = page_detail_width(page->width);
    if (!width)
        return NULL;
    return canvas_new_growing(has_third(width) ? COLUMN_WIDTH : width, page->body->ascii);
}

void beside_end(Page *page, const Canvas *told, guint row, const Session *session, Moment now)
{
    guint width = page_detail_width(page->width);
    gboolean third = has_third(width);
    page->detail = canvas_new_growing(width, page->body->ascii);
    canvas_copy(page->detail, 0, 0, told, 0, row);
    if (session)
        about_build(page->detail, third ? 1 : row + 1, third ? COLUMN_WIDTH + 1 : 1, ENTRIES,
                    session, now);
}

void beside_entries(Desk *desk, const char *title, Page *page)
{
    g_autoptr(Canvas) told = beside_begin(page);
    const Session *session = told ? desk_build(desk) : NULL;
    if (!session)
        return;
    canvas_put(told, 0, 1, told->width - 2, style_of(TYPE_BOLD, 0), title);
    beside_end(page, told, 1, session, desk->now);
}
