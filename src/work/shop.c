#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/record/live.h>
#include <standbook/work/shop.h>
#include <string.h>

struct Shop {
    GPtrArray *entries;  // Entry *, all of them
    GHashTable *labels;  // `kind label` -> newest live Entry *
    GHashTable *ids;     // `kind id` -> newest live Entry *
    GPtrArray *relevant; // what is live of `said_later`
};

// What stands on a thing of each kind, and what identifies it.
static const struct {
    const char *kind, *label, *id;
} naming[] = {
    {"person", "initials", "id"}, {"owner", "label", "id"},   {"engine", "serial", "id"},
    {"build", "number", "id"},    {"tool", "label", "id"},    {"lot", "label", "id"},
    {"consumable", "lot", "id"},  {"plan", "name", "digest"}, {"default", "name", "name"},
};

// What is said later of a thing.
static const char *const said_later[] = {"calibration", "recall", "out of use", "back in use",
                                         NULL};

static gssize naming_of(const char *kind)
{
    for (gsize i = 0; i < G_N_ELEMENTS(naming); i++)
        if (strcmp(naming[i].kind, kind) == 0)
            return (gssize)i;
    return -1;
}

static GHashTable *index_new(void)
{
    return g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
}

Shop *shop_new(void)
{
    Shop *shop = g_new0(Shop, 1);
    shop->entries = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free);
    shop->labels = index_new();
    shop->ids = index_new();
    shop->relevant = g_ptr_array_new();
    return shop;
}

void shop_free(Shop *shop)
{
    if (!shop)
        return;
    g_ptr_array_unref(shop->relevant);
    g_hash_table_unref(shop->ids);
    g_hash_table_unref(shop->labels);
    g_ptr_array_unref(shop->entries);
    g_free(shop);
}

static void index_put(GHashTable *table, const Entry *entry, const char *name)
{
    if (name)
        g_hash_table_replace(table, g_strconcat(entry->kind->name, " ", name, NULL),
                             (gpointer)entry);
}

static const Entry *index_get(GHashTable *table, const char *kind, const char *name)
{
    g_autofree char *key = g_strconcat(kind, " ", name, NULL);
    return g_hash_table_lookup(table, key);
}

// What was called otherwise before is not found by that any more.
static void forget_label(Shop *shop, const Entry *entry, gssize row)
{
    const char *kind = entry->kind->name;
    const Entry *before = index_get(shop->ids, kind, entry_text(entry, naming[row].id));
    const char *label = before ? entry_text(before, naming[row].label) : NULL;
    g_autofree char *key = label ? g_strconcat(kind, " ", label, NULL) : NULL;
    if (key && g_hash_table_lookup(shop->labels, key) == before)
        g_hash_table_remove(shop->labels, key);
}

static void index_entry(Shop *shop, Entry *entry)
{
    const char *kind = entry->kind->name;
    gssize row = naming_of(kind);
    if (row >= 0) {
        forget_label(shop, entry, row);
        index_put(shop->labels, entry, entry_text(entry, naming[row].label));
        index_put(shop->ids, entry, entry_text(entry, naming[row].id));
    } else if (g_strv_contains(said_later, kind)) {
        g_ptr_array_add(shop->relevant, entry);
    }
}

// A strike may bring back what stood before, so everything is looked at again.
static void index_again(Shop *shop)
{
    g_autofree gboolean *live = g_new0(gboolean, shop->entries->len);
    live_entries((const Entry *const *)shop->entries->pdata, shop->entries->len, live);
    g_hash_table_remove_all(shop->labels);
    g_hash_table_remove_all(shop->ids);
    g_ptr_array_set_size(shop->relevant, 0);
    for (guint i = 0; i < shop->entries->len; i++)
        if (live[i])
            index_entry(shop, shop->entries->pdata[i]);
}

gboolean shop_add(Shop *shop, Entry *entry, GError **error)
{
    if (entry->seq != shop_last(shop) + 1) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "entry %" G_GINT64_FORMAT " of the shop's ledger is out of turn", entry->seq);
        entry_free(entry);
        return FALSE;
    }
    g_ptr_array_add(shop->entries, entry);
    if (strcmp(entry->kind->name, "strike") == 0)
        index_again(shop);
    else
        index_entry(shop, entry);
    return TRUE;
}

gint64 shop_last(const Shop *shop)
{
    return shop->entries->len;
}

const Entry *shop_entry(const Shop *shop, gint64 seq)
{
    return seq >= 1 && seq <= shop_last(shop) ? shop->entries->pdata[seq - 1] : NULL;
}

const Entry *shop_find(const Shop *shop, const char *kind, const char *label)
{
    return index_get(shop->labels, kind, label);
}

const char *shop_name(const Shop *shop)
{
    const Entry *name = shop_find(shop, "default", "shop name");
    return name ? entry_text(name, "setting") : NULL;
}

const char *shop_label(const Entry *entry)
{
    gssize row = naming_of(entry->kind->name);
    return row < 0 ? NULL : entry_text(entry, naming[row].label);
}

const Entry *shop_by_id(const Shop *shop, const char *kind, const char *id)
{
    return index_get(shop->ids, kind, id);
}

