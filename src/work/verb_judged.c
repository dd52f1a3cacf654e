// concede, uphold, seal: what rests on how the build stands.
#include "take.h"

#include <standbook/judge/assess.h>
#include <standbook/judge/keep.h>
#include <standbook/work/finding.h>
#include <string.h>

const Assessment *take_assessment(const Take *take)
{
    const LineHelp *help = &take->taker->help;
    return help->assessment ? help->assessment(help->user) : NULL;
}

static const Assessment *assessment_of(Take *take, GError **error)
{
    const Assessment *assessment = take_assessment(take);
    if (!assessment)
        words_refuse(&take->words, take->words.at, error, "the build cannot be judged here");
    return assessment;
}

static gboolean is_picked(const Requirement *made, const Target *target)
{
    for (guint i = 0; i < target->axes->len && made->labels && made->labels[i]; i++) {
        const Axis *axis = g_ptr_array_index(target->axes, i);
        if (target->picked[i] >= 0 &&
            strcmp(axis_label(axis, (gsize)target->picked[i]), made->labels[i]) != 0)
            return FALSE;
    }
    return TRUE;
}

// Whether the requirement is one of those that the target names.
static gboolean is_meant(const Requirement *made, const Target *target)
{
    return !made->withdrawn && strcmp(made->name, target->name) == 0 && target->step &&
           strcmp(made->step->name, target->step->name) == 0 && is_picked(made, target) &&
           (made->asked == ASKED_SIGN) == (target->itself != NULL) &&
           target_fits(target, made->asked, made->stage);
}

static Entry *requirement_entry(Take *take, const char *kind, const Requirement *made)
{
    Entry *entry = take_entry(take, kind);
    entry_set_text(entry, "asked", asked_words(made->asked));
    entry_set_text(entry, "name", made->name);
    entry_set_text(entry, "step", made->step->name);
    if (made->labels)
        entry_set_list(entry, "place", (const char *const *)made->labels,
                       g_strv_length(made->labels));
    if (made->stage)
        entry_set_number(entry, "stage", made->stage);
    return entry;
}

// CONCEDE ---------------------------------------------------------------------------------------

typedef struct {
    Reading bound; // as written; `number` NULL if none is
    char *why;
    const char *how;
} Concession;

static void concession_clear(Concession *concession)
{
    reading_clear(&concession->bound);
    g_free(concession->why);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Concession, concession_clear)

static gboolean read_concession(Take *take, const Target *target, Concession *concession,
                                GError **error)
{
    const Unit *unit = target->check ? target->check->unit : NULL;
    if (words_skip(&take->words, "to") &&
        !words_value(&take->words, unit, &concession->bound, error))
        return FALSE;
    concession->why = words_text(&take->words, "the reason", error);
    return concession->why && take_customer(take, &concession->how, error);
}

// On which side of its limits a value lies: outside, or nearer to that limit.
static const char *side_of(const Requirement *made)
{
    if (!made->lower || !made->upper)
        return made->lower ? "low" : "high";
    g_autoptr(Number) above = number_subtract(made->value, made->lower);
    g_autoptr(Number) below = number_subtract(made->upper, made->value);
    return number_compare(above, below) < 0 ? "low" : "high";
}

// The value as it stands, in the unit of its check.
static void set_standing_bound(Entry *entry, const Requirement *made)
{
    const Unit *unit = made->check ? made->check->unit : NULL;
    g_autoptr(Number) number = unit_from_base(unit, made->value);
    g_autofree char *value = number_fraction(number);
    g_autofree char *typed = number_text(number);
    entry_set_value(entry, "bound", value, unit ? unit_text(unit) : "", typed);
}

// Why it does not pass: its doubts, and what it would be without them.
static void set_reasons(Entry *entry, const Requirement *made)
{
    g_autoptr(GPtrArray) reasons = g_ptr_array_new();
    guint32 standing = made->doubts | reason_bit(made->reason) | reason_bit(made->value_reason);
    for (guint i = REASON_NONE + 1; i < REASONS; i++)
        if (standing & reason_bit((Reason)i))
            g_ptr_array_add(reasons, (gpointer)reason_words((Reason)i));
    entry_set_list(entry, "reasons", (const char *const *)reasons->pdata, reasons->len);
}

