#include "answer.h"
#include "subcommands.h"

#include <jansson.h>
#include <standbook/base/text.h>
#include <standbook/plan/plan.h>
#include <standbook/plan/write.h>
#include <standbook/sheet/plan_sheet.h>
#include <standbook/work/as_done.h>
#include <standbook/work/begin.h>
#include <string.h>

enum { PLAN_BYTES = 2 * 1024 * 1024 };

static void say_faults(const Faults *faults, const char *file, gboolean json)
{
    json_t *list = json_array();
    for (guint i = 0; i < faults_count(faults); i++) {
        const Fault *fault = faults_at(faults, i);
        g_autofree char *text = fault_text(fault, file);
        if (json)
            json_array_append_new(list,
                                  json_pack("{s:i,s:i,s:s}", "line", (int)fault->line, "column",
                                            (int)fault->column, "message", fault->message));
        else
            say("%s\n", text);
    }
    if (json)
        say_json(list);
    json_decref(list);
}

static Plan *plan_of_bytes(GBytes *bytes, const char *name, const Common *common, int *status)
{
    gsize length;
    const char *start = g_bytes_get_data(bytes, &length);
    g_autoptr(Faults) faults = faults_new();
    Plan *plan = plan_read(start, length, faults);
    *status = plan ? 0 : STANDBOOK_ERROR_NO;
    if (!plan)
        say_faults(faults, name, common->json);
    return plan;
}

// The build of that number, else the newest build of the engine of that serial; NULL if the shop
// has neither.
static const Entry *build_of(const Shop *shop, const char *name)
{
    const Entry *build = shop_find(shop, "build", name), *engine = shop_find(shop, "engine", name);
    g_autoptr(GPtrArray) builds = shop_all(shop, "build", NULL);
    for (guint i = 0; i < builds->len && !build; i++) {
        const Entry *each = builds->pdata[builds->len - 1 - i];
        if (engine && g_strcmp0(entry_text(each, "engine"), entry_text(engine, "id")) == 0)
            build = each;
    }
    return build;
}

// The work of a build as a plan file.
static GBytes *work_bytes(Book *book, const Entry *build, GError **error)
{
    guint left_out = 0;
    g_autoptr(Opened) opened = opened_new(book, shop_label(build), error);
    char *text = opened ? plan_as_done(opened, &left_out, error) : NULL;
    if (left_out)
        fail_saying(0, "left out: %u other service limit%s that hold%s for single places only",
                    left_out, left_out > 1 ? "s" : "", left_out > 1 ? "" : "s");
    return text ? g_bytes_new_take(text, strlen(text)) : NULL;
}

// Something of the store: a plan of that name, the newest of them, as it was added; else what was
// done to a build or an engine, with *work set.
static GBytes *plan_bytes(const Common *common, const char *name, gboolean *work, GError **error)
{
    g_autoptr(Book) book = store_open(common, BOOK_READ, error);
    g_autoptr(Shop) shop = book ? shop_open(book, error) : NULL;
    const Entry *entry = shop ? shop_find(shop, "plan", name) : NULL;
    if (entry)
        return book_kept(book, entry_text(entry, "digest"), error);
    const Entry *build = shop && work ? build_of(shop, name) : NULL;
    if (build) {
        *work = TRUE;
        return work_bytes(book, build, error);
    }
    const char *nearest = shop ? shop_nearest(shop, "plan", name) : NULL;
    if (shop)
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "there is neither a file nor a plan%s `%s`%s%s%s",
                    work ? ", build or engine" : "", name,
                    nearest ? "; did you mean `" : "; standbook plan list names the plans",
                    nearest ? nearest : "", nearest ? "`?" : "");
    return NULL;
}

// The bytes of a plan: a file, or something of the store.
static GBytes *bytes_of(const char *name, const Common *common, gboolean *work, GError **error)
{
    gboolean path = strchr(name, '/') || strchr(name, '.');
    if (strcmp(name, "-") == 0 || g_file_test(name, G_FILE_TEST_EXISTS))
        return file_read(name, PLAN_BYTES, error);
    GBytes *bytes = plan_bytes(common, name, work, path ? NULL : error);
    return bytes || !path ? bytes : file_read(name, PLAN_BYTES, error);
}

// A plan out of a file or the store; *work tells whether it is what was done to a build. NULL with
// *status when it cannot be read or has faults, which are said.
static Plan *plan_open(const char *name, const Common *common, gboolean *work, int *status)
{
    GError *error = NULL;
    *work = FALSE;
    g_autoptr(GBytes) bytes = bytes_of(name, common, work, &error);
    if (bytes)
        return plan_of_bytes(bytes, name, common, status);
    *status = fail_with(error);
    return NULL;
}

