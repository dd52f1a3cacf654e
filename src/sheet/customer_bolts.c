// The customer's sheet: what was tightened, how often, and whether it had to be done again.
#include "plan_words.h"
#include "sections.h"

#include <standbook/work/set_preload.h>
#include <standbook/work/tool_cause.h>
#include <string.h>

typedef struct {
    guint bolts;            // those not needed left out
    guint counts[VERDICTS]; // of those
    gint64 newest;          // seq of the newest tick
    gboolean by_mark;       // an angle was turned without a gauge for it
} TightState;

// The requirements of a tightening, of each stage a bolt or its wait; the caller frees the array.
static GPtrArray *stages_of(const SheetSource *source, const PlanTightening *tightening,
                            Asked asked)
{
    const GPtrArray *all = source->assessment->requirements;
    GPtrArray *bolts = g_ptr_array_new();
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (each->asked == asked && !each->withdrawn && each->step == tightening->step &&
            strcmp(each->name, tightening->group->name) == 0)
            g_ptr_array_add(bolts, (gpointer)each);
    }
    return bolts;
}

static GPtrArray *bolts_of(const SheetSource *source, const PlanTightening *tightening)
{
    return stages_of(source, tightening, ASKED_BOLT);
}

// How a bolt stands: as its last stage does, or as one before it that failed, is in doubt or was
// conceded.
static Verdict bolt_verdict(const GPtrArray *bolts, const Requirement *last)
{
    for (guint i = 0; last->verdict != VERDICT_OPEN && i < bolts->len; i++) {
        const Requirement *each = g_ptr_array_index(bolts, i);
        gboolean faulty = each->verdict == VERDICT_FAIL || each->verdict == VERDICT_IN_DOUBT ||
                          each->verdict == VERDICT_CONCEDED;
        if (faulty && each->stage < last->stage && strcmp(each->place, last->place) == 0)
            return each->verdict;
    }
    return last->verdict;
}

// Whether that was an angle, done without a tool that shows one.
static gboolean is_by_mark(const SheetSource *source, const PlanTightening *tightening,
                           const Requirement *made)
{
    const Stage *stage = g_ptr_array_index(tightening->stages, made->stage - 1);
    const Entry *entry = source_entry(source, made->entry);
    return stage_is_angle(stage->kind) && entry && strcmp(entry->kind->name, "tick") == 0 &&
           !entry_text(entry, "tool");
}

static TightState tight_state(const SheetSource *source, const PlanTightening *tightening)
{
    TightState state = {0};
    g_autoptr(GPtrArray) bolts = bolts_of(source, tightening);
    for (guint i = 0; i < bolts->len; i++) {
        const Requirement *each = g_ptr_array_index(bolts, i);
        state.newest = MAX(state.newest, each->entry);
        state.by_mark |= is_by_mark(source, tightening, each);
        if (each->stage != tightening->stages->len || each->verdict == VERDICT_NOT_NEEDED)
            continue;
        state.bolts++;
        state.counts[bolt_verdict(bolts, each)]++;
    }
    return state;
}

// The footnotes of all that was left, upheld or conceded, each once.
static char *bolt_notes(Document *document, const SheetSource *source,
                        const PlanTightening *tightening)
{
    g_autoptr(GPtrArray) bolts = bolts_of(source, tightening);
    g_autoptr(GPtrArray) waits = stages_of(source, tightening, ASKED_WAIT);
    GString *numbers = g_string_new(NULL);
    g_ptr_array_extend(bolts, waits, NULL, NULL);
    for (guint i = 0; i < bolts->len; i++)
        footnotes_add(numbers, document, source, g_ptr_array_index(bolts, i));
    return g_string_free(numbers, FALSE);
}

// Bolts done again.
typedef struct {
    GString *which;  // `bolts 1 to 3 in stage 2`
    char *found;     // how the tool of one of them was found wrong, NULL for none
    gboolean others; // there are places at torque stages that were done once
} Redone;

// Names those of a stage; of a tightening in one stage without that.
static void name_redone(Redone *all, const PlanTightening *tightening, guint stage,
                        const GPtrArray *places, gboolean every)
{
    g_autofree char *runs = places_runs(tightening->group->axes, places);
    g_string_append_printf(all->which, "%s%s%s", all->which->len ? "; " : "",
                           every              ? "all"
                           : places->len == 1 ? "bolt "
                                              : "bolts ",
                           every ? "" : runs);
    if (tightening->stages->len > 1)
        g_string_append_printf(all->which, " in stage %u", stage);
}

static void add_redone(Redone *all, const SheetSource *source, const PlanTightening *tightening,
                       guint stage)
{
    const Stage *kind = g_ptr_array_index(tightening->stages, stage - 1);
    g_autoptr(GPtrArray) bolts = bolts_of(source, tightening), places = g_ptr_array_new();
    guint asked = 0;
    for (guint i = 0; i < bolts->len; i++) {
        const Requirement *bolt = g_ptr_array_index(bolts, i);
        if (bolt->stage != stage || bolt->verdict == VERDICT_NOT_NEEDED)
            continue;
        char *found = tool_redone_words(source->taken, source->entries, bolt);
        asked++;
        if (!found)
            continue;
        g_ptr_array_add(places, bolt->place);
        g_free(all->found);
        all->found = found;
    }
    all->others |= stage_is_torque(kind->kind) && places->len < asked;
    if (places->len)
        name_redone(all, tightening, stage, places, places->len == asked);
}

