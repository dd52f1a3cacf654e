#include <standbook/work/summary.h>

#include <standbook/record/live.h>
#include <standbook/work/ago.h>
#include <standbook/work/trials.h>
#include <string.h>

static guint count_of(const Agenda *agenda)
{
    return agenda->assessment->requirements->len;
}

// SUMS ------------------------------------------------------------------------------------------

// How heavy a verdict is; what may be left open without a reason weighs nothing.
static guint weight_of(const Requirement *made)
{
    static const guint weights[VERDICTS] = {
        [VERDICT_NOT_NEEDED] = 0, [VERDICT_NOTED] = 1, [VERDICT_PASS] = 2,
        [VERDICT_CONCEDED] = 3,   [VERDICT_OPEN] = 4,  [VERDICT_IN_DOUBT] = 5,
        [VERDICT_FAIL] = 6,
    };
    return made->verdict == VERDICT_OPEN && made->optional ? 0 : weights[made->verdict];
}

static void add_signature(const Agenda *agenda, Summary *summary, const Requirement *made)
{
    if (made->asked != ASKED_SIGN || made->verdict == VERDICT_NOT_NEEDED)
        return;
    summary->signatures++;
    if (made->verdict == VERDICT_OPEN || !made->entry)
        return;
    if (summary->given < SIGNERS_MOST)
        summary->signing[summary->given] = agenda->entries[made->entry - 1];
    summary->given++;
}

static void add_requirement(const Agenda *agenda, Summary *summary, guint index)
{
    const Requirement *made = agenda_made(agenda, index);
    if (made->withdrawn)
        return;
    summary->all++;
    summary->left += requirement_is_left(made) ? 1 : 0;
    summary->counts[made->verdict]++;
    gboolean heavier = summary->first == AGENDA_NOWHERE ||
                       weight_of(made) > weight_of(agenda_made(agenda, summary->first));
    if (heavier) {
        summary->first = index;
        summary->verdict = weight_of(made) ? made->verdict : VERDICT_NOT_NEEDED;
    }
    add_signature(agenda, summary, made);
}

static void add_step(const Agenda *agenda, Summary *summary, const PlanStep *step)
{
    summary->steps++;
    summary->done += agenda_is_done(agenda, step) ? 1 : 0;
    for (guint i = 0; i < count_of(agenda); i++)
        if (agenda_made(agenda, i)->step == step)
            add_requirement(agenda, summary, i);
}

static Summary summary_of(const char *name)
{
    return (Summary){.name = name, .first = AGENDA_NOWHERE, .verdict = VERDICT_NOT_NEEDED};
}

Summary summary_step(const Agenda *agenda, const PlanStep *step)
{
    Summary summary = summary_of(step->name);
    summary.step = step;
    add_step(agenda, &summary, step);
    if (!summary.done)
        summary.held = agenda_held_by(agenda, step);
    return summary;
}

Summary summary_phase(const Agenda *agenda, const char *phase)
{
    Summary summary = summary_of(phase);
    for (guint i = 0; i < agenda->plan->steps->len; i++) {
        const PlanStep *step = agenda->plan->steps->pdata[i];
        if (g_strcmp0(step->phase, phase) == 0)
            add_step(agenda, &summary, step);
    }
    return summary;
}

Summary summary_build(const Agenda *agenda)
{
    Summary summary = summary_of(agenda->plan->name);
    for (guint i = 0; i < agenda->plan->steps->len; i++)
        add_step(agenda, &summary, agenda->plan->steps->pdata[i]);
    return summary;
}

GPtrArray *summary_phases(const Plan *plan)
{
    GPtrArray *phases = g_ptr_array_new();
    for (guint i = 0; i < plan->steps->len; i++) {
        const char *phase = ((const PlanStep *)plan->steps->pdata[i])->phase;
        if (phase && !g_ptr_array_find_with_equal_func(phases, phase, g_str_equal, NULL))
            g_ptr_array_add(phases, (gpointer)phase);
    }
    return phases;
}

// WORDS -----------------------------------------------------------------------------------------

char *summary_count(const Summary *summary)
{
    guint count = summary->counts[summary->verdict];
    switch (summary->verdict) {
    case VERDICT_OPEN:
    case VERDICT_FAIL:
    case VERDICT_IN_DOUBT:
    case VERDICT_CONCEDED:
        return g_strdup_printf("%u of %u", count, summary->all);
    default:
        return g_strdup("");
    }
}

