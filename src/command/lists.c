// engine, build and tool: what the shop has.
#include "answer.h"
#include "subcommands.h"
#include "tool_for.h"

#include <standbook/base/text.h>
#include <standbook/work/gate.h>
#include <standbook/work/tool_standing.h>
#include <string.h>

// Opens the shop, or says why not.
static Shop *shop_of(const Common *common, Book **book, int *status)
{
    GError *error = NULL;
    *book = store_open(common, BOOK_READ, &error);
    Shop *shop = *book ? shop_open(*book, &error) : NULL;
    if (!shop)
        *status = fail_with(error);
    return shop;
}

static void entry_row(Document *document, const Shop *shop, Book *book, const Entry *entry)
{
    const char *owner = entry_text(entry, "owner");
    const Entry *owning = owner ? shop_by_id(shop, "owner", owner) : NULL;
    g_autofree char *name = owner ? person_name(book, owner) : NULL;
    document_row(document,
                 (const char *const[]){entry_text(entry, "serial"), entry_text(entry, "family"),
                                       name     ? name
                                       : owning ? entry_text(owning, "label")
                                                : "",
                                       entry_text(entry, "note")});
}

static int engine_list(GStrv words, Common *common)
{
    (void)words;
    int status = 0;
    g_autoptr(Book) book = NULL;
    g_autoptr(Shop) shop = shop_of(common, &book, &status);
    if (!shop)
        return status;
    const DocumentColumn columns[] = {
        {"engine", ALIGN_WHOLE}, {"family", ALIGN_LEFT}, {"owner", ALIGN_LEFT}, {"", ALIGN_LEFT}};
    g_autoptr(Document) document = document_new("engines", "Engines");
    g_autoptr(GPtrArray) all = shop_all(shop, "engine", NULL);
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < all->len; i++)
        entry_row(document, shop, book, g_ptr_array_index(all, i));
    say_document(document, common->json);
    return 0;
}

// `hand over 30 Nov 2025, 18 in doubt since`: of the last gate that is sealed; "" if none is. NULL
// with an error.
static char *seal_words(Book *book, const char *number, GError **error)
{
    g_autoptr(Opened) opened = opened_new(book, number, error);
    g_autoptr(Assessment) assessment = opened ? opened_assess(opened, NULL) : NULL;
    if (!assessment)
        return NULL;
    const Entry *const *entries = (const Entry *const *)opened->entries->pdata;
    for (guint i = assessment->gates->len; i-- > 0;) {
        const GateCount *gate = g_ptr_array_index(assessment->gates, i);
        g_autofree char *words = gate_seal_words(gate, entries, 0);
        if (*words)
            return g_strconcat(gate->name, " ", words, NULL);
    }
    return g_strdup("");
}

static gboolean build_row(Document *document, const Shop *shop, Book *book, const Entry *build,
                          GError **error)
{
    const Entry *engine = shop_by_id(shop, "engine", entry_text(build, "engine"));
    const char *owner = engine ? entry_text(engine, "owner") : NULL;
    g_autofree char *name = owner ? person_name(book, owner) : NULL;
    g_autofree char *when = entry_when(build);
    when[MIN(strlen(when), 10)] = '\0';
    g_autofree char *seal = seal_words(book, entry_text(build, "number"), error);
    if (seal)
        document_row(document, (const char *const[]){entry_text(build, "number"),
                                                     engine ? entry_text(engine, "serial") : "",
                                                     name, when, entry_text(build, "order"), seal});
    return seal != NULL;
}

// A build that came in from elsewhere: this shop never began it, but its ledger says what it is.
static gboolean imported_row(Document *document, Book *book, const char *number, GError **error)
{
    g_autofree char *ledger = ledger_of(book, number, error);
    g_autoptr(GPtrArray) entries = ledger ? entries_read(book, ledger, error) : NULL;
    if (!entries)
        return FALSE;
    g_autoptr(Taken) taken = taken_new((const Entry *const *)entries->pdata, entries->len, NULL);
    g_autofree char *when = entry_when(g_ptr_array_index(entries, 0));
    when[MIN(strlen(when), 10)] = '\0';
    g_autofree char *seal = seal_words(book, number, error);
    if (seal)
        document_row(document,
                     (const char *const[]){number, taken_only(taken, "engine", "serial"),
                                           taken_name(taken, taken_only(taken, "engine", "owner")),
                                           when, taken_only(taken, "build", "order"), seal});
    return seal != NULL;
}

