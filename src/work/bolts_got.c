#include <standbook/work/bolts_got.h>

#include "agenda_inside.h"

#include <standbook/record/live.h>
#include <standbook/work/gave.h>
#include <standbook/work/wrench.h>
#include <string.h>

const char bolt_got_unknown[] = "unknown";

// ONE BOLT --------------------------------------------------------------------------------------

static const PlanTightening *tightening_of(const Requirement *made)
{
    return made->asked == ASKED_BOLT ? plan_tightening(made->step, made->name) : NULL;
}

// How much of what a bolt gets stands on the scale of the wrench: less than 1 through most
// adapters. NULL if that is not known: through an adapter it is not without the setting.
static Number *share_of(const Entry *tick, const Number *asked)
{
    g_autoptr(Number) set = entry_amount(tick, "setting");
    if (set && asked && number_sign(asked) > 0)
        return number_divide(set, asked);
    return entry_text(tick, "adapter") ? NULL : number_from_integer(1);
}

// What the bolt was to get: what the plan asks for, or what was read on the wrench, both at the
// bolt; base units. NULL if nothing is known. In *share, which the caller frees, share_of.
static Number *meant(const Agenda *agenda, const Requirement *made, const Entry *tick,
                     const PlanTightening *tightening, const Stage *stage, Number **share)
{
    g_autoptr(Number) asked = agenda_amount(agenda, made, tightening, stage),
                      shown = entry_amount(tick, "value");
    *share = share_of(tick, asked);
    return shown && *share ? number_divide(shown, *share) : g_steal_pointer(&asked);
}

static guint decimals_of(const char *figure)
{
    const char *point = strchr(figure, '.');
    return point ? (guint)strlen(point + 1) : 0;
}

// As exact as a wrench is set: `91`, `7.3`, `0.85`; and at least as what was `asked`.
static char *figure_words(const Number *figure, const Unit *unit, const char *asked)
{
    g_autoptr(Number) shown = unit_from_base(unit, figure);
    g_autoptr(Number) twenty = number_from_integer(20), two = number_from_integer(2);
    guint decimals = number_compare(shown, twenty) >= 0 ? 0
                     : number_compare(shown, two) >= 0  ? 1
                                                        : 2;
    return number_decimal(shown, MAX(decimals, decimals_of(asked)));
}

// The body of the tool as the build took it; NULL if it did not.
static const json_t *taken_tool_body(const Agenda *agenda, const char *id)
{
    for (gsize i = agenda->count; id && i-- > 0;) {
        const json_t *take = agenda->entries[i]->body;
        const json_t *body = json_object_get(take, "body");
        if (g_strcmp0(json_string_value(json_object_get(take, "what")), "tool") == 0 &&
            g_strcmp0(json_string_value(json_object_get(body, "id")), id) == 0)
            return body;
    }
    return NULL;
}

// The unit of the wrench's range; NULL if that is not known. The caller frees.
static Unit *scale_unit(const Agenda *agenda, const Entry *tick)
{
    const json_t *tool = taken_tool_body(agenda, entry_tool(tick));
    const json_t *end = json_object_get(tool, "greatest");
    const char *words = json_string_value(json_object_get(end, "unit"));
    return words ? unit_parse(words, NULL) : NULL;
}

char *bolt_got(const Agenda *agenda, const Requirement *made, const Entry *tick,
               const json_t *calibration, Unit **unit)
{
    const PlanTightening *tightening = tightening_of(made);
    const Stage *stage = tightening && made->stage <= tightening->stages->len
                             ? tightening->stages->pdata[made->stage - 1]
                             : NULL;
    *unit = NULL;
    if (!stage || !stage_is_torque(stage->kind))
        return NULL;
    g_autoptr(Unit) scale = scale_unit(agenda, tick);
    g_autoptr(Unit) own = scale ? g_steal_pointer(&scale) : agenda_amount_unit(agenda->plan, stage);
    g_autoptr(Number) share = NULL;
    g_autoptr(Number) at_bolt = meant(agenda, made, tick, tightening, stage, &share);
    g_autoptr(Number) set = at_bolt && share ? number_multiply(at_bolt, share) : NULL;
    g_autoptr(Number) gave =
        at_bolt ? gave_at(calibration, unit_kind(own), set ? set : at_bolt) : NULL;
    if (!gave)
        return NULL;
    g_autoptr(Number) pulled = share ? number_divide(gave, share) : NULL;
    g_autofree char *of = wrench_setting_words(at_bolt, own);
    g_autofree char *got = pulled ? figure_words(pulled, own, of) : g_strdup(bolt_got_unknown);
    *unit = g_steal_pointer(&own);
    return g_strdup_printf("%s of %s", got, of);
}

// ALL OF A BUILD --------------------------------------------------------------------------------

// How a bolt stands today, the heavier first: of its stages the heaviest counts.
static const char *const stands[] = {"in doubt", "fail", "open",   "conceded",  "not needed",
                                     "noted",    "pass", "upheld", "done again"};

static const char *stands_now(const Requirement *made, gint64 tick)
{
    if (made->verdict != VERDICT_OPEN && made->entry != tick)
        return requirement_is_left(made) ? verdict_words(made->verdict) : "done again";
    return made->upheld && made->verdict == VERDICT_PASS ? "upheld" : verdict_words(made->verdict);
}

static const char *heavier(const char *one, const char *other)
{
    for (gsize i = 0; i < G_N_ELEMENTS(stands); i++)
        if (strcmp(stands[i], one) == 0 || strcmp(stands[i], other) == 0)
            return stands[i];
    return one;
}