static guint checks_of(const Plan *plan)
{
    return g_hash_table_size(plan->checks);
}

static int check(GStrv words, Common *common)
{
    int status;
    gboolean work;
    g_autoptr(Plan) plan = plan_open(words[0], common, &work, &status);
    if (!plan)
        return status;
    say_faults(plan->notices, words[0], common->json);
    if (!common->json) {
        g_autofree char *name = text_clean(plan->name, -1);
        g_autofree char *steps = text_counted(plan->steps->len, "step");
        g_autofree char *checks = text_counted(checks_of(plan), "check");
        g_autofree char *sets = text_counted(g_hash_table_size(plan->groups), "bolt set");
        say("%s: no faults; %s, %s, %s\n", name, steps, checks, sets);
    }
    return 0;
}

static int say_plan_file(const Plan *plan)
{
    g_autofree char *text = plan_write(plan);
    say_clean(text);
    return 0;
}

static int show(GStrv words, Common *common)
{
    int status;
    gboolean work;
    g_autoptr(Plan) plan = plan_open(words[0], common, &work, &status);
    if (!plan)
        return status;
    if (work && !common->json)
        return say_plan_file(plan);
    if (common->json) {
        json_t *whole = plan_json(plan);
        say_json(whole);
        json_decref(whole);
        return 0;
    }
    g_autoptr(Document) document = sheet_plan(plan);
    say_document(document, FALSE);
    return 0;
}

static int write_back(GStrv words, Common *common)
{
    int status;
    gboolean work;
    g_autoptr(Plan) plan = plan_open(words[0], common, &work, &status);
    return plan ? say_plan_file(plan) : status;
}

static int plan_file(GStrv words, Common *common)
{
    GError *error = NULL;
    g_autoptr(GBytes) bytes = plan_bytes(common, words[0], NULL, &error);
    if (!bytes)
        return fail_with(error);
    gsize length;
    const char *start = g_bytes_get_data(bytes, &length);
    return bytes_out(start, length, words[1]);
}

static int list(GStrv words, Common *common)
{
    (void)words;
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(Shop) shop = book ? shop_open(book, &error) : NULL;
    if (!shop)
        return fail_with(error);
    const DocumentColumn columns[] = {{"plan", ALIGN_LEFT},
                                      {"revision", ALIGN_WHOLE},
                                      {"family", ALIGN_LEFT},
                                      {"source", ALIGN_LEFT}};
    g_autoptr(Document) document = document_new("plans", "Plans");
    g_autoptr(GPtrArray) all = shop_all(shop, "plan", NULL);
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < all->len; i++) {
        const Entry *each = g_ptr_array_index(all, i);
        document_row(document,
                     (const char *const[]){entry_text(each, "name"), entry_text(each, "revision"),
                                           entry_text(each, "family"), entry_text(each, "source")});
    }
    say_document(document, common->json);
    return 0;
}

static int add(GStrv words, Common *common)
{
    int status;
    GError *error = NULL;
    g_autoptr(GBytes) bytes = file_read(words[0], PLAN_BYTES, &error);
    if (!bytes)
        return fail_with(error);
    g_autoptr(Plan) plan = plan_of_bytes(bytes, words[0], common, &status);
    if (!plan)
        return status;
    const SessionOptions options = {.now = wall_clock, .new_id = random_id};
    gboolean kept = FALSE;
    g_autoptr(Book) book = store_open(common, BOOK_WRITE, &error);
    if (!book || !plan_keep(book, bytes, plan, &options, &kept, &error))
        return fail_with(error);
    g_autofree char *name = text_clean(plan->name, -1);
    say(kept ? "%s: kept\n" : "%s: is there already\n", name);
    return 0;
}

int plan_run(int argc, char **argv, Common *common)
{
    static const Verb verbs[] = {
        {"check", "FILE", 1, 1, check, "says every fault of a plan file, with line and column"},
        {"add", "FILE", 1, 1, add, "keeps a plan without fault in the store"},
        {"list", "", 0, 0, list, "names the plans kept"},
        {"show", "FILE|PLAN", 1, 1, show, "prints all it asks for, to be reviewed"},
        {"show", "BUILD|ENGINE", 1, 1, show,
         "prints the work done as a plan file, to begin another by"},
        {"write", "FILE|PLAN", 1, 1, write_back, "prints it as a plan file, without comments"},
        {"file", "PLAN [FILE]", 1, 2, plan_file, "gives back the very file that was added"},
        {NULL, NULL, 0, 0, NULL, NULL},
    };
    return verbs_run(argc, argv, common, verbs,
                     "PLAN is its name, in quotes: plan show \"Hathersey H23 four, full rebuild\"\n"
                     "How a plan is written stands in standbook-plan(5).");
}
