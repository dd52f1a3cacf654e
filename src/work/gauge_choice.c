#include "session_inside.h"

#include <standbook/judge/other_gauge.h>
#include <standbook/value/uncertainty.h>
#include <standbook/work/agenda.h>
#include <standbook/work/coarse.h>
#include <standbook/work/gauge_choice.h>
#include <standbook/work/tool_standing.h>
#include <string.h>

static const Requirement *made_at(const Assessment *assessment, guint index)
{
    return g_ptr_array_index(assessment->requirements, index);
}

// WHAT IS TO BE SETTLED -------------------------------------------------------------------------

// Whether a reading goes into a value, itself or by way of others.
static gboolean leads_to(const Assessment *assessment, const Requirement *from,
                         const Requirement *to)
{
    if (!to->check || !to->check->formula)
        return FALSE;
    if (agenda_goes_into(from, to))
        return TRUE;
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *between = made_at(assessment, i);
        if (between->check && between->check->formula && agenda_goes_into(between, to) &&
            leads_to(assessment, from, between))
            return TRUE;
    }
    return FALSE;
}

// What comes first: a value that the gauge could not decide, the place itself, this step's.
static guint weight_of(const Requirement *made, const Requirement *here)
{
    gboolean in_doubt = made->value_verdict == VERDICT_IN_DOUBT;
    return (in_doubt ? 4U : 0U) + (made == here ? 2U : 0U) + (made->step == here->step ? 1U : 0U);
}

static guint settled_by(const Assessment *assessment, guint index)
{
    const Requirement *here = made_at(assessment, index);
    guint best = AGENDA_NOWHERE;
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = made_at(assessment, i);
        if (made->withdrawn || (!made->lower && !made->upper) ||
            (made != here && !leads_to(assessment, here, made)))
            continue;
        if (best == AGENDA_NOWHERE ||
            weight_of(made, here) > weight_of(made_at(assessment, best), here))
            best = i;
    }
    return best;
}

// What the gauge reads of all that goes into it.
static GPtrArray *read_with_it(const Assessment *assessment, const Requirement *here,
                               const Requirement *settled)
{
    GPtrArray *checks = g_ptr_array_new();
    g_ptr_array_add(checks, (gpointer)here->check);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = made_at(assessment, i);
        if (made->asked == ASKED_READ && !made->check->formula && made->step == here->step &&
            g_strcmp0(made->check->gauge, here->check->gauge) == 0 &&
            !g_ptr_array_find(checks, made->check, NULL) && leads_to(assessment, made, settled))
            g_ptr_array_add(checks, (gpointer)made->check);
    }
    return checks;
}

// THE SHOP'S GAUGES -----------------------------------------------------------------------------

// What a gauge must get at; an end that is not known is NULL.
typedef struct {
    const Number *least, *greatest;
} Extent;

// The size of what is read at a place, or at another place of its check; NULL if nothing is.
static const Number *size_of(const Assessment *assessment, const Requirement *here)
{
    for (guint i = 0; !here->value && i < assessment->requirements->len; i++)
        if (made_at(assessment, i)->check == here->check && made_at(assessment, i)->value)
            return made_at(assessment, i)->value;
    return here->value;
}

static gboolean is_planned(const Entry *tool, const PlanCheck *check)
{
    return !check->gauge || g_strcmp0(entry_text(tool, "sort"), check->gauge) == 0;
}

// The size that was read, else what may be read: its own limits.
static Extent extent_of(const Assessment *assessment, const Requirement *here)
{
    const Number *size = size_of(assessment, here);
    return size ? (Extent){size, size} : (Extent){here->lower, here->upper};
}

// Whether the range of a tool, as far as it is marked, has anything of that.
static gboolean reaches(const Entry *tool, const PlanCheck *check, const Extent *extent)
{
    return tool_reaches(tool, extent->least, extent->greatest) &&
           !tool_reads_otherwise(tool, check->kind);
}

static gboolean serves(const Entry *tool, const PlanCheck *check, const Extent *extent)
{
    gboolean planned =
        check->gauge ? is_planned(tool, check)
                     : (extent->least || extent->greatest) && tool_measures(tool, check->kind);
    return planned && reaches(tool, check, extent);
}

static const Entry *stated_on(const Shop *shop, const char *tool, const char *day)
{
    g_autoptr(GPtrArray) all = shop_calibrations(shop, tool);
    const Entry *last = NULL;
    for (guint i = 0; i < all->len; i++)
        if (entry_value(all->pdata[i], "uncertainty", "value") &&
            strcmp(entry_text(all->pdata[i], "date"), day) <= 0)
            last = all->pdata[i];
    return last;
}