static gboolean imported_rows(Document *document, const Shop *shop, Book *book, GError **error)
{
    g_autoptr(GPtrArray) numbers = build_numbers(book, error);
    for (guint i = 0; numbers && i < numbers->len; i++)
        if (!shop_find(shop, "build", g_ptr_array_index(numbers, i)) &&
            !imported_row(document, book, g_ptr_array_index(numbers, i), error))
            return FALSE;
    return numbers != NULL;
}

static int build_list(GStrv words, Common *common)
{
    (void)words;
    int status = 0;
    g_autoptr(Book) book = NULL;
    g_autoptr(Shop) shop = shop_of(common, &book, &status);
    if (!shop)
        return status;
    const DocumentColumn columns[] = {{"build", ALIGN_WHOLE},
                                      {"engine", ALIGN_WHOLE},
                                      {"for", ALIGN_LEFT},
                                      {"begun", ALIGN_WHOLE},
                                      {"order", ALIGN_LEFT},
                                      {"sealed", ALIGN_LEFT}};
    g_autoptr(Document) document = document_new("builds", "Builds");
    g_autoptr(GPtrArray) all = shop_all(shop, "build", NULL);
    document_table(document, columns, G_N_ELEMENTS(columns));
    GError *error = NULL;
    for (guint i = 0; i < all->len; i++)
        if (!build_row(document, shop, book, g_ptr_array_index(all, i), &error))
            return fail_with(error);
    if (!imported_rows(document, shop, book, &error))
        return fail_with(error);
    say_document(document, common->json);
    return 0;
}

// `first start: complete; hand over: 3 left`. NULL with an error.
static char *build_state(Book *book, const char *number, GError **error)
{
    g_autoptr(Opened) opened = opened_new(book, number, error);
    if (!opened)
        return NULL;
    g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < assessment->gates->len; i++) {
        const GateCount *gate = g_ptr_array_index(assessment->gates, i);
        g_string_append_printf(words, "%s%s: ", i ? "; " : "", gate->name);
        if (gate->left)
            g_string_append_printf(words, "%u left", gate->left);
        else
            g_string_append(words, "complete");
        g_autofree char *seal =
            gate_seal_words(gate, (const Entry *const *)opened->entries->pdata, 0);
        g_string_append_printf(words, "%s%s", *seal ? ", " : "", seal);
    }
    return g_string_free(words, FALSE);
}

// The uses of a torque wrench since its calibration; "" of all else. The caller frees.
static char *tool_uses_words(const Shop *shop, Book *book, const Entry *tool)
{
    g_autoptr(Unit) torque = unit_parse("N·m", NULL);
    gint64 uses = tool_measures(tool, unit_kind(torque)) ? tool_uses(shop, tool, book) : -1;
    return uses < 0 ? g_strdup("") : g_strdup_printf("%" G_GINT64_FORMAT, uses);
}

// The calibration in force is the last of all; whether it is overdue depends on the day of use.
static void tool_row(Document *document, const Shop *shop, Book *book, const Entry *tool)
{
    g_autofree char *uses = tool_uses_words(shop, book, tool);
    g_autoptr(GPtrArray) all = shop_calibrations(shop, entry_text(tool, "id"));
    const Entry *last = all->len ? g_ptr_array_index(all, all->len - 1) : NULL;
    g_autofree char *doubt = value_words(last ? json_object_get(last->body, "uncertainty") : NULL);
    const Entry *end = shop_end(shop, tool, NULL);
    g_autofree char *ended = end ? shop_end_words(end) : g_strdup("");
    g_autofree char *due = last ? tool_due_words(tool->body, last->body) : g_strdup("");
    document_row(document, (const char *const[]){
                               entry_text(tool, "label"), entry_text(tool, "sort"),
                               last ? entry_text(last, "date") : "never",
                               last ? entry_text(last, "found") : "", doubt, due, uses, ended});
}

