// What a build relies on is written into its ledger at first use, and what the shop learns later
// about it as news, so that the build's ledger stands alone.
#include "take.h"

#include <string.h>

// What identifies the body of a `take`: an id, a digest, or the lot of a recall.
static const char *identity(const char *what, json_t *body)
{
    const char *field = strcmp(what, "plan") == 0      ? "digest"
                        : strcmp(what, "recall") == 0  ? "lot"
                        : strcmp(what, "default") == 0 ? "name"
                                                       : "id";
    return json_string_value(json_object_get(body, field));
}

static char *known_key(const char *what, const char *id)
{
    return g_strconcat(what, " ", id, NULL);
}

static gboolean is_known(const Take *take, const char *what, const char *id)
{
    g_autofree char *key = known_key(what, id);
    return g_hash_table_contains(take->known, key) ||
           g_hash_table_contains(take->taker->known, key);
}

char *taken_key(const Entry *entry)
{
    gboolean taken =
        strcmp(entry->kind->name, "take") == 0 || strcmp(entry->kind->name, "news") == 0;
    const char *what = taken ? entry_text(entry, "what") : NULL;
    const char *id = what ? identity(what, json_object_get(entry->body, "body")) : NULL;
    return id ? known_key(what, id) : NULL;
}

// A `take` or `news` about an entry of the shop, for the ledger given.
static Entry *copy_of(const Take *take, const char *kind, const Entry *entry, const char *ledger)
{
    Entry *copy = entry_new(kind_newest(kind));
    copy->ledger = g_strdup(ledger);
    copy->by = g_strdup(take->carry.by);
    copy->at = g_strdup(take->at);
    copy->done = g_strdup(take->done);
    entry_set_text(copy, "what", entry->kind->name);
    entry_set_number(copy, "format", entry->kind->format);
    entry_set_number(copy, "seq", entry->seq);
    json_object_set(copy->body, "body", entry->body); // shared: neither is changed any more
    return copy;
}

void take_in(Take *take, const Entry *entry)
{
    const char *what = entry->kind->name, *id = identity(what, entry->body);
    if (!take->taker->build || is_known(take, what, id))
        return;
    g_hash_table_add(take->known, known_key(what, id));
    g_ptr_array_add(take->takes, copy_of(take, "take", entry, take->taker->build));
}

static const Entry *take_in_by_id(Take *take, const char *what, const char *id)
{
    const Entry *entry = id ? shop_by_id(take->taker->shop, what, id) : NULL;
    if (entry)
        take_in(take, entry);
    return entry;
}

void take_in_build(Take *take)
{
    if (!take->taker->build || is_known(take, "build", take->taker->build))
        return;
    const Entry *build = take_in_by_id(take, "build", take->taker->build);
    if (!build)
        return;
    take_in_by_id(take, "plan", entry_text(build, "plan"));
    const Entry *engine = take_in_by_id(take, "engine", entry_text(build, "engine"));
    if (engine)
        take_in_by_id(take, "owner", entry_text(engine, "owner"));
    g_autoptr(GPtrArray) rules = shop_all(take->taker->shop, "default", NULL);
    for (guint i = 0; i < rules->len;
         i++) // the name is the head of a sheet; no verdict rests on it
        if (strcmp(shop_label(rules->pdata[i]), "shop name") != 0)
            take_in(take, rules->pdata[i]);
}

static gboolean is_called(const Take *take, const Entry *entry, const char *name)
{
    const LineHelp *help = &take->taker->help;
    const char *id = entry_text(entry, "id"), *told = g_hash_table_lookup(take->taker->told, id);
    g_autofree char *kept = !told && help->name ? help->name(id, help->user) : NULL;
    return g_strcmp0(told ? told : kept, name) == 0;
}

// The one of a kind that is called so, where it is one and only one; NULL else.
static const Entry *shop_named(const Take *take, const char *kind, const char *name)
{
    g_autoptr(GPtrArray) all = shop_all(take->taker->shop, kind, NULL);
    const Entry *named = NULL;
    for (guint i = 0; i < all->len; i++) {
        if (!is_called(take, all->pdata[i], name))
            continue;
        if (named)
            return NULL;
        named = all->pdata[i];
    }
    return named;
}

const Entry *take_shop_label(Take *take, const char *kind, const char *what, GError **error)
{
    const char *at = take->words.at;
    g_autofree char *label = words_are_quoted(&take->words) ? words_text(&take->words, what, error)
                                                            : words_word(&take->words, what, error);
    const Entry *entry = label ? shop_find(take->taker->shop, kind, label) : NULL;
    if (label && !entry && strcmp(kind, "owner") == 0)
        entry = shop_named(take, kind, label);
    if (!label || entry)
        return entry;
    const char *near = shop_nearest(take->taker->shop, kind, label);
    if (near)
        words_refuse(&take->words, at, error, "the shop has no %s `%s`; did you mean `%s`?", kind,
                     label, near);
    else if (strcmp(kind, "person") == 0)
        words_refuse(&take->words, at, error,
                     "the shop has no person `%s`; enter that person first, with a line `person %s "
                     "\"First Last\"` in `standbook log --shop`",
                     label, label);
    else
        words_refuse(&take->words, at, error,
                     "the shop has no %s `%s`; enter it first with a line `shop %s …`", kind, label,
                     kind);
    return NULL;
}

