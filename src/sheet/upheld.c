// The footnote to what was upheld.
#include "sections.h"

#include <standbook/work/tool_cause.h>

// How the tool made that doubtful which the entry upholds; NULL where none did.
static char *tool_words(const SheetSource *source, const Entry *uphold)
{
    const GPtrArray *all = source->assessment->requirements;
    char *words = NULL;
    for (guint i = 0; !words && i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (each->upheld == uphold->seq)
            words = tool_cause_words(source->taken, source->entries, each);
    }
    return words;
}

char *upheld_words(const SheetSource *source, const Entry *uphold)
{
    Reason doubt = reason_of_words(entry_text(uphold, "doubt"));
    const char *second = taken_name(source->taken, entry_text(uphold, "second"));
    gboolean of_tool = doubt == REASON_TOOL || doubt == REASON_BASIS;
    g_autofree char *tool = of_tool ? tool_words(source, uphold) : NULL;
    gint64 stage = entry_number(uphold, "stage");
    g_autofree char *of = stage > 0 ? g_strdup_printf(", stage %" G_GINT64_FORMAT, stage) : NULL;
    return g_strdup_printf("%s Upheld%s: %s. %s%s%s.", tool ? tool : reason_sentence(doubt),
                           of ? of : "", entry_text(uphold, "why"),
                           taken_name(source->taken, uphold->by), second ? ", " : "",
                           second ? second : "");
}
