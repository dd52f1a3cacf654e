#include "unplaced.h"

#include <jansson.h>
#include <standbook/work/ago.h>
#include <string.h>

static void unplaced_free(gpointer pointer)
{
    Unplaced *one = pointer;
    g_free(one->text);
    g_free(one->place);
    g_free(one->came);
    g_free(one);
}

GPtrArray *unplaced_new(void)
{
    return g_ptr_array_new_with_free_func(unplaced_free);
}

// Takes `came`.
static void add(GPtrArray *all, const char *text, const char *place, char *came, gboolean left)
{
    Unplaced *one = g_new0(Unplaced, 1);
    *one = (Unplaced){g_strdup(text), g_strdup(place), came, left};
    g_ptr_array_add(all, one);
}

void unplaced_add(GPtrArray *all, const char *text, const char *place, Moment came)
{
    add(all, text, place, moment_text(came), FALSE);
}

const char *unplaced_text(const GPtrArray *all, guint index)
{
    const Unplaced *one = all->pdata[index];
    return one->text;
}

void unplaced_shorten(GPtrArray *all, guint index, gsize taken)
{
    Unplaced *one = all->pdata[index];
    char *rest = g_strdup(one->text + taken);
    g_free(one->text);
    one->text = rest;
    if (!*rest)
        g_ptr_array_remove_index(all, index);
}

char *unplaced_how(const GPtrArray *all, guint index, Moment now)
{
    const Unplaced *one = all->pdata[index];
    Moment came = 0;
    if ((!one->left && !one->place) || !moment_parse(one->came, &came, NULL))
        return NULL;
    g_autofree char *day = ago_day(came, now), *today = ago_day(now, now);
    gboolean same = strcmp(day, today) == 0;
    return g_strdup_printf("from %s%s%.5s%s%s", same ? "" : day, same ? "" : " ", one->came + 11,
                           one->place ? " at " : "", one->place ? one->place : "");
}

// WRITING AND READING ---------------------------------------------------------------------------

static json_t *text_or_null(const char *text)
{
    return text ? json_string(text) : json_null();
}

char *unplaced_write(const GPtrArray *all, GHashTable *drafts)
{
    json_t *texts = json_array(), *begun = json_object();
    GHashTableIter each;
    gpointer name, lines;
    for (guint i = 0; i < all->len; i++) {
        const Unplaced *one = all->pdata[i];
        json_array_append_new(texts,
                              json_pack("{so so so}", "text", json_string(one->text), "place",
                                        text_or_null(one->place), "came", json_string(one->came)));
    }
    g_hash_table_iter_init(&each, drafts);
    while (g_hash_table_iter_next(&each, &name, &lines)) {
        json_t *draft = json_array();
        for (GStrv line = lines; *line; line++)
            json_array_append_new(draft, json_string(*line));
        if (json_array_size(draft))
            json_object_set(begun, name, draft);
        json_decref(draft);
    }
    gboolean some = json_array_size(texts) || json_object_size(begun);
    json_t *both = json_pack("{so so}", "unplaced", texts, "drafts", begun);
    char *written = some ? json_dumps(both, JSON_INDENT(1) | JSON_SORT_KEYS) : NULL;
    char *text = g_strdup(written ? written : "");
    free(written);
    json_decref(both);
    return text;
}

static void read_draft(const char *name, const json_t *lines, GHashTable *drafts)
{
    g_autoptr(GStrvBuilder) draft = g_strv_builder_new();
    for (gsize i = 0; i < json_array_size(lines); i++) {
        const char *line = json_string_value(json_array_get(lines, i));
        g_strv_builder_add(draft, line ? line : "");
    }
    if (!g_hash_table_contains(drafts, name))
        g_hash_table_insert(drafts, g_strdup(name), g_strv_builder_end(draft));
}

void unplaced_read(const char *text, GPtrArray *all, GHashTable *drafts)
{
    json_t *both = json_loads(text, JSON_DISABLE_EOF_CHECK, NULL);
    const json_t *texts = json_object_get(both, "unplaced");
    const char *name;
    json_t *lines;
    for (gsize i = 0; i < json_array_size(texts); i++) {
        const json_t *one = json_array_get(texts, i);
        const char *words = json_string_value(json_object_get(one, "text"));
        const char *came = json_string_value(json_object_get(one, "came"));
        if (words && *words)
            add(all, words, json_string_value(json_object_get(one, "place")),
                g_strdup(came ? came : ""), TRUE);
    }
    json_object_foreach(json_object_get(both, "drafts"), name, lines)
        read_draft(name, lines, drafts);
    json_decref(both);
}
