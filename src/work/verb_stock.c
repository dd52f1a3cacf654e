// The lines of lots and consumables.
#include "shop_line.h"

static gboolean set_quantity(Take *take, Entry *entry, GError **error)
{
    guint quantity = 0;
    if (!words_skip(&take->words, "quantity"))
        return TRUE;
    if (!words_whole(&take->words, "the quantity", 1, &quantity, error))
        return FALSE;
    entry_set_number(entry, "quantity", quantity);
    return TRUE;
}

// What may be said of a lot or a tube, in any order.
static gboolean set_in_any_order(Take *take, Entry *entry, GError **error)
{
    const char *before = NULL;
    while (before != take->words.at) {
        before = take->words.at;
        if ((kind_field(entry->kind, "quantity") && !set_quantity(take, entry, error)) ||
            (kind_field(entry->kind, "grade") &&
             !shop_set_optional(take, entry, "grade", "grade", error)) ||
            !shop_set_optional(take, entry, "supplier", "supplier", error) ||
            !shop_set_date(take, entry, "expires", "expires", error))
            return FALSE;
    }
    return TRUE;
}

gboolean shop_lot(Take *take, GError **error)
{
    g_autofree char *part = NULL;
    Entry *entry =
        shop_begin_thing(take, "lot", "the lot as the packet names it", "what it is", &part, error);
    if (!entry)
        return FALSE;
    entry_set_text(entry, "part", part);
    return set_in_any_order(take, entry, error);
}

gboolean shop_consumable(Take *take, GError **error)
{
    static const char *const fixed[] = {"lot", NULL};
    g_autofree char *sort = shop_read_kind(take, fixed, "what it is", error);
    if (!sort)
        return FALSE;
    if (!words_skip(&take->words, "lot"))
        return words_refuse(&take->words, take->words.at, error, "write `lot` and its lot here");
    g_autofree char *lot = shop_read_new_label(take, "consumable", "the lot", error);
    if (!lot)
        return FALSE;
    g_autofree char *label = g_strconcat(sort, " ", lot, NULL);
    Entry *entry = take_shop_entry(take, "consumable");
    shop_set_new_id(take, entry);
    entry_set_text(entry, "label", label);
    entry_set_text(entry, "sort", sort);
    entry_set_text(entry, "lot", lot);
    return set_in_any_order(take, entry, error);
}

gboolean shop_recall_lot(Take *take, GError **error)
{
    if (!words_skip(&take->words, "lot"))
        return words_refuse(&take->words, take->words.at, error, "write `lot` and its name here");
    const Entry *lot = take_shop_label(take, "lot", "the lot", error);
    g_autofree char *why = lot ? words_text(&take->words, "the reason", error) : NULL;
    if (!why)
        return FALSE;
    Entry *entry = take_shop_entry(take, "recall");
    entry_set_text(entry, "lot", entry_text(lot, "id"));
    entry_set_text(entry, "why", why);
    take_news(take, entry, "lot", entry_text(lot, "id"));
    return TRUE;
}
