// strike: takes back what was entered.
#include "take.h"

#include <standbook/work/entry_words.h>
#include <string.h>

enum { TOLD_MOST = 4 };

static gboolean is_kind(const Entry *entry, const char *const *kinds)
{
    for (; *kinds; kinds++)
        if (strcmp(entry->kind->name, *kinds) == 0)
            return TRUE;
    return FALSE;
}

// The last entry of this person that still counts and is their own doing.
static gint64 last_of_person(const Take *take, const gboolean *live)
{
    static const char *const none[] = {"take", "news", "caution passed", "strike", NULL};
    for (guint i = take->taker->entries->len; i > 0; i--) {
        const Entry *entry = take->taker->entries->pdata[i - 1];
        if (live[i - 1] && g_strcmp0(entry->by, take->carry.by) == 0 && !is_kind(entry, none))
            return i;
    }
    return 0;
}

// Whether the entry is of the sort and the stage that the target says, if it does.
static gboolean is_as_said(const Entry *entry, const Target *target)
{
    static const char *const kinds[] = {
        [ASKED_READ] = "read",   [ASKED_LOOK] = "look", [ASKED_BOLT] = "tick",
        [ASKED_WAIT] = "waited", [ASKED_FIT] = "fit",   [ASKED_SIGN] = "sign"};
    return (!target->says_asked || strcmp(entry->kind->name, kinds[target->asked]) == 0) &&
           (!target->number || entry_number(entry, "stage") == target->number);
}

// What an entry is about; NULL where it names nothing.
static const char *name_in(const Entry *entry)
{
    static const char *const named_by[] = {"check", "tightening", "part", "name"};
    const char *name = NULL;
    for (gsize i = 0; i < G_N_ELEMENTS(named_by) && !name; i++)
        name = entry_text(entry, named_by[i]);
    return name;
}

// Whether the entry says something about one place of the target.
static gboolean is_about(const Entry *entry, const Target *target, guint place)
{
    const char *step = entry_text(entry, "step");
    if (g_strcmp0(name_in(entry), target->name) != 0 || !is_as_said(entry, target) ||
        (target->step && step && strcmp(step, target->step->name) != 0))
        return FALSE;
    g_auto(GStrv) labels = places_labels(target->axes, place);
    g_autofree char *bolt = places_label(target->axes, place);
    return entry_list_length(entry, "bolts") ? entry_list_has(entry, "bolts", bolt)
                                             : entry_reaches(entry, (const char *const *)labels);
}

static gint64 last_about(const Take *take, const gboolean *live, const Target *target, guint place)
{
    static const char *const kinds[] = {"read", "look",   "choose", "claim",  "tick", "slacken",
                                        "move", "waited", "fit",    "rework", NULL};
    for (guint i = take->taker->entries->len; i > 0; i--) {
        const Entry *entry = take->taker->entries->pdata[i - 1];
        if (live[i - 1] && is_kind(entry, kinds) && is_about(entry, target, place))
            return i;
    }
    return 0;
}

static gboolean add_seq(GArray *seqs, gint64 seq)
{
    for (guint i = 0; i < seqs->len; i++)
        if (g_array_index(seqs, gint64, i) == seq)
            return TRUE;
    g_array_append_val(seqs, seq);
    return TRUE;
}

static gboolean is_copy(const Entry *entry)
{
    static const char *const copies[] = {"take", "news", NULL};
    return is_kind(entry, copies);
}

// `#41`, which must be there and be no copy of what the shop said. 0 if it is refused.
static guint read_number(Take *take, const gboolean *live, GError **error)
{
    const char *at = take->words.at++;
    guint number = 0;
    if (!words_whole(&take->words, "the number of an entry", 1, &number, error))
        return 0;
    const Entry *entry = take_entry_at(take, number);
    if (!entry)
        words_refuse(&take->words, at, error, "there is no entry #%u; the last one is #%u", number,
                     take->taker->entries->len);
    else if (is_copy(entry))
        words_refuse(&take->words, at, error,
                     "entry #%u is what the build took from the shop; it is not struck here",
                     number);
    else if (!live[number - 1])
        words_refuse(&take->words, at, error, "entry #%u is struck already", number);
    else
        return number;
    return 0;
}

// Whether it struck one of those entries: struck with them, it would bring that one back.
static gboolean strikes_within(const Entry *entry, guint first, guint last)
{
    gint64 seq = entry_number(entry, "entry");
    return strcmp(entry->kind->name, "strike") == 0 && seq >= first && seq <= last;
}

// Adds all from `first` to `last` that stand and are no copies, so that none of them stands any
// more; but a seal is not struck with others.
static gboolean add_range(Take *take, const gboolean *live, guint first, guint last, GArray *seqs,
                          GError **error)
{
    for (guint number = first; number <= last; number++) {
        const Entry *entry = take_entry_at(take, number);
        if (!live[number - 1] || is_copy(entry) || strikes_within(entry, first, last))
            continue;
        if (first < last && strcmp(entry->kind->name, "seal") == 0)
            return words_refuse(&take->words, take->words.at, error,
                                "entry #%u is the seal `%s`; a seal is struck by its own number: "
                                "`strike #%u …`",
                                number, entry_text(entry, "gate"), number);
        add_seq(seqs, number);
    }
    return TRUE;
}

// `#41`, or `#41 to #45`.
static gboolean find_number(Take *take, const gboolean *live, GArray *seqs, GError **error)
{
    guint first = read_number(take, live, error), last = first;
    if (!first)
        return FALSE;
    if (words_skip(&take->words, "to")) {
        const char *at = take->words.at;
        if (*at != '#')
            return words_refuse(&take->words, at, error, "to which entry? write `#%u to #%u`",
                                first, first + 1);
        last = read_number(take, live, error);
        if (!last)
            return FALSE;
        if (last < first)
            return words_refuse(&take->words, at, error, "write the first of them in front");
    }
    return add_range(take, live, first, last, seqs, error);
}

