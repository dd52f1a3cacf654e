#include "trials_inside.h"

#include <standbook/record/live.h>
#include <standbook/record/order.h>
#include <standbook/work/words.h>
#include <string.h>

static gboolean is_kind(const Entry *entry, const char *kind)
{
    return strcmp(entry->kind->name, kind) == 0;
}

static Trial *last_of(const Trials *trials)
{
    return trials->all->len ? trials->all->pdata[trials->all->len - 1] : NULL;
}

const Trial *trials_last(const Trials *trials)
{
    return last_of(trials);
}

// Whether it is work of a step that asks once more for what is read here: a requirement of its own,
// of which the try in hand is only if it was moved in that step.
static gboolean is_later(const Trials *trials, const Entry *entry)
{
    const Trial *last = last_of(trials);
    const char *name = entry_text(entry, "step");
    const PlanStep *step = name ? plan_step(trials->plan, name) : NULL;
    gboolean again = step && plan_reads_again(step, trials->check);
    for (guint i = 0; step && !again && i < trials->reads->len; i++)
        again = plan_reads_again(step, g_array_index(trials->reads, PlanInput, i).check);
    return again && !(last && last->move && g_strcmp0(entry_text(last->move, "step"), name) == 0);
}

static gboolean is_read(const Trials *trials, const Entry *entry)
{
    return is_kind(entry, "read") && trials_input(trials, entry) >= 0;
}

// Whether it is a move of this setting or a reading for it.
static gboolean is_of(const Trials *trials, const Entry *entry)
{
    if (is_kind(entry, "read"))
        return is_read(trials, entry) && !is_later(trials, entry);
    return is_kind(entry, "move") &&
           g_strcmp0(entry_text(entry, "check"), trials->check->name) == 0 &&
           trials_is_moved(trials, entry);
}

gboolean trials_is_tight(const Entry *entry)
{
    return is_kind(entry, "read") && g_strcmp0(entry_text(entry, "state"), "loose") != 0;
}

// GATHER ----------------------------------------------------------------------------------------

static void value_clear(gpointer data)
{
    TrialValue *value = data;
    number_free(value->value);
    g_free(value->read);
}

static void trial_free(gpointer data)
{
    Trial *trial = data;
    g_ptr_array_unref(trial->entries);
    g_array_unref(trial->values);
    g_array_unref(trial->rows);
    g_ptr_array_unref(trial->notes);
    number_free(trial->position);
    number_free(trial->loose_value);
    assessment_free(trial->then);
    g_free(trial->places);
    g_free(trial->tight);
    g_free(trial->since);
    g_free(trial->loosely);
    g_free(trial);
}

void trials_free(Trials *trials)
{
    if (!trials)
        return;
    g_ptr_array_unref(trials->all);
    g_hash_table_unref(trials->near);
    g_array_unref(trials->reads);
    g_strfreev(trials->labels);
    g_free(trials->made);
    g_free(trials->inputs);
    g_free(trials);
}

static Trial *open_trial(Trials *trials)
{
    const Trial *before = last_of(trials);
    Trial *trial = g_new0(Trial, 1);
    trial->number = trials->all->len + 1;
    trial->entries = g_ptr_array_new();
    trial->values = g_array_new(FALSE, FALSE, sizeof(TrialValue));
    g_array_set_clear_func(trial->values, value_clear);
    trial->rows = trial_rows_new();
    trial->notes = g_ptr_array_new();
    trial->places = g_new0(TrialPlace, trials->places);
    trial->tight = g_new0(const Entry *, trials->reads->len + 1);
    trial->since = g_new0(const Entry *, trials->reads->len + 1);
    trial->loosely = g_new0(const Entry *, trials->reads->len + 1);
    trial->position = before && before->position ? number_copy(before->position) : NULL;
    g_ptr_array_add(trials->all, trial);
    return trial;
}

