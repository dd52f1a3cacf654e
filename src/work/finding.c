#include <standbook/work/finding.h>

gboolean finding_waits(const Requirement *made)
{
    return made->finding && !made->withdrawn && made->verdict == VERDICT_OPEN &&
           made->own_verdict != VERDICT_OPEN;
}

char *finding_waits_for(const Requirement *made)
{
    if (!finding_waits(made))
        return NULL;
    const GPtrArray *names = made->check->settled_by;
    GString *words = g_string_new(names->len ? "" : "a decision");
    for (guint i = 0; i < names->len; i++) {
        const PlanName *name = names->pdata[i];
        g_string_append_printf(words, "%s%s", i ? ", " : "", name->node->text);
    }
    return g_string_free(words, FALSE);
}
