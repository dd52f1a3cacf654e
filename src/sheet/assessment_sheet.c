#include "sections.h"

#include <standbook/work/gate.h>
#include <string.h>

// Whether two stand in one row: places of one check, bolts of one stage, with the same verdict.
static gboolean is_alike(const Requirement *one, const Requirement *other)
{
    if (one->asked != other->asked || one->asked == ASKED_SIGN || one->step != other->step ||
        one->stage != other->stage || one->verdict != other->verdict ||
        one->reason != other->reason || one->doubts != other->doubts ||
        strcmp(one->name, other->name) != 0)
        return FALSE;
    g_autofree char *limits = figure_limits(one), *others = figure_limits(other);
    return strcmp(limits, others) == 0;
}

// How many places or bolts the plan asks for there.
static guint places_asked(const Assessment *assessment, const Requirement *one)
{
    guint count = 0;
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *each = g_ptr_array_index(assessment->requirements, i);
        count += !each->withdrawn && each->asked == one->asked && each->step == one->step &&
                         each->stage == one->stage && strcmp(each->name, one->name) == 0
                     ? 1
                     : 0;
    }
    return count;
}

// `bolt main caps in Crank, stage 2: all 6`, `read bore in Block: 1, front; 3, rear`.
static char *row_name(const Assessment *assessment, const GPtrArray *alike)
{
    const Requirement *first = g_ptr_array_index(alike, 0);
    if (alike->len == 1)
        return requirement_name(first);
    g_autofree char *whole = requirement_name(first);
    const char *place = strrchr(whole, '[');
    GString *name = g_string_new_len(whole, place ? place - whole : (gssize)strlen(whole));
    if (first->stage)
        g_string_append_printf(name, ", stage %u", first->stage);
    if (alike->len == places_asked(assessment, first)) {
        g_string_append_printf(name, ": all %u", alike->len);
        return g_string_free(name, FALSE);
    }
    for (guint i = 0; i < alike->len; i++) {
        const Requirement *each = g_ptr_array_index(alike, i);
        const char *parting = i == 0 ? ": " : g_strv_length(each->labels) > 1 ? "; " : ", ";
        g_string_append_printf(name, "%s%s", parting, each->place);
    }
    return g_string_free(name, FALSE);
}

static int compare_values(gconstpointer a, gconstpointer b)
{
    const Requirement *one = *(Requirement *const *)a, *other = *(Requirement *const *)b;
    return one->value && other->value ? number_compare(one->value, other->value) : 0;
}

// `0.147 to 0.153`: the least and the greatest, or the one figure.
static char *row_value(const GPtrArray *alike)
{
    g_autoptr(GPtrArray) sorted = g_ptr_array_copy((GPtrArray *)alike, NULL, NULL);
    g_ptr_array_sort(sorted, compare_values);
    char *least = figure_value(g_ptr_array_index(sorted, 0));
    g_autofree char *most = figure_value(g_ptr_array_index(sorted, sorted->len - 1));
    if (strcmp(least, most) == 0)
        return least;
    char *both = g_strconcat(least, " to ", most, NULL);
    g_free(least);
    return both;
}

// The greatest doubt of all, as the least favourable must be known.
static char *row_doubt(const GPtrArray *alike)
{
    const Requirement *worst = g_ptr_array_index(alike, 0);
    for (guint i = 1; i < alike->len; i++) {
        const Requirement *each = g_ptr_array_index(alike, i);
        if (each->variance && worst->variance &&
            number_compare(each->variance, worst->variance) > 0)
            worst = each;
    }
    return figure_doubt(worst);
}

// The numbers of the footnotes of all, each once.
static char *row_notes(Document *document, const SheetSource *source, const GPtrArray *alike)
{
    g_autoptr(GPtrArray) known = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < alike->len; i++) {
        g_autofree char *notes = footnotes_of(document, source, g_ptr_array_index(alike, i));
        g_auto(GStrv) numbers = g_strsplit(notes, " ", -1);
        for (guint n = 0; numbers[n]; n++)
            if (!g_ptr_array_find_with_equal_func(known, numbers[n], g_str_equal, NULL))
                g_ptr_array_add(known, g_strdup(numbers[n]));
    }
    g_ptr_array_add(known, NULL);
    return g_strjoinv(" ", (GStrv)known->pdata);
}

static void requirement_row(Document *document, const SheetSource *source, const GPtrArray *alike)
{
    const Requirement *first = g_ptr_array_index(alike, 0);
    g_autofree char *name = row_name(source->assessment, alike), *value = row_value(alike);
    g_autofree char *doubt = row_doubt(alike), *asked = figure_asked(first);
    g_autofree char *verdict = alike->len == 1 || first->verdict != VERDICT_FAIL
                                   ? figure_verdict(first)
                                   : g_strconcat("fail: ", reason_words(first->reason), NULL);
    g_autofree char *notes = row_notes(document, source, alike);
    document_row(document, (const char *const[]){name, value, doubt, asked, verdict, notes});
}

typedef gboolean (*Wanted)(const Requirement *requirement);

static gboolean is_any(const Requirement *requirement)
{
    return requirement != NULL;
}

static gboolean is_left(const Requirement *requirement)
{
    return !requirement->withdrawn && requirement_is_left(requirement);
}