// Who accepts it: the customer where one was asked, else the person of the line.
static void set_who(const Take *take, Entry *entry, const Concession *concession)
{
    const Entry *person = shop_by_id(take->taker->shop, "person", take->carry.by);
    entry_set_text(entry, "why", concession->why);
    entry_set_text(entry, "who",
                   concession->how ? "customer"
                   : person        ? shop_label(person)
                                   : "builder");
    entry_set_text(entry, "person", concession->how ? NULL : take->carry.by);
    entry_set_text(entry, "how", concession->how);
}

static void add_concession(Take *take, const Requirement *made, const Concession *concession)
{
    Entry *entry = requirement_entry(take, "concede", made);
    set_reasons(entry, made);
    if (made->value && (made->lower || made->upper)) {
        entry_set_text(entry, "side", side_of(made));
        if (concession->bound.number)
            entry_set_reading(entry, "bound", &concession->bound);
        else
            set_standing_bound(entry, made);
    }
    set_who(take, entry, concession);
}

// The concession must reach as far as the value lies, or it changes nothing.
static gboolean reaches(const Take *take, const Requirement *made, const Concession *concession,
                        const char *at, GError **error)
{
    if (!concession->bound.number || !made->value)
        return TRUE;
    gint order = number_compare(made->value, concession->bound.value);
    gboolean low = strcmp(side_of(made), "low") == 0;
    if (low ? order >= 0 : order <= 0)
        return TRUE;
    g_autofree char *value = made->check
                                 ? check_typed_shown(made->check, made->value, made->decimals)
                                 : unit_show(NULL, made->value, 0);
    return words_refuse(&take->words, at, error, "that is not far enough; `%s` stands at %s",
                        made->name, value);
}

gboolean verb_concede(Take *take, GError **error)
{
    const unsigned all = TARGET_CHECKS | TARGET_GROUPS | TARGET_PARTS | TARGET_STEPS;
    g_auto(Target) target = {0};
    g_auto(Concession) concession = {0};
    const Assessment *assessment = assessment_of(take, error);
    if (!assessment || !take_target(take, all, TRUE, &target, error))
        return FALSE;
    const char *at = take->words.at;
    if (!read_concession(take, &target, &concession, error))
        return FALSE;
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        gboolean outside = made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT;
        if (!outside || !is_meant(made, &target))
            continue;
        if (!reaches(take, made, &concession, at, error))
            return FALSE;
        add_concession(take, made, &concession);
    }
    return take->made->len || words_refuse(&take->words, target.at, error,
                                           "nothing there fails or is in doubt, so there is "
                                           "nothing to concede");
}

// UPHOLD ----------------------------------------------------------------------------------------

// What is told to be in doubt now, as found or as it is: not what was conceded or answered since.
static gboolean stands_in_doubt(const Requirement *made)
{
    return made->verdict == VERDICT_IN_DOUBT ||
           (finding_waits(made) && made->own_verdict == VERDICT_IN_DOUBT);
}

static void add_upholds(Take *take, const Requirement *made, const char *why, const char *second)
{
    for (guint i = REASON_TOOL; i < REASONS; i++) {
        if (!(made->doubts & reason_bit((Reason)i)) || i == REASON_SPENT)
            continue;
        Entry *entry = requirement_entry(take, "uphold", made);
        entry_set_text(entry, "doubt", reason_words((Reason)i));
        entry_set_text(entry, "why", why);
        entry_set_text(entry, "second", second);
    }
}

static gboolean refuse_uphold(const Take *take, const Target *target, const Assessment *assessment,
                              GError **error)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (is_meant(made, target) && made->verdict == VERDICT_IN_DOUBT)
            return words_refuse(&take->words, target->at, error,
                                made->reason == REASON_SPENT
                                    ? "a spent bolt cannot be upheld; fit a new one there"
                                    : "what the gauge cannot tell cannot be upheld; read it with a "
                                      "finer one, or concede it");
    }
    return words_refuse(&take->words, target->at, error,
                        "nothing there is in doubt, so there is nothing to uphold");
}

