#include <standbook/work/opened.h>

#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/book/find.h>
#include <standbook/judge/keep.h>
#include <standbook/record/live.h>
#include <standbook/record/order.h>
#include <standbook/work/grown.h>
#include <string.h>

void opened_free(Opened *opened)
{
    if (!opened)
        return;
    g_free(opened->number);
    g_free(opened->ledger);
    taken_free(opened->taken);
    if (opened->entries)
        g_ptr_array_unref(opened->entries);
    if (opened->names)
        g_hash_table_unref(opened->names);
    plan_free(opened->kept);
    plan_free(opened->grown);
    g_free(opened->differs);
    g_free(opened->shop);
    g_free(opened);
}

GPtrArray *entries_read(Book *book, const char *ledger, GError **error)
{
    g_autoptr(GPtrArray) lines = book_read(book, ledger, 0, error);
    g_autoptr(GPtrArray) entries = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free);
    for (guint i = 0; lines && i < lines->len; i++) {
        Entry *entry = entry_read(g_ptr_array_index(lines, i), error);
        if (!entry)
            return NULL;
        g_ptr_array_add(entries, entry);
    }
    if (!lines || !ledger_in_turn((const Entry *const *)entries->pdata, entries->len, error))
        return NULL;
    return g_steal_pointer(&entries);
}

char *person_name(Book *book, const char *id)
{
    g_autoptr(BookPerson) person = book_person(book, id, NULL);
    return person ? g_strdup(person->name) : NULL;
}

static void names_add(Book *book, GHashTable *names, const Taken *taken, const char *what)
{
    g_autoptr(GPtrArray) ids = taken_ids(taken, what);
    for (guint i = 0; i < ids->len; i++) {
        const char *id = g_ptr_array_index(ids, i);
        char *name = person_name(book, id);
        if (name)
            g_hash_table_insert(names, g_strdup(id), name);
    }
}

// The shop's own name, as it is now.
static char *name_of_shop(Book *book)
{
    g_autoptr(Shop) shop = shop_open(book, NULL);
    return shop ? g_strdup(shop_name(shop)) : NULL;
}

// The plan that the build took, or, where nothing has been entered yet, that the shop gave it.
static char *plan_digest(Book *book, const Opened *opened, GError **error)
{
    const char *taken = taken_only(opened->taken, "build", "plan");
    if (taken)
        return g_strdup(taken);
    g_autoptr(Shop) shop = shop_open(book, error);
    const Entry *build = shop ? shop_find(shop, "build", opened->number) : NULL;
    if (shop && !build)
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
                    "nothing says by which plan `%s` is built", opened->number);
    return build ? g_strdup(entry_text(build, "plan")) : NULL;
}

static char *nearest_label(const GPtrArray *ledgers, const char *label)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (guint i = 0; i < ledgers->len; i++)
        g_ptr_array_add(labels, ((BookLedger *)g_ptr_array_index(ledgers, i))->label);
    return g_strdup(text_nearest(label, (const char *const *)labels->pdata, labels->len));
}

char *ledger_of(Book *book, const char *label, GError **error)
{
    g_autoptr(GPtrArray) ledgers = book_ledgers(book, error);
    if (!ledgers)
        return NULL;
    for (guint i = 0; i < ledgers->len; i++) {
        const BookLedger *ledger = g_ptr_array_index(ledgers, i);
        gboolean shop = ledger->sort == LEDGER_SHOP && strcmp(label, "shop") == 0;
        if (shop || (ledger->sort == LEDGER_BUILD && strcmp(label, ledger->label) == 0))
            return g_strdup(ledger->id);
    }
    g_autofree char *nearest = nearest_label(ledgers, label);
    if (strcmp(label, "shop") == 0)
        g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                            "this store has no shop yet; its first line begins one: `standbook log "
                            "--shop`");
    else if (nearest)
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "there is no build `%s`; did you mean `%s`?", label, nearest);
    else
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "there is no build `%s`; standbook build list names them", label);
    return NULL;
}

Opened *opened_new(Book *book, const char *number, GError **error)
{
    g_autoptr(Opened) opened = g_new0(Opened, 1);
    opened->number = g_strdup(number);
    opened->ledger = ledger_of(book, number, error);
    opened->entries = opened->ledger ? entries_read(book, opened->ledger, error) : NULL;
    if (!opened->entries)
        return NULL;
    opened->names = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    opened->taken = taken_new((const Entry *const *)opened->entries->pdata, opened->entries->len,
                              opened->names);
    names_add(book, opened->names, opened->taken, "person");
    names_add(book, opened->names, opened->taken, "owner");
    g_autofree char *digest = plan_digest(book, opened, error);
    opened->kept = digest ? plan_kept(book, digest, error) : NULL;
    if (!opened->kept || !book_end(book, opened->ledger, &opened->end, opened->digest, error))
        return NULL;
    opened->shop = name_of_shop(book);
    opened_look_at(opened, 0);
    return g_steal_pointer(&opened);
}

const Plan *opened_plan(const Opened *opened)
{
    return opened->grown ? opened->grown : opened->kept;
}

void opened_look_at(Opened *opened, gint64 upto)
{
    opened->upto = upto > 0 ? upto : (gint64)opened->entries->len;
    plan_free(opened->grown);
    opened->grown =
        plan_grown(opened->kept, (const Entry *const *)opened->entries->pdata, (gsize)opened->upto);
}

