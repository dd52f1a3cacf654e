// strike: takes back what was entered into the shop's ledger by mistake, as long as no build works
// with it.
#include "shop_line.h"

#include <standbook/record/live.h>
#include <standbook/work/entry_words.h>
#include <string.h>

static gboolean is_kind(const Entry *entry, const char *kind)
{
    return strcmp(entry->kind->name, kind) == 0;
}

// The shop's entries (const Entry *), in order of seq. The caller frees with g_ptr_array_unref.
static GPtrArray *all_entries(const Shop *shop)
{
    GPtrArray *all = g_ptr_array_new();
    for (gint64 seq = 1; seq <= shop_last(shop); seq++)
        g_ptr_array_add(all, (gpointer)shop_entry(shop, seq));
    return all;
}

// Which of them count. The caller frees with g_free.
static gboolean *live_of(const GPtrArray *all)
{
    gboolean *live = g_new0(gboolean, all->len + 1);
    live_entries((const Entry *const *)all->pdata, all->len, live);
    return live;
}

// What is struck of the shop, and what is looked at for it.
typedef struct {
    Take *take;
    const char *at; // where it stands in the line
    GPtrArray *all; // const Entry *
    gboolean *live;
    GPtrArray *struck; // const Entry *
} ShopStrike;

static void add_struck(ShopStrike *strike, const Entry *entry)
{
    if (!g_ptr_array_find(strike->struck, entry, NULL))
        g_ptr_array_add(strike->struck, (gpointer)entry);
}

// The id by which entries of the shop name the thing that this one enters; NULL if it enters none.
static const char *own_id(const Entry *entry)
{
    static const char *const things[] = {"tool",   "lot",   "consumable", "engine",
                                         "person", "owner", NULL};
    return g_strv_contains(things, entry->kind->name) ? entry_text(entry, "id") : NULL;
}

// Whether it says something of that thing alone, so that it goes with it.
static gboolean goes_with(const Entry *entry, const char *id)
{
    return g_strcmp0(own_id(entry), id) == 0 ||
           (is_kind(entry, "calibration") && g_strcmp0(entry_text(entry, "tool"), id) == 0) ||
           (is_kind(entry, "recall") && g_strcmp0(entry_text(entry, "lot"), id) == 0) ||
           (kind_field(entry->kind, "what") && g_strcmp0(entry_text(entry, "id"), id) == 0);
}

// Whether it names that thing, or was entered by that person.
static gboolean names(const Entry *entry, const char *id)
{
    if (g_strcmp0(entry->by, id) == 0)
        return TRUE;
    for (const Field *field = entry->kind->fields; field->name; field++)
        if (field->type == FIELD_ID && g_strcmp0(entry_text(entry, field->name), id) == 0)
            return TRUE;
    return FALSE;
}

// The thing whole: what was said of it, and all that goes with it. Refused if another entry of the
// shop rests on it.
static gboolean add_thing(ShopStrike *strike, const char *id, GError **error)
{
    for (guint i = 0; i < strike->all->len; i++) {
        const Entry *entry = strike->all->pdata[i];
        if (!strike->live[i] || is_kind(entry, "strike"))
            continue;
        if (goes_with(entry, id))
            add_struck(strike, entry);
        else if (names(entry, id))
            return words_refuse(&strike->take->words, strike->at, error,
                                "shop #%" G_GINT64_FORMAT " (%s) rests on it, so it stands",
                                entry->seq, entry->kind->name);
    }
    return TRUE;
}

// How often what stands now of a thing was said: again where it was corrected.
static guint times_said(const ShopStrike *strike, const char *id)
{
    guint count = 0;
    for (guint i = 0; i < strike->all->len; i++)
        count += strike->live[i] && g_strcmp0(own_id(strike->all->pdata[i]), id) == 0 ? 1 : 0;
    return count;
}

static gboolean add_entry(ShopStrike *strike, const Entry *entry, GError **error)
{
    const char *id = own_id(entry);
    if (id && times_said(strike, id) == 1)
        return add_thing(strike, id, error);
    add_struck(strike, entry);
    return TRUE;
}

// WHICH -----------------------------------------------------------------------------------------

static gboolean find_number(ShopStrike *strike, GError **error)
{
    Words *words = &strike->take->words;
    guint number = 0;
    words->at++;
    if (!words_whole(words, "the number of an entry of the shop", 1, &number, error))
        return FALSE;
    if (number > strike->all->len)
        return words_refuse(words, strike->at, error,
                            "the shop has no entry #%u; the last one is #%u", number,
                            strike->all->len);
    if (!strike->live[number - 1])
        return words_refuse(words, strike->at, error, "entry #%u of the shop is struck already",
                            number);
    return add_entry(strike, strike->all->pdata[number - 1], error);
}

static gboolean find_last(ShopStrike *strike, GError **error)
{
    for (guint i = strike->all->len; i > 0; i--) {
        const Entry *entry = strike->all->pdata[i - 1];
        if (strike->live[i - 1] && !is_kind(entry, "strike") &&
            g_strcmp0(entry->by, strike->take->carry.by) == 0)
            return add_entry(strike, entry, error);
    }
    return words_refuse(&strike->take->words, strike->at, error,
                        "this person has entered nothing of the shop that could be struck");
}

