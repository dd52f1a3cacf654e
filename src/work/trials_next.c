// What is asked next of a setting.
#include "trials_inside.h"

#include <standbook/record/live.h>
#include <standbook/work/words.h>
#include <string.h>

static gboolean names_group(const GPtrArray *names, const PlanGroup *group)
{
    for (guint i = 0; i < names->len; i++)
        if (((const PlanName *)names->pdata[i])->group == group)
            return TRUE;
    return FALSE;
}

// Whether the setting, or what is read for it, rests on a group; `with`: or is read with it tight.
static gboolean is_held_by(const PlanCheck *check, const PlanGroup *group, gboolean with)
{
    const GArray *inputs = check->setting->inputs;
    gboolean found =
        names_group(check->rests_on, group) || (with && names_group(check->with, group));
    for (guint i = 0; !found && i < inputs->len; i++) {
        const PlanCheck *read = g_array_index(inputs, PlanInput, i).check;
        found = names_group(read->rests_on, group) || (with && names_group(read->with, group));
    }
    return found;
}

static gboolean is_turn_of(const Requirement *made, const PlanTightening *tightening)
{
    return requirement_is_bolted(made) && !made->withdrawn && made->step == tightening->step &&
           strcmp(made->name, tightening->group->name) == 0;
}

// Whether it holds what these trials set: the wait of a stage, or a bolt that is near it.
static gboolean holds_here(const Trials *trials, const Requirement *made, const PlanGroup *group)
{
    return made->asked == ASKED_WAIT ||
           trials_meet(trials, group->axes, (const char *const *)made->labels);
}

static gboolean is_done(const Requirement *made)
{
    return made->verdict != VERDICT_NOT_NEEDED && made->verdict != VERDICT_OPEN;
}

static gboolean is_open(const Requirement *made)
{
    return made->verdict == VERDICT_OPEN;
}

static gboolean has_failed(const Requirement *made)
{
    return made->verdict == VERDICT_FAIL;
}

// Whether it was tightened with a wrench that was found wrong: it is done again.
static gboolean is_misled(const Requirement *made)
{
    return made->verdict == VERDICT_IN_DOUBT && made->reason == REASON_TOOL &&
           made->tool.state == TOOL_WRONG;
}

// The first turn of the tightening that stands so; NULL if none does.
static const Requirement *turn_that(const Trials *trials, const PlanTightening *tightening,
                                    gboolean (*stands)(const Requirement *))
{
    for (guint i = 0; i < trials->assessment->requirements->len; i++) {
        const Requirement *made = trials->assessment->requirements->pdata[i];
        if (is_turn_of(made, tightening) && holds_here(trials, made, tightening->group) &&
            stands(made))
            return made;
    }
    return NULL;
}

gboolean trials_has_hold(const Trials *trials)
{
    for (guint i = 0; i < trials->step->tightenings->len; i++) {
        const PlanTightening *tightening = trials->step->tightenings->pdata[i];
        if (is_held_by(trials->check, tightening->group, TRUE))
            return TRUE;
    }
    return FALSE;
}

gboolean trials_has_tight(const Trials *trials)
{
    return trials->check->setting->loose || trials_has_hold(trials);
}

gboolean trials_is_put_in(const Trials *trials)
{
    return trials->check->setting->stock && !trials_has_tight(trials);
}

const char *trials_read_word(const Trials *trials, gboolean loose)
{
    return loose ? "loose" : trials_has_tight(trials) ? "tight" : "read";
}

gboolean trials_is_tightening(const Trials *trials, const Entry *entry)
{
    const char *name =
        strcmp(entry->kind->name, "tick") == 0 ? entry_text(entry, "tightening") : NULL;
    const PlanGroup *group = name ? plan_group(trials->plan, name) : NULL;
    return group && is_held_by(trials->check, group, TRUE) && trials_is_near(trials, entry, name);
}

