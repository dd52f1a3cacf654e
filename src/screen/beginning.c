#include "beginning.h"
#include "line_words.h"

#include <glib/gstdio.h>
#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/work/begin.h>
#include <string.h>

enum { PLANS_MOST = 99, PLAN_BYTES = 2 * 1024 * 1024 };

static const char blank_card[] = "plan: Blank card\n"
                                 "gates: [hand over]\n"
                                 "steps:\n"
                                 "  Card:\n"
                                 "    do: Measure, and name each check as it comes.\n";

void beginning_clear(Beginning *beginning)
{
    g_free(beginning->plan);
    g_free(beginning->person);
    g_free(beginning->serial);
    g_free(beginning->owner);
    g_free(beginning->build);
}

static SessionOptions session_options(const Desk *desk)
{
    return (SessionOptions){
        .now = desk->options->now, .new_id = desk->options->new_id, .user = desk->options->user};
}

// PLANS -----------------------------------------------------------------------------------------

static GBytes *plan_file(const char *path)
{
    char *text = NULL;
    gsize length = 0;
    GStatBuf about;
    if (g_stat(path, &about) != 0 || about.st_size > PLAN_BYTES ||
        !g_file_get_contents(path, &text, &length, NULL))
        return NULL;
    return g_bytes_new_take(text, length);
}

static Plan *plan_of(GBytes *bytes, GError **error)
{
    g_autoptr(Faults) faults = faults_new();
    gsize length;
    const char *text = g_bytes_get_data(bytes, &length);
    Plan *plan = plan_read(text, length, faults);
    if (!plan) {
        g_autofree char *fault = fault_text(faults_at(faults, 0), "plan");
        g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO, fault);
    }
    return plan;
}

static gboolean holds_plan(const char *path)
{
    g_autoptr(GBytes) bytes = plan_file(path);
    g_autoptr(Plan) plan = bytes ? plan_of(bytes, NULL) : NULL;
    return plan != NULL;
}

static gint by_name(gconstpointer one, gconstpointer other)
{
    return strcmp(*(char *const *)one, *(char *const *)other);
}

GPtrArray *plans_found(void)
{
    GPtrArray *plans = g_ptr_array_new_with_free_func(g_free);
    GDir *folder = g_dir_open(".", 0, NULL);
    const char *name;
    while (folder && plans->len < PLANS_MOST && (name = g_dir_read_name(folder)))
        if ((g_str_has_suffix(name, ".yaml") || g_str_has_suffix(name, ".yml")) &&
            g_utf8_validate(name, -1, NULL) && holds_plan(name))
            g_ptr_array_add(plans, g_strdup(name));
    g_clear_pointer(&folder, g_dir_close);
    g_ptr_array_sort(plans, by_name);
    return plans;
}

// PERSON ----------------------------------------------------------------------------------------

gboolean person_fits(const char *person, GError **error)
{
    gsize initials = strspn(person, "ABCDEFGHIJKLMNOPQRSTUVWXYZ");
    if (initials >= 2 && initials <= 4 && person[initials] == ' ' && person[initials + 1])
        return TRUE;
    g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                        "write two to four capitals, a blank and the name: TB Tess Bell");
    return FALSE;
}

gboolean word_fits(const char *word, GError **error)
{
    static const char parting[] = " \t\"[](),#";
    if (*word && !strpbrk(word, parting))
        return TRUE;
    g_autofree char *one = g_strdelimit(g_strdup(word), parting, '-');
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "it is one word, without blanks, brackets or commas: write %s", one);
    return FALSE;
}

// `harrow` for `Ines Harrow`: the short word of an owner.
static char *owner_word(const char *owner)
{
    const char *last = strrchr(owner, ' ');
    g_autofree char *lower = g_utf8_strdown(last ? last + 1 : owner, -1);
    g_autofree char *word = g_strdelimit(g_steal_pointer(&lower), "\t\"[](),#", '-');
    return g_strdup(*word ? word : "owner");
}