static gboolean find_target(Take *take, const gboolean *live, GArray *seqs, GError **error)
{
    g_auto(Target) target = {0};
    if (!take_target(take, TARGET_CHECKS | TARGET_GROUPS | TARGET_PARTS, FALSE, &target, error))
        return FALSE;
    for (guint i = 0; i < target.places->len; i++) {
        gint64 seq = last_about(take, live, &target, target_place(&target, i));
        if (seq)
            add_seq(seqs, seq);
    }
    return seqs->len || words_refuse(&take->words, target.at, error,
                                     "nothing is entered there that could be struck");
}

// The last of this person; but a seal is not struck by a slip.
static gboolean find_last(Take *take, const gboolean *live, const char *at, GArray *seqs,
                          GError **error)
{
    gint64 seq = last_of_person(take, live);
    if (!seq)
        return words_refuse(&take->words, at, error,
                            "this person has entered nothing that could be struck");
    const Entry *entry = take_entry_at(take, seq);
    if (strcmp(entry->kind->name, "seal") == 0)
        return words_refuse(&take->words, at, error,
                            "the last entry of this person is the seal `%s`; a seal is struck by "
                            "its number: `strike #%" G_GINT64_FORMAT " …`",
                            entry_text(entry, "gate"), seq);
    return add_seq(seqs, seq);
}

// Whether two entries may have come of one line, which names a place once and bolts stage by stage:
// the same person, time, kind and name.
static gboolean is_beside(const Entry *one, const Entry *other)
{
    static const char *const several[] = {"read", "look", "tick", "fit", NULL};
    gboolean bolts = strcmp(one->kind->name, "tick") == 0;
    return is_kind(one, several) && one->kind == other->kind &&
           (bolts || !entry_same_place(one, other)) && g_strcmp0(one->by, other->by) == 0 &&
           g_strcmp0(one->at, other->at) == 0 && g_strcmp0(one->done, other->done) == 0 &&
           g_strcmp0(name_in(one), name_in(other)) == 0 &&
           g_strcmp0(entry_text(one, "step"), entry_text(other, "step")) == 0;
}

// `last` is one entry; what stands in front of it and may have come of the same line is said, and
// how it is taken back.
static void remark_beside(Take *take, const gboolean *live, gint64 seq)
{
    gint64 first = seq;
    while (first > 1 && live[first - 2] &&
           is_beside(take_entry_at(take, first - 1), take_entry_at(take, seq)))
        first--;
    gint64 beside = seq - first;
    if (beside == 1)
        take_remark(take, "#%" G_GINT64_FORMAT " of the same time stands", first);
    else if (beside)
        take_remark(take,
                    "%" G_GINT64_FORMAT
                    " of the same time stand; these too: `strike #%" G_GINT64_FORMAT
                    " to #%" G_GINT64_FORMAT " …`",
                    beside, first, seq - 1);
}

static gboolean find_struck(Take *take, const gboolean *live, gboolean *last, GArray *seqs,
                            GError **error)
{
    const char *at = take->words.at;
    if (*at == '#')
        return find_number(take, live, seqs, error);
    *last = words_skip(&take->words, "last");
    return *last ? find_last(take, live, at, seqs, error) : find_target(take, live, seqs, error);
}

// Says what is struck, so that a slip shows.
static void remark_struck(Take *take, const GArray *seqs)
{
    const GPtrArray *entries = take->taker->entries;
    g_autoptr(Taken) taken = taken_new((const Entry *const *)entries->pdata, entries->len, NULL);
    g_autoptr(GString) told = g_string_new(NULL);
    for (guint i = 0; i < MIN(seqs->len, TOLD_MOST); i++) {
        gint64 seq = g_array_index(seqs, gint64, i);
        g_autofree char *words = entry_words(taken, take_entry_at(take, seq));
        g_string_append_printf(told, "%s#%" G_GINT64_FORMAT " `%s`", i ? ", " : "", seq, words);
    }
    if (seqs->len > TOLD_MOST)
        g_string_append_printf(told, " and %u more", seqs->len - TOLD_MOST);
    take_remark(take, "Struck: %s", told->str);
}

char *take_cause(Take *take, GError **error)
{
    static const char *const causes[] = {"typo",        "dirt",       "dropped", "cold",
                                         "wrong place", "wrong tool", "not done"};
    const char *cause = words_name(&take->words, causes, G_N_ELEMENTS(causes));
    if (cause)
        return g_strdup(cause);
    if (words_are_quoted(&take->words))
        return words_text(&take->words, "the cause", error);
    words_refuse(
        &take->words, take->words.at, error,
        "why? write typo, dirt, dropped, cold, wrong place, wrong tool, not done, or words "
        "in quotes");
    return NULL;
}

gboolean verb_strike(Take *take, GError **error)
{
    g_autoptr(GArray) seqs = g_array_new(FALSE, FALSE, sizeof(gint64));
    g_autofree gboolean *live = take_live(take);
    gboolean last = FALSE;
    if (!find_struck(take, live, &last, seqs, error))
        return FALSE;
    g_autofree char *cause = take_cause(take, error);
    if (!cause)
        return FALSE;
    for (guint i = 0; i < seqs->len; i++) {
        Entry *entry = take_entry(take, "strike");
        entry_set_number(entry, "entry", g_array_index(seqs, gint64, i));
        entry_set_text(entry, "cause", cause);
    }
    remark_struck(take, seqs);
    if (last)
        remark_beside(take, live, g_array_index(seqs, gint64, 0));
    return TRUE;
}