gboolean verb_uphold(Take *take, GError **error)
{
    const unsigned all = TARGET_CHECKS | TARGET_GROUPS | TARGET_PARTS | TARGET_STEPS;
    g_auto(Target) target = {0};
    const Entry *second = NULL;
    const Assessment *assessment = assessment_of(take, error);
    if (!assessment || !take_target(take, all, TRUE, &target, error))
        return FALSE;
    g_autofree char *why = words_text(&take->words, "the reason", error);
    const char *at = take->words.at;
    if (!why || (words_skip(&take->words, "second") && !(second = take_person(take, error))))
        return FALSE;
    if (second && strcmp(entry_text(second, "id"), take->carry.by) == 0)
        return words_refuse(&take->words, at, error, "the second person must be another one");
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (is_meant(made, &target) && stands_in_doubt(made))
            add_upholds(take, made, why, second ? entry_text(second, "id") : NULL);
    }
    return take->made->len || refuse_uphold(take, &target, assessment, error);
}

// SEAL ------------------------------------------------------------------------------------------

static const char ABANDONED[] = "abandoned";

static const char *read_gate(Take *take, GError **error)
{
    const GPtrArray *gates = take->taker->plan->gates;
    const char *gate = words_name(&take->words, (const char *const *)gates->pdata, gates->len);
    if (gate || words_skip(&take->words, ABANDONED))
        return gate ? gate : ABANDONED;
    g_autoptr(GString) all = g_string_new(NULL);
    for (guint i = 0; i < gates->len; i++)
        g_string_append_printf(all, "%s, ", (const char *)gates->pdata[i]);
    words_refuse(&take->words, take->words.at, error, "which gate? write one of: %s%s", all->str,
                 ABANDONED);
    return NULL;
}

// How many live seals of this gate there are: the next is a supplement of that number.
static guint seals_of(const Take *take, const char *gate)
{
    const GPtrArray *entries = take->taker->entries;
    g_autofree gboolean *live = take_live(take);
    guint seals = 0;
    for (guint i = 0; i < entries->len; i++)
        seals += live[i] && strcmp(((Entry *)entries->pdata[i])->kind->name, "seal") == 0 &&
                 g_strcmp0(entry_text(entries->pdata[i], "gate"), gate) == 0;
    return seals;
}

static void set_counts(Entry *entry, const guint *counts)
{
    json_t *object = json_object();
    for (guint i = 0; i < VERDICTS; i++)
        json_object_set_new(object, verdict_words((Verdict)i), json_integer(counts[i]));
    json_object_set_new(entry->body, "counts", object);
}

static void keep_assessment(Take *take, Entry *entry, const Assessment *assessment)
{
    char *text = assessment_keep(assessment);
    g_clear_pointer(&take->kept, g_bytes_unref);
    take->kept = g_bytes_new_take(text, strlen(text));
    g_autofree char *digest = g_compute_checksum_for_bytes(G_CHECKSUM_SHA256, take->kept);
    entry_set_text(entry, "edition", EDITION);
    entry_set_text(entry, "assessment", digest);
}

// A gate may be sealed with something left: the counts in the seal say so, and what comes later
// stands since the seal.
gboolean verb_seal(Take *take, GError **error)
{
    const char *at = take->words.at;
    const char *name = read_gate(take, error);
    const Assessment *assessment = name ? assessment_of(take, error) : NULL;
    if (!assessment)
        return FALSE;
    gint gate = plan_gate(take->taker->plan, name);
    if (assessment->upto == 0)
        return words_refuse(&take->words, at, error, "nothing is entered yet that could be sealed");
    guint seals = seals_of(take, name);
    Entry *entry = take_entry(take, "seal");
    entry_set_text(entry, "gate", name);
    entry_set_number(entry, "covers", assessment->upto);
    if (seals)
        entry_set_number(entry, "supplement", seals);
    set_counts(entry, gate < 0 ? assessment->counts
                               : ((GateCount *)assessment->gates->pdata[gate])->counts);
    keep_assessment(take, entry, assessment);
    return TRUE;
}