char *summary_signed(const Summary *summary, const Taken *taken, Moment now)
{
    const Entry *last = NULL;
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < MIN(summary->given, SIGNERS_MOST); i++) {
        const Entry *each = summary->signing[i];
        g_string_append_printf(words, "%s ", taken_initials(taken, each->by));
        last = last && last->seq > each->seq ? last : each;
    }
    g_autofree char *day = last ? ago_day(entry_moment(last), now) : NULL;
    return g_strconcat(words->str, day, NULL);
}

// Where the step in front fails or is in doubt somebody must see to it; else its turn is only to
// come.
static const char *held_word(const Agenda *agenda, const PlanStep *held)
{
    Verdict verdict = summary_step(agenda, held).verdict;
    return verdict == VERDICT_FAIL || verdict == VERDICT_IN_DOUBT ? "HELD:" : "after";
}

char *summary_why(const Agenda *agenda, const Summary *summary)
{
    gboolean faulty = summary->verdict == VERDICT_FAIL || summary->verdict == VERDICT_IN_DOUBT;
    if (!faulty && summary->held)
        return g_strdup_printf("%s S%02u", held_word(agenda, summary->held),
                               summary->held->index + 1);
    if (!faulty && summary->verdict != VERDICT_CONCEDED)
        return g_strdup("");
    const Requirement *made = agenda_made(agenda, summary->first);
    return g_strdup_printf("%s: %s%s%s",
                           faulty ? reason_said(made->reason) : verdict_words(made->verdict),
                           made->name, *made->place ? " " : "", made->place);
}

char *summary_held(const Agenda *agenda, const PlanStep *step)
{
    const PlanStep *held = agenda_is_done(agenda, step) ? NULL : agenda_held_by(agenda, step);
    return held ? g_strdup_printf("S%02u comes after S%02u, which is not signed. Work can go on; "
                                  "the record shows the order.",
                                  step->index + 1, held->index + 1)
                : NULL;
}

// PROGRESS --------------------------------------------------------------------------------------

static gboolean belong_together(const Requirement *one, const Requirement *other)
{
    gboolean bolted = requirement_is_bolted(one);
    return one->asked == other->asked && one->step == other->step &&
           strcmp(one->name, other->name) == 0 && (!bolted || one->stage == other->stage);
}

// Whether it was done, whatever is thought of it: a finding that waits for its answer was read.
static gboolean was_done(const Requirement *made)
{
    return made->verdict != VERDICT_OPEN || (made->finding && made->own_verdict != VERDICT_OPEN);
}

const char *summary_did(Asked asked)
{
    static const char *const words[] = {
        [ASKED_READ] = "read",   [ASKED_LOOK] = "answered", [ASKED_BOLT] = "ticked",
        [ASKED_WAIT] = "waited", [ASKED_FIT] = "fitted",    [ASKED_SIGN] = "signed"};
    return words[asked];
}

char *summary_faults(const guint counts[VERDICTS])
{
    g_autofree char *fail = g_strdup_printf("%u FAIL", counts[VERDICT_FAIL]);
    g_autofree char *doubt = g_strdup_printf("%u DOUBT", counts[VERDICT_IN_DOUBT]);
    gboolean some = counts[VERDICT_FAIL] > 0, more = counts[VERDICT_IN_DOUBT] > 0;
    return g_strconcat(some ? fail : "", some && more ? ", " : "", more ? doubt : "", NULL);
}

char *summary_left(const char *some, const guint counts[VERDICTS], guint all)
{
    g_autofree char *faults = summary_faults(counts);
    guint open = counts[VERDICT_OPEN];
    if (!open && *faults)
        return g_strdup_printf("%s of %u", faults, all);
    g_autofree char *left = g_strdup_printf(some, open, all);
    return g_strconcat(left, *faults ? ", " : "", faults, NULL);
}

char *summary_come(Asked asked, guint done, guint all, const guint counts[VERDICTS])
{
    g_autofree char *faults = summary_faults(counts);
    if (*faults && done == all)
        return g_strdup_printf("%s of %u", faults, all);
    return g_strdup_printf("%s%s%u of %u %s", faults, *faults ? ", " : "", done, all,
                           summary_did(asked));
}

