#include "sections.h"

#include <standbook/record/live.h>
#include <string.h>

enum { SINGLE_PLACES = 4 }; // up to so many places of one check are printed one by one

// The last requirement of a check's place in the order of the work: a check read again, or moved to
// a later step, is printed as it was left.
static gboolean is_last(const SheetSource *source, guint index)
{
    const GPtrArray *all = source->assessment->requirements;
    const Requirement *one = g_ptr_array_index(all, index);
    for (guint i = index + 1; i < all->len; i++) {
        const Requirement *other = g_ptr_array_index(all, i);
        if (other->asked == one->asked && !other->withdrawn && other->value &&
            strcmp(other->name, one->name) == 0 && strcmp(other->place, one->place) == 0)
            return FALSE;
    }
    return TRUE;
}

static gboolean is_plain(const Requirement *requirement)
{
    return requirement->verdict == VERDICT_PASS && !requirement->upheld && !requirement->amended;
}

// A figure with limits, as left.
static gboolean is_measured(const SheetSource *source, guint index)
{
    const Requirement *requirement = g_ptr_array_index(source->assessment->requirements, index);
    return requirement->asked == ASKED_READ && !requirement->finding && !requirement->withdrawn &&
           requirement->value && requirement->verdict != VERDICT_NOT_NEEDED &&
           (requirement->lower || requirement->upper) && is_last(source, index);
}

typedef gboolean (*Chosen)(const SheetSource *source, guint index);

// The chosen requirements in groups of one check in one step (GPtrArray of const Requirement *).
static GPtrArray *groups_of(const SheetSource *source, Chosen chosen)
{
    GPtrArray *groups = g_ptr_array_new_with_free_func((GDestroyNotify)g_ptr_array_unref);
    const GPtrArray *all = source->assessment->requirements;
    const Requirement *before = NULL;
    for (guint i = 0; i < all->len; i++) {
        Requirement *each = g_ptr_array_index(all, i);
        if (!chosen(source, i))
            continue;
        if (!before || strcmp(before->name, each->name) != 0 || before->step != each->step)
            g_ptr_array_add(groups, g_ptr_array_new());
        g_ptr_array_add(g_ptr_array_index(groups, groups->len - 1), each);
        before = each;
    }
    return groups;
}

static void measured_row(Document *document, const SheetSource *source, const char *name,
                         const char *value, const char *doubt, const Requirement *requirement)
{
    g_autofree char *limits = figure_limits(requirement);
    g_autofree char *asked = g_strconcat(limits, " ", figure_unit(requirement), NULL);
    g_autofree char *notes = footnotes_of(document, source, requirement);
    document_row(document, (const char *const[]){name, value, doubt, asked,
                                                 verdict_words(requirement->verdict), notes});
}

static int compare_values(gconstpointer a, gconstpointer b)
{
    const Requirement *one = *(Requirement *const *)a, *other = *(Requirement *const *)b;
    return number_compare(one->value, other->value);
}

// The least and the greatest of places that all passed with the same limits.
static void measured_range(Document *document, const SheetSource *source, GPtrArray *plain)
{
    const Requirement *any = g_ptr_array_index(plain, 0);
    g_ptr_array_sort(plain, compare_values);
    g_autofree char *least = figure_value(g_ptr_array_index(plain, 0));
    g_autofree char *most = figure_value(g_ptr_array_index(plain, plain->len - 1));
    g_autofree char *name = g_strdup_printf("%s, %u places", any->name, plain->len);
    g_autofree char *to = strcmp(least, most) == 0 ? g_strdup("") : g_strconcat("to ", most, NULL);
    measured_row(document, source, name, least, to, any);
}

static gboolean same_limits(const GPtrArray *group)
{
    const Requirement *first = g_ptr_array_index(group, 0);
    g_autofree char *limits = figure_limits(first);
    for (guint i = 1; i < group->len; i++) {
        g_autofree char *other = figure_limits(g_ptr_array_index(group, i));
        if (strcmp(limits, other) != 0)
            return FALSE;
    }
    return TRUE;
}

static void measured_group(Document *document, const SheetSource *source, const GPtrArray *group)
{
    gboolean one_by_one = group->len <= SINGLE_PLACES || !same_limits(group);
    g_autoptr(GPtrArray) plain = g_ptr_array_new();
    for (guint i = 0; i < group->len; i++) {
        Requirement *each = g_ptr_array_index(group, i);
        if (!one_by_one && is_plain(each) && each->value) {
            g_ptr_array_add(plain, each);
            continue;
        }
        g_autofree char *name = figure_name(each), *value = figure_value(each);
        g_autofree char *doubt = figure_doubt(each);
        measured_row(document, source, name, value, doubt, each);
    }
    if (plain->len)
        measured_range(document, source, plain);
}

