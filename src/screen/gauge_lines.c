#include "gauge_lines.h"

#include <string.h>

enum { WHAT = 24 }; // columns for what a gauge is

static char *line_of(const GaugeChoices *choices, const GaugeChoice *choice, guint digit)
{
    g_autofree char *doubt = gauge_doubt_words(choices, choice);
    g_autofree char *outlook = gauge_outlook_said(choices, choice);
    g_autofree char *what =
        g_utf8_substring(choice->words, 0, MIN(WHAT, g_utf8_strlen(choice->words, -1)));
    return g_strdup_printf("   %u   %-4s %s%*s %s%s%s%s%s", digit, choice->label, what,
                           (int)(WHAT - g_utf8_strlen(what, -1)), "", doubt, *doubt ? "   " : "",
                           choice->fault ? choice->fault : "", choice->fault ? ", " : "", outlook);
}

static const GaugeChoice *choice_of(const GaugeChoices *choices, const char *label)
{
    for (guint i = 0; i < choices->gauges->len; i++) {
        const GaugeChoice *choice = &g_array_index(choices->gauges, GaugeChoice, i);
        if (strcmp(choice->label, label) == 0)
            return choice;
    }
    return NULL;
}

char *gauge_lines(const GaugeChoices *choices, const GPtrArray *labels)
{
    g_autofree char *sentence = gauge_choices_sentence(choices);
    g_autoptr(GString) words = g_string_new(NULL);
    if (sentence)
        g_string_append_printf(words, " %s", sentence);
    for (guint i = 0; i < labels->len; i++) {
        const GaugeChoice *choice = choice_of(choices, labels->pdata[i]);
        if (!choice)
            continue;
        g_autofree char *line = line_of(choices, choice, i + 1);
        g_string_append_printf(words, "%s%s", words->len ? "\n" : "", line);
    }
    return g_strdup(words->str);
}