Assessment *opened_assess(const Opened *opened, const Hypothesis *hypothesis)
{
    return assess(opened_plan(opened), (const Entry *const *)opened->entries->pdata,
                  opened->entries->len, opened->upto, hypothesis);
}

// The last entry typed by a moment, entries being in the order of their typing.
static gint64 typed_by(const Opened *opened, Moment moment)
{
    gint64 last = 0;
    for (guint i = 0; i < opened->entries->len; i++) {
        const Entry *entry = g_ptr_array_index(opened->entries, i);
        Moment at;
        if (moment_parse(entry->at, &at, NULL) && at <= moment)
            last = entry->seq;
    }
    return last;
}

static gint64 numbered(const Opened *opened, const char *words)
{
    char *end;
    gint64 seq = g_ascii_strtoll(words, &end, 10);
    return *end || seq < 1 || seq > (gint64)opened->entries->len ? 0 : seq;
}

gboolean opened_as_of(Opened *opened, const char *words, GError **error)
{
    gint64 upto = 0;
    if (words && *words == '#') {
        upto = numbered(opened, words + 1);
    } else if (words) {
        g_autofree char *moment =
            strlen(words) == 10 ? g_strconcat(words, " 23:59:59", NULL) : g_strdup(words);
        Moment by;
        if (!moment_parse(moment, &by, NULL)) {
            g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                        "`%s` is no day or moment, nor the number of an entry; write it like "
                        "2025-03-13, \"2025-03-13 11:36\" or #412",
                        words);
            return FALSE;
        }
        upto = typed_by(opened, by);
    }
    if (words && upto == 0) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "the build has no entry as of %s; it has 1 to %u", words, opened->entries->len);
        return FALSE;
    }
    opened_look_at(opened, upto);
    return TRUE;
}

static const Entry *last_seal(const Opened *opened)
{
    const Entry *const *entries = (const Entry *const *)opened->entries->pdata;
    g_autofree gboolean *live = g_new0(gboolean, (gsize)opened->upto + 1);
    live_entries(entries, (gsize)opened->upto, live);
    for (gint64 i = opened->upto; i-- > 0;)
        if (live[i] && strcmp(entries[i]->kind->name, "seal") == 0)
            return entries[i];
    return NULL;
}

gboolean opened_compare_seal(Book *book, Opened *opened, const Assessment *assessment,
                             GError **error)
{
    const Entry *seal = last_seal(opened);
    if (!seal)
        return TRUE;
    g_autoptr(GBytes) bytes = book_kept(book, entry_text(seal, "assessment"), error);
    if (!bytes)
        return FALSE;
    gsize length;
    const char *start = g_bytes_get_data(bytes, &length);
    g_autofree char *kept = g_strndup(start ? start : "", length);
    g_autoptr(GPtrArray) sentences = assessment_differences(kept, assessment, error);
    if (!sentences)
        return FALSE;
    if (sentences->len) {
        g_ptr_array_add(sentences, NULL);
        opened->differs = g_strjoinv("; ", (GStrv)sentences->pdata);
    }
    return TRUE;
}

char *gates_words(const Plan *plan)
{
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < plan->gates->len; i++)
        g_string_append_printf(words, "%s%s", i ? ", " : "",
                               (const char *)g_ptr_array_index(plan->gates, i));
    return g_string_free(words, FALSE);
}

GPtrArray *build_numbers(Book *book, GError **error)
{
    g_autoptr(GPtrArray) ledgers = book_ledgers(book, error);
    if (!ledgers)
        return NULL;
    GPtrArray *numbers = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < ledgers->len; i++) {
        const BookLedger *ledger = g_ptr_array_index(ledgers, i);
        if (ledger->sort == LEDGER_BUILD && ledger->last > 0)
            g_ptr_array_add(numbers, g_strdup(ledger->label));
    }
    return numbers;
}

void numbers_newest_first(GPtrArray *numbers, const Shop *shop)
{
    for (guint i = 1; i < numbers->len; i++)
        g_ptr_array_insert(numbers, 0, g_ptr_array_steal_index(numbers, i));
    g_autoptr(GPtrArray) begun = shop_all(shop, "build", NULL);
    for (guint i = 0; i < begun->len; i++) { // each in front of those begun before it
        guint at = 0;
        const char *number = shop_label(begun->pdata[i]);
        if (g_ptr_array_find_with_equal_func(numbers, number, g_str_equal, &at))
            g_ptr_array_insert(numbers, 0, g_ptr_array_steal_index(numbers, at));
    }
}

Shop *shop_open(Book *book, GError **error)
{
    g_autoptr(GPtrArray) ledgers = book_ledgers(book, error);
    if (!ledgers)
        return NULL;
    g_autoptr(Shop) shop = shop_new();
    for (guint i = 0; i < ledgers->len; i++) {
        const BookLedger *ledger = g_ptr_array_index(ledgers, i);
        if (ledger->sort != LEDGER_SHOP)
            continue;
        g_autoptr(GPtrArray) entries = entries_read(book, ledger->id, error);
        if (!entries)
            return NULL;
        g_ptr_array_set_free_func(entries, NULL); // the shop owns them now
        for (guint e = 0; e < entries->len; e++)
            if (!shop_add(shop, g_ptr_array_index(entries, e), error))
                return NULL;
    }
    return g_steal_pointer(&shop);
}
