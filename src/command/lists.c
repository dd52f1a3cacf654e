// engine, build and tool: what the shop has.
#include "opened.h"
#include "subcommands.h"

#include <standbook/base/text.h>
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

static void build_row(Document *document, const Shop *shop, Book *book, const Entry *build)
{
    const Entry *engine = shop_by_id(shop, "engine", entry_text(build, "engine"));
    const char *owner = engine ? entry_text(engine, "owner") : NULL;
    g_autofree char *name = owner ? person_name(book, owner) : NULL;
    g_autofree char *when = entry_when(build);
    when[MIN(strlen(when), 10)] = '\0';
    document_row(document, (const char *const[]){entry_text(build, "number"),
                                                 engine ? entry_text(engine, "serial") : "", name,
                                                 when, entry_text(build, "order")});
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
                                      {"order", ALIGN_LEFT}};
    g_autoptr(Document) document = document_new("builds", "Builds");
    g_autoptr(GPtrArray) all = shop_all(shop, "build", NULL);
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < all->len; i++)
        build_row(document, shop, book, g_ptr_array_index(all, i));
    say_document(document, common->json);
    return 0;
}

// The calibration in force is the last of all; whether it is overdue depends on the day of use.
static void tool_row(Document *document, const Shop *shop, const Entry *tool)
{
    g_autoptr(GPtrArray) all = shop_calibrations(shop, entry_text(tool, "id"));
    const Entry *last = all->len ? g_ptr_array_index(all, all->len - 1) : NULL;
    const char *u = last ? entry_value(last, "uncertainty", "typed") : NULL;
    const char *unit = last ? entry_value(last, "uncertainty", "unit") : NULL;
    g_autofree char *doubt = u ? g_strconcat(u, " ", unit, NULL) : g_strdup("");
    document_row(document,
                 (const char *const[]){entry_text(tool, "label"), entry_text(tool, "sort"),
                                       last ? entry_text(last, "date") : "never",
                                       last ? entry_text(last, "found") : "", doubt,
                                       last ? entry_text(last, "due") : ""});
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
                                      {"U", ALIGN_WHOLE},          {"due", ALIGN_WHOLE}};
    g_autoptr(Document) document = document_new("tools", "Tools");
    g_autoptr(GPtrArray) all = shop_all(shop, "tool", words[0]);
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < all->len; i++)
        tool_row(document, shop, g_ptr_array_index(all, i));
    say_document(document, common->json);
    return 0;
}

int engine_run(int argc, char **argv, Common *common)
{
    static const Verb verbs[] = {{"list", "", 0, 0, engine_list}, {NULL, NULL, 0, 0, NULL}};
    return verbs_run(argc, argv, common, verbs,
                     "Engines the shop knows. A new one is a line of standbook log --shop.");
}

int build_run(int argc, char **argv, Common *common)
{
    static const Verb verbs[] = {{"list", "", 0, 0, build_list}, {NULL, NULL, 0, 0, NULL}};
    return verbs_run(argc, argv, common, verbs,
                     "Builds of the shop. A new one is a line of standbook log --shop.");
}

int tool_run(int argc, char **argv, Common *common)
{
    static const Verb verbs[] = {{"list", "[KIND]", 0, 1, tool_list}, {NULL, NULL, 0, 0, NULL}};
    return verbs_run(argc, argv, common, verbs,
                     "Tools with their last calibration. A new one is a line of standbook log "
                     "--shop.");
}
