#include "answer.h"
#include "subcommands.h"
#include "trace_got.h"

#include <standbook/base/text.h>
#include <standbook/book/find.h>
#include <standbook/record/live.h>
#include <standbook/work/gave.h>
#include <string.h>

typedef struct {
    Book *book;
    const Shop *shop;
    const char *since; // `2025-03-13`, NULL for all
    Document *document;
    GPtrArray *found_wrong; // numbers of the builds that know what the tool gave
    guint count;
} Trace;

// Uses of one thing in one build, told in a row: what, where, from when to when.
typedef struct {
    char *what;      // `main caps in Crank`
    GString *places; // `stage 1: 3, 4; stage 2: …`, or places
    char *first, *last;
    gint64 entry; // the first
    guint struck;
    guint count;
} Use;

static void use_free(gpointer data)
{
    Use *use = data;
    g_free(use->what);
    g_string_free(use->places, TRUE);
    g_free(use->first);
    g_free(use->last);
    g_free(use);
}

// What an entry that names a tool or lot is about.
static const char *about(const Entry *entry)
{
    static const char *const fields[][2] = {{"read", "check"},
                                            {"tick", "tightening"},
                                            {"fit", "part"},
                                            {"laid", "consumable"},
                                            {"claim", "check"}};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++)
        if (strcmp(entry->kind->name, fields[i][0]) == 0)
            return entry_text(entry, fields[i][1]);
    return entry->kind->name;
}

static char *place_of(const Entry *entry)
{
    const char *field = strcmp(entry->kind->name, "tick") == 0 ? "bolts" : "place";
    if (!kind_field(entry->kind, field))
        return g_strdup("");
    GString *words = g_string_new(NULL);
    for (gsize i = 0; i < entry_list_length(entry, field); i++)
        g_string_append_printf(words, "%s%s", i ? ", " : "", entry_list_item(entry, field, i));
    if (words->len == 0 && strcmp(entry->kind->name, "fit") == 0)
        g_string_append(words, "all");
    return g_string_free(words, FALSE);
}

static Use *use_of(GPtrArray *uses, const Entry *entry)
{
    const char *step = kind_field(entry->kind, "step") ? entry_text(entry, "step") : NULL;
    g_autofree char *what = g_strconcat(about(entry), step ? " in " : "", step ? step : "", NULL);
    for (guint i = 0; i < uses->len; i++) {
        Use *use = g_ptr_array_index(uses, i);
        if (strcmp(use->what, what) == 0)
            return use;
    }
    Use *use = g_new0(Use, 1);
    use->what = g_strdup(what);
    use->places = g_string_new(NULL);
    use->first = g_strndup(entry_done(entry), 10);
    use->entry = entry->seq;
    g_ptr_array_add(uses, use);
    return use;
}

static void use_add(GPtrArray *uses, const Entry *entry, gboolean live)
{
    Use *use = use_of(uses, entry);
    g_autofree char *place = place_of(entry);
    g_free(use->last);
    use->last = g_strndup(entry_done(entry), 10);
    use->count++;
    use->struck += !live;
    if (*place && !strstr(use->places->str, place))
        g_string_append_printf(use->places, "%s%s", use->places->len ? "; " : "", place);
}

static gboolean is_since(const Trace *trace, const Entry *entry)
{
    return !trace->since || strncmp(entry_done(entry), trace->since, 10) >= 0;
}

static void tell_uses(Trace *trace, const char *label, const char *serial, const GPtrArray *uses)
{
    for (guint i = 0; i < uses->len; i++) {
        const Use *use = g_ptr_array_index(uses, i);
        g_autofree char *days = strcmp(use->first, use->last) == 0
                                    ? g_strdup(use->first)
                                    : g_strconcat(use->first, " to ", use->last, NULL);
        g_autofree char *all = text_counted(use->count, "entry");
        g_autofree char *count =
            use->struck ? g_strdup_printf("%s, %u struck", all, use->struck) : g_strdup(all);
        g_autofree char *from = g_strdup_printf("#%" G_GINT64_FORMAT, use->entry);
        document_row(trace->document, (const char *const[]){label, serial, use->what,
                                                            use->places->str, days, from, count});
        trace->count++;
    }
}

