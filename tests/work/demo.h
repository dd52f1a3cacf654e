// The demo shop and its builds, fed line by line with ids that are the same at every run.
#pragma once
#include <check.h>
#include <standbook/work/line.h>
#include <stdlib.h>
#include <string.h>

enum { TYPED = 1798761600 }; // 2027-01-01, when the lines are typed: all of them have been

#define SHOP_LEDGER "00000000-0000-4000-8000-000000000000"

typedef struct {
    Plan *plan;
    Shop *shop;
    guint ids;          // handed out so far
    LineTaker *desk;    // lines of the shop
    GHashTable *builds; // id -> LineTaker *
    LineTaker *judged;  // the build whose lines are fed
    Assessment *assessment;
} Demo;

static inline char *demo_id(gpointer user)
{
    Demo *demo = user;
    return g_strdup_printf("00000000-0000-4000-8000-%012x", ++demo->ids);
}

static inline gboolean demo_has_taken(LineTaker *taker, const char *what, const char *id)
{
    const GPtrArray *entries = line_taker_entries(taker);
    for (guint i = 0; i < entries->len; i++) {
        const Entry *entry = entries->pdata[i];
        json_t *body = json_object_get(entry->body, "body");
        if (strcmp(entry->kind->name, "take") == 0 &&
            strcmp(entry_text(entry, "what"), what) == 0 &&
            g_strcmp0(json_string_value(json_object_get(body, "id")), id) == 0)
            return TRUE;
    }
    return FALSE;
}

static inline GStrv demo_builds_with(const char *what, const char *id, gpointer user)
{
    const Demo *demo = user;
    g_autoptr(GStrvBuilder) builder = g_strv_builder_new();
    GHashTableIter iterator;
    gpointer build, taker;
    g_hash_table_iter_init(&iterator, demo->builds);
    while (g_hash_table_iter_next(&iterator, &build, &taker))
        if (demo_has_taken(taker, what, id))
            g_strv_builder_add(builder, build);
    return g_strv_builder_end(builder);
}

static inline const Assessment *demo_assess(gpointer user)
{
    Demo *demo = user;
    const GPtrArray *entries = line_taker_entries(demo->judged);
    assessment_free(demo->assessment);
    demo->assessment =
        assess(demo->plan, (const Entry *const *)entries->pdata, entries->len, 0, NULL);
    return demo->assessment;
}

static inline LineHelp demo_help(Demo *demo)
{
    return (LineHelp){.new_id = demo_id,
                      .builds_with = demo_builds_with,
                      .assessment = demo_assess,
                      .user = demo};
}

static inline Plan *demo_read_plan(const char *file)
{
    char *bytes = NULL;
    gsize length = 0;
    ck_assert(g_file_get_contents(file, &bytes, &length, NULL));
    Faults *faults = faults_new();
    Plan *plan = plan_read(bytes, length, faults);
    ck_assert_uint_eq(faults_count(faults), 0);
    ck_assert_ptr_nonnull(plan);
    faults_free(faults);
    g_free(bytes);
    return plan;
}

static inline void demo_add_plan(Demo *demo, const char *by)
{
    Entry *entry = entry_new(kind_newest("plan"));
    entry->ledger = g_strdup(SHOP_LEDGER);
    entry->seq = shop_last(demo->shop) + 1;
    entry->by = g_strdup(by);
    entry->at = g_strdup("2024-01-08T08:00:00");
    char *digest = g_strnfill(64, 'a');
    entry_set_text(entry, "digest", digest);
    entry_set_text(entry, "name", demo->plan->name);
    g_free(digest);
    ck_assert(shop_add(demo->shop, entry, NULL));
}

// Keeps what a line came to, news of other builds in theirs.
static inline void demo_keep(Demo *demo, LineTaker *taker, LineTaken *taken)
{
    for (guint i = 0; i < taken->entries->len; i++) {
        Entry *entry = taken->entries->pdata[i];
        LineTaker *other =
            entry->seq == 0 ? g_hash_table_lookup(demo->builds, entry->ledger) : NULL;
        if (!other)
            continue;
        taken->entries->pdata[i] = entry_new(entry->kind); // in its place, to be freed
        entry->seq = line_taker_entries(other)->len + 1;
        ck_assert(line_taker_add(other, entry, NULL));
    }
    line_keep(taker, taken);
}

// Feeds one line; NULL, or the refusal, freed with g_free.
static inline char *demo_try(Demo *demo, LineTaker *taker, const char *line)
{
    GError *error = NULL;
    demo->judged = taker;
    LineTaken *taken = line_take(taker, line, TYPED, &error);
    if (taken) {
        demo_keep(demo, taker, taken);
        return NULL;
    }
    ck_assert_int_eq(error->code, 2);
    char *message = g_strdup(error->message);
    g_error_free(error);
    return message;
}

// Feeds the lines of a file, all of which must be taken.
static inline void demo_feed(Demo *demo, LineTaker *taker, const char *file)
{
    char *bytes = NULL;
    ck_assert(g_file_get_contents(file, &bytes, NULL, NULL));
    GStrv lines = g_strsplit(bytes, "\n", -1);
    for (guint i = 0; lines[i]; i++) {
        char *refusal = demo_try(demo, taker, lines[i]);
        ck_assert_msg(!refusal, "%s:%u: %s\n%s", file, i + 1, refusal, lines[i]);
    }
    g_strfreev(lines);
    g_free(bytes);
}

static inline LineTaker *demo_build(Demo *demo, const char *number)
{
    const Entry *build = shop_find(demo->shop, "build", number);
    ck_assert_ptr_nonnull(build);
    LineHelp help = demo_help(demo);
    const char *id = entry_text(build, "id");
    LineTaker *taker = line_taker_new(demo->plan, demo->shop, SHOP_LEDGER, id, &help);
    line_taker_trust_times(taker, TRUE);
    g_hash_table_insert(demo->builds, g_strdup(id), taker);
    return taker;
}

// The demo shop after shop.log.
static inline Demo *demo_new(void)
{
    Demo *demo = g_new0(Demo, 1);
    demo->plan = demo_read_plan("demo-data/hathersey-h23.yaml");
    demo->shop = shop_new();
    demo->builds =
        g_hash_table_new_full(g_str_hash, g_str_equal, g_free, (GDestroyNotify)line_taker_free);
    LineHelp help = demo_help(demo);
    demo_add_plan(demo, "00000000-0000-4000-8000-000000000001");
    demo->desk = line_taker_new(NULL, demo->shop, SHOP_LEDGER, NULL, &help);
    line_taker_trust_times(demo->desk, TRUE);
    demo_feed(demo, demo->desk, "demo-data/shop.log");
    return demo;
}

static inline void demo_free(Demo *demo)
{
    assessment_free(demo->assessment);
    g_hash_table_unref(demo->builds);
    line_taker_free(demo->desk);
    shop_free(demo->shop);
    plan_free(demo->plan);
    g_free(demo);
}