static int no_kind(const Shop *shop, const char *kind)
{
    g_autoptr(GPtrArray) all = shop_all(shop, "tool", NULL);
    g_autoptr(GPtrArray) kinds = g_ptr_array_new();
    for (guint i = 0; i < all->len; i++)
        g_ptr_array_add(kinds, (gpointer)entry_text(g_ptr_array_index(all, i), "sort"));
    g_autofree char *hint = hint_nearest(kind, (const char *const *)kinds->pdata, kinds->len,
                                         "; standbook tool list names all");
    return fail_saying(STANDBOOK_ERROR_MISUSE, "the shop has no tool of the kind `%s`%s", kind,
                       hint);
}

static gboolean any_out_of_use(const Shop *shop, const GPtrArray *tools)
{
    for (guint i = 0; i < tools->len; i++)
        if (shop_end(shop, tools->pdata[i], NULL))
            return TRUE;
    return FALSE;
}

static int tool_list(GStrv words, Common *common)
{
    int status = 0;
    g_autoptr(Book) book = NULL;
    g_autoptr(Shop) shop = shop_of(common, &book, &status);
    if (!shop)
        return status;
    const DocumentColumn columns[] = {{"tool", ALIGN_WHOLE},       {"", ALIGN_LEFT},
                                      {"calibrated", ALIGN_WHOLE}, {"found", ALIGN_WHOLE},
                                      {"U", ALIGN_WHOLE},          {"due", ALIGN_WHOLE},
                                      {"uses", ALIGN_RIGHT},       {"out of use", ALIGN_LEFT}};
    g_autoptr(Document) document = document_new("tools", "Tools");
    g_autoptr(GPtrArray) all = shop_all(shop, "tool", words[0]);
    if (words[0] && all->len == 0)
        return no_kind(shop, words[0]);
    document_table(document, columns,
                   any_out_of_use(shop, all) ? G_N_ELEMENTS(columns) : G_N_ELEMENTS(columns) - 1);
    for (guint i = 0; i < all->len; i++)
        tool_row(document, shop, book, g_ptr_array_index(all, i));
    say_document(document, common->json);
    return 0;
}

static int no_engine(const Shop *shop, const char *serial)
{
    const char *nearest = shop_nearest(shop, "engine", serial);
    return nearest ? fail_saying(STANDBOOK_ERROR_MISUSE,
                                 "the shop has no engine `%s`; did you mean `%s`?", serial, nearest)
                   : fail_saying(STANDBOOK_ERROR_MISUSE,
                                 "the shop has no engine `%s`; standbook engine list names them",
                                 serial);
}

static void fact(Document *document, const char *before, const char *text)
{
    g_autofree char *line = text ? g_strconcat(before, text, NULL) : NULL;
    if (line)
        document_line(document, line);
}

// An engine comes back over the years: all its builds, and how complete each is.
static gboolean engine_builds(Document *document, const Shop *shop, Book *book, const char *engine,
                              GError **error)
{
    const DocumentColumn columns[] = {
        {"build", ALIGN_WHOLE}, {"begun", ALIGN_WHOLE}, {"order", ALIGN_LEFT}, {"", ALIGN_LEFT}};
    g_autoptr(GPtrArray) all = shop_all(shop, "build", NULL);
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < all->len; i++) {
        const Entry *build = g_ptr_array_index(all, i);
        if (strcmp(entry_text(build, "engine"), engine) != 0)
            continue;
        g_autofree char *when = entry_when(build);
        when[MIN(strlen(when), 10)] = '\0';
        g_autofree char *state = build_state(book, entry_text(build, "number"), error);
        if (!state)
            return FALSE;
        document_row(document, (const char *const[]){entry_text(build, "number"), when,
                                                     entry_text(build, "order"), state});
    }
    return TRUE;
}

