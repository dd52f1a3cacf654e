// The lines of the shop: its name, people, owners, engines, builds; tools and stock have files of
// their own.
#include "shop_line.h"

static void add_name(Take *take, const Entry *entry, const char *name)
{
    LineName *named = g_new0(LineName, 1);
    named->id = g_strdup(entry_text(entry, "id"));
    named->name = g_strdup(name);
    g_ptr_array_add(take->names, named);
}

// Reads the phrase that must follow, and the text behind it.
static char *read_behind(Take *take, const char *phrase, const char *what, GError **error)
{
    if (words_skip(&take->words, phrase))
        return words_text(&take->words, what, error);
    words_refuse(&take->words, take->words.at, error, "write `%s` and %s here", phrase, what);
    return NULL;
}

static gboolean shop_person(Take *take, GError **error)
{
    const char *at = take->words.at;
    g_autofree char *initials = shop_read_new_label(take, "person", "the initials", error);
    if (initials && !is_initials(initials))
        return words_refuse(&take->words, at, error,
                            "`%s` could not be told from a verb; initials are two to four capitals",
                            initials);
    g_autofree char *name = initials ? words_text(&take->words, "the name", error) : NULL;
    if (!name)
        return FALSE;
    // The first person of a shop signs their own entry.
    gboolean own = !shop_by_id(take->taker->shop, "person", take->carry.by);
    Entry *entry = take_shop_entry(take, "person");
    if (own)
        entry_set_text(entry, "id", take->carry.by);
    else
        shop_set_new_id(take, entry);
    entry_set_text(entry, "initials", initials);
    add_name(take, entry, name);
    return shop_set_optional(take, entry, "role", "role", error);
}

static gboolean shop_owner(Take *take, GError **error)
{
    g_autofree char *name = NULL;
    const Entry *entry =
        shop_begin_thing(take, "owner", "a short word for the owner", "the name", &name, error);
    if (entry)
        add_name(take, entry, name);
    return entry != NULL;
}

// The owner's id; where none is said, the one known so far, NULL if nobody is.
static gboolean read_owner(Take *take, const Entry *known, const char **owner, GError **error)
{
    *owner = known ? entry_text(known, "owner") : NULL;
    if (!words_skip(&take->words, "owner"))
        return TRUE;
    const Entry *owning = take_shop_label(take, "owner", "the owner", error);
    *owner = owning ? entry_text(owning, "id") : NULL;
    return owning != NULL;
}

// A serial that is known already is the same engine, with what changed about it.
static gboolean shop_engine(Take *take, GError **error)
{
    g_autofree char *serial = words_text(&take->words, "the serial", error);
    g_autofree char *family =
        serial ? read_behind(take, "family", "the engine family", error) : NULL;
    if (!family)
        return FALSE;
    const Entry *known = shop_find(take->taker->shop, "engine", serial);
    const char *owner = NULL;
    if (!read_owner(take, known, &owner, error))
        return FALSE;
    Entry *entry = take_shop_entry(take, "engine");
    if (known)
        entry_set_text(entry, "id", entry_text(known, "id"));
    else
        shop_set_new_id(take, entry);
    entry_set_text(entry, "family", family);
    entry_set_text(entry, "serial", serial);
    entry_set_text(entry, "owner", owner);
    if (!shop_set_quoted(take, entry, "note", error))
        return FALSE;
    if (known)
        take_news(take, entry, "engine", entry_text(entry, "id"));
    return TRUE;
}

static const Entry *read_plan(Take *take, GError **error)
{
    const char *at = take->words.at;
    g_autofree char *name = read_behind(take, "plan", "the plan's name in quotes", error);
    const Entry *plan = name ? shop_find(take->taker->shop, "plan", name) : NULL;
    if (!name || plan)
        return plan;
    const char *near = shop_nearest(take->taker->shop, "plan", name);
    if (near)
        words_refuse(&take->words, at, error, "the store has no plan `%s`; did you mean `%s`?",
                     name, near);
    else
        words_refuse(&take->words, at, error,
                     "the store has no plan `%s`; add it first with `standbook plan add`", name);
    return NULL;
}

static gboolean shop_build(Take *take, GError **error)
{
    g_autofree char *number = shop_read_new_label(take, "build", "the build's number", error);
    if (!number)
        return FALSE;
    if (!words_skip(&take->words, "engine"))
        return words_refuse(&take->words, take->words.at, error,
                            "write `engine` and its serial here");
    const Entry *engine = take_shop_label(take, "engine", "the serial", error);
    const Entry *plan = engine ? read_plan(take, error) : NULL;
    if (!plan)
        return FALSE;
    Entry *entry = take_shop_entry(take, "build");
    shop_set_new_id(take, entry);
    entry_set_text(entry, "number", number);
    entry_set_text(entry, "engine", entry_text(engine, "id"));
    entry_set_text(entry, "plan", entry_text(plan, "digest"));
    return shop_set_quoted(take, entry, "order", error);
}

// What sheets and screens print as the shop's own name; said again, the newest counts.
static gboolean shop_called(Take *take, GError **error)
{
    g_autofree char *name = words_text(&take->words, "the shop's name", error);
    if (!name)
        return FALSE;
    Entry *entry = take_shop_entry(take, "default");
    entry_set_text(entry, "name", "shop name");
    entry_set_text(entry, "setting", name);
    return TRUE;
}

// What was entered wrongly of a tool, lot or tin that builds work with: they are told.
static gboolean shop_correct(Take *take, GError **error)
{
    static const VerbRow rows[] = {
        {"tool", shop_tool}, {"lot", shop_lot}, {"consumable", shop_consumable}};
    take->correct = TRUE;
    if (!take_verb(take, rows, G_N_ELEMENTS(rows), error))
        return FALSE;
    take_news(take, take->shop->pdata[take->shop->len - 1], take->said_before->kind->name,
              entry_text(take->said_before, "id"));
    return TRUE;
}

gboolean verb_shop(Take *take, GError **error)
{
    static const VerbRow rows[] = {
        {"person", shop_person},
        {"owner", shop_owner},
        {"engine", shop_engine},
        {"build", shop_build},
        {"tool", shop_tool},
        {"calibration", shop_calibration},
        {"lot", shop_lot},
        {"consumable", shop_consumable},
        {"recall", shop_recall_lot},
        {"name", shop_called},
        {"correct", shop_correct},
        {"strike", shop_strike},
        {"out of use", shop_out_of_use},
        {"back in use", shop_back_in_use},
    };
    return take_verb(take, rows, G_N_ELEMENTS(rows), error);
}
