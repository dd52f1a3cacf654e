#include "line_words.h"

char *line_quoted(const char *words)
{
    g_auto(GStrv) parts = g_strsplit(words, "\"", -1);
    g_autofree char *doubled = g_strjoinv("\"\"", parts);
    return g_strdup_printf("\"%s\"", doubled);
}

const GPtrArray *requirement_axes(const Plan *plan, const Requirement *made)
{
    if (made->check)
        return made->check->places;
    const PlanGroup *group = plan_group(plan, made->name);
    const PlanPart *part = group ? NULL : plan_part(plan, made->name);
    return group ? group->axes : part ? part->axes : NULL;
}

static gboolean is_shared(const GPtrArray *axes, const char *label)
{
    guint found = 0;
    for (guint i = 0; i < axes->len; i++)
        found += axis_find(axes->pdata[i], label) >= 0 ? 1 : 0;
    return found > 1;
}

char *line_target(const Plan *plan, const Requirement *made)
{
    const GPtrArray *axes = requirement_axes(plan, made);
    if (made->asked == ASKED_SIGN)
        return g_strdup_printf("sign %s, %u", made->name, made->stage);
    g_autoptr(GString) place = g_string_new(NULL);
    for (guint i = 0; axes && made->labels[i] && i < axes->len; i++) {
        gboolean shared = is_shared(axes, made->labels[i]);
        g_string_append_printf(place, "%s%s%s%s", i ? ", " : "",
                               shared ? axis_name(axes->pdata[i]) : "", shared ? " " : "",
                               made->labels[i]);
    }
    return place->len ? g_strdup_printf("%s[%s] in %s", made->name, place->str, made->step->name)
                      : g_strdup_printf("%s in %s", made->name, made->step->name);
}
