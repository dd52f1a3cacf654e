// tighten, slacken, waited: bolts.
#include "bolts_done.h"
#include "take.h"

#include <string.h>

// The first tightening of a group, which has its order too.
static const PlanTightening *any_tightening(const Take *take, const PlanGroup *group)
{
    const GPtrArray *steps = take->taker->plan->steps;
    for (guint i = 0; i < steps->len; i++) {
        const PlanTightening *tightening = plan_tightening(steps->pdata[i], group->name);
        if (tightening)
            return tightening;
    }
    return NULL;
}

static gboolean contains(const GArray *places, guint place)
{
    for (guint i = 0; i < places->len; i++)
        if (g_array_index(places, guint, i) == place)
            return TRUE;
    return FALSE;
}

// The places of the target in the order asked.
static GArray *in_order(const Target *target, const PlanTightening *tightening)
{
    GArray *ordered = g_array_new(FALSE, FALSE, sizeof(guint));
    for (guint i = 0; i < places_count(target->axes); i++)
        if (contains(target->places, tightening->order[i]))
            g_array_append_val(ordered, tightening->order[i]);
    return ordered;
}

// One bolt: `3`, `L4`, or `[2, a]`.
static gboolean read_bolt(Take *take, const Target *target, guint *bolt, GError **error)
{
    const char *at = take->words.at;
    g_autofree gssize *picked = g_new0(gssize, target->axes->len + 1);
    if (*at != '[') {
        g_autofree char *label = words_word(&take->words, "a bolt", error);
        if (!label)
            return FALSE;
        g_autofree char *bracketed = g_strconcat("[", label, "]", NULL);
        Words inner = {bracketed, bracketed};
        g_autoptr(GError) why = NULL;
        if (!words_place(&inner, target->axes, target->name, picked, &why)) {
            const char *sentence = strchr(why->message, ':');
            return words_refuse(&take->words, at, error, "%s", sentence + 2);
        }
    } else if (!words_place(&take->words, target->axes, target->name, picked, error)) {
        return FALSE;
    }
    g_autoptr(GArray) places = places_picked(target->axes, picked);
    if (places->len != 1)
        return words_refuse(&take->words, at, error, "this names %u bolts; name one", places->len);
    *bolt = g_array_index(places, guint, 0);
    return TRUE;
}

static char *order_in_words(const Target *target, const PlanTightening *tightening)
{
    GString *text = g_string_new(NULL);
    for (guint i = 0; i < places_count(target->axes); i++) {
        g_autofree char *label = places_label(target->axes, tightening->order[i]);
        g_string_append_printf(text, "%s%s", i ? "-" : "", label);
    }
    return g_string_free(text, FALSE);
}

static gssize turn_of(const GArray *ordered, guint bolt)
{
    for (guint i = 0; i < ordered->len; i++)
        if (g_array_index(ordered, guint, i) == bolt)
            return i;
    return -1;
}

// `from 3 to 2`: a run in the order asked.
static gboolean read_run(Take *take, const Target *target, const PlanTightening *tightening,
                         GArray *ordered, GError **error)
{
    guint from = 0, to = 0;
    const char *at = take->words.at;
    if (!read_bolt(take, target, &from, error))
        return FALSE;
    if (!words_skip(&take->words, "to"))
        return words_refuse(&take->words, take->words.at, error,
                            "`to` is missing here, and the last bolt of the run");
    if (!read_bolt(take, target, &to, error))
        return FALSE;
    gssize first = turn_of(ordered, from), last = turn_of(ordered, to);
    if (first < 0 || last < first) {
        g_autofree char *order = order_in_words(target, tightening);
        return words_refuse(&take->words, at, error,
                            "the run goes backwards; the order asked is %s", order);
    }
    g_array_set_size(ordered, (guint)last + 1);
    g_array_remove_range(ordered, 0, (guint)first);
    return TRUE;
}

