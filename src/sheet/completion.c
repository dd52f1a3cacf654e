#include "sections.h"

#include <standbook/work/gate.h>
#include <string.h>

static gboolean is_of_gate(const Requirement *requirement, guint gate)
{
    return requirement->gate <= gate && !requirement->withdrawn;
}

// What is known of a gap: its figure and limits, what is missing, or what its reason means.
static char *gap_words(const SheetSource *source, const Requirement *requirement)
{
    if (requirement->verdict == VERDICT_OPEN && requirement->notes->len)
        return g_strdup(g_ptr_array_index(requirement->notes, 0));
    if (requirement->asked_for > 1 && requirement->asked_for > requirement->read)
        return g_strdup_printf("%u of %u read", requirement->read, requirement->asked_for);
    if (requirement->verdict == VERDICT_OPEN)
        return g_strdup("");
    g_autofree char *value = figure_value(requirement), *doubt = figure_doubt(requirement);
    g_autofree char *limits = figure_limits(requirement), *asked = figure_asked(requirement);
    g_autofree char *reason = figure_reason(requirement, source->taken, source->entries);
    return g_strconcat(value, *doubt ? " " : "", doubt,
                       *limits  ? ", asked "
                       : *asked ? " "
                                : "",
                       asked, *value || *asked ? ". " : "", reason, NULL);
}

// Places that are all simply open stand in one row.
static gboolean is_alike(const Requirement *one, const Requirement *other)
{
    return one->verdict == VERDICT_OPEN && other->verdict == VERDICT_OPEN && one->entry == 0 &&
           other->entry == 0 && one->asked == other->asked && one->step == other->step &&
           one->stage == other->stage && one->asked != ASKED_SIGN &&
           strcmp(one->name, other->name) == 0;
}

static char *gap_name(const GPtrArray *alike)
{
    const Requirement *first = g_ptr_array_index(alike, 0);
    if (alike->len == 1)
        return requirement_name(first);
    if (first->stage)
        return g_strdup_printf("%s %s, stage %u: %u", asked_words(first->asked), first->name,
                               first->stage, alike->len);
    return g_strdup_printf("%s %s: %u places", asked_words(first->asked), first->name, alike->len);
}

static void gap_row(Document *document, const SheetSource *source, GPtrArray *alike)
{
    const Requirement *requirement = g_ptr_array_index(alike, 0);
    g_autofree char *name = gap_name(alike), *verdict = figure_verdict(requirement);
    g_autofree char *words = alike->len == 1 ? gap_words(source, requirement) : g_strdup("");
    document_row(document, (const char *const[]){name, verdict, words, requirement->step->name});
    g_ptr_array_set_size(alike, 0);
}

static void section_gaps(Document *document, const SheetSource *source, guint gate)
{
    const DocumentColumn columns[] = {
        {"gap", ALIGN_LEFT}, {"", ALIGN_LEFT}, {"", ALIGN_LEFT}, {"in step", ALIGN_LEFT}};
    const GPtrArray *all = source->assessment->requirements;
    const GateCount *count = g_ptr_array_index(source->assessment->gates, gate);
    document_heading(document, 1, "Gaps");
    if (count->left == 0) {
        document_line(document, "None. Everything asked for up to this gate is done, inside its "
                                "limits or accepted by name.");
        return;
    }
    document_table(document, columns, G_N_ELEMENTS(columns));
    g_autoptr(GPtrArray) alike = g_ptr_array_new();
    for (guint i = 0; i < all->len; i++) {
        Requirement *each = g_ptr_array_index(all, i);
        if (!is_of_gate(each, gate) || !requirement_is_left(each))
            continue;
        if (alike->len && !is_alike(g_ptr_array_index(alike, 0), each))
            gap_row(document, source, alike);
        g_ptr_array_add(alike, each);
    }
    if (alike->len)
        gap_row(document, source, alike);
}

// What does not keep the gate from being complete and must be known all the same.
typedef gboolean (*Wanted)(const Requirement *requirement);

static gboolean is_conceded(const Requirement *requirement)
{
    return requirement->verdict == VERDICT_CONCEDED;
}

static gboolean is_upheld(const Requirement *requirement)
{
    return requirement->upheld > 0 && requirement->verdict == VERDICT_PASS;
}

static gboolean is_left_out(const Requirement *requirement)
{
    return requirement->verdict == VERDICT_NOT_NEEDED;
}

static gboolean is_optional_open(const Requirement *requirement)
{
    return requirement->verdict == VERDICT_OPEN && requirement->optional;
}

static void section_known(Document *document, const SheetSource *source, guint gate,
                          const char *heading, Wanted wanted)
{
    const DocumentColumn columns[] = {
        {"", ALIGN_LEFT}, {"", ALIGN_POINT}, {"", ALIGN_LEFT}, {"see", ALIGN_NOTES}};
    const GPtrArray *all = source->assessment->requirements;
    gboolean begun = FALSE;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (!is_of_gate(each, gate) || !wanted(each))
            continue;
        if (!begun) {
            document_heading(document, 1, heading);
            document_table(document, columns, G_N_ELEMENTS(columns));
        }
        begun = TRUE;
        g_autofree char *name = requirement_name(each), *value = figure_value(each);
        g_autofree char *asked = figure_asked(each);
        g_autofree char *notes = footnotes_of(document, source, each);
        document_row(document, (const char *const[]){name, value, asked, notes});
    }
    document_footnotes(document);
}

// What is left at a later gate holds what is left at this one.
static char *due_words(const GateCount *gate, const GateCount *later)
{
    return later->left > gate->left
               ? g_strdup_printf("Due beyond it, up to %s: %u left.", later->name,
                                 later->left - gate->left)
               : g_strdup_printf("Nothing is due beyond it, up to %s.", later->name);
}

static void section_counts(Document *document, const SheetSource *source, guint gate)
{
    const Assessment *assessment = source->assessment;
    const GateCount *count = g_ptr_array_index(assessment->gates, gate);
    g_autofree char *here = counts_words(count->counts, gate_optional(count->counts, count->left));
    g_autofree char *whole = counts_words(assessment->counts, gate_all_optional(assessment));
    g_autofree char *sum =
        g_strdup_printf("Plan %u + added %u - withdrawn %u = %u requirements: %s.",
                        assessment->planned, assessment->added, assessment->withdrawn,
                        assessment->planned + assessment->added - assessment->withdrawn, whole);
    g_autofree char *line = g_strdup_printf("Up to this gate: %s.", here);
    document_line(document, line);
    document_line(document, sum);
    for (guint i = gate + 1; i < assessment->gates->len; i++) {
        g_autofree char *due = due_words(count, g_ptr_array_index(assessment->gates, i));
        document_line(document, due);
    }
}

Document *sheet_completion(const SheetSource *source, guint gate)
{
    const GateCount *count = g_ptr_array_index(source->assessment->gates, gate);
    g_autofree char *title =
        g_strdup_printf("Completion report %s: %s", source->build, count->name);
    Document *document = document_new("completion", title);
    section_head(document, source);
    g_autofree char *state =
        count->left ? g_strdup_printf("NOT COMPLETE for %s: %u left.", count->name, count->left)
                    : g_strdup_printf("Complete for %s.", count->name);
    document_paragraph(document, state);
    section_counts(document, source, gate);
    section_gaps(document, source, gate);
    section_known(document, source, gate, "Conceded", is_conceded);
    section_known(document, source, gate, "Upheld", is_upheld);
    section_known(document, source, gate, "Not needed", is_left_out);
    section_known(document, source, gate, "Optional and not done", is_optional_open);
    section_precedence(document);
    section_digest(document, source);
    return document;
}