GPtrArray *shop_all(const Shop *shop, const char *kind, const char *sort)
{
    GPtrArray *all = g_ptr_array_new();
    for (guint i = 0; i < shop->entries->len; i++) {
        const Entry *entry = shop->entries->pdata[i];
        const char *label = strcmp(entry->kind->name, kind) == 0 ? shop_label(entry) : NULL;
        if (!label || shop_find(shop, kind, label) != entry)
            continue;
        if (!sort || g_strcmp0(entry_text(entry, "sort"), sort) == 0)
            g_ptr_array_add(all, (gpointer)entry);
    }
    return all;
}

GPtrArray *shop_in_use(const Shop *shop, const char *kind, const char *sort)
{
    GPtrArray *all = shop_all(shop, kind, sort);
    for (guint i = all->len; i-- > 0;)
        if (shop_end(shop, all->pdata[i], NULL))
            g_ptr_array_remove_index(all, i);
    return all;
}

const char *shop_nearest(const Shop *shop, const char *kind, const char *label)
{
    g_autoptr(GPtrArray) all = shop_all(shop, kind, NULL);
    g_autofree const char **labels = g_new0(const char *, all->len + 1);
    for (guint i = 0; i < all->len; i++)
        labels[i] = shop_label(all->pdata[i]);
    return text_nearest(label, labels, all->len);
}

// The last of these that was on that day, or at that moment, or before; NULL where none was. The
// list, in order of time (`time_of`), is freed.
static const Entry *last_until(GPtrArray *all, const char *(*time_of)(const Entry *),
                               const char *until)
{
    const Entry *last = NULL;
    for (guint i = 0; i < all->len; i++)
        if (!until || strcmp(time_of(all->pdata[i]), until) <= 0)
            last = all->pdata[i];
    g_ptr_array_unref(all);
    return last;
}

static const char *day_of(const Entry *calibration)
{
    return entry_text(calibration, "date");
}

static gint by_day(gconstpointer one, gconstpointer other)
{
    const Entry *a = *(const Entry *const *)one, *b = *(const Entry *const *)other;
    int days = strcmp(day_of(a), day_of(b));
    return days ? days : (a->seq > b->seq) - (a->seq < b->seq);
}

GPtrArray *shop_calibrations(const Shop *shop, const char *tool)
{
    GPtrArray *found = g_ptr_array_new();
    for (guint i = 0; i < shop->relevant->len; i++)
        if (g_strcmp0(entry_text(shop->relevant->pdata[i], "tool"), tool) == 0)
            g_ptr_array_add(found, shop->relevant->pdata[i]);
    g_ptr_array_sort(found, by_day);
    return found;
}

const Entry *shop_calibration_on(const Shop *shop, const char *tool, const char *day)
{
    return last_until(shop_calibrations(shop, tool), day_of, day);
}

const Entry *shop_recall(const Shop *shop, const char *lot)
{
    const Entry *newest = NULL;
    for (guint i = 0; i < shop->relevant->len; i++)
        if (g_strcmp0(entry_text(shop->relevant->pdata[i], "lot"), lot) == 0)
            newest = shop->relevant->pdata[i];
    return newest;
}

static gint by_moment(gconstpointer one, gconstpointer other)
{
    const Entry *a = *(const Entry *const *)one, *b = *(const Entry *const *)other;
    int moments = strcmp(entry_done(a), entry_done(b));
    return moments ? moments : (a->seq > b->seq) - (a->seq < b->seq);
}

GPtrArray *shop_uses_of(const Shop *shop, const Entry *thing)
{
    const char *id = entry_text(thing, "id");
    GPtrArray *found = g_ptr_array_new();
    for (guint i = 0; i < shop->relevant->len; i++) {
        const Entry *entry = shop->relevant->pdata[i];
        if (kind_field(entry->kind, "what") && g_strcmp0(entry_text(entry, "id"), id) == 0)
            g_ptr_array_add(found, (gpointer)entry);
    }
    g_ptr_array_sort(found, by_moment);
    return found;
}

const Entry *shop_end(const Shop *shop, const Entry *thing, const char *moment)
{
    const Entry *last = last_until(shop_uses_of(shop, thing), entry_done, moment);
    return last && strcmp(last->kind->name, "out of use") == 0 ? last : NULL;
}

char *shop_end_words(const Entry *end)
{
    const char *why = entry_text(end, "why");
    return g_strdup_printf("%s %.10s%s%s", entry_text(end, "how"), entry_done(end), why ? ", " : "",
                           why ? why : "");
}

gboolean tool_measures(const Entry *tool, Kind kind)
{
    const char *words = entry_value(tool, "greatest", "unit");
    g_autoptr(Unit) unit = words ? unit_parse(words, NULL) : NULL;
    return unit && kind_equal(unit_kind(unit), kind);
}

gboolean tool_reads_otherwise(const Entry *tool, Kind kind)
{
    return entry_value(tool, "greatest", "unit") && !tool_measures(tool, kind);
}

static gboolean is_below(const Number *one, const Number *other)
{
    return one && other && number_compare(one, other) < 0;
}

gboolean tool_reaches(const Entry *tool, const Number *least, const Number *greatest)
{
    g_autoptr(Number) from = entry_amount(tool, "least"), to = entry_amount(tool, "greatest");
    return !is_below(greatest, from) && !is_below(to, least);
}

gboolean tool_holds(const Entry *tool, const Number *value)
{
    return tool_reaches(tool, value, value);
}