// THEIR DOUBT -----------------------------------------------------------------------------------

typedef struct {
    Judgement *judgement;
    const Shop *shop;
    const char *day, *in_hand, *used;
    guint settled;
    GaugeQuestion question;
    const GPtrArray *checks;
    Extent extent;
} Choosing;

// The doubt of what is to be settled if it is read with this tool.
static Number *variance_with(const Choosing *choosing, const Entry *tool, gboolean *whole)
{
    const Entry *stated = stated_on(choosing->shop, entry_text(tool, "id"), choosing->day);
    g_autoptr(Number) expanded = stated ? entry_width(stated, "uncertainty") : NULL;
    g_autoptr(Number) repeat = stated ? entry_width(stated, "repeat") : NULL;
    g_autoptr(Number) graduation = entry_width(tool, "graduation");
    const GaugeTrial trial = {choosing->checks,
                              {entry_text(tool, "id"), expanded, repeat, graduation}};
    return expanded || graduation
               ? judgement_variance_with(choosing->judgement, choosing->settled, &trial, whole)
               : NULL;
}

static GaugeChoice choice_of(const Choosing *choosing, const Entry *tool, const PlanCheck *check)
{
    const char *note = entry_text(tool, "note");
    GaugeChoice choice = {.label = shop_label(tool),
                          .words = note ? note : entry_text(tool, "sort"),
                          .in_hand = g_strcmp0(choosing->in_hand, shop_label(tool)) == 0,
                          .used = g_strcmp0(choosing->used, shop_label(tool)) == 0,
                          .as_planned = is_planned(tool, check),
                          .out_of_range = !reaches(tool, check, &choosing->extent),
                          .outlook = GAUGE_CANNOT};
    choice.fault = tool_fault_words(choosing->shop, tool, TOOL_GAUGE, moment_of_day(choosing->day));
    gboolean whole = TRUE;
    g_autoptr(Number) variance = choice.out_of_range ? NULL : variance_with(choosing, tool, &whole);
    if (!variance)
        return choice;
    choice.least = !whole;
    choice.doubt = uncertainty_expanded(variance);
    choice.inside = gauge_inside(&choosing->question, variance);
    choice.outlook = gauge_outlook(&choosing->question, variance);
    return choice;
}

static gint compare_flags(gboolean one, gboolean other)
{
    return (other ? 1 : 0) - (one ? 1 : 0);
}

static gint compare(gconstpointer a, gconstpointer b)
{
    const GaugeChoice *one = a, *other = b;
    if (!one->fault != !other->fault)
        return compare_flags(!one->fault, !other->fault);
    if (one->outlook != other->outlook)
        return one->outlook < other->outlook ? -1 : 1;
    if (one->as_planned != other->as_planned)
        return compare_flags(one->as_planned, other->as_planned);
    if (!one->doubt || !other->doubt)
        return compare_flags(one->doubt != NULL, other->doubt != NULL);
    gint finer = number_compare(one->doubt, other->doubt);
    return finer ? finer : strcmp(one->label, other->label);
}

static void choice_clear(gpointer data)
{
    GaugeChoice *choice = data;
    number_free(choice->doubt);
    number_free(choice->inside);
    g_free(choice->fault);
}

void gauge_choices_clear(GaugeChoices *choices)
{
    number_free(choices->wanted);
    g_array_unref(choices->gauges);
}

static void add_gauges(const Choosing *choosing, const Requirement *here, GArray *gauges)
{
    g_autoptr(GPtrArray) tools = shop_in_use(choosing->shop, "tool", NULL);
    for (guint i = 0; i < tools->len; i++) {
        const Entry *tool = tools->pdata[i];
        const char *label = shop_label(tool);
        if (g_strcmp0(choosing->in_hand, label) != 0 && g_strcmp0(choosing->used, label) != 0 &&
            !serves(tool, here->check, &choosing->extent))
            continue;
        const GaugeChoice choice = choice_of(choosing, tool, here->check);
        g_array_append_val(gauges, choice);
    }
    g_array_sort(gauges, compare);
}

GaugeChoices gauge_choices(Judgement *judgement, const Shop *shop, const char *day, guint index,
                           const char *in_hand, const char *used)
{
    const Assessment *assessment = judgement_now(judgement);
    const Requirement *here = made_at(assessment, index);
    GaugeChoices choices = {.gauges = g_array_new(FALSE, FALSE, sizeof(GaugeChoice))};
    g_array_set_clear_func(choices.gauges, choice_clear);
    guint settled = here->asked == ASKED_READ && here->check && !here->check->formula
                        ? settled_by(assessment, index)
                        : AGENDA_NOWHERE;
    if (settled == AGENDA_NOWHERE)
        return choices;
    const Requirement *made = made_at(assessment, settled);
    g_autoptr(GPtrArray) checks = read_with_it(assessment, here, made);
    const Choosing choosing = {judgement,
                               shop,
                               day,
                               in_hand,
                               used,
                               settled,
                               {made->lower, made->upper, made->value},
                               checks,
                               extent_of(assessment, here)};
    choices.settled = made;
    choices.read = made->value != NULL;
    choices.wanted = gauge_doubt_wanted(&choosing.question);
    add_gauges(&choosing, here, choices.gauges);
    return choices;
}