// The uses among the hits in one ledger.
static gboolean trace_ledger(Trace *trace, const BookLedger *ledger, const GPtrArray *hits,
                             const char *text, const char *kind, GError **error)
{
    g_autoptr(GPtrArray) entries = entries_read(trace->book, ledger->id, error);
    if (!entries)
        return FALSE;
    g_autofree gboolean *live = g_new0(gboolean, entries->len + 1);
    live_entries((const Entry *const *)entries->pdata, entries->len, live);
    g_autoptr(GPtrArray) uses = g_ptr_array_new_with_free_func(use_free);
    for (guint i = 0; i < hits->len; i++) {
        const BookHit *hit = g_ptr_array_index(hits, i);
        if (strcmp(hit->ledger, ledger->id) != 0 || hit->seq > (gint64)entries->len)
            continue;
        const Entry *entry = g_ptr_array_index(entries, (guint)hit->seq - 1);
        if (is_since(trace, entry) && (!kind || strcmp(entry->kind->name, kind) == 0))
            use_add(uses, entry, live[hit->seq - 1]);
    }
    if (gave_tells((const Entry *const *)entries->pdata, entries->len, text))
        g_ptr_array_add(trace->found_wrong, g_strdup(ledger->label));
    g_autoptr(Taken) taken = taken_new((const Entry *const *)entries->pdata, entries->len, NULL);
    tell_uses(trace, ledger->label, taken_only(taken, "engine", "serial"), uses);
    return TRUE;
}

static gboolean trace_hits(Trace *trace, BookQuestion question, const char *text, const char *kind,
                           GError **error)
{
    g_autoptr(GPtrArray) hits = book_find(trace->book, question, text, error);
    g_autoptr(GPtrArray) ledgers = hits ? book_ledgers(trace->book, error) : NULL;
    if (!ledgers)
        return FALSE;
    for (guint i = 0; i < ledgers->len; i++) {
        const BookLedger *ledger = g_ptr_array_index(ledgers, i);
        if (ledger->sort == LEDGER_BUILD && !trace_ledger(trace, ledger, hits, text, kind, error))
            return FALSE;
    }
    return TRUE;
}

// All uses of a tool or lot by its id, and what bolts got from a tool that was found wrong.
static gboolean trace_found(Trace *trace, BookQuestion question, const char *id, GError **error)
{
    return trace_hits(trace, question, id, NULL, error) &&
           trace_got(trace->document, trace->book, trace->found_wrong, id, trace->since, error);
}

static gboolean refuse(const Shop *shop, const char *kind, const char *name, GError **error)
{
    const char *nearest = shop_nearest(shop, kind, name);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, "the shop has no %s `%s`%s%s%s",
                kind, name, nearest ? "; did you mean `" : "; standbook find ",
                nearest ? nearest : name, nearest ? "`?" : " looks in all that was entered");
    return FALSE;
}

static void tell_note(Trace *trace, const char *before, const char *text)
{
    g_autofree char *line = text ? g_strconcat(before, text, NULL) : NULL;
    if (line)
        document_line(trace->document, line);
}

// When a thing was out of use, and that it was back.
static void tell_ends(Trace *trace, const Entry *thing)
{
    g_autoptr(GPtrArray) all = shop_uses_of(trace->shop, thing);
    g_autoptr(Taken) taken = taken_new(&thing, 1, NULL);
    for (guint i = 0; i < all->len; i++) {
        const Entry *entry = g_ptr_array_index(all, i);
        g_autofree char *when = entry_when(entry), *words = entry_words(taken, entry);
        g_autofree char *line = g_strconcat(when, "  ", words, NULL);
        document_line(trace->document, line);
    }
}

static void begin_table(Trace *trace)
{
    const DocumentColumn columns[] = {
        {"build", ALIGN_WHOLE}, {"engine", ALIGN_LEFT}, {"", ALIGN_LEFT}, {"", ALIGN_LEFT},
        {"", ALIGN_LEFT},       {"from", ALIGN_RIGHT},  {"", ALIGN_WHOLE}};
    document_table(trace->document, columns, G_N_ELEMENTS(columns));
}

// The id of what a build that came in from elsewhere took under that label; NULL if none did.
static char *id_elsewhere(Trace *trace, const char *kind, const char *label)
{
    g_autoptr(GPtrArray) numbers = build_numbers(trace->book, NULL);
    for (guint n = 0; numbers && n < numbers->len; n++) {
        g_autofree char *ledger = ledger_of(trace->book, g_ptr_array_index(numbers, n), NULL);
        g_autoptr(GPtrArray) entries = ledger ? entries_read(trace->book, ledger, NULL) : NULL;
        if (!entries)
            continue;
        g_autoptr(Taken) taken =
            taken_new((const Entry *const *)entries->pdata, entries->len, NULL);
        g_autoptr(GPtrArray) ids = taken_ids(taken, kind);
        for (guint i = 0; i < ids->len; i++)
            if (g_strcmp0(taken_text(taken, kind, ids->pdata[i], "label"), label) == 0)
                return g_strdup(ids->pdata[i]);
    }
    return NULL;
}