const PlanTightening *trials_open_hold(const Trials *trials)
{
    for (guint i = 0; i < trials->step->tightenings->len; i++) {
        const PlanTightening *tightening = trials->step->tightenings->pdata[i];
        if (is_held_by(trials->check, tightening->group, TRUE) &&
            turn_that(trials, tightening, is_open))
            return tightening;
    }
    return NULL;
}

// The first turn of all that holds it that stands so; NULL if none does.
static const Requirement *hold_that(const Trials *trials, gboolean (*stands)(const Requirement *))
{
    const Requirement *found = NULL;
    for (guint i = 0; !found && i < trials->step->tightenings->len; i++) {
        const PlanTightening *tightening = trials->step->tightenings->pdata[i];
        if (is_held_by(trials->check, tightening->group, TRUE))
            found = turn_that(trials, tightening, stands);
    }
    return found;
}

const Requirement *trials_failed_hold(const Trials *trials)
{
    return hold_that(trials, has_failed);
}

GPtrArray *trials_to_slacken(const Trials *trials)
{
    GPtrArray *found = g_ptr_array_new();
    for (guint i = trials->step->tightenings->len; i-- > 0;) {
        const PlanTightening *tightening = trials->step->tightenings->pdata[i];
        if (is_held_by(trials->check, tightening->group, FALSE) &&
            turn_that(trials, tightening, is_done))
            g_ptr_array_add(found, (gpointer)tightening);
    }
    return found;
}

static gboolean is_lacking(const Trials *trials, const Trial *trial, guint place)
{
    const Requirement *made = trials->made[place];
    return trials_needs(made) && !trial->places[place].entry;
}

static guint first_lacking(const Trials *trials, const Trial *trial)
{
    guint place = 0;
    while (place < trials->places && !is_lacking(trials, trial, place))
        place++;
    return place;
}

static TrialNext to_read(const Trials *trials, TrialAsk ask, const Entry *const *read, guint place)
{
    gint input = trials_missing(trials, read, place);
    return (TrialNext){.ask = ask, .place = place, .input = (guint)MAX(input, 0)};
}

// The place to be read loose: one of which something was, else the first that is lacking.
static guint loose_place(const Trials *trials, const Trial *trial, guint lacking)
{
    const GArray *inputs = trials->reads;
    for (guint i = 0; i < inputs->len; i++) {
        guint of = g_array_index(inputs, PlanInput, i).of;
        if (trial->loosely[i] && trials_missing(trials, trial->loosely, of) >= 0)
            return of;
    }
    return lacking;
}

static TrialNext before_tightened(const Trials *trials, const Trial *trial)
{
    const PlanTightening *hold = trials_open_hold(trials);
    guint place = first_lacking(trials, trial);
    if (place == trials->places)
        return (TrialNext){.ask = TRIAL_DONE};
    if (!trial->move)
        return (TrialNext){.ask = TRIAL_MOVE};
    if (trials->check->setting->loose && !trial->loose)
        return to_read(trials, TRIAL_LOOSE, trial->loosely, loose_place(trials, trial, place));
    return hold ? (TrialNext){.ask = TRIAL_TIGHTEN, .tightening = hold}
                : to_read(trials, TRIAL_TIGHT, trial->tight, place);
}

// The first place that was read before its hold was tightened, and not since.
static guint first_early(const Trials *trials, const Trial *trial)
{
    guint place = 0;
    while (place < trials->places &&
           !(trial->places[place].entry && trials_missing(trials, trial->since, place) >= 0))
        place++;
    return place;
}

gboolean trials_is_early(const Trials *trials)
{
    const Trial *last = trials_last(trials);
    return last && last->readings && !last->ended && !last->joined &&
           last->verdict == VERDICT_IN_DOUBT && last->reason == REASON_BASIS &&
           !hold_that(trials, is_misled) &&
           (trials_open_hold(trials) || first_early(trials, last) < trials->places);
}

static TrialNext after_early(const Trials *trials, const Trial *trial)
{
    const PlanTightening *hold = trials_open_hold(trials);
    return hold ? (TrialNext){.ask = TRIAL_TIGHTEN, .tightening = hold}
                : to_read(trials, TRIAL_TIGHT, trial->since, first_early(trials, trial));
}

