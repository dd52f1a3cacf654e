#include "store.h"
#include "subcommands.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/found.h>
#include <standbook/work/named.h>
#include <standbook/work/opened.h>
#include <string.h>

// A place that the words name, in one build.
static json_t *place_json(const char *number, const Requirement *made)
{
    g_autofree char *name = requirement_name(made), *value = figure_value(made);
    g_autofree char *doubt = figure_doubt(made), *limits = figure_limits(made);
    return json_pack("{s:s,s:s,s:s,s:s,s:s,s:s,s:s,s:s}", "ledger", number, "place", name,
                     "verdict", verdict_words(made->verdict), "reason", reason_words(made->reason),
                     "value", value, "doubt", doubt, "unit", figure_unit(made), "limits", limits);
}

static char *place_line(const char *number, const Requirement *made)
{
    g_autofree char *name = figure_name(made), *value = figure_value(made);
    g_autofree char *doubt = figure_doubt(made), *limits = figure_limits(made);
    g_autofree char *verdict = figure_verdict(made);
    const char *unit = *value ? figure_unit(made) : "";
    return g_strdup_printf("%s %s  %s%s%s%s%s%s%s%s  %s", number, name, value, *doubt ? " " : "",
                           doubt, *unit ? " " : "", unit, *limits ? " (" : "", limits,
                           *limits ? ")" : "", verdict);
}

// The place of every build that the words name best is said first. FALSE with an error.
static gboolean say_places(Book *book, const char *phrase, json_t *list, guint *said,
                           GError **error)
{
    g_autoptr(GPtrArray) numbers = build_numbers(book, error);
    for (guint i = 0; numbers && i < numbers->len; i++) {
        g_autoptr(Opened) opened = opened_new(book, numbers->pdata[i], error);
        if (!opened)
            return FALSE;
        g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
        g_autoptr(GPtrArray) named = requirements_named(assessment, phrase, 1);
        if (named->len == 0)
            continue;
        ++*said;
        g_autofree char *line = place_line(opened->number, named->pdata[0]);
        if (list)
            json_array_append_new(list, place_json(opened->number, named->pdata[0]));
        else
            say_clean(line);
    }
    return numbers != NULL;
}

static json_t *found_json(const Found *found)
{
    if (!found->when && strcmp(found->kind, "build") == 0)
        return json_pack("{s:s,s:s,s:s}", "kind", found->kind, "label", found->label, "name",
                         found->words);
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
        return g_strdup_printf("%s %s  %s", found->kind, *found->by ? found->by : found->label,
                               found->words);
    return g_strdup_printf("%s #%" G_GINT64_FORMAT "  %s %s  %s%s", found->label, found->seq,
                           found->when, found->by, found->words, found->struck ? "  (struck)" : "");
}

static void say_found(const GPtrArray *all, json_t *list)
{
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
}

static int find_words(GStrv words, Common *common)
{
    GError *error = NULL;
    guint places = 0;
    g_autofree char *phrase = g_strjoinv(" ", words);
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(GPtrArray) all = book ? found_words(book, phrase, &error) : NULL;
    json_t *list = common->json ? json_array() : NULL;
    gboolean done = all && say_places(book, phrase, list, &places, &error);
    if (done)
        say_found(all, list);
    json_decref(list);
    if (!done)
        return fail_with(error);
    return all->len || places ? 0 : fail_saying(STANDBOOK_ERROR_NO, "nothing holds `%s`", phrase);
}

int find_run(int argc, char **argv, Common *common)
{
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, "WORDS",
        "The place of every build that the words name best, as in `find 3 main`, then every entry\n"
        "of every build and of the shop that holds all these words, in any order: names, lots,\n"
        "serials, tools, notes. Exit status 1 if there is none.",
        NULL, &status);
    if (!words)
        return status;
    return arguments_fit(words, 1, 100, "find WORDS") ? find_words(words, common)
                                                      : STANDBOOK_ERROR_MISUSE;
}