static Trial *trial_in_hand(Trials *trials)
{
    Trial *last = last_of(trials);
    return last ? last : open_trial(trials);
}

static void take_move(Trials *trials, const Entry *entry)
{
    Trial *trial = trial_in_hand(trials);
    if (trial->readings)
        trial = open_trial(trials);
    else if (trial->move || trial->loose)
        trial_pass(trial);
    g_autoptr(Number) before = g_steal_pointer(&trial->position);
    g_autoptr(Number) to = entry_amount(entry, "to"), by = entry_amount(entry, "moved");
    trial->position = to ? g_steal_pointer(&to) : before && by ? number_add(before, by) : NULL;
    trial->move = entry;
    trial->loose = NULL;
    memset(trial->loosely, 0, trials->reads->len * sizeof *trial->loosely);
    g_clear_pointer(&trial->loose_value, number_free);
    g_ptr_array_add(trial->entries, (gpointer)entry);
}

// What a formula comes to is worked out later (trials_judge).
static void add_value(const Trials *trials, Trial *trial, const Entry *entry, guint place,
                      gboolean tight)
{
    gsize size = trials->reads->len * sizeof *trial->tight;
    TrialValue value = {.entry = entry,
                        .tight = tight,
                        .place = place,
                        .read = g_memdup2(tight ? trial->tight : trial->loosely, size),
                        .later = is_later(trials, entry),
                        .value = trials->check->formula ? NULL : entry_amount(entry, "value")};
    g_array_append_val(trial->values, value);
}

static void take_tight(Trials *trials, Trial *trial, const Entry *entry)
{
    trials_put(trials, entry, trial->tight);
    trials_put(trials, entry, trial->since);
    trial->readings++;
    trial->read = 0;
    trial->ended = 0;
    for (guint i = 0; i < trials->places; i++) {
        trial->places[i].entry = trials_whole(trials, trial->tight, i);
        trial->read += trial->places[i].entry ? 1 : 0;
        if (trial->places[i].entry != entry)
            continue;
        add_value(trials, trial, entry, i, TRUE);
        trial_read_tight(trial);
    }
}

// What a later step reads stands behind the try, but is none of it. Of a formula it says nothing by
// itself.
static void take_later(Trials *trials, const Entry *entry)
{
    Trial *trial = last_of(trials);
    if (!trial || trials->check->formula || !trials_is_tight(entry))
        return;
    for (guint i = 0; i < trials->places; i++) {
        g_autofree const Entry **read = g_new0(const Entry *, trials->reads->len + 1);
        trials_put(trials, entry, read);
        if (trials_whole(trials, read, i) != entry)
            continue;
        add_value(trials, trial, entry, i, TRUE);
        trial_read_tight(trial);
    }
}

static void take_loose(Trials *trials, Trial *trial, const Entry *entry)
{
    trials_put(trials, entry, trial->loosely);
    for (guint i = 0; i < trials->places; i++) {
        if (trials_whole(trials, trial->loosely, i) != entry)
            continue;
        if (trial->loose)
            trial_pass(trial);
        number_free(trial->loose_value);
        trial->loose = entry;
        trial->loose_value = trials->check->formula ? NULL : entry_amount(entry, "value");
        trial->loose_place = i;
        add_value(trials, trial, entry, i, FALSE);
        return;
    }
}

static void take_reading(Trials *trials, const Entry *entry)
{
    Trial *trial = trial_in_hand(trials);
    g_ptr_array_add(trial->entries, (gpointer)entry);
    if (trials_is_tight(entry))
        take_tight(trials, trial, entry);
    else
        take_loose(trials, trial, entry);
}

static gboolean rests_on(const PlanCheck *check, const char *name)
{
    for (guint i = 0; name && i < check->rests_on->len; i++) {
        const PlanName *on = check->rests_on->pdata[i];
        const char *other = on->group ? on->group->name : on->part ? on->part->name : NULL;
        if (g_strcmp0(other, name) == 0)
            return TRUE;
    }
    return FALSE;
}