// The bolts meant, in the order asked: those in the brackets, `all`, or a run. The caller frees.
static GArray *read_bolts(Take *take, const Target *target, const PlanTightening *tightening,
                          GError **error)
{
    g_autoptr(GArray) ordered = in_order(target, tightening);
    if (words_skip(&take->words, "all"))
        return g_steal_pointer(&ordered);
    Words words = take->words;
    if (words_skip(&words, "from")) {
        take->words = words;
        return read_run(take, target, tightening, ordered, error) ? g_steal_pointer(&ordered)
                                                                  : NULL;
    }
    if (target->said || ordered->len == 1)
        return g_steal_pointer(&ordered);
    g_autofree char *first = places_label(target->axes, tightening->order[0]);
    words_refuse(&take->words, take->words.at, error,
                 "which bolts? write `all`, `%s[%s]`, or a run like `from %s to …`", target->name,
                 first, first);
    return NULL;
}

static void entry_set_bolts(Entry *entry, const Target *target, const GArray *bolts)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < bolts->len; i++)
        g_ptr_array_add(labels, places_label(target->axes, g_array_index(bolts, guint, i)));
    entry_set_list(entry, "bolts", (const char *const *)labels->pdata, labels->len);
}

static const Stage *stage_at(const Target *target, guint stage)
{
    return g_ptr_array_index(target->tightening->stages, stage - 1);
}

// The stage of the target; where none is said, the only one.
static gboolean find_stage(Take *take, Target *target, GError **error)
{
    guint stages = target->tightening->stages->len;
    if (!target->number && stages == 1)
        target->number = 1;
    if (target->number)
        return TRUE;
    g_autofree char *all = stages_in_words(target->tightening);
    return words_refuse(&take->words, take->words.at, error,
                        "which stage? write `stage` and its number; `%s in %s` has %u: %s",
                        target->name, target->step->name, stages, all);
}

static gboolean refuse_kind(const Take *take, const Target *target, GError **error)
{
    guint stage = target->number;
    gboolean wait = stage_at(target, stage)->kind == STAGE_WAIT;
    return words_refuse(&take->words, target->number_at ? target->number_at : take->words.at, error,
                        "stage %u of `%s` is %s; write `%s %s stage %u`", stage, target->name,
                        wait ? "a wait" : "no wait", wait ? "waited" : "tighten", target->name,
                        stage);
}

static gboolean is_about_set(const Entry *entry, const char *kind, const Target *target)
{
    return strcmp(entry->kind->name, kind) == 0 &&
           g_strcmp0(entry_text(entry, "tightening"), target->name) == 0;
}

// Whether the set was ticked in this step, or the consumable laid on it, and that still counts.
static gboolean is_ticked_or_laid(const Take *take, const Target *target,
                                  const PlanConsumable *consumable)
{
    const GPtrArray *entries = take->taker->entries;
    g_autofree gboolean *live = take_live(take);
    for (guint i = 0; i < entries->len; i++) {
        const Entry *entry = entries->pdata[i];
        if (!live[i])
            continue;
        if (is_about_set(entry, "tick", target) &&
            g_strcmp0(entry_text(entry, "step"), target->step->name) == 0)
            return TRUE;
        if (is_about_set(entry, "laid", target) &&
            g_strcmp0(entry_text(entry, "consumable"), consumable->name) == 0)
            return TRUE;
    }
    return FALSE;
}

static gboolean is_for_some(const PlanLubricant *lubricant, const GArray *bolts)
{
    for (guint i = 0; i < bolts->len; i++)
        if (lubricant->positions[g_array_index(bolts, guint, i)])
            return TRUE;
    return FALSE;
}

// A lubricant whose clocks have not been started: said once, at the first tick.
static void remark_unlaid(Take *take, const Target *target, const GArray *bolts)
{
    for (guint i = 0; i < target->group->lubricants->len; i++) {
        const PlanLubricant *lubricant = target->group->lubricants->pdata[i];
        const PlanConsumable *consumable = plan_consumable(take->taker->plan, lubricant->words);
        if (consumable && consumable_has_clock(consumable) && is_for_some(lubricant, bolts) &&
            !is_ticked_or_laid(take, target, consumable))
            take_remark(take, "No %s is laid; write `lay %s on %s lot …`", consumable->name,
                        consumable->name, target->name);
    }
}