char *summary_progress(const Agenda *agenda, guint index)
{
    const Requirement *here = agenda_made(agenda, index);
    guint all = 0, done = 0, counts[VERDICTS] = {0};
    for (guint i = 0; i < count_of(agenda); i++) {
        const Requirement *made = agenda_made(agenda, i);
        if (!belong_together(made, here) || made->withdrawn || made->verdict == VERDICT_NOT_NEEDED)
            continue;
        all++;
        done += was_done(made) ? 1 : 0;
        counts[made->verdict]++;
    }
    if (here->asked == ASKED_SIGN)
        return g_strdup_printf("signed %u of %u", done, all);
    g_autofree char *come = summary_come(here->asked, done, all, counts);
    g_autofree char *stage = here->stage ? g_strdup_printf(", stage %u", here->stage) : NULL;
    return g_strdup_printf("%s%s: %s", here->name, stage ? stage : "", come);
}

// STANDPOINT ------------------------------------------------------------------------------------

// The place in the step at which the newest entry was made.
static guint newest_place(const Agenda *agenda, const PlanStep *step)
{
    guint newest = AGENDA_NOWHERE;
    gint64 seq = 0;
    for (guint i = 0; i < count_of(agenda); i++)
        if (agenda_asks(agenda, step, i) && agenda_made(agenda, i)->entry > seq) {
            newest = i;
            seq = agenda_made(agenda, i)->entry;
        }
    return newest;
}

// Where a requirement (NULL: none) stands in the assessment.
static guint place_of(const Agenda *agenda, const Requirement *made)
{
    guint index = AGENDA_NOWHERE;
    gboolean found = made && g_ptr_array_find(agenda->assessment->requirements, made, &index);
    return found ? index : AGENDA_NOWHERE;
}

guint summary_left_off(const Agenda *agenda, const PlanStep *step)
{
    return place_of(agenda, trials_left_off(agenda->plan, step, agenda->assessment, agenda->entries,
                                            agenda->count));
}

guint summary_place(const Agenda *agenda, const PlanStep *step)
{
    guint left_off = summary_left_off(agenda, step);
    if (left_off != AGENDA_NOWHERE)
        return left_off;
    guint next = agenda_next(agenda, step, newest_place(agenda, step));
    guint set =
        next == AGENDA_NOWHERE
            ? AGENDA_NOWHERE
            : place_of(agenda,
                       trials_behind_bolt(agenda->plan, step, agenda_made(agenda, next),
                                          agenda->assessment, agenda->entries, agenda->count));
    return set == AGENDA_NOWHERE ? next : set;
}

// The newest entry of these kinds that counts.
static const Entry *newest_entry(const Agenda *agenda, const char *const *kinds)
{
    g_autofree gboolean *live = g_new0(gboolean, agenda->count + 1);
    live_entries(agenda->entries, agenda->count, live);
    for (gsize i = agenda->count; i-- > 0;)
        if (live[i] && g_strv_contains(kinds, agenda->entries[i]->kind->name))
            return agenda->entries[i];
    return NULL;
}

// The step put down last, if that is the last that was said of any, and it is not done.
static const PlanStep *put_down(const Agenda *agenda, const Entry **since)
{
    static const char *const kinds[] = {"pick up", "put down", "sign", NULL};
    const Entry *entry = newest_entry(agenda, kinds);
    const char *name = entry ? entry_text(entry, "step") : NULL;
    const PlanStep *step =
        name && strcmp(entry->kind->name, "put down") == 0 ? plan_step(agenda->plan, name) : NULL;
    if (!step || agenda_is_done(agenda, step))
        return NULL;
    *since = entry;
    return step;
}

Standpoint summary_standpoint(const Agenda *agenda)
{
    AgendaHand hand = agenda_hand(agenda);
    Standpoint stands = {.step = hand.step,
                         .place = AGENDA_NOWHERE,
                         .in_hand = hand.step != NULL,
                         .since = hand.since,
                         .last = agenda->count ? agenda->entries[agenda->count - 1] : NULL};
    if (!stands.step)
        stands.step = put_down(agenda, &stands.since);
    if (!stands.step)
        stands.step = agenda_step(agenda);
    if (stands.step)
        stands.place = summary_place(agenda, stands.step);
    return stands;
}
