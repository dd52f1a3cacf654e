// What stands behind the bolts of a line: `18.6 with W1 adapter X1 at 90°`.
#include "agenda_inside.h"
#include "take.h"

#include <standbook/plan/adapter.h>
#include <standbook/rules/tool.h>
#include <standbook/work/wrench.h>
#include <string.h>

void taken_wrench_clear(TakenWrench *wrench)
{
    reading_clear(&wrench->shown);
    g_free(wrench->angle);
}

// The unit in which a wrench shows a stage: an angle for what is turned, else a torque.
static Unit *stage_unit(const Take *take, const Stage *stage)
{
    gboolean turned = stage_is_angle(stage->kind) || stage->kind == STAGE_DRAW ||
                      stage->kind == STAGE_SLACKEN || stage->kind == STAGE_SLOT;
    g_autoptr(Unit) usual = unit_parse(turned ? "°" : "N·m", NULL);
    const Unit *own = plan_unit(take->taker->plan, unit_kind(usual));
    return unit_copy(own ? own : usual);
}

// `at 90°` behind an adapter.
static gboolean read_angle(Take *take, TakenWrench *wrench, GError **error)
{
    if (!words_skip(&take->words, "at"))
        return TRUE;
    const char *at = take->words.at;
    g_autoptr(Unit) degree = unit_parse("°", NULL);
    g_auto(Reading) angle = {0};
    if (!words_value(&take->words, degree, &angle, error))
        return FALSE;
    g_autofree char *words = g_strconcat("X at ", angle.typed, NULL), *label = NULL;
    g_autoptr(Number) read = NULL;
    g_autoptr(GError) why = NULL;
    if (!adapter_read(words, &label, &read, &why))
        return words_refuse(&take->words, at, error, "%s", why->message);
    wrench->angle = unit_show(degree, read, angle.decimals);
    return TRUE;
}

static gboolean read_shown(Take *take, const Unit *unit, TakenWrench *wrench, GError **error)
{
    const char *at = take->words.at;
    if (!words_value(&take->words, unit, &wrench->shown, error))
        return FALSE;
    return number_sign(wrench->shown.value) > 0 ||
           words_refuse(&take->words, at, error,
                        "what a bolt is pulled to is above 0; write what was shown, or nothing");
}

gboolean take_wrench(Take *take, const Stage *stage, TakenWrench *wrench, GError **error)
{
    const char *calibration = NULL;
    g_autoptr(Unit) unit = stage_unit(take, stage);
    if (words_begin_value(&take->words) && !read_shown(take, unit, wrench, error))
        return FALSE;
    if (!words_skip(&take->words, "with"))
        return TRUE;
    if (!take_tool(take, &wrench->tool, &wrench->calibration, error))
        return FALSE;
    if (!words_skip(&take->words, "adapter"))
        return TRUE;
    return take_tool(take, &wrench->adapter, &calibration, error) &&
           read_angle(take, wrench, error);
}

// The adapter with its angle: as typed, else as the plan says it of the bolt. The caller frees.
static char *adapter_as_used(const Target *target, guint bolt, const TakenWrench *wrench)
{
    const char *label = shop_label(wrench->adapter);
    if (wrench->angle)
        return g_strconcat(label, " at ", wrench->angle, NULL);
    g_autofree char *place = places_label(target->axes, bolt);
    g_autofree char *planned = wrench_adapter(target->group, place), *of = NULL;
    g_autoptr(Number) angle = NULL;
    gboolean same = planned && adapter_read(planned, &of, &angle, NULL) && strcmp(of, label) == 0;
    return g_strdup(same ? planned : label);
}

static gboolean is_at(const Requirement *made, const Target *target, const char *place)
{
    return made->asked == ASKED_BOLT && made->stage == target->number &&
           strcmp(made->name, target->name) == 0 &&
           strcmp(made->step->name, target->step->name) == 0 && strcmp(made->place, place) == 0;
}

// The torque of the stage at a bolt; NULL if it is none, or uses something that is not read yet.
static Number *torque_of(const Take *take, const Target *target, guint bolt)
{
    const Stage *stage = target->tightening->stages->pdata[target->number - 1];
    if (!stage_is_torque(stage->kind))
        return NULL;
    Number *constant = formula_constant(stage->formula);
    const Assessment *assessment = constant ? NULL : take_assessment(take);
    const Agenda agenda = {take->taker->plan, assessment,
                           (const Entry *const *)take->taker->entries->pdata,
                           take->taker->entries->len};
    g_autofree char *place = places_label(target->axes, bolt);
    for (guint i = 0; assessment && i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (is_at(made, target, place))
            return agenda_amount(&agenda, made, target->tightening, stage);
    }
    return constant;
}