static gboolean find_struck(ShopStrike *strike, GError **error)
{
    Take *take = strike->take;
    const char *sort = NULL;
    if (*take->words.at == '#')
        return find_number(strike, error);
    if (words_skip(&take->words, "last"))
        return find_last(strike, error);
    const Entry *thing = shop_read_thing(take, &sort, error);
    return thing && add_thing(strike, entry_text(thing, "id"), error);
}

// WHETHER ---------------------------------------------------------------------------------------

// Of which thing a build would have taken the entry along; NULL of none.
static const char *taken_with(const Entry *entry)
{
    return is_kind(entry, "calibration") ? entry_text(entry, "tool")
           : is_kind(entry, "recall")    ? entry_text(entry, "lot")
                                         : own_id(entry);
}

static gboolean refuse_taken(const ShopStrike *strike, const Entry *entry, GStrv builds,
                             GError **error)
{
    const Entry *build = shop_by_id(strike->take->taker->shop, "build", builds[0]);
    guint more = g_strv_length(builds) - 1;
    g_autofree char *others = more ? g_strdup_printf(" and %u more", more) : g_strdup("");
    const char *instead =
        is_kind(entry, "calibration") ? "enter the right one, with its own day, or uphold what it "
                                        "puts in doubt"
        : is_kind(entry, "recall")    ? "uphold what it puts in doubt"
        : is_kind(entry, "tool") || is_kind(entry, "lot") || is_kind(entry, "consumable")
            ? "say with `correct` what it is in truth, or put it `out of use`"
            : "enter what is true now";
    return words_refuse(&strike->take->words, strike->at, error,
                        "shop #%" G_GINT64_FORMAT " stands, for %s%s took it in; %s",
                        entry->seq, build ? shop_label(build) : "a build from elsewhere", others,
                        instead);
}

// What builds rest on stays, and so does what begins a ledger or keeps a file.
static gboolean may_be_struck(const ShopStrike *strike, const Entry *entry, GError **error)
{
    const LineHelp *help = &strike->take->taker->help;
    if (is_kind(entry, "build"))
        return words_refuse(&strike->take->words, strike->at, error,
                            "build `%s` has a ledger of its own and stays; seal it: `seal "
                            "abandoned`",
                            shop_label(entry));
    if (is_kind(entry, "plan"))
        return words_refuse(&strike->take->words, strike->at, error,
                            "plan `%s` is kept and stays; no build need be begun by it",
                            shop_label(entry));
    const char *id = taken_with(entry);
    g_auto(GStrv) builds =
        id && help->builds_with ? help->builds_with(entry->kind->name, id, help->user) : NULL;
    return !builds || !builds[0] || refuse_taken(strike, entry, builds, error);
}

// Whether a strike that is struck would bring back a name that another thing has by now.
static gboolean brings_back_well(const ShopStrike *strike, const Entry *entry, GError **error)
{
    const Shop *shop = strike->take->taker->shop;
    const Entry *back =
        is_kind(entry, "strike") ? shop_entry(shop, entry_number(entry, "entry")) : NULL;
    const char *id = back ? own_id(back) : NULL;
    const Entry *named = id ? shop_find(shop, back->kind->name, shop_label(back)) : NULL;
    return !named || g_strcmp0(own_id(named), id) == 0 ||
           words_refuse(&strike->take->words, strike->at, error,
                        "`%s` is the name of another %s by now (shop #%" G_GINT64_FORMAT ")",
                        shop_label(back), back->kind->name, named->seq);
}

static gboolean may_all_be_struck(const ShopStrike *strike, GError **error)
{
    for (guint i = 0; i < strike->struck->len; i++) {
        const Entry *entry = strike->struck->pdata[i];
        if (!may_be_struck(strike, entry, error) || !brings_back_well(strike, entry, error))
            return FALSE;
    }
    return TRUE;
}

// Says what is struck, so that a slip shows.
static void remark_struck(const ShopStrike *strike)
{
    g_autoptr(Taken) taken =
        taken_new((const Entry *const *)strike->all->pdata, strike->all->len, NULL);
    g_autoptr(GString) told = g_string_new(NULL);
    for (guint i = 0; i < strike->struck->len; i++) {
        const Entry *entry = strike->struck->pdata[i];
        g_autofree char *words = entry_words(taken, entry);
        g_string_append_printf(told, "%sshop #%" G_GINT64_FORMAT " `%s`", i ? ", " : "",
                               entry->seq, words);
    }
    take_remark(strike->take, "Struck: %s", told->str);
}

static gboolean enter_strikes(const ShopStrike *strike, GError **error)
{
    g_autofree char *cause = take_cause(strike->take, error);
    if (!cause || !may_all_be_struck(strike, error))
        return FALSE;
    for (guint i = 0; i < strike->struck->len; i++) {
        Entry *entry = take_shop_entry(strike->take, "strike");
        entry_set_number(entry, "entry", ((const Entry *)strike->struck->pdata[i])->seq);
        entry_set_text(entry, "cause", cause);
    }
    remark_struck(strike);
    return TRUE;
}

gboolean shop_strike(Take *take, GError **error)
{
    g_autoptr(GPtrArray) all = all_entries(take->taker->shop), struck = g_ptr_array_new();
    g_autofree gboolean *live = live_of(all);
    ShopStrike strike = {take, take->words.at, all, live, struck};
    return find_struck(&strike, error) && enter_strikes(&strike, error);
}
