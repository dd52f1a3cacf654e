// The lines that put a tool, lot or tin of the shop out of use, and back.
#include "shop_line.h"

#include <string.h>

const Entry *shop_read_thing(Take *take, const char **sort, GError **error)
{
    static const char *const sorts[] = {"tool", "lot", "consumable"};
    *sort = words_name(&take->words, sorts, G_N_ELEMENTS(sorts));
    if (*sort)
        return take_shop_label(take, *sort, "what it is called", error);
    words_refuse(&take->words, take->words.at, error,
                 "of what? write tool, lot or consumable, and what it is called");
    return NULL;
}

static Entry *use_entry(Take *take, const char *kind, const char *sort, const Entry *thing)
{
    Entry *entry = take_shop_entry(take, kind);
    entry_set_text(entry, "what", sort);
    entry_set_text(entry, "id", entry_text(thing, "id"));
    return entry;
}

// What stands for it at the moment of the line; NULL while it is in use.
static const Entry *end_of(const Take *take, const Entry *thing)
{
    return shop_end(take->taker->shop, thing, take->done ? take->done : take->at);
}

static gboolean set_how(Take *take, Entry *entry, GError **error)
{
    static const char *const ways[] = {"scrapped",  "lost",    "lent",        "sold",
                                       "sent back", "used up", "thrown away", "put aside"};
    const char *how = words_name(&take->words, ways, G_N_ELEMENTS(ways));
    entry_set_text(entry, "how", how);
    return how || words_refuse(&take->words, take->words.at, error,
                               "what became of it? write scrapped, lost, lent, sold, sent back, "
                               "used up, thrown away or put aside; the reason in quotes behind it");
}

gboolean shop_out_of_use(Take *take, GError **error)
{
    const char *sort = NULL, *at = take->words.at;
    const Entry *thing = shop_read_thing(take, &sort, error);
    const Entry *end = thing ? end_of(take, thing) : NULL;
    if (end) {
        g_autofree char *how = shop_end_words(end);
        return words_refuse(&take->words, at, error, "%s `%s` is out of use already: %s", sort,
                            shop_label(thing), how);
    }
    Entry *entry = thing ? use_entry(take, "out of use", sort, thing) : NULL;
    return entry && set_how(take, entry, error) && shop_set_quoted(take, entry, "why", error);
}

gboolean shop_back_in_use(Take *take, GError **error)
{
    const char *sort = NULL, *at = take->words.at;
    const Entry *thing = shop_read_thing(take, &sort, error);
    if (!thing)
        return FALSE;
    if (!end_of(take, thing))
        return words_refuse(&take->words, at, error, "%s `%s` is in use; nothing said otherwise",
                            sort, shop_label(thing));
    return shop_set_quoted(take, use_entry(take, "back in use", sort, thing), "why", error);
}
