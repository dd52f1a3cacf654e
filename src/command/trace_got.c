#include "trace_got.h"

#include <standbook/work/bolts_got.h>

// The heading and the columns stand in front of the first row.
static void begin(Document *document)
{
    const DocumentColumn columns[] = {{"build", ALIGN_WHOLE}, {"engine", ALIGN_LEFT},
                                      {"", ALIGN_LEFT},       {"bolts", ALIGN_LEFT},
                                      {"stages", ALIGN_LEFT}, {"got", ALIGN_LEFT},
                                      {"from", ALIGN_RIGHT},  {"today", ALIGN_LEFT}};
    document_heading(document, 2, "What each bolt really got, as the tool was found");
    document_table(document, columns, G_N_ELEMENTS(columns));
}

static void tell(Document *document, const Opened *opened, const BoltsGot *got)
{
    g_autofree char *what = g_strconcat(got->made->name, " in ", got->made->step->name, NULL);
    g_autofree char *figures = g_strconcat(got->got->str, " ", got->unit, NULL);
    g_autofree char *from = g_strdup_printf("#%" G_GINT64_FORMAT, got->entry);
    document_row(document, (const char *const[]){
                               opened->number, taken_only(opened->taken, "engine", "serial"), what,
                               got->bolts->str, got->stages->str, figures, from, got->stands});
}

gboolean trace_got(Document *document, Book *book, const GPtrArray *numbers, const char *tool,
                   const char *since, GError **error)
{
    gboolean begun = FALSE;
    for (guint i = 0; i < numbers->len; i++) {
        g_autoptr(Opened) opened = opened_new(book, numbers->pdata[i], error);
        if (!opened)
            return FALSE;
        g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
        const Agenda agenda = {opened_plan(opened), assessment,
                               (const Entry *const *)opened->entries->pdata, opened->entries->len};
        g_autoptr(GPtrArray) all = bolts_got(&agenda, tool, since);
        if (all->len && !begun)
            begin(document);
        begun |= all->len > 0;
        for (guint j = 0; j < all->len; j++)
            tell(document, opened, all->pdata[j]);
    }
    return TRUE;
}