static int engine_show(GStrv words, Common *common)
{
    int status = 0;
    g_autoptr(Book) book = NULL;
    g_autoptr(Shop) shop = shop_of(common, &book, &status);
    if (!shop)
        return status;
    const Entry *engine = shop_find(shop, "engine", words[0]);
    if (!engine)
        return no_engine(shop, words[0]);
    const char *owner = entry_text(engine, "owner");
    g_autofree char *name = owner ? person_name(book, owner) : NULL;
    g_autofree char *title = g_strconcat("Engine ", words[0], NULL);
    g_autoptr(Document) document = document_new("engine", title);
    fact(document, "family ", entry_text(engine, "family"));
    fact(document, "made by ", entry_text(engine, "make"));
    fact(document, "for ", name);
    fact(document, "", entry_text(engine, "note"));
    GError *error = NULL;
    if (!engine_builds(document, shop, book, entry_text(engine, "id"), &error))
        return fail_with(error);
    say_document(document, common->json);
    return 0;
}

static void last_line(Document *document, const Opened *opened)
{
    if (opened->entries->len == 0)
        return;
    const Entry *last = g_ptr_array_index(opened->entries, opened->entries->len - 1);
    g_autofree char *when = entry_when(last), *what = entry_words(opened->taken, last);
    g_autofree char *line = g_strdup_printf("last: #%" G_GINT64_FORMAT " %s %s  %s", last->seq,
                                            when, taken_initials(opened->taken, last->by), what);
    document_line(document, line);
}

static int build_show(GStrv words, Common *common)
{
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(Opened) opened = book ? opened_new(book, words[0], &error) : NULL;
    g_autofree char *state = opened ? build_state(book, words[0], &error) : NULL;
    if (!state)
        return fail_with(error);
    g_autofree char *title = g_strconcat("Build ", words[0], NULL);
    g_autoptr(Document) document = document_new("build", title);
    fact(document, "engine ", taken_only(opened->taken, "engine", "serial"));
    fact(document, "", taken_only(opened->taken, "engine", "note"));
    fact(document, "for ", taken_name(opened->taken, taken_only(opened->taken, "engine", "owner")));
    fact(document, "order: ", taken_only(opened->taken, "build", "order"));
    fact(document, "plan: ", opened->kept->name);
    last_line(document, opened);
    document_line(document, state);
    say_document(document, common->json);
    return 0;
}

int engine_run(int argc, char **argv, Common *common)
{
    static const Verb verbs[] = {
        {"list", "", 0, 0, engine_list, "the engines the shop knows"},
        {"show", "SERIAL", 1, 1, engine_show, "all builds of one, and how complete each is"},
        {NULL, NULL, 0, 0, NULL, NULL}};
    return verbs_run(argc, argv, common, verbs,
                     "A new one is a line of standbook log --shop: engine SERIAL family FAMILY "
                     "owner OWNER");
}

int build_run(int argc, char **argv, Common *common)
{
    static const Verb verbs[] = {
        {"list", "", 0, 0, build_list, "the builds begun here, then those that came in"},
        {"show", "BUILD", 1, 1, build_show, "how one stands"},
        {NULL, NULL, 0, 0, NULL, NULL}};
    return verbs_run(argc, argv, common, verbs,
                     "BUILD is its number, as the list shows it. A new one is a line of\n"
                     "standbook log --shop: build NUMBER engine SERIAL plan \"PLAN\"");
}

int tool_run(int argc, char **argv, Common *common)
{
    static const Verb verbs[] = {
        {"list", "[KIND]", 0, 1, tool_list, "all tools, or those of a kind; last calibration"},
        {"for", "BUILD PLACE", 2, 2, tool_for,
         "which gauges can settle a place (exit status 1 if none)"},
        {NULL, NULL, 0, 0, NULL, NULL}};
    return verbs_run(argc, argv, common, verbs,
                     "What one was used on: standbook trace tool NAME. A new one, and a "
                     "calibration, is a line\nof standbook log --shop.");
}