static void section_measured(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT},  {"", ALIGN_POINT},
                                      {"", ALIGN_WHOLE}, {"limits", ALIGN_WHOLE},
                                      {"", ALIGN_WHOLE}, {"see", ALIGN_WHOLE}};
    g_autoptr(GPtrArray) groups = groups_of(source, is_measured);
    if (groups->len == 0)
        return;
    document_heading(document, 1, "Measured");
    document_line(document, "± is what the gauge cannot tell (U, k = 2).");
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < groups->len; i++)
        measured_group(document, source, g_ptr_array_index(groups, i));
    document_footnotes(document);
}

// PARTS

// `main shells 2, upper`: the part or check that a field names, and the place.
static char *place_words(const Entry *entry, const char *field)
{
    GString *words = g_string_new(entry_text(entry, field));
    for (gsize i = 0; i < entry_list_length(entry, "place"); i++)
        g_string_append_printf(words, "%s%s", i ? ", " : " ", entry_list_item(entry, "place", i));
    return g_string_free(words, FALSE);
}

static void part_row(Document *document, const SheetSource *source, const Entry *entry)
{
    const char *lot = taken_text(source->taken, "lot", entry_text(entry, "lot"), "label");
    const char *serial = entry_text(entry, "serial"), *why = entry_text(entry, "evidence");
    if (!lot)
        lot = entry_text(entry, "label");
    g_autofree char *name = place_words(entry, "part");
    g_autofree char *from = serial ? g_strconcat("no. ", serial, NULL)
                            : lot  ? g_strconcat("lot ", lot, NULL)
                                   : g_strdup("");
    document_row(document, (const char *const[]){name, entry_text(entry, "use"), from, why});
}

// Whether a later live entry put something else at the same place.
static gboolean is_replaced(const SheetSource *source, const gboolean *live, gsize index)
{
    g_autofree char *name = place_words(source->entries[index], "part");
    for (gsize i = index + 1; i < source->count; i++) {
        if (!live[i] || strcmp(source->entries[i]->kind->name, "fit") != 0)
            continue;
        g_autofree char *other = place_words(source->entries[i], "part");
        if (strcmp(name, other) == 0)
            return TRUE;
    }
    return FALSE;
}

// Whether an entry was about that place of a check: it names it, or no place at all.
static gboolean is_about(const Entry *entry, const Requirement *requirement)
{
    gsize count = entry_list_length(entry, "place");
    for (gsize i = 0; i < count && requirement->labels[i]; i++)
        if (strcmp(entry_list_item(entry, "place", i), requirement->labels[i]) != 0)
            return FALSE;
    return TRUE;
}

// What the next rebuild orders parts from: `89.999 to 90.027 mm`, as a check of that name reads
// at the places that were worked on.
static char *size_words(const SheetSource *source, const Entry *rework)
{
    const char *name = entry_text(rework, "name");
    const GPtrArray *all = source->assessment->requirements;
    const Requirement *least = NULL, *most = NULL;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (each->asked != ASKED_READ || !each->value || strcmp(each->name, name) != 0 ||
            !is_about(rework, each))
            continue;
        if (!least || number_compare(each->value, least->value) < 0)
            least = each;
        if (!most || number_compare(each->value, most->value) > 0)
            most = each;
    }
    if (!least)
        return g_strdup("");
    g_autofree char *one = figure_value(least), *other = figure_value(most);
    return g_strconcat(one, strcmp(one, other) == 0 ? "" : " to ",
                       strcmp(one, other) == 0 ? "" : other, " ", figure_unit(least), NULL);
}

static void section_machined(Document *document, const SheetSource *source, const gboolean *live)
{
    const DocumentColumn columns[] = {
        {"", ALIGN_LEFT}, {"", ALIGN_LEFT}, {"size now", ALIGN_WHOLE}};
    gboolean begun = FALSE;
    for (gsize i = 0; i < source->count; i++) {
        const Entry *entry = source->entries[i];
        if (!live[i] || strcmp(entry->kind->name, "rework") != 0)
            continue;
        if (!begun) {
            document_heading(document, 1, "Machined, and sizes now");
            document_table(document, columns, G_N_ELEMENTS(columns));
        }
        begun = TRUE;
        g_autofree char *name = place_words(entry, "name"), *size = size_words(source, entry);
        document_row(document, (const char *const[]){name, entry_text(entry, "work"), size});
    }
}

static void section_parts(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {
        {"", ALIGN_LEFT}, {"", ALIGN_LEFT}, {"", ALIGN_LEFT}, {"", ALIGN_LEFT}};
    g_autofree gboolean *live = g_new0(gboolean, source->count + 1);
    live_entries(source->entries, source->count, live);
    document_heading(document, 1, "Fitted");
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (gsize i = 0; i < source->count; i++)
        if (live[i] && strcmp(source->entries[i]->kind->name, "fit") == 0 &&
            !is_replaced(source, live, i))
            part_row(document, source, source->entries[i]);
    section_machined(document, source, live);
}

// LOOKED AT: what is not as asked, one by one; the rest counted.

