#include "tightening.h"

#include <standbook/work/words.h>
#include <string.h>

const Stage *tightening_stage(const Tightening *tightening, guint stage)
{
    return tightening->plan->stages->pdata[stage - 1];
}

const Turn *tightening_turn(const Tightening *tightening, guint index)
{
    return index < tightening->turns->len ? &g_array_index(tightening->turns, Turn, index) : NULL;
}

// The position of a bolt in the order of the set's axes: requirements stand in the order asked.
static guint position_of(const Tightening *tightening, const Requirement *made)
{
    for (guint i = 0; i < tightening->bolts; i++) {
        g_autofree char *label = places_label(tightening->plan->group->axes, i);
        if (strcmp(label, made->place) == 0)
            return i;
    }
    return tightening->bolts;
}

// The requirements of the tightening by [(stage - 1) * bolts + position]; a wait stands at 0.
static const Requirement **find_all(const Tightening *tightening, const Assessment *assessment)
{
    guint bolts = tightening->bolts;
    const Requirement **found = g_new0(const Requirement *, tightening->stages *bolts);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        gboolean bolted = requirement_is_bolted(made);
        if (!bolted || made->step != tightening->plan->step || made->stage > tightening->stages ||
            strcmp(made->name, tightening->plan->group->name) != 0)
            continue;
        guint position = made->asked == ASKED_WAIT ? 0 : position_of(tightening, made);
        if (position < bolts)
            found[(made->stage - 1) * bolts + position] = made;
    }
    return found;
}

static void add_turn(Tightening *tightening, const Requirement *made, guint stage, guint position,
                     guint turn)
{
    if (made && made->verdict != VERDICT_NOT_NEEDED && !made->withdrawn)
        g_array_append_val(tightening->turns, ((Turn){made, stage, position, turn, NULL}));
}

// The bolts of one run through one stage, in the order asked.
static void add_run(Tightening *tightening, const Requirement *const *found, guint stage, guint run)
{
    const PlanTightening *plan = tightening->plan;
    const Requirement *const *row = &found[(gsize)(stage - 1) * tightening->bolts];
    if (tightening_stage(tightening, stage)->kind == STAGE_WAIT) {
        add_turn(tightening, row[0], stage, 0, 1);
        return;
    }
    for (guint i = 0; i < tightening->bolts; i++) {
        guint position = plan->order[i];
        if (!plan->each || plan->each[position] == run)
            add_turn(tightening, row[position], stage, position, i + 1);
    }
}

static guint runs_of(const PlanTightening *plan, guint bolts)
{
    guint most = 0;
    for (guint i = 0; plan->each && i < bolts; i++)
        most = MAX(most, plan->each[i]);
    return most + 1;
}

Tightening *tightening_new(const Plan *plan, const Assessment *assessment, const PlanStep *step,
                           const char *set)
{
    const PlanTightening *planned = plan_tightening(step, set);
    if (!planned)
        return NULL;
    g_autoptr(Unit) torque = plan_torque_unit(plan);
    Tightening *tightening = g_new0(Tightening, 1);
    *tightening = (Tightening){.plan = planned,
                               .torque = g_strdup(unit_text(torque)),
                               .bolts = places_count(planned->group->axes),
                               .stages = planned->stages->len,
                               .turns = g_array_new(FALSE, FALSE, sizeof(Turn))};
    g_autofree const Requirement **found = find_all(tightening, assessment);
    for (guint run = 0; run < runs_of(planned, tightening->bolts); run++)
        for (guint stage = 1; stage <= tightening->stages; stage++)
            add_run(tightening, found, stage, run);
    return tightening;
}

void tightening_keep_at(Tightening *tightening, const PlanCheck *check, guint place)
{
    const GPtrArray *axes = tightening->plan->group->axes;
    g_auto(GStrv) labels = places_labels(check->places, place);
    guint all = tightening->turns->len;
    for (guint i = tightening->turns->len; i-- > 0;) {
        const Requirement *made = tightening_turn(tightening, i)->made;
        if (made->asked == ASKED_BOLT && !places_meet(check->places, (const char *const *)labels,
                                                      axes, (const char *const *)made->labels))
            g_array_remove_index(tightening->turns, i);
    }
    if (tightening->turns->len < all)
        tightening->at = g_strjoinv(", ", labels);
}