// What a customer is told of bolts done again because their wrench was found wrong, and of which
// where it is not the whole; NULL if that is not so.
static char *redone_words(const SheetSource *source, const PlanTightening *tightening)
{
    g_autoptr(GString) which = g_string_new(NULL);
    Redone all = {.which = which};
    for (guint stage = 1; stage <= tightening->stages->len; stage++)
        add_redone(&all, source, tightening, stage);
    g_autofree char *found = all.found;
    return found ? g_strdup_printf("Done twice%s%s: the first %s; tightened again with another.",
                                   all.others ? ", " : "", all.others ? which->str : "", found)
                 : NULL;
}

static const char by_mark[] = "Turned without an angle gauge, by a mark.";

// ` 3` of a footnote with that text; "" without one.
static char *footnote_number(Document *document, const char *text)
{
    return text ? g_strdup_printf(" %u", document_footnote(document, text)) : g_strdup("");
}

// `all 6`, of a single bolt `yes`; where some are not as asked, `1 of 2, 1 not done`.
static char *tight_words(const TightState *state)
{
    static const struct {
        Verdict verdict;
        const char *words;
    } others[] = {{VERDICT_OPEN, "not done"},
                  {VERDICT_FAIL, "failed"},
                  {VERDICT_IN_DOUBT, "in doubt"},
                  {VERDICT_CONCEDED, "conceded"}};
    g_autoptr(GString) why = g_string_new(NULL);
    guint good = state->bolts;
    for (gsize i = 0; i < G_N_ELEMENTS(others); i++) {
        guint count = state->counts[others[i].verdict];
        good -= count;
        if (count)
            g_string_append_printf(why, ", %u %s", count, others[i].words);
    }
    if (!why->len && state->bolts == 1)
        return g_strdup("yes");
    return why->len ? g_strdup_printf("%u of %u%s", good, state->bolts, why->str)
                    : g_strdup_printf("all %u", good);
}

static void tightened_row(Document *document, const SheetSource *source,
                          const PlanTightening *tightening, const TightState *state, gboolean again)
{
    g_autofree char *stages = stages_words(tightening);
    g_autofree char *done = tight_words(state);
    g_autofree char *notes = bolt_notes(document, source, tightening);
    const Entry *entry = source_entry(source, state->newest);
    g_autofree char *redone = redone_words(source, tightening);
    g_autofree char *substitute = set_substitute(tightening, 0);
    g_autofree char *number = footnote_number(document, redone),
                    *other = footnote_number(document, substitute),
                    *mark = footnote_number(document, state->by_mark ? by_mark : NULL);
    g_autofree char *see = g_strstrip(g_strconcat(notes, number, other, mark, NULL));
    g_autofree char *when = entry_when(entry), *day = g_strndup(when, 10);
    g_autofree char *name = g_strconcat(tightening->group->name, again ? ", again" : "", NULL);
    document_row(document, (const char *const[]){name, stages, done, day, see});
}

// Which torques the plan writes: some in the plan's unit without saying so, some in another.
static void see_torques(const Plan *plan, const Unit *usual, gboolean *bare, gboolean *other)
{
    for (guint s = 0; s < plan->steps->len; s++) {
        const GPtrArray *all = ((const PlanStep *)plan->steps->pdata[s])->tightenings;
        for (guint i = 0; i < all->len; i++) {
            const GPtrArray *stages = ((const PlanTightening *)all->pdata[i])->stages;
            for (guint j = 0; j < stages->len; j++) {
                const Stage *stage = stages->pdata[j];
                const Unit *unit = stage_is_torque(stage->kind) && stage->formula
                                       ? formula_first_unit(stage->formula)
                                       : NULL;
                *bare |= stage->bare != NULL;
                *other |= unit && !unit_equal(unit, usual);
            }
        }
    }
}

// A head does not give one unit to figures that stand below it with another.
static char *stages_head(const Plan *plan)
{
    g_autoptr(Unit) torque = plan_torque_unit(plan);
    gboolean bare = FALSE, other = FALSE;
    see_torques(plan, torque, &bare, &other);
    return other && !bare
               ? g_strdup("stages")
               : g_strconcat("stages, in ", unit_text(torque), other ? " unless said" : "", NULL);
}

static void begin_table(Document *document, const Plan *plan)
{
    g_autofree char *stages = stages_head(plan);
    const DocumentColumn columns[] = {{"", ALIGN_LEFT},
                                      {stages, ALIGN_LEFT},
                                      {"tight", ALIGN_RIGHT},
                                      {"", ALIGN_LEFT},
                                      {"see", ALIGN_NOTES}};
    document_heading(document, 1, "Tightened");
    document_table(document, columns, G_N_ELEMENTS(columns));
}

// A mock-up that is taken down again says nothing of the engine as left; what nothing was done of
// is told with all that is still to come.
void section_tightened(Document *document, const SheetSource *source)
{
    g_autoptr(GHashTable) printed = g_hash_table_new(NULL, NULL);
    for (guint s = 0; s < source->plan->steps->len; s++) {
        const PlanStep *step = g_ptr_array_index(source->plan->steps, s);
        for (guint i = 0; i < step->tightenings->len; i++) {
            const PlanTightening *each = g_ptr_array_index(step->tightenings, i);
            TightState state = tight_state(source, each);
            if (state.bolts == 0 || state.newest == 0 || (each->group->then_off && !each->again))
                continue;
            if (g_hash_table_size(printed) == 0)
                begin_table(document, source->plan);
            tightened_row(document, source, each, &state,
                          !g_hash_table_add(printed, (gpointer)each->group));
        }
    }
    document_footnotes(document);
}