static gboolean is_needed(const Trials *trials)
{
    for (guint i = 0; i < trials->places; i++)
        if (trials_needs(trials->made[i]))
            return TRUE;
    return FALSE;
}

TrialNext trials_next(const Trials *trials, gboolean again)
{
    const Trial *trial = trials_last(trials);
    if (!trial)
        return (TrialNext){.ask = is_needed(trials) ? TRIAL_MOVE : TRIAL_DONE};
    if (trial->readings == 0)
        return before_tightened(trials, trial);
    if (trials_is_early(trials))
        return after_early(trials, trial);
    guint lacking = first_lacking(trials, trial);
    gboolean over = trial->ended || trial->joined || (trial->fails && trial->read == 1);
    if (over)
        return (TrialNext){.ask = TRIAL_MOVE};
    if (lacking < trials->places)
        return to_read(trials, TRIAL_TIGHT, trial->tight, lacking);
    if (trial->fails || (again && trial->verdict == VERDICT_IN_DOUBT))
        return (TrialNext){.ask = TRIAL_MOVE};
    return (TrialNext){.ask = TRIAL_DONE};
}

static guint first_missing(const Trials *trials, const Entry *const *read)
{
    guint place = 0;
    while (place < trials->places && trials_missing(trials, read, place) < 0)
        place++;
    return place;
}

TrialNext trials_next_again(const Trials *trials)
{
    const Trial *trial = trials_last(trials);
    gsize count = trials->reads->len + 1;
    g_autofree const Entry **read = g_new0(const Entry *, count);
    for (guint i = 0; trial && i < trial->entries->len; i++) {
        const Entry *entry = trial->entries->pdata[i];
        if (trials_is_tight(entry))
            trials_put(trials, entry, read);
        if (first_missing(trials, read) == trials->places)
            memset(read, 0, count * sizeof *read);
    }
    return to_read(trials, TRIAL_TIGHT, read, first_missing(trials, read));
}

gint64 trials_mistyped(const Trials *trials)
{
    const Trial *trial = trials_last(trials);
    if (!trial || !trial->joined)
        return 0;
    for (guint i = trial->rows->len; i-- > 0;) {
        const TrialRow *row = &g_array_index(trial->rows, TrialRow, i);
        const TrialStruck *struck = &row->struck;
        if (row->kind == TRIAL_STRUCK && strcmp(struck->entry->kind->name, "move") == 0)
            return strcmp(struck->cause, "typo") == 0 || strcmp(struck->cause, "misread") == 0
                       ? struck->entry->seq
                       : 0;
    }
    return 0;
}

// Whether a check is the setting or read for it.
static gboolean is_part_of(const PlanCheck *setting, const PlanCheck *check)
{
    return check == setting || g_ptr_array_find(check->moved_by, setting, NULL);
}

// The axes of a place that the step comes to; NULL where it has none that are known.
static const GPtrArray *axes_at(const Plan *plan, const Requirement *made)
{
    const PlanGroup *group = made->check ? NULL : plan_group(plan, made->name);
    return made->check ? made->check->places : group ? group->axes : NULL;
}

static gboolean leads_to(const PlanCheck *check, const PlanStep *step, const Requirement *made)
{
    if (!made || made->asked == ASKED_SIGN)
        return TRUE;
    if (made->check)
        return is_part_of(check, made->check);
    for (guint i = 0; i < step->tightenings->len; i++) {
        const PlanTightening *tightening = step->tightenings->pdata[i];
        if (is_turn_of(made, tightening))
            return is_held_by(check, tightening->group, TRUE);
    }
    return FALSE;
}

// Whether the step comes to that place of the check, where each is set by itself, and not to
// another.
static gboolean leads_to_place(const Plan *plan, const PlanCheck *check, guint place,
                               const Requirement *made)
{
    const GPtrArray *axes = made ? axes_at(plan, made) : NULL;
    if (!axes || made->asked == ASKED_WAIT || !check->setting->each)
        return TRUE;
    g_auto(GStrv) labels = places_labels(check->places, place);
    return places_meet(check->places, (const char *const *)labels, axes,
                       (const char *const *)made->labels);
}