void tightening_free(Tightening *tightening)
{
    if (!tightening)
        return;
    g_array_unref(tightening->turns);
    g_free(tightening->torque);
    g_free(tightening->at);
    g_free(tightening);
}

guint tightening_next(const Tightening *tightening, guint from)
{
    guint i = from;
    while (i < tightening->turns->len &&
           tightening_turn(tightening, i)->made->verdict != VERDICT_OPEN)
        i++;
    return i;
}

gboolean tightening_to_mend(const Tightening *tightening, const Turn *turn)
{
    const Requirement *made = turn->made;
    return made->asked == ASKED_BOLT && made->verdict == VERDICT_IN_DOUBT &&
           made->reason == tightening->reason && made->entry <= tightening->mends;
}

guint tightening_in_hand(const Tightening *tightening)
{
    guint open = tightening_next(tightening, 0), i = 0;
    if (tightening_turn(tightening, open))
        return open;
    while (i < tightening->turns->len &&
           !tightening_to_mend(tightening, tightening_turn(tightening, i)))
        i++;
    return i;
}

gboolean tightening_has_doubt(const Tightening *tightening, guint here, guint count)
{
    for (guint i = 0; i < tightening->turns->len; i++)
        if ((i < here || i >= here + count) &&
            tightening_turn(tightening, i)->made->verdict == VERDICT_IN_DOUBT)
            return TRUE;
    return FALSE;
}

const Turn *tightening_before(const Tightening *tightening, guint here)
{
    const Turn *turn = tightening_turn(tightening, here);
    const Turn *before = here ? tightening_turn(tightening, here - 1) : NULL;
    gboolean done = before && before->stage == turn->stage && before->made->verdict != VERDICT_OPEN;
    return done ? before : NULL;
}

static guint turn_after(const Tightening *tightening, guint stage)
{
    guint i = 0;
    while (i < tightening->turns->len && tightening_turn(tightening, i)->stage <= stage)
        i++;
    return i;
}

const Turn *tightening_again(const Tightening *tightening, guint here)
{
    const Turn *turn = tightening_turn(tightening, here);
    StageKind kind = tightening_stage(tightening, turn->stage)->kind;
    guint first = tightening_older(tightening, turn->stage, G_MAXINT64);
    const Turn *begin = tightening_turn(tightening, first);
    const Turn *next = tightening_turn(tightening, turn_after(tightening, turn->stage));
    gboolean harmless = (stage_is_torque(kind) || kind == STAGE_SNUG) &&
                        runs_of(tightening->plan, tightening->bolts) == 1;
    gboolean begun = next && next->made->verdict != VERDICT_OPEN;
    return harmless && !begun && begin->made->verdict != VERDICT_OPEN ? begin : NULL;
}

guint tightening_older(const Tightening *tightening, guint stage, gint64 seq)
{
    guint i = 0;
    while (i < tightening->turns->len && (tightening_turn(tightening, i)->stage != stage ||
                                          tightening_turn(tightening, i)->made->entry > seq))
        i++;
    return i;
}

// How the turns of a stage stand.
typedef struct {
    guint asked, done, doubtful;
    const Requirement *fails; // the first of them, NULL if none does
} StageCount;

static StageCount count_stage(const Tightening *tightening, guint stage)
{
    StageCount count = {0};
    for (guint i = 0; i < tightening->turns->len; i++) {
        const Turn *turn = tightening_turn(tightening, i);
        if (turn->stage != stage)
            continue;
        count.asked++;
        count.done += turn->made->verdict != VERDICT_OPEN ? 1 : 0;
        count.doubtful += turn->made->verdict == VERDICT_IN_DOUBT ? 1 : 0;
        if (!count.fails && turn->made->verdict == VERDICT_FAIL)
            count.fails = turn->made;
    }
    return count;
}

guint tightening_done(const Tightening *tightening, guint stage)
{
    return count_stage(tightening, stage).done;
}

guint tightening_asked(const Tightening *tightening, guint stage)
{
    return count_stage(tightening, stage).asked;
}

