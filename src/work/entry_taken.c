// What a build took from the shop, found again by its id.
#include "take.h"

#include <standbook/record/live.h>
#include <standbook/work/entry_words.h>

#include <string.h>

struct Taken {
    GHashTable *bodies; // "kind id" → json_t * of the entries
    GPtrArray *keys;    // the same keys in the order of first use
    GHashTable *names;  // handed in
    const Entry **entries;
    gsize count;
};

static void taken_add(Taken *taken, const Entry *entry)
{
    static const char *const things[] = {"tool", "lot", "consumable", NULL};
    const char *kind = entry->kind->name;
    gboolean own = g_strv_contains(things, kind); // in the shop's own ledger
    json_t *body = own ? entry->body : json_object_get(entry->body, "body");
    char *key = own ? g_strconcat(kind, " ", entry_text(entry, "id"), NULL) : taken_key(entry);
    if (key && !g_hash_table_contains(taken->bodies, key))
        g_ptr_array_add(taken->keys, g_strdup(key));
    if (key)
        g_hash_table_replace(taken->bodies, key, body);
}

Taken *taken_new(const Entry *const *entries, gsize count, GHashTable *names)
{
    Taken *taken = g_new0(Taken, 1);
    taken->bodies = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    taken->keys = g_ptr_array_new_with_free_func(g_free);
    taken->names = names;
    taken->entries = g_memdup2(entries, count * sizeof *entries);
    taken->count = count;
    for (gsize i = 0; i < count; i++)
        taken_add(taken, entries[i]);
    return taken;
}

void taken_free(Taken *taken)
{
    if (!taken)
        return;
    g_hash_table_unref(taken->bodies);
    g_ptr_array_unref(taken->keys);
    g_free(taken->entries);
    g_free(taken);
}

const Entry *taken_newest(const Taken *taken, const char *kind, const char *name,
                          const char *const *labels)
{
    const char *field = strcmp(kind, "fit") == 0 ? "part" : "tightening";
    g_autofree gboolean *live = g_new0(gboolean, taken->count + 1);
    live_entries(taken->entries, taken->count, live);
    for (gsize i = taken->count; i-- > 0;) {
        const Entry *entry = taken->entries[i];
        if (live[i] && strcmp(entry->kind->name, kind) == 0 &&
            g_strcmp0(entry_text(entry, field), name) == 0 && entry_reaches(entry, labels))
            return entry;
    }
    return NULL;
}

const json_t *taken_body(const Taken *taken, const char *what, const char *id)
{
    if (!taken || !id)
        return NULL;
    g_autofree char *key = g_strconcat(what, " ", id, NULL);
    return g_hash_table_lookup(taken->bodies, key);
}

// A field of what was taken; NULL if it was not taken or has none.
static const json_t *taken_field(const Taken *taken, const char *what, const char *id,
                                 const char *field)
{
    return json_object_get(taken_body(taken, what, id), field);
}

const char *taken_text(const Taken *taken, const char *what, const char *id, const char *field)
{
    return json_string_value(taken_field(taken, what, id, field));
}

Number *taken_width(const Taken *taken, const char *what, const char *id, const char *field)
{
    const json_t *value = taken_field(taken, what, id, field);
    const char *text = json_string_value(json_object_get(value, "value"));
    const char *words = json_string_value(json_object_get(value, "unit"));
    g_autoptr(Number) number = text ? number_from_text(text, NULL) : NULL;
    g_autoptr(Unit) unit = words ? unit_parse(words, NULL) : NULL;
    return number ? unit_width_to_base(unit, number) : NULL;
}

GPtrArray *taken_ids(const Taken *taken, const char *what)
{
    GPtrArray *ids = g_ptr_array_new();
    gsize length = strlen(what);
    for (guint i = 0; i < taken->keys->len; i++) {
        const char *key = g_ptr_array_index(taken->keys, i);
        if (strncmp(key, what, length) == 0 && key[length] == ' ')
            g_ptr_array_add(ids, (gpointer)(key + length + 1));
    }
    return ids;
}

const char *taken_only(const Taken *taken, const char *what, const char *field)
{
    g_autoptr(GPtrArray) ids = taken_ids(taken, what);
    return ids->len ? taken_text(taken, what, g_ptr_array_index(ids, ids->len - 1), field) : NULL;
}

// An id nobody explained: enough of it to tell it from others.
static const char *short_id(const char *id)
{
    g_autofree char *start = g_strndup(id, 8);
    return g_intern_string(start);
}

const char *taken_initials(const Taken *taken, const char *person)
{
    const char *initials = taken_text(taken, "person", person, "initials");
    return !person ? NULL : initials ? initials : short_id(person);
}

const char *taken_tool(const Taken *taken, const char *tool)
{
    const char *label = taken_text(taken, "tool", tool, "label");
    return !tool ? NULL : label ? label : short_id(tool);
}

const char *taken_name(const Taken *taken, const char *person)
{
    const char *name = person && taken->names ? g_hash_table_lookup(taken->names, person) : NULL;
    const char *label = taken_text(taken, "owner", person, "label");
    return name ? name : label ? label : taken_initials(taken, person);
}
