// The customer's sheet: what was found and decided about, not answered by later work.
#include "sections.h"

#include <string.h>

// `some, asked for none`, `0.09 mm, limits at most 0.05`
static char *found_words(const Requirement *made)
{
    g_autofree char *value = figure_value(made), *limits = figure_limits(made);
    gboolean read = made->asked == ASKED_READ;
    const char *unit = read ? figure_unit(made) : "";
    return g_strconcat(read ? value : made->answer, *unit ? " " : "", unit, ", asked for ", limits,
                       NULL);
}

// `keep: to be watched. MO 2025-03-02; the customer's consent: telephone.`
static char *decision_words(const SheetSource *source, const Entry *decided)
{
    const char *who = entry_text(decided, "who"), *consent = entry_text(decided, "consent");
    g_autofree char *when = entry_when(decided);
    return g_strdup_printf("%s: %s. %s %.10s%s%s.", entry_text(decided, "decision"),
                           entry_text(decided, "why"),
                           who ? who : taken_name(source->taken, decided->by), when,
                           consent ? "; the customer's consent: " : "", consent ? consent : "");
}

// A line of the table: places that were found and decided alike.
typedef struct {
    const Requirement *first;
    GPtrArray *places; // const char *
    char *found, *decided;
} Decided;

static void decided_clear(Decided *decided)
{
    g_clear_pointer(&decided->places, g_ptr_array_unref);
    g_clear_pointer(&decided->found, g_free);
    g_clear_pointer(&decided->decided, g_free);
}

static void decided_row(Document *document, const Decided *decided)
{
    g_autofree char *runs = places_runs(decided->first->check->places, decided->places);
    g_autofree char *name = g_strconcat(decided->first->name, *runs ? " " : "", runs, NULL);
    document_row(document, (const char *const[]){name, decided->found, decided->decided});
}

static gboolean is_alike(const Decided *one, const Decided *other)
{
    return one->first && one->first->check == other->first->check &&
           one->first->step == other->first->step && strcmp(one->found, other->found) == 0 &&
           strcmp(one->decided, other->decided) == 0;
}

// What is reworked or replaced and read again is told by the figures of that.
static const Entry *decision_of(const SheetSource *source, const Requirement *made)
{
    const Entry *entry = source_entry(source, made->withdrawn ? 0 : made->decided);
    gboolean told =
        entry && !made->check->by_decision && g_strcmp0(entry_text(entry, "decision"), "keep") != 0;
    return told || made->verdict != VERDICT_NOTED ? NULL : entry;
}

void section_decided(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {
        {"", ALIGN_LEFT}, {"found", ALIGN_LEFT}, {"decided", ALIGN_LEFT}};
    const GPtrArray *all = source->assessment->requirements;
    Decided line = {.first = NULL};
    for (guint i = 0; i < all->len; i++) {
        const Requirement *made = all->pdata[i];
        const Entry *entry = decision_of(source, made);
        if (!entry)
            continue;
        Decided next = {made, NULL, found_words(made), decision_words(source, entry)};
        if (!line.first) {
            document_heading(document, 1, "Found and decided");
            document_table(document, columns, G_N_ELEMENTS(columns));
        }
        if (is_alike(&line, &next)) {
            decided_clear(&next);
        } else {
            if (line.first)
                decided_row(document, &line);
            decided_clear(&line);
            line = next;
            line.places = g_ptr_array_new();
        }
        g_ptr_array_add(line.places, made->place);
    }
    if (line.first)
        decided_row(document, &line);
    decided_clear(&line);
}
