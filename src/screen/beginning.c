#include "beginning.h"
#include "line_words.h"

#include <glib/gstdio.h>
#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/work/begin.h>
#include <standbook/work/grown.h>
#include <standbook/work/opened.h>
#include <string.h>

enum { PLANS_MOST = 99, PLAN_BYTES = 2 * 1024 * 1024 };

#define BLANK_CARD "Blank card"
static const char blank_card[] = "plan: " BLANK_CARD "\n"
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
    g_free(beginning->shop);
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
    if (g_stat(path, &about) != 0 || !S_ISREG(about.st_mode) || about.st_size > PLAN_BYTES ||
        !g_file_get_contents(path, &text, &length, NULL))
        return NULL;
    return g_bytes_new_take(text, length);
}

// A fault is told with the name of the file.
static Plan *plan_of(GBytes *bytes, const char *path, GError **error)
{
    g_autoptr(Faults) faults = faults_new();
    gsize length;
    const char *text = g_bytes_get_data(bytes, &length);
    Plan *plan = plan_read(text, length, faults);
    if (!plan) {
        g_autofree char *name = path ? g_path_get_basename(path) : g_strdup("plan");
        g_autofree char *fault = fault_text(faults_at(faults, 0), name);
        g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO, fault);
    }
    return plan;
}

// Whether a file holds a plan that is not kept already.
static gboolean holds_plan(const char *path, const Shop *shop)
{
    g_autoptr(GBytes) bytes = plan_file(path);
    g_autoptr(Plan) plan = bytes ? plan_of(bytes, path, NULL) : NULL;
    return plan && !(shop && plan_is_kept(shop, plan, bytes));
}

static gint by_name(gconstpointer one, gconstpointer other)
{
    return strcmp(*(char *const *)one, *(char *const *)other);
}

// Adds the files of a folder, by name: of `.` as they are called there.
static void add_files(const char *folder, const Shop *shop, GPtrArray *plans)
{
    g_autoptr(GPtrArray) files = g_ptr_array_new();
    GDir *open = g_dir_open(folder, 0, NULL);
    const char *name;
    while (open && files->len < PLANS_MOST && (name = g_dir_read_name(open))) {
        g_autofree char *path =
            strcmp(folder, ".") == 0 ? g_strdup(name) : g_build_filename(folder, name, NULL);
        if ((g_str_has_suffix(name, ".yaml") || g_str_has_suffix(name, ".yml")) &&
            g_utf8_validate(name, -1, NULL) && holds_plan(path, shop))
            g_ptr_array_add(files, g_steal_pointer(&path));
    }
    g_clear_pointer(&open, g_dir_close);
    g_ptr_array_sort(files, by_name);
    g_ptr_array_extend_and_steal(plans, g_steal_pointer(&files));
}

// The working folder, and those in it where plans are kept as a rule.
static GPtrArray *files_found(const Shop *shop)
{
    static const char *const folders[] = {".", "plans", "demo-data"};
    GPtrArray *plans = g_ptr_array_new_with_free_func(g_free);
    for (gsize i = 0; i < G_N_ELEMENTS(folders); i++)
        add_files(folders[i], shop, plans);
    return plans;
}

// The blank card has a door of its own.
static GPtrArray *kept_found(const Shop *shop)
{
    GPtrArray *names = g_ptr_array_new_with_free_func(g_free);
    g_autoptr(GPtrArray) kept = shop ? shop_all(shop, "plan", NULL) : g_ptr_array_new();
    for (guint i = 0; i < kept->len; i++)
        if (strcmp(shop_label(kept->pdata[i]), BLANK_CARD) != 0)
            g_ptr_array_add(names, g_strdup(shop_label(kept->pdata[i])));
    return names;
}

GPtrArray *plans_found(const Desk *desk)
{
    const Shop *shop = desk->shop ? session_shop(desk->shop) : NULL;
    GPtrArray *plans = kept_found(shop);
    g_ptr_array_extend_and_steal(plans, files_found(shop));
    g_ptr_array_set_size(plans, (gint)MIN(plans->len, PLANS_MOST));
    return plans;
}

// The path that was typed, `~` and all, with what a shell leaves in front of it and behind.
static char *path_of(const char *typed)
{
    g_autofree char *path = g_strstrip(g_strdup(typed));
    gboolean home = path[0] == '~' && (!path[1] || G_IS_DIR_SEPARATOR(path[1]));
    return home ? g_build_filename(g_get_home_dir(), path + 1, NULL) : g_steal_pointer(&path);
}

