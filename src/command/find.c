#include "store.h"
#include "subcommands.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/builds_meant.h>
#include <standbook/work/found.h>
#include <standbook/work/named.h>
#include <standbook/work/opened.h>
#include <standbook/work/told.h>
#include <string.h>

// A place that the words name, in one build, with what is told of it (char *).
static json_t *place_json(const char *number, const Requirement *made, const GPtrArray *told)
{
    g_autofree char *name = requirement_name(made), *value = figure_value(made);
    g_autofree char *doubt = figure_doubt(made), *limits = figure_limits(made);
    g_autofree char *wear = made->wear ? figure_number(made, made->wear) : g_strdup("");
    json_t *lines = json_array();
    for (guint i = 0; i < told->len; i++)
        json_array_append_new(lines, json_string(told->pdata[i]));
    return json_pack("{s:s,s:s,s:s,s:s,s:s,s:s,s:s,s:s,s:s,s:o}", "ledger", number, "place", name,
                     "verdict", verdict_words(made->verdict), "reason", reason_words(made->reason),
                     "value", value, "doubt", doubt, "unit", figure_unit(made), "limits", limits,
                     "wear", wear, "told", lines);
}

static void say_place(const char *number, const Requirement *made, const GPtrArray *told)
{
    g_autofree char *name = named_title(made), *value = figure_value(made);
    g_autofree char *doubt = figure_doubt(made), *limits = figure_limits(made);
    g_autofree char *wear = made->wear ? figure_number(made, made->wear) : NULL;
    g_autofree char *verdict = figure_verdict(made);
    const char *unit = *value ? figure_unit(made) : "";
    g_autofree char *line =
        g_strdup_printf("%s %s  %s%s%s%s%s%s%s%s%s%s  %s", number, name, value, *doubt ? " " : "",
                        doubt, *unit ? " " : "", unit, *limits ? " (" : "", limits,
                        wear ? ", wear " : "", wear ? wear : "", *limits ? ")" : "", verdict);
    say_clean(line);
    for (guint i = 0; i < told->len; i++) {
        g_autofree char *more = g_strconcat("    ", told->pdata[i], NULL);
        say_clean(more);
    }
}

static GPtrArray *told_of(const Opened *opened, const Assessment *assessment,
                          const Requirement *made)
{
    const Agenda agenda = {opened_plan(opened), assessment,
                           (const Entry *const *)opened->entries->pdata, opened->entries->len};
    return told_lines(&agenda, opened->taken, made, 0);
}

static char *key_of(const char *number, gint64 seq)
{
    return g_strdup_printf("%" G_GINT64_FORMAT " %s", seq, number);
}

// What a build has entered about a place goes into `here`, as its key.
static void add_here(GHashTable *here, const Opened *opened, const Requirement *made)
{
    for (guint i = 0; i < opened->entries->len; i++) {
        const Entry *entry = opened->entries->pdata[i];
        if (entry_is_about(entry, made))
            g_hash_table_add(here, key_of(opened->number, entry->seq));
    }
}

// The place of every build that the words name best is said first, the newest build before the
// others; the entries about it go into `here`. FALSE with an error.
static gboolean say_places(Book *book, const char *phrase, json_t *list, GHashTable *here,
                           guint *said, GError **error)
{
    g_autoptr(Shop) shop = shop_open(book, error);
    g_autoptr(GPtrArray) numbers = shop ? build_numbers(book, error) : NULL;
    g_autoptr(GPtrArray) meant = g_ptr_array_new_with_free_func(g_free);
    g_autofree char *left = shop ? builds_meant(shop, phrase, meant) : NULL;
    for (guint i = numbers ? numbers->len : 0; i-- > 0;) {
        const char *number = numbers->pdata[i];
        if (meant->len && !g_ptr_array_find_with_equal_func(meant, number, g_str_equal, NULL))
            continue;
        g_autoptr(Opened) opened = opened_new(book, number, error);
        if (!opened)
            return FALSE;
        g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
        g_autoptr(Naming) naming = naming_new(assessment);
        g_autoptr(GPtrArray) named = build_asked(shop, number, naming, left, 1);
        if (named->len == 0)
            continue;
        ++*said;
        const Requirement *made = named->pdata[0];
        g_autoptr(GPtrArray) told = told_of(opened, assessment, made);
        add_here(here, opened, made);
        if (list)
            json_array_append_new(list, place_json(opened->number, made, told));
        else
            say_place(opened->number, made, told);
    }
    return numbers != NULL;
}