static gboolean is_argued(const Requirement *requirement)
{
    return !requirement->withdrawn && !requirement_is_left(requirement) &&
           (requirement->conceded || requirement->upheld || requirement->amended);
}

// STEPS NOT BEGUN

// What a step asks for if nothing of it was begun, else 0.
static guint not_begun(const Assessment *assessment, const PlanStep *step)
{
    guint count = 0;
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *each = g_ptr_array_index(assessment->requirements, i);
        if (each->step != step || each->withdrawn)
            continue;
        if (each->verdict != VERDICT_OPEN || each->entry > 0)
            return 0;
        count++;
    }
    return count;
}

// Steps of which nothing was begun (PlanStep *) where there are several: each is then one row.
static GPtrArray *steps_not_begun(const SheetSource *source)
{
    GPtrArray *steps = g_ptr_array_new();
    for (guint i = 0; i < source->plan->steps->len; i++)
        if (not_begun(source->assessment, g_ptr_array_index(source->plan->steps, i)))
            g_ptr_array_add(steps, g_ptr_array_index(source->plan->steps, i));
    if (steps->len == 1)
        g_ptr_array_set_size(steps, 0);
    return steps;
}

static void step_row(Document *document, const SheetSource *source, const PlanStep *step)
{
    g_autofree char *name = g_strdup_printf("step %s, not begun: all %u", step->name,
                                            not_begun(source->assessment, step));
    document_row(document, (const char *const[]){name, "", "", "", "open", ""});
}

// ROWS

// Adds a requirement to the group it is alike, or to one of its own.
static void group_add(GPtrArray *groups, Requirement *each, gboolean grouped)
{
    for (guint i = 0; grouped && i < groups->len; i++) {
        GPtrArray *group = g_ptr_array_index(groups, i);
        if (is_alike(g_ptr_array_index(group, 0), each)) {
            g_ptr_array_add(group, each);
            return;
        }
    }
    GPtrArray *group = g_ptr_array_new();
    g_ptr_array_add(group, each);
    g_ptr_array_add(groups, group);
}

// Those wanted under their heading; nothing if there is none.
static void section_wanted(Document *document, const SheetSource *source, const char *heading,
                           Wanted wanted, gboolean grouped)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT},         {"", ALIGN_POINT},
                                      {"", ALIGN_WHOLE},        {"limits", ALIGN_WHOLE},
                                      {"verdict", ALIGN_WHOLE}, {"see", ALIGN_NOTES}};
    g_autoptr(GPtrArray) steps = grouped ? steps_not_begun(source) : g_ptr_array_new();
    g_autoptr(GPtrArray) groups = g_ptr_array_new_with_free_func((GDestroyNotify)g_ptr_array_unref);
    for (guint i = 0; i < source->assessment->requirements->len; i++) {
        Requirement *each = g_ptr_array_index(source->assessment->requirements, i);
        if (wanted(each))
            group_add(groups, each, grouped);
    }
    if (groups->len == 0)
        return;
    document_heading(document, 2, heading);
    document_table(document, columns, G_N_ELEMENTS(columns));
    if (!grouped)
        document_tight(document);
    const PlanStep *told = NULL;
    for (guint i = 0; i < groups->len; i++) {
        const GPtrArray *group = g_ptr_array_index(groups, i);
        const PlanStep *step = ((const Requirement *)g_ptr_array_index(group, 0))->step;
        if (!g_ptr_array_find(steps, step, NULL))
            requirement_row(document, source, group);
        else if (step != told)
            step_row(document, source, step);
        told = step;
    }
}

static void section_gates(Document *document, const SheetSource *source)
{
    const Assessment *assessment = source->assessment;
    for (guint i = 0; i < assessment->gates->len; i++) {
        const GateCount *gate = g_ptr_array_index(assessment->gates, i);
        g_autofree char *counts =
            counts_words(gate->counts, gate_optional(gate->counts, gate->left));
        g_autofree char *left =
            gate->left ? g_strdup_printf("%u left", gate->left) : g_strdup("complete");
        g_autofree char *seal = gate_seal_words(gate, source->entries, 0);
        g_autofree char *line =
            g_strdup_printf("%s: %s; %s%s%s", gate->name, left, counts, *seal ? "; " : "", seal);
        document_line(document, line);
    }
}

Document *sheet_assessment(const SheetSource *source, gboolean all)
{
    const Assessment *assessment = source->assessment;
    g_autofree char *title = g_strconcat("Assessment ", source->build, NULL);
    Document *document = document_new("assessment", title);
    section_gates(document, source);
    g_autofree char *counts = counts_words(assessment->counts, gate_all_optional(assessment));
    g_autofree char *sum = g_strdup_printf(
        "entries 1 to %" G_GINT64_FORMAT "; plan %u + added %u - withdrawn %u: %s",
        assessment->upto, assessment->planned, assessment->added, assessment->withdrawn, counts);
    document_line(document, sum);
    if (all) {
        section_wanted(document, source, "Everything asked for", is_any, FALSE);
    } else {
        section_wanted(document, source, "Left", is_left, TRUE);
        section_wanted(document, source, "Conceded, upheld or amended", is_argued, TRUE);
    }
    document_footnotes(document);
    return document;
}