char *plan_typed(const GPtrArray *plans, const char *typed, GError **error)
{
    guint64 line = 0;
    if (g_ascii_string_to_unsigned(typed, 10, 1, PLANS_MOST, &line, NULL) && line <= plans->len)
        return g_strdup(plans->pdata[line - 1]);
    for (guint i = 0; i < plans->len; i++)
        if (strcmp(plans->pdata[i], typed) == 0)
            return g_strdup(typed);
    g_autofree char *path = path_of(typed);
    g_autoptr(GBytes) bytes = plan_file(path);
    g_autoptr(Plan) plan = bytes ? plan_of(bytes, path, error) : NULL;
    if (plan)
        return g_steal_pointer(&path);
    if (!bytes && line)
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "there is no line %" G_GUINT64_FORMAT "; the list has %u", line, plans->len);
    else if (!bytes)
        g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                            "no plan can be read there; its path begins here, with / or with ~");
    return NULL;
}

// PERSON ----------------------------------------------------------------------------------------

gboolean person_fits(const Desk *desk, const char *person, GError **error)
{
    (void)desk;
    gsize initials = strspn(person, G_CSET_A_2_Z);
    if (initials >= 2 && initials <= 4 &&
        (!person[initials] || (person[initials] == ' ' && person[initials + 1])))
        return TRUE;
    g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                        "write two to four capitals, or these, a blank and the name: TB Tess Bell");
    return FALSE;
}

char *person_words(const char *person)
{
    g_auto(GStrv) parts = g_strsplit(person, " ", 2);
    g_autofree char *name = line_quoted(parts[1] ? parts[1] : parts[0]);
    return g_strdup_printf("person %s %s", parts[0], name);
}

// BUILD -----------------------------------------------------------------------------------------

static gboolean is_build(const Desk *desk, const char *number)
{
    return desk->shop && shop_find(session_shop(desk->shop), "build", number);
}

static const char parting[] = " \t\"[](),#";

gboolean word_fits(const char *word, GError **error)
{
    g_autofree char *one = g_strdelimit(g_strdup(word), parting, '-');
    if (strcmp(one, word) == 0)
        return TRUE;
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "it is one word, without blanks, brackets or commas: write %s", one);
    return FALSE;
}

gboolean build_fits(const Desk *desk, const char *number, GError **error)
{
    if (!word_fits(number, error))
        return FALSE;
    if (!is_build(desk, number))
        return TRUE;
    g_autofree char *unused = build_free(desk);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "%s is a job already; call this one otherwise, such as %s", number, unused);
    return FALSE;
}

gboolean build_is_odd(const char *number)
{
    g_auto(Reading) reading = {0};
    return reading_parse(number, NULL, &reading, NULL, NULL) && reading.decimals;
}

char *build_free(const Desk *desk)
{
    for (guint i = 1;; i++) {
        g_autofree char *number = g_strdup_printf("B-%u", i);
        if (!is_build(desk, number))
            return g_steal_pointer(&number);
    }
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

char *demo_path(const Desk *desk)
{
    g_autofree char *beside = g_path_get_dirname(desk->options->store);
    return g_build_filename(beside, "demo.db", NULL);
}

gboolean demo_is_made(const Desk *desk)
{
    g_autofree char *path = demo_path(desk);
    return g_file_test(path, G_FILE_TEST_EXISTS);
}

gboolean demo_is_open(const Desk *desk)
{
    g_autofree char *demo = demo_path(desk), *wanted = g_path_get_basename(demo);
    g_autofree char *open = desk->book ? g_path_get_basename(book_path(desk->book)) : NULL;
    return g_strcmp0(open, wanted) == 0;
}

gboolean begin_demo(Desk *desk, GError **error)
{
    const SessionOptions options = session_options(desk);
    g_autofree char *path = demo_path(desk), *folder = demo_folder();
    if (demo_is_made(desk))
        return desk_open_store(desk, path, error);
    if (!folder) {
        g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
                            "the demo's files are not installed beside the program");
        return FALSE;
    }
    return make_folder_of(path, error) && demo_make(folder, path, &options, error) &&
           desk_open_store(desk, path, error);
}

// OWNER -----------------------------------------------------------------------------------------

// The short word of an owner of that name; NULL if the shop has none.
static const char *owner_known(const Desk *desk, const char *name)
{
    g_autoptr(GPtrArray) owners = shop_all(session_shop(desk->shop), "owner", NULL);
    for (guint i = 0; i < owners->len; i++) {
        g_autofree char *known = person_name(desk->book, entry_text(owners->pdata[i], "id"));
        if (g_strcmp0(known, name) == 0)
            return shop_label(owners->pdata[i]);
    }
    return NULL;
}

// `harrow` for `Ines Harrow`, `harrow-2` for the next of that surname.
static char *owner_word(const Desk *desk, const char *owner)
{
    const char *last = strrchr(owner, ' ');
    g_autofree char *lower = g_utf8_strdown(last ? last + 1 : owner, -1);
    g_autofree char *word = g_strdelimit(g_steal_pointer(&lower), parting, '-');
    g_autofree char *label = g_strdup(word);
    for (guint i = 2; shop_find(session_shop(desk->shop), "owner", label); i++) {
        g_free(label);
        label = g_strdup_printf("%s-%u", word, i);
    }
    return g_steal_pointer(&label);
}