// The position of that bolt if it is one of them, else -1.
static gssize bolt_among(const Requirement *made, const Target *target, const GArray *bolts)
{
    for (guint i = 0; i < bolts->len; i++) {
        guint bolt = g_array_index(bolts, guint, i);
        g_autofree char *place = places_label(target->axes, bolt);
        if (strcmp(made->place, place) == 0)
            return (gssize)bolt;
    }
    return -1;
}

// Bolts that stand at this stage already: said, since what was entered before no longer counts.
static void remark_done(Take *take, const Target *target, const GArray *bolts)
{
    const Assessment *assessment = take_assessment(take);
    g_autoptr(GPtrArray) done = g_ptr_array_new();
    g_ptr_array_set_size(done, (gint)places_count(target->axes));
    for (guint i = 0; assessment && i < assessment->requirements->len; i++) {
        Requirement *made = assessment->requirements->pdata[i];
        if (made->asked != ASKED_BOLT || made->stage != target->number ||
            strcmp(made->name, target->name) != 0 ||
            strcmp(made->step->name, target->step->name) != 0)
            continue;
        gboolean stands = made->verdict != VERDICT_OPEN && made->entry;
        gssize bolt = stands ? bolt_among(made, target, bolts) : -1;
        if (bolt >= 0)
            done->pdata[bolt] = made;
    }
    g_autofree char *words = bolts_done_words(done);
    if (*words)
        take_remark(take, "Done at this stage already: %s; what is entered now stands", words);
}

// A tick of some bolts at the stage of the target.
static Entry *tick_entry(Take *take, const Target *target, const GArray *bolts,
                         const Reading *shown)
{
    Entry *entry = take_entry(take, "tick");
    entry_set_text(entry, "tightening", target->name);
    entry_set_step(take, entry, target->step);
    entry_set_number(entry, "stage", target->number);
    entry_set_bolts(entry, target, bolts);
    if (shown->number)
        entry_set_reading(entry, "value", shown);
    return entry;
}

// A tick for all bolts, or several in their order where the wrench is set differently for some.
static void add_ticks(Take *take, const Target *target, const GArray *bolts,
                      const TakenWrench *wrench)
{
    for (guint first = 0, count; first < bolts->len; first += count) {
        g_autoptr(GArray) alike = g_array_new(FALSE, FALSE, sizeof(guint));
        const guint *bolt = &g_array_index(bolts, guint, first);
        count = taken_wrench_alike(take, target, bolts, first, wrench);
        g_array_append_vals(alike, bolt, count);
        taken_wrench_set(take, target, *bolt, wrench,
                         tick_entry(take, target, alike, &wrench->shown));
    }
}

gboolean verb_tighten(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    g_auto(TakenWrench) wrench = {0};
    if (!take_target(take, TARGET_GROUPS, TRUE, &target, error) ||
        !find_stage(take, &target, error))
        return FALSE;
    const Stage *stage = stage_at(&target, target.number);
    if (stage->kind == STAGE_WAIT)
        return refuse_kind(take, &target, error);
    g_autoptr(GArray) bolts = read_bolts(take, &target, target.tightening, error);
    if (!bolts || !take_wrench(take, stage, &wrench, error))
        return FALSE;
    remark_unlaid(take, &target, bolts);
    remark_done(take, &target, bolts);
    add_ticks(take, &target, bolts, &wrench);
    return TRUE;
}

gboolean verb_waited(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    if (!take_target(take, TARGET_GROUPS, TRUE, &target, error))
        return FALSE;
    if (target.said)
        return words_refuse(&take->words, target.at, error,
                            "a wait is for the whole set; leave the brackets out");
    if (!find_stage(take, &target, error))
        return FALSE;
    if (stage_at(&target, target.number)->kind != STAGE_WAIT)
        return refuse_kind(take, &target, error);
    Entry *entry = take_entry(take, "waited");
    entry_set_text(entry, "tightening", target.name);
    entry_set_step(take, entry, target.step);
    entry_set_number(entry, "stage", target.number);
    return TRUE;
}