// DEMO ------------------------------------------------------------------------------------------

// Where the demo's files lie: installed beside the program, or in the tree it was built in.
static char *demo_folder(void)
{
    static const char *const places[] = {"../share/standbook/demo-data", "../demo-data"};
    g_autofree char *program = g_file_read_link("/proc/self/exe", NULL);
    g_autofree char *beside = program ? g_path_get_dirname(program) : NULL;
    for (gsize i = 0; beside && i < G_N_ELEMENTS(places); i++) {
        g_autofree char *folder = g_build_filename(beside, places[i], NULL);
        g_autofree char *order = g_build_filename(folder, "order", NULL);
        if (g_file_test(order, G_FILE_TEST_EXISTS))
            return g_steal_pointer(&folder);
    }
    return NULL;
}

static gboolean make_folder_of(const char *path, GError **error)
{
    g_autofree char *folder = g_path_get_dirname(path);
    if (g_mkdir_with_parents(folder, 0700) == 0)
        return TRUE;
    g_autofree char *shown = text_path(folder);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE, "the folder %s cannot be made",
                shown);
    return FALSE;
}

gboolean begin_demo(Desk *desk, GError **error)
{
    const SessionOptions options = session_options(desk);
    g_autofree char *beside = g_path_get_dirname(desk->options->store);
    g_autofree char *path = g_build_filename(beside, "demo.db", NULL);
    g_autofree char *folder = demo_folder();
    if (!folder) {
        g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
                            "the demo's files are not installed beside the program");
        return FALSE;
    }
    if (!g_file_test(path, G_FILE_TEST_EXISTS) &&
        (!make_folder_of(path, error) || !demo_make(folder, path, &options, error)))
        return FALSE;
    return desk_open_store(desk, path, error);
}

// ENGINE ----------------------------------------------------------------------------------------

static gboolean enter_lines(Desk *desk, const Beginning *beginning, const Plan *plan,
                            GError **error)
{
    g_auto(GStrv) person = g_strsplit(beginning->person, " ", 2);
    g_autofree char *name = line_quoted(person[1]), *owner = line_quoted(beginning->owner);
    g_autofree char *short_owner = owner_word(beginning->owner);
    g_autofree char *family = line_quoted(plan->family ? plan->family : "engine");
    g_autofree char *plan_name = line_quoted(plan->name);
    g_autofree char *serial = line_quoted(beginning->serial);
    g_autofree char *lines = g_strdup_printf(
        "%s person %s %s\nowner %s %s\nengine %s family %s owner %s\nbuild %s engine %s plan %s\n",
        person[0], person[0], name, short_owner, owner, serial, family, short_owner,
        beginning->build, serial, plan_name);
    g_free(desk->who);
    desk->who = g_strdup(person[0]);
    return session_text(desk->shop, lines, strlen(lines), NULL, NULL, error);
}

static gboolean fill_store(Desk *desk, const Beginning *beginning, GError **error)
{
    const SessionOptions options = session_options(desk);
    g_autoptr(GBytes) bytes = beginning->plan ? plan_file(beginning->plan)
                                              : g_bytes_new_static(blank_card, strlen(blank_card));
    g_autoptr(Plan) plan = bytes ? plan_of(bytes, error) : NULL;
    if (!plan)
        return FALSE;
    return plan_keep(desk->book, bytes, plan, &options, NULL, error) &&
           desk_open_store(desk, desk->options->store, error) &&
           enter_lines(desk, beginning, plan, error);
}

gboolean begin_engine(Desk *desk, const Beginning *beginning, GError **error)
{
    const char *store = desk->options->store;
    if (!make_folder_of(store, error) || !book_create(store, error))
        return FALSE;
    if (desk_open_store(desk, store, error) && fill_store(desk, beginning, error)) {
        desk_take_up(desk, beginning->build);
        return TRUE;
    }
    desk_close_store(desk);
    g_unlink(store);
    return FALSE;
}