static gboolean is_due(const Trials *trials, const Requirement *made, gboolean *again)
{
    *again = made && made->check && is_part_of(trials->check, made->check) &&
             (made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT);
    return trials_next(trials, *again).ask != TRIAL_DONE;
}

SettingDue trials_setting(const Plan *plan, const PlanStep *step, const Requirement *made,
                          const Assessment *assessment, const Entry *const *entries, gsize count)
{
    for (guint i = 0; i < step->checks->len; i++) {
        SettingDue due = {.check = step->checks->pdata[i]};
        guint settings = setting_count(due.check);
        for (; due.place < settings && leads_to(due.check, step, made); due.place++) {
            if (!leads_to_place(plan, due.check, due.place, made))
                continue;
            g_autoptr(Trials) trials =
                trials_new(plan, step, due.check, due.place, assessment, entries, count);
            if (is_due(trials, made, &due.again))
                return due;
        }
    }
    return (SettingDue){.check = NULL};
}

const Requirement *trials_behind_bolt(const Plan *plan, const PlanStep *step,
                                      const Requirement *bolt, const Assessment *assessment,
                                      const Entry *const *entries, gsize count)
{
    SettingDue due = {.check = NULL};
    if (bolt->asked == ASKED_BOLT || bolt->asked == ASKED_WAIT)
        due = trials_setting(plan, step, bolt, assessment, entries, count);
    g_autoptr(Trials) trials =
        due.check ? trials_new(plan, step, due.check, due.place, assessment, entries, count) : NULL;
    return trials ? trials->inputs[0] : NULL;
}

static gboolean is_at(const Entry *entry, const GPtrArray *axes, guint place)
{
    g_auto(GStrv) labels = places_labels(axes, place);
    return entry_reaches(entry, (const char *const *)labels);
}

// Which place of a setting an entry moved, or was read for; -1 for none.
static gint place_worked_at(const PlanCheck *check, const Entry *entry)
{
    gboolean moves = strcmp(entry->kind->name, "move") == 0;
    const char *name =
        moves || strcmp(entry->kind->name, "read") == 0 ? entry_text(entry, "check") : NULL;
    const GArray *inputs = check->setting->inputs;
    for (guint i = 0; name && !moves && i < inputs->len; i++) {
        const PlanInput *input = &g_array_index(inputs, PlanInput, i);
        if (strcmp(input->check->name, name) == 0 && is_at(entry, input->check->axes, input->place))
            return (gint)input->of;
    }
    gboolean moved = moves && g_strcmp0(check->name, name) == 0;
    for (guint i = 0; moved && i < setting_count(check); i++)
        if (is_at(entry, check->places, i))
            return (gint)i;
    return -1;
}

// The setting that a live entry worked at, of those of a step whose places are set each by itself.
static SettingDue worked_at(const PlanStep *step, const Entry *entry)
{
    for (guint i = 0; i < step->checks->len; i++) {
        const PlanCheck *check = step->checks->pdata[i];
        gint place = check->setting && check->setting->each ? place_worked_at(check, entry) : -1;
        if (place >= 0)
            return (SettingDue){.check = check, .place = (guint)place};
    }
    return (SettingDue){.check = NULL};
}

const Requirement *trials_left_off(const Plan *plan, const PlanStep *step,
                                   const Assessment *assessment, const Entry *const *entries,
                                   gsize count)
{
    g_autofree gboolean *live = g_new(gboolean, count + 1);
    live_entries(entries, count, live);
    SettingDue last = {.check = NULL};
    for (gsize i = count; i-- > 0 && !last.check;)
        if (live[i])
            last = worked_at(step, entries[i]);
    if (!last.check)
        return NULL;
    g_autoptr(Trials) trials =
        trials_new(plan, step, last.check, last.place, assessment, entries, count);
    return trials_next(trials, FALSE).ask == TRIAL_DONE ? NULL : trials->inputs[0];
}
