#include "slip.h"

#include <standbook/base/text.h>
#include <standbook/work/slip_words.h>

gboolean slip_asks(Slip *slip, Desk *desk, const char *line)
{
    if (slip_asked(slip, line))
        return FALSE;
    slip_forget(slip);
    g_autofree char *whole = g_strconcat(desk->who ? desk->who : "", " ", line, NULL);
    slip->said = session_slip(desk_build(desk), whole);
    slip->line = slip->said ? g_strdup(line) : NULL;
    return slip->said != NULL;
}

gboolean slip_asks_this(Slip *slip, const char *line, char *said)
{
    gboolean asks = said && !slip_asked(slip, line);
    if (asks) {
        slip_forget(slip);
        slip->line = g_strdup(line);
        slip->said = said;
    } else
        g_free(said);
    return asks;
}

char *slip_new_lot(const GPtrArray *lots, const char *typed, const char *of)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (guint i = 0; i < lots->len; i++)
        g_ptr_array_add(labels, (gpointer)shop_label(lots->pdata[i]));
    const char *near = text_nearest(typed, (const char *const *)labels->pdata, labels->len);
    return near ? g_strdup_printf("is it %s? Enter again enters this new lot, of %s", near, of)
                : g_strdup_printf("the shop has no such lot yet; Enter again enters it, of %s", of);
}

const char *slip_asked(const Slip *slip, const char *line)
{
    return slip->line && g_strcmp0(slip->line, line) == 0 ? slip->said : NULL;
}

void slip_forget(Slip *slip)
{
    g_clear_pointer(&slip->line, g_free);
    g_clear_pointer(&slip->said, g_free);
}