// Whether it is what a tool or lot was used on in a build.
static gboolean is_use(const Found *found)
{
    return !found->when && (strcmp(found->kind, "tool") == 0 || strcmp(found->kind, "lot") == 0);
}

static json_t *found_json(const Found *found)
{
    if (is_use(found))
        return json_pack("{s:s,s:s,s:s,s:s}", "kind", found->kind, "label", found->by, "ledger",
                         found->label, "used on", found->words);
    if (!found->when)
        return json_pack("{s:s,s:s,s:s}", "kind", found->kind, "label",
                         *found->by ? found->by : found->label, "name", found->words);
    return json_pack("{s:s,s:I,s:s,s:s,s:s,s:s,s:b}", "ledger", found->label, "entry",
                     (json_int_t)found->seq, "kind", found->kind, "done", found->when, "by",
                     found->by, "words", found->words, "struck", found->struck);
}

static char *found_line(const Found *found)
{
    if (is_use(found))
        return g_strdup_printf("%s %s  %s  %s", found->kind, found->by, found->label, found->words);
    if (!found->when)
        return g_strdup_printf("%s %s  %s", found->kind, *found->by ? found->by : found->label,
                               found->words);
    return g_strdup_printf("%s #%" G_GINT64_FORMAT "  %s %s  %s%s", found->label, found->seq,
                           found->when, found->by, found->words, found->struck ? "  (struck)" : "");
}

// Whether the words are what somebody or something is called for short: initials, the label of a
// tool or lot. Then no place is meant that merely begins so.
static gboolean is_label(const GPtrArray *all, const char *phrase)
{
    for (guint i = 0; i < all->len; i++) {
        const Found *found = g_ptr_array_index(all, i);
        if (!found->when && g_ascii_strcasecmp(found->by, phrase) == 0)
            return TRUE;
    }
    return FALSE;
}

static void say_one(const Found *found, json_t *list)
{
    g_autofree char *line = found_line(found);
    if (list)
        json_array_append_new(list, found_json(found));
    else
        say_clean(line);
}

// What is no entry stands in front; behind it the entries about the place named, then all others.
static void say_found(const GPtrArray *all, GHashTable *here, json_t *list)
{
    g_autoptr(GPtrArray) others = g_ptr_array_new();
    for (guint i = 0; i < all->len; i++) {
        Found *found = g_ptr_array_index(all, i);
        g_autofree char *key = key_of(found->label, found->seq);
        if (!found->when || g_hash_table_contains(here, key))
            say_one(found, list);
        else
            g_ptr_array_add(others, found);
    }
    for (guint i = 0; i < others->len; i++)
        say_one(g_ptr_array_index(others, i), list);
    if (list)
        say_json(list);
}

static int find_words(GStrv words, Common *common)
{
    GError *error = NULL;
    guint places = 0;
    g_autofree char *phrase = g_strjoinv(" ", words);
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(GPtrArray) all = book ? found_words(book, phrase, NULL, &error) : NULL;
    g_autoptr(GHashTable) here = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    json_t *list = common->json ? json_array() : NULL;
    gboolean done =
        all && (is_label(all, phrase) || say_places(book, phrase, list, here, &places, &error));
    if (done)
        say_found(all, here, list);
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
        "The place of every build that the words name best, as in `find 3 main`, the newest "
        "first,\n"
        "with what it rests on; then every entry of every build and of the shop that holds all\n"
        "these words, in any order, those about that place first, the newest before the others:\n"
        "names, initials, lots, serials, tools,\n"
        "notes, a day (`4 Mar 2025` or `2025-03-04`), `struck` for what was struck, `conceded`,\n"
        "`upheld`, `signed` and the like for all that does so. Initials or\n"
        "a name stand for all that the person entered. The number of a build, the serial or name "
        "of\n"
        "its engine narrows to that build: `main caps TL-0412`. `since 2024` or `since 2024-01-30` "
        "behind\n"
        "them leaves out work done before. Exit status 1 if there is none.",
        NULL, &status);
    if (!words)
        return status;
    return arguments_fit(words, 1, 100, "find WORDS") ? find_words(words, common)
                                                      : STANDBOOK_ERROR_MISUSE;
}