// Whether the setting, or what is read for it, rests on it.
static gboolean stands_on(const Trials *trials, const char *name)
{
    const GArray *inputs = trials->reads;
    gboolean found = rests_on(trials->check, name);
    for (guint i = 0; !found && i < inputs->len; i++)
        found = rests_on(g_array_index(inputs, PlanInput, i).check, name);
    return found;
}

// Whether the entry disturbs what was read of the setting.
static gboolean disturbs(const Trials *trials, const Entry *entry)
{
    static const struct {
        const char *kind, *field;
    } others[] = {{"slacken", "tightening"}, {"fit", "part"}, {"rework", "name"}};
    if (is_kind(entry, "move"))
        return is_of(trials, entry);
    for (gsize i = 0; i < G_N_ELEMENTS(others); i++)
        if (is_kind(entry, others[i].kind))
            return stands_on(trials, entry_text(entry, others[i].field)) &&
                   trials_is_near(trials, entry, entry_text(entry, others[i].field));
    return FALSE;
}

static void take_other(Trials *trials, const Entry *entry)
{
    Trial *last = last_of(trials);
    if (!last)
        return;
    gboolean later = is_later(trials, entry);
    if (!later && last->readings && !last->ended && disturbs(trials, entry))
        last->ended = entry->seq;
    if (!later && trials_is_tightening(trials, entry))
        memset(last->since, 0, trials->reads->len * sizeof *last->since);
    const char *about = is_kind(entry, "note") ? entry_text(entry, "about") : NULL;
    if (about && (strcmp(about, trials->check->name) == 0 || trials_reads(trials, about)))
        g_ptr_array_add(last->notes, (gpointer)entry_text(entry, "text"));
}

// The entries of a ledger in the order of judgement, which of them count, and until which rank
// readings belong to a struck move.
typedef struct {
    gboolean *live;
    gint64 *ranked;
    guint *rank;
    guint meant;
} Walk;

static void take_struck(Trials *trials, const Entry *entry, Walk *walk)
{
    gint64 strike = live_strike_of(trials->entries, trials->count, walk->live, entry->seq);
    if (!strike)
        return;
    TrialStruck struck = {entry, is_kind(entry, "read") ? (guint)trials_input(trials, entry) : 0,
                          entry_text(trials->entries[strike - 1], "cause")};
    trial_strike(trial_in_hand(trials), struck);
    if (is_kind(entry, "move"))
        walk->meant = walk->rank[strike - 1];
}

// What follows a struck move stands in the trial before it.
static void join(Trial *trial, const Entry *entry)
{
    trial->joined = trial->joined || trials_is_tight(entry);
    for (guint i = 0; i < trial->values->len; i++) {
        TrialValue *value = &g_array_index(trial->values, TrialValue, i);
        value->joined = value->joined || value->entry == entry;
    }
}

static void take_entry(Trials *trials, const Entry *entry, Walk *walk)
{
    gboolean mine = is_of(trials, entry), read = is_read(trials, entry);
    if (!walk->live[entry->seq - 1]) {
        if (mine || read)
            take_struck(trials, entry, walk);
        return;
    }
    take_other(trials, entry);
    if (read && !mine)
        take_later(trials, entry);
    if (!mine)
        return;
    if (is_kind(entry, "move")) {
        walk->meant = 0;
        take_move(trials, entry);
    } else {
        take_reading(trials, entry);
    }
    Trial *trial = last_of(trials);
    trial->above = trial->rows->len;
    trial->stood = trials_is_tight(entry) ? trial->stood : trial->rows->len;
    if (walk->rank[entry->seq - 1] < walk->meant)
        join(trial, entry);
}

