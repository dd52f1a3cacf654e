// The footnote to what was upheld.
#include "sections.h"

#include <string.h>

// Why that was in doubt which the entry upholds, each reason once: of several bolts one may have
// been pulled with another wrench. Of several upholds at one bolt, `made`, it keeps the last.
static char *doubts_words(const SheetSource *source, const Requirement *made, const Entry *uphold,
                          Reason doubt)
{
    const GPtrArray *all = source->assessment->requirements;
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (each->upheld != uphold->seq)
            continue;
        g_autofree char *why = figure_doubted(each, doubt, source->taken, source->entries);
        if (!strstr(words->str, why))
            g_string_append_printf(words, "%s%s", words->len ? " " : "", why);
    }
    if (words->len)
        return g_string_free(words, FALSE);
    g_string_free(words, TRUE);
    return made->check ? g_strdup(reason_sentence(doubt))
                       : figure_doubted(made, doubt, source->taken, source->entries);
}

char *upheld_words(const SheetSource *source, const Requirement *made, const Entry *uphold)
{
    Reason doubt = reason_of_words(entry_text(uphold, "doubt"));
    const char *second = taken_name(source->taken, entry_text(uphold, "second"));
    g_autofree char *doubted = doubts_words(source, made, uphold, doubt);
    gint64 stage = entry_number(uphold, "stage");
    g_autofree char *of = stage > 0 ? g_strdup_printf(", stage %" G_GINT64_FORMAT, stage) : NULL;
    return g_strdup_printf("%s Upheld%s: %s. %s%s%s.", doubted, of ? of : "",
                           entry_text(uphold, "why"), taken_name(source->taken, uphold->by),
                           second ? ", " : "", second ? second : "");
}