// The gauge of the newest reading at a place; NULL if there is none.
static const char *used_at(Session *session, guint index)
{
    gint64 seq = made_at(session_assessment(session), index)->entry;
    const GPtrArray *entries = session_entries(session);
    const Entry *entry = seq > 0 && seq <= entries->len ? entries->pdata[seq - 1] : NULL;
    const char *id = entry ? entry_tool(entry) : NULL;
    const Entry *tool = id ? shop_by_id(session->shop, "tool", id) : NULL;
    return tool ? shop_label(tool) : NULL;
}

GaugeChoices session_gauges(Session *session, guint index, const char *in_hand)
{
    g_autofree char *now = moment_text(session->options.now(session->options.user));
    now[strlen("2025-03-13")] = '\0';
    return gauge_choices(session->judgement, session->shop, now, index, in_hand,
                         used_at(session, index));
}

// WORDS -----------------------------------------------------------------------------------------

char *gauge_doubt_words(const GaugeChoices *choices, const GaugeChoice *choice)
{
    if (!choice->doubt)
        return g_strdup(choice->out_of_range ? "" : "±?");
    const Requirement *settled = choices->settled;
    g_autofree char *width = settled->value ? check_doubt_beside(settled->check, settled->value,
                                                                 settled->decimals, choice->doubt)
                                            : check_doubt_words(settled->check, choice->doubt);
    return g_strconcat(choice->least ? "at least ±" : "±", width, NULL);
}

char *gauge_outlook_said(const GaugeChoices *choices, const GaugeChoice *choice)
{
    const char *hand = choice->in_hand ? " (in hand)" : choice->used ? " (used)" : "";
    if (!choice->doubt)
        return g_strconcat(choice->out_of_range ? "out of its range" : "doubt not known", hand,
                           NULL);
    if (choice->fault && choice->outlook != GAUGE_CANNOT) // however fine it is
        return g_strconcat("in doubt", hand, NULL);
    if (choice->outlook != GAUGE_CAN)
        return g_strconcat(gauge_outlook_words(choice->outlook), hand, NULL);
    g_autofree char *inside = check_doubt_words(choices->settled->check, choice->inside);
    return g_strdup_printf("passes only %s inside%s", inside, hand);
}

static const GaugeChoice *used_of(const GaugeChoices *choices)
{
    for (guint i = 0; i < choices->gauges->len; i++)
        if (g_array_index(choices->gauges, GaugeChoice, i).used)
            return &g_array_index(choices->gauges, GaugeChoice, i);
    return NULL;
}

// A doubt that still settles it must not be rounded up; NULL where none that is shown does.
static char *doubt_down(const PlanCheck *check, const Number *doubt)
{
    g_autoptr(Number) step = check_step(check), two = number_from_integer(2);
    g_autoptr(Number) half = number_divide(step, two), less = number_subtract(doubt, half);
    g_autofree char *digits = check_width_words(check, less);
    if (number_compare(less, half) < 0)
        return NULL;
    return g_strdup(digits + (g_str_has_prefix(digits, "0.") ? 1 : 0));
}

char *gauge_choices_sentence(const GaugeChoices *choices)
{
    const GaugeChoice *used = used_of(choices);
    if (!choices->read || !used || !used->inside || used->outlook != GAUGE_CANNOT)
        return NULL;
    const PlanCheck *check = choices->settled->check;
    g_autoptr(Number) inside = nearest_inside(choices->settled, NULL);
    g_autoptr(Number) size = number_abs(inside);
    g_autofree char *by = check_width_words(check, size);
    g_autofree char *needs = check_doubt_words(check, used->inside);
    g_autofree char *wanted = doubt_down(check, choices->wanted);
    gboolean out = number_sign(inside) < 0;
    g_autofree char *settles = wanted ? g_strdup_printf("A doubt of ±%s settles it.", wanted)
                                      : g_strdup("No doubt shown is fine enough.");
    return g_strdup_printf("%s by %s; with %s a %s needs %s. %s", out ? "Outside" : "Inside", by,
                           used->label, out ? "fail" : "pass", needs, settles);
}