static void gather(Trials *trials)
{
    Walk walk = {g_new(gboolean, trials->count + 1), g_new(gint64, trials->count + 1),
                 g_new(guint, trials->count + 1), 0};
    live_entries(trials->entries, trials->count, walk.live);
    rank_order(trials->entries, trials->count, walk.ranked);
    for (gsize i = 0; i < trials->count; i++)
        walk.rank[walk.ranked[i] - 1] = (guint)i + 1;
    for (gsize i = 0; i < trials->count; i++)
        take_entry(trials, trials->entries[walk.ranked[i] - 1], &walk);
    g_free(walk.live);
    g_free(walk.ranked);
    g_free(walk.rank);
}

// TIME ------------------------------------------------------------------------------------------

static gint64 last_seq(const Trials *trials)
{
    gint64 last = 0;
    for (guint i = 0; i < trials->all->len; i++) {
        const Trial *trial = trials->all->pdata[i];
        for (guint j = 0; j < trial->entries->len; j++)
            last = MAX(last, ((const Entry *)trial->entries->pdata[j])->seq);
    }
    return last;
}

// Whether work at the step stops with this entry: put down or signed, or its person takes up
// another.
static gboolean stops(const Trials *trials, const Entry *entry, const char *by)
{
    const char *step = kind_field(entry->kind, "step") ? entry_text(entry, "step") : NULL;
    gboolean here = g_strcmp0(step, trials->step->name) == 0;
    gboolean same = g_strcmp0(entry->by, by) == 0;
    return (is_kind(entry, "sign") && here) || (is_kind(entry, "put down") && same) ||
           (is_kind(entry, "pick up") && same && !here);
}

guint trials_minutes(const Trials *trials)
{
    gint64 end = last_seq(trials);
    Moment since = 0, worked = 0;
    const char *by = NULL;
    for (gint64 seq = 1; seq <= end; seq++) {
        const Entry *entry = trials->entries[seq - 1];
        const char *step = is_kind(entry, "pick up") ? entry_text(entry, "step") : NULL;
        gboolean goes = is_of(trials, entry) || g_strcmp0(step, trials->step->name) == 0;
        Moment now = entry_moment(entry);
        if (by)
            worked += MAX(now - since, 0);
        since = now;
        if (by && stops(trials, entry, by))
            by = NULL;
        else if (goes && (worked || is_of(trials, entry)))
            by = entry->by;
    }
    return (guint)(worked / 60);
}

// JUDGE -----------------------------------------------------------------------------------------

void trials_find_made(const Trials *trials, const Assessment *assessment, const Requirement **made)
{
    guint found = 0, end = trials->first + trials->places;
    for (guint i = 0; i < assessment->requirements->len && found < end; i++) {
        const Requirement *each = assessment->requirements->pdata[i];
        if (each->asked != ASKED_READ || each->check != trials->check || each->step != trials->step)
            continue;
        if (found >= trials->first)
            made[found - trials->first] = each;
        found++;
    }
}

static void doubt(Trial *trial, Reason reason)
{
    if (trial->verdict == VERDICT_IN_DOUBT)
        return;
    trial->verdict = VERDICT_IN_DOUBT;
    trial->reason = reason;
}

static void judge_place(Trial *trial, const Requirement *made)
{
    Verdict verdict = made->finding ? made->own_verdict : made->verdict;
    if (made->value_verdict == VERDICT_FAIL && !made->conceded && !trial->fails) {
        trial->fails = TRUE;
        trial->side = made->value_reason;
    }
    if (verdict == VERDICT_IN_DOUBT)
        doubt(trial, made->reason);
    else if (verdict == VERDICT_CONCEDED && trial->verdict == VERDICT_PASS)
        trial->verdict = VERDICT_CONCEDED;
    else if (verdict == VERDICT_NOTED && trial->verdict == VERDICT_PASS)
        trial->verdict = VERDICT_NOTED;
}

