#include "supposed.h"

#include <standbook/work/suppose.h>
#include <string.h>

void supposed_forget(Supposed *supposed)
{
    g_clear_pointer(&supposed->line, g_free);
    g_clear_pointer(&supposed->made, assessment_free);
    g_clear_pointer(&supposed->problem, g_free);
}

void supposed_take(Supposed *supposed, Desk *desk, const char *line)
{
    if (g_strcmp0(line, supposed->line) == 0)
        return;
    supposed_forget(supposed);
    if (!line)
        return;
    g_autoptr(GError) error = NULL;
    g_autofree char *whole = g_strconcat(desk->who ? desk->who : "", " ", line, NULL);
    supposed->line = g_strdup(line);
    supposed->made = session_suppose(desk_build(desk), whole, &error);
    if (error) {
        const char *words = strstr(error->message, ": ");
        supposed->problem = g_strdup(words ? words + 2 : error->message);
    }
}

const char *supposed_problem(const Supposed *supposed, const char *typed)
{
    gsize length = strlen(typed);
    gboolean goes_on = length && strchr(".,/+-<> ", typed[length - 1]);
    return goes_on ? NULL : supposed->problem;
}
