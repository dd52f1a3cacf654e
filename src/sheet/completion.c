#include "sections.h"

static gboolean is_of_gate(const Requirement *requirement, guint gate)
{
    return requirement->gate <= gate && !requirement->withdrawn;
}

static void gap_row(Document *document, const Requirement *requirement)
{
    g_autofree char *name = requirement_name(requirement);
    g_autofree char *verdict = figure_verdict(requirement);
    const char *first = requirement->notes->len ? g_ptr_array_index(requirement->notes, 0) : NULL;
    g_autofree char *missing =
        requirement->asked_for > requirement->read && requirement->asked_for > 1
            ? g_strdup_printf("%u of %u read", requirement->read, requirement->asked_for)
            : NULL;
    const char *words =
        first     ? first
        : missing ? missing
                  : reason_sentence(requirement->verdict == VERDICT_OPEN ? REASON_NONE
                                                                         : requirement->reason);
    document_row(document, (const char *const[]){name, verdict, words, requirement->step->name});
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
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (is_of_gate(each, gate) && requirement_is_left(each))
            gap_row(document, each);
    }
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
        {"", ALIGN_LEFT}, {"", ALIGN_POINT}, {"", ALIGN_LEFT}, {"see", ALIGN_LEFT}};
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
        g_autofree char *limits = figure_limits(each);
        g_autofree char *notes = footnotes_of(document, source, each);
        document_row(document, (const char *const[]){name, value, limits, notes});
    }
    document_footnotes(document);
}

static void section_counts(Document *document, const SheetSource *source, guint gate)
{
    const Assessment *assessment = source->assessment;
    const GateCount *count = g_ptr_array_index(assessment->gates, gate);
    g_autofree char *here = counts_words(count->counts);
    g_autofree char *whole = counts_words(assessment->counts);
    g_autofree char *sum =
        g_strdup_printf("Plan %u + added %u - withdrawn %u = %u requirements: %s.",
                        assessment->planned, assessment->added, assessment->withdrawn,
                        assessment->planned + assessment->added - assessment->withdrawn, whole);
    g_autofree char *line = g_strdup_printf("Up to this gate: %s.", here);
    document_line(document, line);
    document_line(document, sum);
    for (guint i = gate + 1; i < assessment->gates->len; i++) {
        const GateCount *later = g_ptr_array_index(assessment->gates, i);
        g_autofree char *due =
            g_strdup_printf("Due beyond it, up to %s: %u left.", later->name, later->left);
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
    return document;
}