// What was answered in words: the complaint, what was missing, the numbers of certificates.
static void section_words(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT}, {"", ALIGN_LEFT}};
    const GPtrArray *all = source->assessment->requirements;
    gboolean begun = FALSE;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (each->asked != ASKED_LOOK || each->withdrawn || !each->answer || !each->check ||
            each->check->asks != LIMITS_TEXT)
            continue;
        if (!begun) {
            document_heading(document, 1, "On record");
            document_table(document, columns, G_N_ELEMENTS(columns));
        }
        begun = TRUE;
        g_autofree char *name = figure_name(each);
        document_row(document, (const char *const[]){name, each->answer});
    }
}

static void section_looks(Document *document, const SheetSource *source)
{
    guint good = 0;
    const GPtrArray *all = source->assessment->requirements;
    document_heading(document, 1, "Looked at");
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (each->asked != ASKED_LOOK || each->withdrawn || each->finding)
            continue;
        if (each->verdict == VERDICT_PASS || each->verdict == VERDICT_NOTED) {
            good++;
        } else if (each->verdict != VERDICT_NOT_NEEDED && each->verdict != VERDICT_OPEN) {
            g_autofree char *name = figure_name(each), *verdict = figure_verdict(each);
            g_autofree char *notes = footnotes_of(document, source, each);
            g_autofree char *line =
                g_strconcat(name, ": ", verdict, *notes ? ", see " : "", notes, NULL);
            document_line(document, line);
        }
    }
    g_autofree char *line = g_strdup_printf("%u looks, tests and answers as they should be.", good);
    document_line(document, line);
    document_footnotes(document);
}

// STILL TO COME: what is open, a line for each step.

static void name_open(GString *names, const char *name)
{
    g_auto(GStrv) known = g_strsplit(names->str, ", ", -1);
    if (!g_strv_contains((const char *const *)known, name))
        g_string_append_printf(names, "%s%s", names->len ? ", " : "", name);
}

static void section_open(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {
        {"in", ALIGN_LEFT}, {"before", ALIGN_WHOLE}, {"", ALIGN_LEFT}};
    const GPtrArray *all = source->assessment->requirements;
    gboolean begun = FALSE;
    for (guint s = 0; s < source->plan->steps->len; s++) {
        const PlanStep *step = g_ptr_array_index(source->plan->steps, s);
        g_autoptr(GString) names = g_string_new(NULL);
        for (guint i = 0; i < all->len; i++) {
            const Requirement *each = g_ptr_array_index(all, i);
            if (each->step == step && !each->withdrawn && each->verdict == VERDICT_OPEN)
                name_open(names, each->asked == ASKED_SIGN ? "signature" : each->name);
        }
        if (names->len == 0)
            continue;
        if (!begun) {
            document_heading(document, 1, "Still to come");
            document_table(document, columns, G_N_ELEMENTS(columns));
        }
        begun = TRUE;
        document_row(document, (const char *const[]){
                                   step->name, g_ptr_array_index(source->plan->gates, step->gate),
                                   names->str});
    }
}

static void section_state(Document *document, const SheetSource *source)
{
    const GPtrArray *gates = source->assessment->gates;
    for (guint i = 0; i < gates->len; i++) {
        const GateCount *gate = g_ptr_array_index(gates, i);
        g_autofree char *line =
            gate->left ? g_strdup_printf("Not complete for %s: %u left.", gate->name, gate->left)
                       : g_strdup_printf("Complete for %s.", gate->name);
        document_line(document, line);
    }
}

static void section_foot(Document *document, const SheetSource *source)
{
    const Entry *seal = newest_seal(source, NULL);
    document_heading(document, 1, "Before it runs");
    document_paragraph(document,
                       "Fuel, hot water, hot and turning parts injure. Fuel leaks are looked for "
                       "before cranking; an extinguisher stands ready; a second person stands at "
                       "the stop. Work on gas, pressure, electrics and approvals for road, water "
                       "or air stays with those licensed for it.");
    section_precedence(document);
    g_autofree char *day = seal ? entry_when(seal) : NULL;
    g_autofree char *number = seal && entry_number(seal, "supplement") > 0
                                  ? g_strdup_printf(" (supplement %" G_GINT64_FORMAT ")",
                                                    entry_number(seal, "supplement"))
                                  : g_strdup("");
    g_autofree char *line =
        seal ? g_strdup_printf("Sealed for %s%s on %.10s by %s: assessment %.12s.",
                               entry_text(seal, "gate"), number, day,
                               taken_name(source->taken, seal->by), entry_text(seal, "assessment"))
             : g_strdup("Not sealed.");
    document_paragraph(document, line);
    section_digest(document, source);
    g_autofree char *since =
        source->since_seal
            ? g_strconcat("Judged differently since then: ", source->since_seal, ".", NULL)
            : NULL;
    if (since)
        document_paragraph(document, since);
}

Document *sheet_customer(const SheetSource *source)
{
    g_autofree char *title = g_strconcat(source->shop ? source->shop : "", source->shop ? ": " : "",
                                         "Build sheet ", source->build, NULL);
    Document *document = document_new("customer", title);
    section_head(document, source);
    section_state(document, source);
    section_words(document, source);
    section_measured(document, source);
    section_tightened(document, source);
    section_parts(document, source);
    section_looks(document, source);
    section_open(document, source);
    section_foot(document, source);
    return document;
}