// The unit of what the wrench is set to: that of its range, else of the stage. The caller frees.
static Unit *setting_unit(const Take *take, const Target *target, const TakenWrench *wrench)
{
    const Stage *stage = target->tightening->stages->pdata[target->number - 1];
    Unit *own = wrench_unit(wrench->tool);
    return own ? own : agenda_amount_unit(take->taker->plan, stage);
}

// What the wrench is set to for a bolt through the adapter, as its scale has it; NULL if that is
// not known. The caller frees.
static char *setting_of(const Take *take, const Target *target, guint bolt,
                        const TakenWrench *wrench, const char *adapter)
{
    g_autoptr(Number) torque = torque_of(take, target, bolt);
    g_autoptr(Number) setting =
        torque ? wrench_setting(torque, take->taker->shop, shop_label(wrench->tool), adapter)
               : NULL;
    g_autoptr(Unit) unit = setting_unit(take, target, wrench);
    return setting ? wrench_setting_words(setting, unit) : NULL;
}

static void set_setting(const char *words, const Unit *unit, Entry *tick)
{
    g_auto(Reading) reading = {0};
    if (words && reading_parse(words, unit, &reading, NULL, NULL))
        entry_set_reading(tick, "setting", &reading);
}

// How many bolts the line ticks up to now, and whether it was said of it that the wrench is worn.
static guint bolts_ticked(const Take *take, gboolean *said)
{
    guint bolts = 0;
    *said = FALSE;
    for (guint i = 0; i < take->made->len; i++) {
        *said |= entry_number(take->made->pdata[i], "uses") > 0;
        bolts += (guint)entry_list_length(take->made->pdata[i], "bolts");
    }
    return bolts;
}

// How often a torque wrench was used since its calibration, where the bolts of this tick, the last
// of the line up to now, take it past what that lasts for.
static void set_uses(Take *take, const Target *target, const TakenWrench *wrench, Entry *tick)
{
    const LineHelp *help = &take->taker->help;
    const Stage *stage = target->tightening->stages->pdata[target->number - 1];
    gboolean said = FALSE;
    if (!help->uses || !wrench->calibration || !stage_is_torque(stage->kind))
        return;
    gint64 uses = help->uses(entry_text(wrench->tool, "id"), wrench->calibration, help->user) +
                  bolts_ticked(take, &said);
    if (uses <= TOOL_USES_MOST)
        return;
    entry_set_number(tick, "uses", uses - (gint64)entry_list_length(tick, "bolts"));
    if (!said)
        take_remark(take,
                    "%s has now been used %" G_GINT64_FORMAT " times since its calibration, which "
                    "lasts for %d: have it calibrated",
                    shop_label(wrench->tool), uses, TOOL_USES_MOST);
}

static gboolean are_alike(const Take *take, const Target *target, const TakenWrench *wrench,
                          guint one, guint other)
{
    g_autofree char *adapter = adapter_as_used(target, one, wrench),
                    *beside = adapter_as_used(target, other, wrench);
    if (strcmp(adapter, beside) != 0)
        return FALSE;
    g_autofree char *set = setting_of(take, target, one, wrench, adapter),
                    *set_beside = setting_of(take, target, other, wrench, beside);
    return g_strcmp0(set, set_beside) == 0;
}

guint taken_wrench_alike(const Take *take, const Target *target, const GArray *bolts, guint first,
                         const TakenWrench *wrench)
{
    guint next = first + 1, bolt = g_array_index(bolts, guint, first);
    while (next < bolts->len && (!wrench->adapter || are_alike(take, target, wrench, bolt,
                                                               g_array_index(bolts, guint, next))))
        next++;
    return next - first;
}

// At a stage of no torque a wrench does not click, so that it is no use of it.
static void set_pulled(const Target *target, const TakenWrench *wrench, Entry *tick)
{
    const Stage *stage = target->tightening->stages->pdata[target->number - 1];
    if (wrench->calibration && !stage_is_torque(stage->kind))
        entry_set_text(tick, "pulled", "to no torque");
}

void taken_wrench_set(Take *take, const Target *target, guint bolt, const TakenWrench *wrench,
                      Entry *tick)
{
    entry_set_text(tick, "tool", wrench->tool ? entry_text(wrench->tool, "id") : NULL);
    entry_set_text(tick, "calibration", wrench->calibration);
    set_uses(take, target, wrench, tick);
    set_pulled(target, wrench, tick);
    if (!wrench->adapter)
        return;
    g_autofree char *adapter = adapter_as_used(target, bolt, wrench);
    g_autofree char *setting = setting_of(take, target, bolt, wrench, adapter);
    entry_set_text(tick, "adapter", adapter);
    g_autoptr(Unit) unit = setting_unit(take, target, wrench);
    set_setting(setting, unit, tick);
}
