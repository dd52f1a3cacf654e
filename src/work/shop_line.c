#include "shop_line.h"

#include <string.h>

void shop_set_new_id(Take *take, Entry *entry)
{
    const LineHelp *help = &take->taker->help;
    g_autofree char *id = take->said_before ? g_strdup(entry_text(take->said_before, "id"))
                                            : help->new_id(help->user);
    entry_set_text(entry, "id", id);
}

char *shop_read_new_label(Take *take, const char *kind, const char *what, GError **error)
{
    if (take->correct && !(take->said_before = take_shop_label(take, kind, what, error)))
        return NULL;
    if (take->correct && !words_skip(&take->words, "to"))
        return g_strdup(shop_label(take->said_before));
    const char *at = take->words.at;
    g_autofree char *label = words_word(&take->words, what, error);
    if (!label || !shop_find(take->taker->shop, kind, label))
        return g_steal_pointer(&label);
    words_refuse(&take->words, at, error,
                 "`%s` is the name of another %s already; choose another one", label, kind);
    return NULL;
}

gboolean shop_set_optional(Take *take, Entry *entry, const char *phrase, const char *field,
                           GError **error)
{
    if (!words_skip(&take->words, phrase))
        return TRUE;
    g_autofree char *text = words_text(&take->words, phrase, error);
    entry_set_text(entry, field, text);
    return text != NULL;
}

gboolean shop_set_quoted(Take *take, Entry *entry, const char *field, GError **error)
{
    if (!words_are_quoted(&take->words))
        return TRUE;
    g_autofree char *text = words_text(&take->words, "the remark", error);
    entry_set_text(entry, field, text);
    return text != NULL;
}

gboolean shop_set_date(Take *take, Entry *entry, const char *phrase, const char *field,
                       GError **error)
{
    if (!words_skip(&take->words, phrase))
        return TRUE;
    g_autofree char *date = NULL;
    if (!words_date(&take->words, &date, error))
        return FALSE;
    entry_set_text(entry, field, date);
    return date || words_refuse(&take->words, take->words.at, error,
                                "`%s` needs a date like 2025-03-13", phrase);
}

Entry *shop_begin_thing(Take *take, const char *kind, const char *label, const char *said,
                        char **text, GError **error)
{
    g_autofree char *read = shop_read_new_label(take, kind, label, error);
    *text = read ? words_text(&take->words, said, error) : NULL;
    if (!*text)
        return NULL;
    Entry *entry = take_shop_entry(take, kind);
    shop_set_new_id(take, entry);
    entry_set_text(entry, "label", read);
    return entry;
}

char *shop_read_kind(Take *take, const char *const *phrases, const char *what, GError **error)
{
    if (words_are_quoted(&take->words))
        return words_text(&take->words, what, error);
    Words words = take->words;
    for (;;) {
        Words here = words;
        for (gsize i = 0; phrases[i]; i++)
            if (words_skip(&here, phrases[i]))
                goto found;
        g_autofree char *word = words_peek(&words);
        if (!word)
            break;
        words.at += strlen(word);
        words.at += strspn(words.at, " \t");
    }
found:
    if (words.at > take->words.at)
        return words_up_to(&take->words, words.at);
    words_refuse(&take->words, take->words.at, error, "%s is missing here", what);
    return NULL;
}
