#include "sections.h"

static void requirement_row(Document *document, const SheetSource *source,
                            const Requirement *requirement)
{
    g_autofree char *name = requirement_name(requirement), *value = figure_value(requirement);
    g_autofree char *doubt = figure_doubt(requirement), *limits = figure_limits(requirement);
    g_autofree char *verdict = figure_verdict(requirement);
    g_autofree char *notes = footnotes_of(document, source, requirement);
    document_row(document, (const char *const[]){name, value, doubt, figure_unit(requirement),
                                                 limits, verdict, notes});
}

static void section_gates(Document *document, const Assessment *assessment)
{
    for (guint i = 0; i < assessment->gates->len; i++) {
        const GateCount *gate = g_ptr_array_index(assessment->gates, i);
        g_autofree char *counts = counts_words(gate->counts);
        g_autofree char *left =
            gate->left ? g_strdup_printf("%u left", gate->left) : g_strdup("complete");
        g_autofree char *line = g_strdup_printf("%s: %s; %s%s", gate->name, left, counts,
                                                gate->sealed ? "; sealed" : "");
        document_line(document, line);
    }
}

Document *sheet_assessment(const SheetSource *source, gboolean all)
{
    const DocumentColumn columns[] = {
        {"", ALIGN_LEFT},        {"", ALIGN_POINT},       {"", ALIGN_LEFT},   {"", ALIGN_LEFT},
        {"limits", ALIGN_WHOLE}, {"verdict", ALIGN_LEFT}, {"see", ALIGN_LEFT}};
    const Assessment *assessment = source->assessment;
    g_autofree char *title = g_strconcat("Assessment ", source->build, NULL);
    Document *document = document_new("assessment", title);
    section_gates(document, assessment);
    g_autofree char *counts = counts_words(assessment->counts);
    g_autofree char *sum = g_strdup_printf(
        "entries 1 to %" G_GINT64_FORMAT "; plan %u + added %u - withdrawn %u: %s",
        assessment->upto, assessment->planned, assessment->added, assessment->withdrawn, counts);
    document_line(document, sum);
    document_heading(document, 2, all ? "Everything asked for" : "Left, conceded or upheld");
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *each = g_ptr_array_index(assessment->requirements, i);
        if (all || (!each->withdrawn &&
                    (requirement_is_left(each) || each->conceded || each->upheld || each->amended)))
            requirement_row(document, source, each);
    }
    document_footnotes(document);
    return document;
}