// `made`: the places as the trial left them.
static void judge_trial(const Trials *trials, Trial *trial, const Requirement *const *made)
{
    gboolean lacking = FALSE;
    trial->verdict = VERDICT_PASS;
    trial->reason = REASON_NONE;
    trial->fails = FALSE;
    for (guint i = 0; i < trials->places; i++) {
        lacking = lacking || (trials_needs(trials->made[i]) && !trial->places[i].entry);
        trial->places[i].made = trial->places[i].entry ? made[i] : NULL;
        if (trial->places[i].made)
            judge_place(trial, made[i]);
    }
    if (trial->joined)
        doubt(trial, REASON_BASIS);
    if (trial->verdict == VERDICT_IN_DOUBT)
        return;
    if (trial->fails || lacking) {
        trial->verdict = trial->fails ? VERDICT_FAIL : VERDICT_OPEN;
        trial->reason = trial->fails ? trial->side : REASON_NONE;
    }
}

// What its newest reading came to is known already: it was judged.
static Number *known_value(const Trial *trial, const TrialValue *value)
{
    const TrialPlace *place = &trial->places[value->place];
    gboolean newest = value->tight && place->entry == value->entry && place->made;
    return newest && place->made->value ? number_copy(place->made->value) : NULL;
}

static void judge_values(const Trials *trials, Trial *trial)
{
    for (guint i = 0; i < trial->values->len; i++) {
        TrialValue *value = &g_array_index(trial->values, TrialValue, i);
        if (!value->value)
            value->value = known_value(trial, value);
        if (!value->value)
            value->value = trials_value(trials, trial, value);
        if (value->entry == trial->loose && !trial->loose_value && value->value)
            trial->loose_value = number_copy(value->value);
    }
}

void trials_judge(Trials *trials)
{
    g_autofree const Requirement **made = g_new0(const Requirement *, trials->places);
    for (guint i = 0; i < trials->all->len; i++) {
        Trial *trial = trials->all->pdata[i];
        if (trial->ended && !trial->then) {
            trial->then = assess_before(trials->plan, trials->entries, trials->count, trial->ended);
            trials_find_made(trials, trial->then, made);
            judge_trial(trials, trial, made);
        }
        judge_values(trials, trial);
    }
}

Trials *trials_new(const Plan *plan, const PlanStep *step, const PlanCheck *check, guint place,
                   const Assessment *assessment, const Entry *const *entries, gsize count)
{
    gboolean each = check->setting->each;
    Trials *trials = g_new0(Trials, 1);
    *trials = (Trials){.check = check,
                       .step = step,
                       .assessment = assessment,
                       .plan = plan,
                       .entries = entries,
                       .count = count,
                       .first = each ? place : 0,
                       .places = each ? 1 : places_count(check->places),
                       .labels = each ? places_labels(check->places, place) : NULL,
                       .near = trials_near_new(),
                       .all = g_ptr_array_new_with_free_func(trial_free)};
    trials->made = g_new0(const Requirement *, trials->places);
    trials_find_made(trials, assessment, trials->made);
    trials_find_inputs(trials);
    gather(trials);
    for (guint i = 0; i < trials->all->len; i++) {
        Trial *trial = trials->all->pdata[i];
        if (trial->ended)
            trial->verdict = VERDICT_OPEN;
        else
            judge_trial(trials, trial, trials->made);
    }
    return trials;
}

// WORDS -----------------------------------------------------------------------------------------

char *trial_position_words(const PlanCheck *check, const Number *position)
{
    enum { USUAL = 2, MOST = 3 };
    if (!position)
        return g_strdup("");
    const Unit *unit = check->setting->unit;
    g_autoptr(Number) shown = unit ? unit_from_base(unit, position) : number_copy(position);
    g_autofree char *whole = number_text(shown);
    if (!unit && !strpbrk(whole, "./")) // what has a word of its own is counted
        return g_steal_pointer(&whole);
    g_autofree char *usual = number_decimal(shown, USUAL);
    g_autoptr(Number) back = number_from_text(usual, NULL);
    return back && number_equal(back, shown) ? g_steal_pointer(&usual)
                                             : number_decimal(shown, MOST);
}