// A label of what work is done with: what is out of use by then is asked about.
static const Entry *take_in_use(Take *take, const char *kind, const char *what, GError **error)
{
    const char *at = take->words.at;
    const Entry *thing = take_shop_label(take, kind, what, error);
    const Entry *end =
        thing ? shop_end(take->taker->shop, thing, take->done ? take->done : take->at) : NULL;
    if (!end)
        return thing;
    g_autofree char *how = shop_end_words(end);
    words_refuse(&take->words, at, error,
                 "%s `%s` is out of use: %s; is it another one? If it is in use all the same, say "
                 "so first: `shop back in use %s %s`",
                 kind, shop_label(thing), how, kind, shop_label(thing));
    return NULL;
}

// The calibration in force is what the use relies on; what came after it and is known by now says
// whether that was right.
static const char *take_calibrations(Take *take, const char *tool)
{
    const Entry *in_force = shop_calibration_on(take->taker->shop, tool, take->day);
    g_autoptr(GPtrArray) all = shop_calibrations(take->taker->shop, tool);
    gboolean from_here = in_force == NULL;
    for (guint i = 0; i < all->len; i++) {
        from_here = from_here || all->pdata[i] == in_force;
        if (from_here)
            take_in(take, all->pdata[i]);
    }
    return in_force ? entry_text(in_force, "id") : NULL;
}

gboolean take_tool(Take *take, const Entry **tool, const char **calibration, GError **error)
{
    *tool = take_in_use(take, "tool", "the tool", error);
    if (!*tool)
        return FALSE;
    take_in(take, *tool);
    *calibration = take_calibrations(take, entry_text(*tool, "id"));
    return TRUE;
}

const Entry *take_person(Take *take, GError **error)
{
    const Entry *person = take_shop_label(take, "person", "the initials", error);
    if (person)
        take_in(take, person);
    return person;
}

const Entry *take_lot(Take *take, GError **error)
{
    const Entry *lot = take_in_use(take, "lot", "the lot", error);
    if (!lot)
        return NULL;
    take_in(take, lot);
    const Entry *recall = shop_recall(take->taker->shop, entry_text(lot, "id"));
    if (recall)
        take_in(take, recall);
    return lot;
}

const Entry *take_consumable(Take *take, GError **error)
{
    const Entry *item = take_in_use(take, "consumable", "the lot", error);
    if (item)
        take_in(take, item);
    return item;
}

static GStrv builds_with(const Take *take, const char *what, const char *id)
{
    const LineHelp *help = &take->taker->help;
    return help->builds_with ? help->builds_with(what, id, help->user) : NULL;
}

// What the body of news names that the build may not have taken yet: the new owner of an engine.
// (A calibration or recall names the tool or lot through which the build is told.)
static const Entry *named_by(const Take *take, const Entry *entry)
{
    const char *owner =
        strcmp(entry->kind->name, "engine") == 0 ? entry_text(entry, "owner") : NULL;
    return owner ? shop_by_id(take->taker->shop, "owner", owner) : NULL;
}

// What another build must know beside the news, and the builds that know it already.
typedef struct {
    const Entry *entry; // NULL: nothing
    GStrv builds;
} Beside;

static Beside beside_of(const Take *take, const Entry *entry)
{
    return (Beside){entry,
                    entry ? builds_with(take, entry->kind->name, entry_text(entry, "id")) : NULL};
}

static void tell_beside(Take *take, const char *build, const Beside *beside)
{
    const char *const *knowing = (const char *const *)beside->builds;
    if (beside->entry && !(knowing && g_strv_contains(knowing, build)))
        g_ptr_array_add(take->news, copy_of(take, "take", beside->entry, build));
}

static void tell_others(Take *take, const Entry *entry, const char *const *builds)
{
    Beside person = beside_of(take, shop_by_id(take->taker->shop, "person", take->carry.by));
    Beside named = beside_of(take, named_by(take, entry));
    for (guint i = 0; builds[i]; i++) {
        if (g_strcmp0(builds[i], take->taker->build) == 0)
            continue;
        tell_beside(take, builds[i], &person); // who enters it
        tell_beside(take, builds[i], &named);
        g_ptr_array_add(take->news, copy_of(take, "news", entry, builds[i]));
    }
    g_strfreev(person.builds);
    g_strfreev(named.builds);
}

void take_news(Take *take, const Entry *entry, const char *what, const char *id)
{
    g_auto(GStrv) builds = builds_with(take, what, id);
    if (take->taker->build && is_known(take, what, id)) {
        const Entry *named = named_by(take, entry);
        if (named)
            take_in(take, named);
        g_hash_table_add(take->known,
                         known_key(entry->kind->name, identity(entry->kind->name, entry->body)));
        g_ptr_array_add(take->news, copy_of(take, "news", entry, take->taker->build));
    }
    if (builds)
        tell_others(take, entry, (const char *const *)builds);
}
