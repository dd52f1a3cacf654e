// What was shown when a bolt was taken through a stage: as asked, and below the ceiling.
#include "judge.h"

#include <standbook/rules/shown.h>
#include <string.h>

// What was shown in the kind of that unit, in base units; NULL if nothing of it was. The caller
// frees.
static Number *shown_in(const Judge *judge, const Entry *entry, const char *kind)
{
    const Unit *unit = judge_unit(judge, entry_value(entry, "value", "unit"));
    g_autoptr(Unit) of = unit_parse(kind, NULL);
    return unit && kind_equal(unit_kind(unit), unit_kind(of)) ? entry_amount(entry, "value") : NULL;
}

// `<40` says nothing of too much, `>40` nothing of too little.
static gboolean may_be(const Entry *entry, Reason reason)
{
    return *entry_value(entry, "value", "value") != (reason == REASON_HIGH ? '<' : '>');
}

// Whether the torque shown when a bolt was taken `until` its check passed lies above the ceiling.
static gboolean is_above_ceiling(const Judge *judge, const TighteningState *state, guint stage,
                                 const Entry *entry)
{
    const Number *ceiling = state->tightening->group->ceiling;
    if (stage_at(state, stage)->kind != STAGE_UNTIL || !ceiling)
        return FALSE;
    g_autoptr(Number) reached = shown_in(judge, entry, "N·m");
    return reached && may_be(entry, REASON_HIGH) && number_compare(reached, ceiling) > 0;
}

// What was to be shown, in base units: through an adapter what the wrench was set to, if that is
// known, else what the stage asks. NULL if it is not known, or if what is shown at such a stage is
// no promise of what it asks. The caller frees.
static Number *to_be_shown(Judge *judge, const TighteningState *state, const TickState *tick,
                           const Entry *entry)
{
    StageKind kind = stage_at(state, tick->stage)->kind;
    gboolean set = entry_value(entry, "setting", "value") != NULL;
    if ((!stage_is_torque(kind) && kind != STAGE_TURN) || (entry_text(entry, "adapter") && !set))
        return NULL;
    return judge_wrench_amount(judge, entry, state, tick->stage, tick->bolt);
}

// `5 of 20 lbf·ft shown`
static char *shown_words(const Judge *judge, const Entry *entry, const Number *shown,
                         const Number *asked)
{
    const Unit *unit = judge_unit(judge, entry_value(entry, "value", "unit"));
    const char *value = entry_value(entry, "value", "value");
    g_autoptr(Number) read = unit_from_base(unit, shown);
    g_autofree char *figure = number_short(read), *of = unit_show_short(unit, asked);
    return g_strdup_printf("%.*s%s of %s shown", (int)strspn(value, "<>"), value, figure, of);
}

Reason judge_shown(Judge *judge, const TighteningState *state, const TickState *tick, char **note)
{
    static const Reason reasons[] = {
        [SHOWN_AS_ASKED] = REASON_NONE, [SHOWN_LOW] = REASON_LOW, [SHOWN_HIGH] = REASON_HIGH};
    const Entry *entry = judge_entry(judge, tick->seq);
    if (is_above_ceiling(judge, state, tick->stage, entry)) {
        if (note)
            *note = g_strdup("taken above the ceiling of its bolt set");
        return REASON_HIGH;
    }
    gboolean torque = stage_is_torque(stage_at(state, tick->stage)->kind);
    g_autoptr(Number) shown = shown_in(judge, entry, torque ? "N·m" : "°");
    g_autoptr(Number) asked = shown ? to_be_shown(judge, state, tick, entry) : NULL;
    Reason reason = asked ? reasons[shown_against(shown, asked)] : REASON_NONE;
    if (reason == REASON_NONE || !may_be(entry, reason))
        return REASON_NONE;
    if (note)
        *note = shown_words(judge, entry, shown, asked);
    return reason;
}
