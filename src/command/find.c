#include "store.h"
#include "subcommands.h"

#include <standbook/work/found.h>

static json_t *found_json(const Found *found)
{
    if (!found->when)
        return json_pack("{s:s,s:s,s:s}", "kind", found->kind, "label", found->by, "name",
                         found->words);
    return json_pack("{s:s,s:I,s:s,s:s,s:s,s:s,s:b}", "ledger", found->label, "entry",
                     (json_int_t)found->seq, "kind", found->kind, "done", found->when, "by",
                     found->by, "words", found->words, "struck", found->struck);
}

static char *found_line(const Found *found)
{
    if (!found->when)
        return g_strdup_printf("%s %s  %s", found->kind, found->by, found->words);
    return g_strdup_printf("%s #%" G_GINT64_FORMAT "  %s %s  %s%s", found->label, found->seq,
                           found->when, found->by, found->words, found->struck ? "  (struck)" : "");
}

static void say_found(const GPtrArray *all, gboolean json)
{
    json_t *list = json ? json_array() : NULL;
    for (guint i = 0; i < all->len; i++) {
        const Found *found = g_ptr_array_index(all, i);
        g_autofree char *line = found_line(found);
        if (list)
            json_array_append_new(list, found_json(found));
        else
            say_clean(line);
    }
    if (list)
        say_json(list);
    json_decref(list);
}

static int find_words(GStrv words, Common *common)
{
    GError *error = NULL;
    g_autofree char *phrase = g_strjoinv(" ", words);
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(GPtrArray) all = book ? found_words(book, phrase, &error) : NULL;
    if (!all)
        return fail_with(error);
    say_found(all, common->json);
    return all->len ? 0 : fail_saying(STANDBOOK_ERROR_NO, "nothing holds `%s`", phrase);
}

int find_run(int argc, char **argv, Common *common)
{
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, "WORDS",
        "Every entry of every build and of the shop that holds all these words, in any order:\n"
        "names, lots, serials, tools, notes. Exit status 1 if there is none.",
        NULL, &status);
    if (!words)
        return status;
    return arguments_fit(words, 1, 100, "find WORDS") ? find_words(words, common)
                                                      : STANDBOOK_ERROR_MISUSE;
}