// The stage at which a bolt stands: the first that is open. 0 if none is.
static guint next_stage(const Assessment *assessment, const Target *target, guint bolt)
{
    g_auto(GStrv) labels = places_labels(target->axes, bolt);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (made->asked == ASKED_BOLT && made->verdict == VERDICT_OPEN && !made->withdrawn &&
            strcmp(made->step->name, target->step->name) == 0 &&
            strcmp(made->name, target->name) == 0 &&
            g_strv_equal((const char *const *)made->labels, (const char *const *)labels))
            return made->stage;
    }
    return 0;
}

static gboolean has_slacken(const PlanTightening *tightening)
{
    for (guint i = 0; i < tightening->stages->len; i++)
        if (((const Stage *)tightening->stages->pdata[i])->kind == STAGE_SLACKEN)
            return TRUE;
    return FALSE;
}

// The stage `slacken` of the plan at which these bolts stand, all of them; 0 if it is none.
static guint slacken_stage(const Take *take, const Target *target, const GArray *bolts)
{
    const Assessment *assessment =
        target->tightening && has_slacken(target->tightening) ? take_assessment(take) : NULL;
    guint stage = assessment ? next_stage(assessment, target, g_array_index(bolts, guint, 0)) : 0;
    for (guint i = 1; stage && i < bolts->len; i++)
        if (next_stage(assessment, target, g_array_index(bolts, guint, i)) != stage)
            return 0;
    return stage && stage_at(target, stage)->kind == STAGE_SLACKEN ? stage : 0;
}

// Whether this is how far the stage slackens: not at all said, or the same angle.
static gboolean is_as_far(const Stage *stage, const Reading *turn)
{
    g_auto(Reading) asked = {0};
    g_autoptr(Unit) unit = unit_parse("°", NULL);
    if (!stage->amount || !turn->number)
        return !stage->amount && !turn->number;
    return reading_parse(stage->amount, unit, &asked, NULL, NULL) &&
           number_equal(asked.value, turn->value);
}

static void add_slacken(Take *take, const Target *target, const GArray *bolts, const Reading *turn,
                        const char *why)
{
    Entry *entry = take_entry(take, "slacken");
    entry_set_text(entry, "tightening", target->name);
    entry_set_step(take, entry, target->step);
    entry_set_bolts(entry, target, bolts);
    if (turn->number)
        entry_set_reading(entry, "turn", turn);
    entry_set_text(entry, "why", why);
}

// Slackening that the plan asks for, where the bolts stand at such a stage, is its tick; any other
// disturbs.
static void slacken(Take *take, Target *target, const GArray *bolts, const Reading *turn,
                    const char *why)
{
    guint stage = slacken_stage(take, target, bolts);
    const char *text = stage ? stage_at(target, stage)->text : NULL;
    if (!stage || !is_as_far(stage_at(target, stage), turn)) {
        add_slacken(take, target, bolts, turn, why);
        if (stage)
            take_remark(take,
                        "It is no stage: stage %u of `%s in %s` is `%s`, and this went another way",
                        stage, target->name, target->step->name, text);
        return;
    }
    target->number = stage;
    entry_set_text(tick_entry(take, target, bolts, turn), "note", why);
    take_remark(take, "It counts as stage %u of `%s in %s`, %s", stage, target->name,
                target->step->name, text);
}

gboolean verb_slacken(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    g_auto(Reading) turn = {0};
    g_autofree char *why = NULL;
    if (!take_target(take, TARGET_GROUPS, FALSE, &target, error) ||
        !target_is_whole(take, &target, error))
        return FALSE;
    const PlanTightening *tightening =
        target.tightening ? target.tightening : any_tightening(take, target.group);
    g_autoptr(GArray) bolts = read_bolts(take, &target, tightening, error);
    g_autoptr(Unit) unit = unit_parse("turn", NULL);
    if (!bolts ||
        (words_begin_value(&take->words) && !words_value(&take->words, unit, &turn, error)))
        return FALSE;
    if (words_are_quoted(&take->words) && !(why = words_text(&take->words, "the reason", error)))
        return FALSE;
    slacken(take, &target, bolts, &turn, why);
    return TRUE;
}