static gboolean trace_elsewhere(Trace *trace, const char *kind, const char *name,
                                BookQuestion question, GError **error)
{
    g_autofree char *id = id_elsewhere(trace, kind, name);
    if (!id)
        return refuse(trace->shop, kind, name, error);
    tell_note(trace, "", "known only from builds that came in from elsewhere");
    begin_table(trace);
    return trace_found(trace, question, id, error);
}

static gboolean trace_tool(Trace *trace, const char *name, GError **error)
{
    const Entry *tool = shop_find(trace->shop, "tool", name);
    if (!tool)
        return trace_elsewhere(trace, "tool", name, BOOK_FIND_TOOL, error);
    const char *id = entry_text(tool, "id");
    tell_note(trace, "",
              entry_text(tool, "note") ? entry_text(tool, "note") : entry_text(tool, "sort"));
    g_autoptr(GPtrArray) calibrations = shop_calibrations(trace->shop, id);
    g_autoptr(Taken) taken = taken_new(&tool, 1, NULL);
    for (guint i = 0; i < calibrations->len; i++) {
        const Entry *each = g_ptr_array_index(calibrations, i);
        g_autofree char *words = entry_words(taken, each);
        tell_note(trace, "", words);
    }
    tell_ends(trace, tool);
    begin_table(trace);
    return trace_found(trace, BOOK_FIND_TOOL, id, error);
}

static gboolean trace_lot(Trace *trace, const char *name, GError **error)
{
    const Entry *lot = shop_find(trace->shop, "lot", name);
    const Entry *consumable = lot ? NULL : shop_find(trace->shop, "consumable", name);
    if (!lot && !consumable)
        return trace_elsewhere(trace, "lot", name, BOOK_FIND_LOT, error);
    const Entry *recall = lot ? shop_recall(trace->shop, entry_text(lot, "id")) : NULL;
    tell_note(trace, "", lot ? entry_text(lot, "part") : entry_text(consumable, "sort"));
    tell_note(trace, "from ", entry_text(lot ? lot : consumable, "supplier"));
    tell_note(trace, "RECALLED: ", recall ? entry_text(recall, "why") : NULL);
    tell_ends(trace, lot ? lot : consumable);
    begin_table(trace);
    return lot ? trace_found(trace, BOOK_FIND_LOT, entry_text(lot, "id"), error)
               : trace_hits(trace, BOOK_FIND_WORDS, name, "laid", error);
}

static int trace(GStrv words, const char *since, Common *common)
{
    gboolean tool = strcmp(words[0], "tool") == 0;
    Moment moment;
    g_autofree char *start = since ? g_strconcat(since, " 00:00", NULL) : NULL;
    GError *error = NULL;
    if (!tool && strcmp(words[0], "lot") != 0)
        return fail_saying(
            2, "a lot or a tool can be traced, not `%s`; write: standbook trace lot|tool NAME",
            words[0]);
    if (since && (strlen(since) != 10 || !moment_parse(start, &moment, NULL)))
        return fail_saying(2, "`%s` is no day; write it like 2025-03-13", since);
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(Shop) shop = book ? shop_open(book, &error) : NULL;
    if (!shop)
        return fail_with(error);
    g_autofree char *title =
        g_strjoin(" ", tool ? "Tool" : "Lot", words[1], since ? "since" : NULL, since, NULL);
    g_autoptr(Document) document = document_new("trace", title);
    g_autoptr(GPtrArray) found_wrong = g_ptr_array_new_with_free_func(g_free);
    Trace asked = {.book = book,
                   .shop = shop,
                   .since = since,
                   .document = document,
                   .found_wrong = found_wrong};
    if (!(tool ? trace_tool : trace_lot)(&asked, words[1], &error))
        return fail_with(error);
    if (asked.count == 0)
        document_paragraph(document, "Used nowhere.");
    say_document(document, common->json);
    return asked.count ? 0 : STANDBOOK_ERROR_NO;
}

int trace_run(int argc, char **argv, Common *common)
{
    char *since = NULL;
    const GOptionEntry entries[] = {
        {"since", 0, 0, G_OPTION_ARG_FILENAME, &since, "only from this day on", "DAY"},
        {NULL, 0, 0, G_OPTION_ARG_NONE, NULL, NULL, NULL}};
    int status;
    g_auto(GStrv) words = arguments_read(argc, argv, common, "lot|tool NAME",
                                         "Where a lot went, or what a tool was used on, in every "
                                         "build (exit status 1 if nowhere).",
                                         entries, &status);
    if (words)
        status = arguments_fit(words, 2, 2, "trace lot|tool NAME [--since DAY]")
                     ? trace(words, since, common)
                     : STANDBOOK_ERROR_MISUSE;
    g_free(since);
    return status;
}