const char *tightening_mark(const Tightening *tightening, guint stage)
{
    const StageCount count = count_stage(tightening, stage);
    if (count.fails)
        return count.fails->reason == REASON_HIGH ? "▲" : "▼";
    return count.doubtful ? "?" : count.done == count.asked ? "√" : "";
}

const Turn *tightening_failed(const Tightening *tightening, guint from)
{
    for (guint i = from; i < tightening->turns->len; i++)
        if (tightening_turn(tightening, i)->made->verdict == VERDICT_FAIL)
            return tightening_turn(tightening, i);
    return NULL;
}

gboolean tightening_may_pull_again(const Tightening *tightening, const Turn *turn)
{
    StageKind kind = tightening_stage(tightening, turn->stage)->kind;
    for (guint i = 0; i < tightening->turns->len; i++) {
        const Turn *other = tightening_turn(tightening, i);
        if (other->position == turn->position && other->stage > turn->stage &&
            other->made->asked == ASKED_BOLT && other->made->verdict != VERDICT_OPEN)
            return FALSE;
    }
    return (stage_is_torque(kind) || kind == STAGE_SNUG) && turn->made->reason != REASON_HIGH;
}

// Whether a bolt that was left by one stage stands tighter than another asks.
static gboolean is_tighter(const Stage *left, const Stage *asked)
{
    g_autoptr(Number) stands = left->formula ? formula_constant(left->formula) : NULL;
    g_autoptr(Number) wanted = asked->formula ? formula_constant(asked->formula) : NULL;
    gboolean both = stage_is_torque(left->kind) && stands && wanted;
    return left->kind != STAGE_SLACKEN && (!both || number_compare(stands, wanted) > 0);
}

const Turn *tightening_above(const Tightening *tightening, const Turn *turn)
{
    const Stage *asked = tightening_stage(tightening, turn->stage);
    gboolean again = turn->made->verdict != VERDICT_OPEN;
    const Turn *last = NULL;
    for (guint i = 0; again && i < tightening->turns->len; i++) {
        const Turn *other = tightening_turn(tightening, i);
        if (other->position == turn->position && other->stage > turn->stage &&
            other->made->asked == ASKED_BOLT && other->made->verdict != VERDICT_OPEN &&
            tightening_stage(tightening, other->stage)->kind != STAGE_CHECK &&
            (!last || other->stage > last->stage))
            last = other;
    }
    gboolean pulled = asked->kind == STAGE_TORQUE || asked->kind == STAGE_SNUG;
    return pulled && last && is_tighter(tightening_stage(tightening, last->stage), asked) ? last
                                                                                          : NULL;
}

// `75`: a bare torque without its unit.
static void add_stages(const PlanTightening *later, GString *words)
{
    for (guint i = 0; i < later->stages->len; i++)
        g_string_append_printf(words, "%s%s", i ? " > " : "",
                               ((const Stage *)later->stages->pdata[i])->text);
    g_string_append_printf(words, " (S%02u)", later->step->index + 1);
}

char *tightening_later(const Tightening *tightening, const Plan *plan)
{
    GString *words = g_string_new(NULL);
    for (guint i = tightening->plan->step->index + 1; i < plan->steps->len; i++) {
        const PlanTightening *later =
            plan_tightening(plan->steps->pdata[i], tightening->plan->group->name);
        if (!later)
            continue;
        g_string_append(words, words->len ? ", " : "");
        add_stages(later, words);
    }
    return g_string_free(words, FALSE);
}

char *tightening_unit(const Tightening *tightening, guint stage)
{
    const Stage *made = tightening_stage(tightening, stage);
    const Unit *unit = made->formula ? formula_first_unit(made->formula) : NULL;
    gboolean torque = stage_is_torque(made->kind) && unit;
    return g_strdup(torque ? unit_text(unit) : tightening->torque);
}

char *tightening_words(const Tightening *tightening, guint stage)
{
    const Stage *made = tightening_stage(tightening, stage);
    gboolean bare =
        stage_is_torque(made->kind) && g_ascii_isdigit(made->text[strlen(made->text) - 1]);
    return g_strconcat(made->text, bare ? " " : "", bare ? tightening->torque : "", NULL);
}
