#include "sections.h"

#include <string.h>

// Whether two were argued about in the same words, or neither was.
static gboolean same_words(const SheetSource *source, gint64 one, gint64 other)
{
    const Entry *first = source_entry(source, one), *second = source_entry(source, other);
    return first && second ? g_strcmp0(entry_text(first, "why"), entry_text(second, "why")) == 0
                           : first == second;
}

// Bolts of one stage that came to the same stand in one row.
static gboolean is_alike(const SheetSource *source, const Requirement *one,
                         const Requirement *other)
{
    return one->asked == ASKED_BOLT && other->asked == ASKED_BOLT &&
           strcmp(one->name, other->name) == 0 && one->step == other->step &&
           one->stage == other->stage && one->verdict == other->verdict &&
           one->reason == other->reason && same_words(source, one->upheld, other->upheld) &&
           same_words(source, one->conceded, other->conceded);
}

// `main caps in Crank, stage 2: 3, 4, 1`.
static char *bolts_name(const GPtrArray *alike)
{
    const Requirement *first = g_ptr_array_index(alike, 0);
    if (alike->len == 1)
        return requirement_name(first);
    GString *name = g_string_new(NULL);
    g_string_append_printf(name, "bolt %s in %s, stage %u: ", first->name, first->step->name,
                           first->stage);
    for (guint i = 0; i < alike->len; i++)
        g_string_append_printf(name, "%s%s", i ? ", " : "",
                               ((const Requirement *)g_ptr_array_index(alike, i))->place);
    return g_string_free(name, FALSE);
}

static void requirement_row(Document *document, const SheetSource *source, GPtrArray *alike)
{
    const Requirement *requirement = g_ptr_array_index(alike, 0);
    g_autofree char *name = bolts_name(alike), *value = figure_value(requirement);
    g_autofree char *doubt = figure_doubt(requirement), *limits = figure_limits(requirement);
    g_autofree char *asked = g_strconcat(limits, " ", figure_unit(requirement), NULL);
    g_autofree char *verdict = figure_verdict(requirement);
    g_autofree char *notes = footnotes_of(document, source, requirement);
    document_row(document, (const char *const[]){name, value, doubt, asked, verdict, notes});
    g_ptr_array_set_size(alike, 0);
}

static gboolean is_remarkable(const Requirement *requirement)
{
    return !requirement->withdrawn && (requirement_is_left(requirement) || requirement->conceded ||
                                       requirement->upheld || requirement->amended);
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
    const DocumentColumn columns[] = {{"", ALIGN_LEFT},         {"", ALIGN_POINT},
                                      {"", ALIGN_WHOLE},        {"limits", ALIGN_WHOLE},
                                      {"verdict", ALIGN_WHOLE}, {"see", ALIGN_NOTES}};
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
    g_autoptr(GPtrArray) alike = g_ptr_array_new();
    for (guint i = 0; i < assessment->requirements->len; i++) {
        Requirement *each = g_ptr_array_index(assessment->requirements, i);
        if (!all && !is_remarkable(each))
            continue;
        if (alike->len && !is_alike(source, g_ptr_array_index(alike, 0), each))
            requirement_row(document, source, alike);
        g_ptr_array_add(alike, each);
    }
    if (alike->len)
        requirement_row(document, source, alike);
    document_footnotes(document);
    return document;
}