static void got_free(gpointer data)
{
    BoltsGot *got = data;
    g_string_free(got->bolts, TRUE);
    g_string_free(got->stages, TRUE);
    g_string_free(got->got, TRUE);
    g_free(got->unit);
    g_free(got);
}

static char *key_of(const char *name, const char *step, gint64 stage, const char *bolt)
{
    return g_strdup_printf("%s\n%s\n%" G_GINT64_FORMAT "\n%s", name, step, stage, bolt);
}

// One tick of a bolt at a stage, and the calibration that says what it got.
typedef struct {
    const Entry *tick;
    const json_t *calibration;
} Tick;

static void add_ticks(GHashTable *ticks, const Entry *entry, const json_t *calibration)
{
    for (gsize i = 0; i < entry_list_length(entry, "bolts"); i++) {
        Tick *tick = g_new0(Tick, 1);
        *tick = (Tick){entry, calibration};
        g_hash_table_insert(ticks,
                            key_of(entry_text(entry, "tightening"), entry_text(entry, "step"),
                                   entry_number(entry, "stage"),
                                   entry_list_item(entry, "bolts", i)),
                            tick);
    }
}

static gboolean is_tick_with(const Entry *entry, const char *tool, const char *since)
{
    return strcmp(entry->kind->name, "tick") == 0 && g_strcmp0(entry_tool(entry), tool) == 0 &&
           (!since || strncmp(entry_done(entry), since, strlen(since)) >= 0);
}

// By set, step, stage and bolt the last tick with the tool that stood in doubt for it.
static GHashTable *ticks_with(const Agenda *agenda, const char *tool, const char *since)
{
    GHashTable *ticks = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    g_autofree gboolean *live = g_new0(gboolean, agenda->count + 1);
    live_entries(agenda->entries, agenda->count, live);
    g_autoptr(GArray) calibrations = gave_calibrations(agenda->entries, agenda->count, live, tool);
    for (gsize i = 0; i < agenda->count; i++) {
        const Entry *entry = agenda->entries[i];
        const json_t *wrong =
            live[i] && is_tick_with(entry, tool, since) ? gave_wrong(calibrations, entry) : NULL;
        if (wrong)
            add_ticks(ticks, entry, wrong);
    }
    return ticks;
}

static BoltsGot *got_of(GPtrArray *all, const Requirement *made)
{
    for (guint i = 0; i < all->len; i++) {
        BoltsGot *got = all->pdata[i];
        if (got->made->step == made->step && strcmp(got->made->name, made->name) == 0 &&
            strcmp(got->made->place, made->place) == 0)
            return got;
    }
    BoltsGot *got = g_new0(BoltsGot, 1);
    *got = (BoltsGot){.made = made,
                      .bolts = g_string_new(made->place),
                      .stages = g_string_new(NULL),
                      .got = g_string_new(NULL),
                      .stands = "done again"};
    g_ptr_array_add(all, got);
    return got;
}

static void add_stage(GPtrArray *all, const Agenda *agenda, const Requirement *made,
                      const Tick *tick)
{
    g_autoptr(Unit) unit = NULL;
    g_autofree char *words = bolt_got(agenda, made, tick->tick, tick->calibration, &unit);
    if (!words)
        return;
    BoltsGot *got = got_of(all, made);
    g_string_append_printf(got->stages, "%s%u", got->stages->len ? ", " : "", made->stage);
    g_string_append_printf(got->got, "%s%s", got->got->len ? ", " : "", words);
    got->unit = got->unit ? got->unit : g_strdup(unit_text(unit));
    got->stands = heavier(got->stands, stands_now(made, tick->tick->seq));
    got->entry = got->entry ? MIN(got->entry, tick->tick->seq) : tick->tick->seq;
}

static gboolean is_same_row(const BoltsGot *one, const BoltsGot *other)
{
    return one->made->step == other->made->step &&
           strcmp(one->made->name, other->made->name) == 0 &&
           strcmp(one->stands, other->stands) == 0 && g_string_equal(one->got, other->got) &&
           g_string_equal(one->stages, other->stages);
}

// Takes the bolts that got the same together.
static void merge(GPtrArray *all)
{
    for (guint i = 0; i < all->len; i++)
        for (guint j = i + 1; j < all->len;) {
            BoltsGot *row = all->pdata[i], *other = all->pdata[j];
            if (!is_same_row(row, other)) {
                j++;
                continue;
            }
            g_string_append_printf(row->bolts, ", %s", other->bolts->str);
            row->entry = MIN(row->entry, other->entry);
            g_ptr_array_remove_index(all, j);
        }
}

GPtrArray *bolts_got(const Agenda *agenda, const char *tool, const char *since)
{
    GPtrArray *all = g_ptr_array_new_with_free_func(got_free);
    g_autoptr(GHashTable) ticks = ticks_with(agenda, tool, since);
    for (guint i = 0; i < agenda->assessment->requirements->len && g_hash_table_size(ticks); i++) {
        const Requirement *made = agenda_made(agenda, i);
        g_autofree char *key =
            key_of(made->name, made->step->name, (gint64)made->stage, made->place);
        const Tick *tick = made->asked == ASKED_BOLT ? g_hash_table_lookup(ticks, key) : NULL;
        if (tick)
            add_stage(all, agenda, made, tick);
    }
    merge(all);
    return all;
}