// Enters the owner, unless that one is known; then `*word` is the short word. Nobody: NULL.
static gboolean enter_owner(Desk *desk, const char *owner, char **word)
{
    *word = *owner ? g_strdup(owner_known(desk, owner)) : NULL;
    if (*word || !*owner)
        return TRUE;
    *word = owner_word(desk, owner);
    g_autofree char *name = line_quoted(owner);
    g_autofree char *line = g_strdup_printf("owner %s %s", *word, name);
    return desk_shop_line(desk, line);
}

// ENGINE ----------------------------------------------------------------------------------------

// What the shop knows of the engine stays, unless it has changed hands.
static gboolean enter_engine(Desk *desk, const Beginning *beginning, const Plan *plan,
                             const char *owner)
{
    const Shop *shop = session_shop(desk->shop);
    const Entry *known = shop_find(shop, "engine", beginning->serial);
    const Entry *owning = owner ? shop_find(shop, "owner", owner) : NULL;
    const char *note = known ? entry_text(known, "note") : NULL;
    if (known && (!owning || g_strcmp0(entry_text(known, "owner"), entry_text(owning, "id")) == 0))
        return TRUE;
    g_autofree char *serial = line_quoted(beginning->serial);
    g_autofree char *family = line_quoted(known          ? entry_text(known, "family")
                                          : plan->family ? plan->family
                                                         : "engine");
    g_autofree char *words = note ? line_quoted(note) : g_strdup("");
    g_autofree char *line = g_strdup_printf("engine %s family %s%s%s %s", serial, family,
                                            owner ? " owner " : "", owner ? owner : "", words);
    return desk_shop_line(desk, line);
}

static gboolean enter_person(Desk *desk, const char *person)
{
    if (!person)
        return TRUE;
    g_autofree char *line = person_words(person);
    g_free(desk->who);
    desk->who = g_strndup(person, strcspn(person, " "));
    return desk_shop_line(desk, line);
}

static gboolean enter_name(Desk *desk, const char *name)
{
    if (!name || !*name)
        return TRUE;
    g_autofree char *quoted = line_quoted(name);
    g_autofree char *line = g_strconcat("name ", quoted, NULL);
    return desk_shop_line(desk, line);
}

static gboolean enter_lines(Desk *desk, const Beginning *beginning, const Plan *plan)
{
    g_autofree char *owner = NULL;
    g_autofree char *plan_name = line_quoted(plan->name), *serial = line_quoted(beginning->serial);
    g_autofree char *build =
        g_strdup_printf("build %s engine %s plan %s", beginning->build, serial, plan_name);
    return enter_person(desk, beginning->person) && enter_name(desk, beginning->shop) &&
           enter_owner(desk, beginning->owner, &owner) &&
           enter_engine(desk, beginning, plan, owner) && desk_shop_line(desk, build);
}

// The plan as it is kept, or as its file has it, which is kept then.
static Plan *take_plan(Desk *desk, const char *named, GError **error)
{
    const Entry *entry =
        named && desk->shop ? shop_find(session_shop(desk->shop), "plan", named) : NULL;
    if (entry)
        return plan_kept(desk->book, entry_text(entry, "digest"), error);
    const SessionOptions options = session_options(desk);
    g_autoptr(GBytes) bytes =
        named ? plan_file(named) : g_bytes_new_static(blank_card, strlen(blank_card));
    g_autoptr(Plan) plan = bytes ? plan_of(bytes, named, error) : NULL;
    return plan && plan_keep(desk->book, bytes, plan, &options, NULL, error) &&
                   desk_read_shop(desk, error)
               ? g_steal_pointer(&plan)
               : NULL;
}

static gboolean fill_store(Desk *desk, const Beginning *beginning, GError **error)
{
    g_autoptr(Plan) plan = take_plan(desk, beginning->plan, error);
    if (!plan || !enter_lines(desk, beginning, plan))
        return FALSE;
    g_autofree char *time = moment_text(desk->now);
    desk_take_up(desk, beginning->build);
    desk_last(desk, "%s begun · %.5s %s", beginning->build, time + 11, desk->who);
    return TRUE;
}

gboolean begin_engine(Desk *desk, const Beginning *beginning, GError **error)
{
    const char *store = desk->options->store;
    gboolean first = !desk->book;
    if (first && (!make_folder_of(store, error) || !book_create(store, error)))
        return FALSE;
    if ((!first || desk_open_store(desk, store, error)) && fill_store(desk, beginning, error))
        return TRUE;
    if (first) {
        desk_close_store(desk);
        g_unlink(store);
    }
    return FALSE;
}
