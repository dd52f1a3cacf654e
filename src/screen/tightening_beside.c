#include "tightening_beside.h"

#include "about.h"
#include "beside.h"
#include "tightening_rows.h"

#include <standbook/work/set_preload.h>

static guint put_preload(Canvas *canvas, guint row, const Tightening *tightening, const Turn *turn)
{
    if (turn->made->asked != ASKED_BOLT)
        return row;
    g_autoptr(GPtrArray) lines = set_preload_told(tightening->plan, turn->position);
    for (guint i = 0; i < lines->len; i++)
        row = canvas_wrap(canvas, row, 1, canvas->width - 2, style_of(0, 0), lines->pdata[i]);
    return row + (lines->len ? 1 : 0);
}

void tightening_beside(Desk *desk, const Tightening *tightening, const Turn *turn, Page *page)
{
    g_autoptr(Canvas) canvas = turn ? beside_begin(page) : NULL;
    const Session *session = canvas ? desk_build(desk) : NULL;
    if (!session)
        return;
    g_autofree char *bolt = bolt_words(turn), *amount = tightening_words(tightening, turn->stage);
    g_autofree char *title =
        g_strdup_printf("%s, %s, %s", tightening->plan->group->name, bolt, amount);
    canvas_put(canvas, 0, 1, canvas->width - 2, style_of(TYPE_BOLD, 0), title);
    guint row = put_preload(canvas, 1, tightening, turn);
    row = about_entries(canvas, row, session, turn->made);
    beside_end(page, canvas, row + 1, session, desk->now);
}
