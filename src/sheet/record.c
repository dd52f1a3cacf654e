#include "sections.h"

#include <standbook/record/live.h>
#include <standbook/record/order.h>
#include <standbook/work/tool_standing.h>
#include <string.h>

// Entries of some kinds, in order of rank; struck ones marked with the entry that struck them.
static void entry_row(Document *document, const SheetSource *source, const gboolean *live,
                      gint64 seq)
{
    const Entry *entry = source->entries[seq - 1];
    g_autofree char *words = entry_words(source->taken, entry);
    g_autofree char *when = entry_when(entry);
    g_autofree char *number = g_strdup_printf("#%" G_GINT64_FORMAT, seq);
    gint64 by = live_strike_of(source->entries, source->count, live, seq);
    g_autofree char *text =
        by ? g_strdup_printf("--%s-- struck by #%" G_GINT64_FORMAT ": %s", words, by,
                             entry_text(source->entries[by - 1], "cause"))
           : g_strdup(words);
    document_row(document,
                 (const char *const[]){number, when, taken_initials(source->taken, entry->by), text,
                                       entry->done ? "typed later" : ""});
}

static void section_entries(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {{"entry", ALIGN_RIGHT},
                                      {"done", ALIGN_LEFT},
                                      {"by", ALIGN_LEFT},
                                      {"", ALIGN_LEFT},
                                      {"", ALIGN_LEFT}};
    g_autofree gboolean *live = g_new0(gboolean, source->count + 1);
    g_autofree gint64 *ranked = g_new0(gint64, source->count + 1);
    live_entries(source->entries, source->count, live);
    rank_order(source->entries, source->count, ranked);
    document_heading(document, 1, "Every entry, in the order of the work");
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (gsize i = 0; i < source->count; i++)
        entry_row(document, source, live, ranked[i]);
}

static char *verdict_notes(Document *document, const SheetSource *source, const Requirement *made)
{
    g_autofree char *notes = footnotes_of(document, source, made);
    GString *numbers = g_string_new(notes);
    const char *by_plan = requirement_by_plan_said(made);
    if (by_plan)
        note_add(numbers, document, g_strdup(by_plan));
    return g_string_free(numbers, FALSE);
}

// BOLTS IN ONE ROW: of one set, of stages behind each other, tightened by the same entry and judged
// alike.

typedef struct {
    const Requirement *first, *last; // of its first stage and its last
    GPtrArray *places;               // const char *: the bolts, the same at each stage
    char *cells;                     // what its row says beside its name
} Bolts;

static void bolts_free(gpointer data)
{
    Bolts *bolts = data;
    g_ptr_array_unref(bolts->places);
    g_free(bolts->cells);
    g_free(bolts);
}

static gboolean is_of_set(const Bolts *bolts, const Requirement *made)
{
    return made->asked == ASKED_BOLT && bolts->first->asked == ASKED_BOLT &&
           made->step == bolts->first->step && strcmp(made->name, bolts->first->name) == 0;
}

static void bolts_add(GPtrArray *all, const Requirement *made, char *cells) // takes the cells
{
    for (guint i = all->len; i-- > 0 && is_of_set(all->pdata[i], made);) {
        Bolts *alike = all->pdata[i];
        if (alike->last->stage != made->stage || strcmp(alike->cells, cells) != 0)
            continue;
        g_ptr_array_add(alike->places, made->place);
        g_free(cells);
        return;
    }
    Bolts *bolts = g_new(Bolts, 1);
    *bolts = (Bolts){made, made, g_ptr_array_new(), cells};
    g_ptr_array_add(bolts->places, made->place);
    g_ptr_array_add(all, bolts);
}

static gboolean same_places(const GPtrArray *one, const GPtrArray *other)
{
    gboolean same = one->len == other->len;
    for (guint i = 0; same && i < one->len; i++)
        same = g_strcmp0(one->pdata[i], other->pdata[i]) == 0;
    return same;
}

// A stage that says the same of the same bolts as the one before it joins its row.
static void join_stages(GPtrArray *all)
{
    for (guint i = 1; i < all->len; i++) {
        Bolts *before = all->pdata[i - 1];
        const Bolts *bolts = all->pdata[i];
        if (!is_of_set(before, bolts->first) || bolts->first->stage != before->last->stage + 1 ||
            strcmp(before->cells, bolts->cells) != 0 || !same_places(before->places, bolts->places))
            continue;
        before->last = bolts->last;
        g_ptr_array_remove_index(all, i--);
    }
}

// Whether a set of that name is tightened in several steps, so that the step must be said.
static gboolean is_again(const Plan *plan, const Requirement *made)
{
    guint steps = 0;
    for (guint i = 0; i < plan->steps->len; i++)
        steps += plan_tightening(plan->steps->pdata[i], made->name) ? 1 : 0;
    return steps > 1;
}

// `rod bolts 1 to 8, stages 1 to 3`, `main caps 3, 4 in Crank, stage 1`; all but bolts by their own
// name.
static char *bolts_name(const SheetSource *source, const Bolts *bolts)
{
    const Requirement *made = bolts->first;
    const PlanTightening *tightening =
        made->asked == ASKED_BOLT ? plan_tightening(made->step, made->name) : NULL;
    if (!tightening)
        return requirement_name(made);
    g_autofree char *runs = places_runs(tightening->group->axes, bolts->places);
    g_autofree char *stages =
        bolts->last->stage > made->stage
            ? g_strdup_printf("stages %u to %u", made->stage, bolts->last->stage)
            : g_strdup_printf("stage %u", made->stage);
    gboolean again = is_again(source->plan, made);
    return g_strconcat(made->name, " ", runs, again ? " in " : "", again ? made->step->name : "",
                       ", ", stages, NULL);
}

enum { CELLS = 7 }; // of a row, behind its name

// In one text, parted by a character that no cell has.
static char *verdict_cells(Document *document, const SheetSource *source, const Requirement *made)
{
    g_autofree char *value = figure_value(made), *doubt = figure_doubt(made);
    g_autofree char *limits = figure_limits(made), *verdict = figure_verdict(made);
    g_autofree char *entry =
        made->entry ? g_strdup_printf("#%" G_GINT64_FORMAT, made->entry) : g_strdup("");
    g_autofree char *notes = verdict_notes(document, source, made);
    return g_strjoin("\n", value, doubt, figure_unit(made), limits, verdict, entry, notes, NULL);
}

static void bolts_row(Document *document, const SheetSource *source, const Bolts *bolts)
{
    g_autofree char *name = bolts_name(source, bolts);
    g_auto(GStrv) cells = g_strsplit(bolts->cells, "\n", CELLS);
    document_row(document, (const char *const[]){name, cells[0], cells[1], cells[2], cells[3],
                                                 cells[4], cells[5], cells[6]});
}

static void section_verdicts(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {{"asked", ALIGN_LEFT},   {"", ALIGN_POINT},
                                      {"", ALIGN_LEFT},        {"", ALIGN_LEFT},
                                      {"limits", ALIGN_WHOLE}, {"verdict", ALIGN_LEFT},
                                      {"entry", ALIGN_RIGHT},  {"see", ALIGN_NOTES}};
    const GPtrArray *all = source->assessment->requirements;
    document_heading(document, 1, "Everything asked for, with its verdict");
    document_table(document, columns, G_N_ELEMENTS(columns));
    document_tight(document);
    g_autoptr(GPtrArray) rows = g_ptr_array_new_with_free_func(bolts_free);
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        bolts_add(rows, each, verdict_cells(document, source, each));
    }
    join_stages(rows);
    for (guint i = 0; i < rows->len; i++)
        bolts_row(document, source, rows->pdata[i]);
    document_footnotes(document);
}

static const json_t *body_of(const Entry *entry, const char *what)
{
    const char *said = entry_text(entry, "what");
    return said && strcmp(said, what) == 0 ? json_object_get(entry->body, "body") : NULL;
}

static const char *text_of(const json_t *body, const char *field)
{
    const char *text = json_string_value(json_object_get(body, field));
    return text ? text : "";
}

static void calibration_row(Document *document, const SheetSource *source, const char *tool,
                            const json_t *body)
{
    g_autofree char *doubt = value_words(json_object_get(body, "uncertainty"));
    g_autofree char *due = tool_due_words(taken_body(source->taken, "tool", tool), body);
    document_row(document, (const char *const[]){taken_tool(source->taken, tool),
                                                 taken_text(source->taken, "tool", tool, "sort"),
                                                 text_of(body, "date"), due, text_of(body, "found"),
                                                 doubt, text_of(body, "certificate")});
}

// Each calibration the build relied on or heard of, tool by tool.
static void section_tools(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {
        {"tool", ALIGN_LEFT},  {"", ALIGN_LEFT},  {"calibrated", ALIGN_LEFT}, {"due", ALIGN_LEFT},
        {"found", ALIGN_LEFT}, {"U", ALIGN_LEFT}, {"paper", ALIGN_LEFT}};
    g_autoptr(GPtrArray) tools = taken_ids(source->taken, "tool");
    document_heading(document, 1, "Tools");
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint t = 0; t < tools->len; t++) {
        const char *id = g_ptr_array_index(tools, t);
        gboolean any = FALSE;
        for (gsize i = 0; i < source->count; i++) {
            const json_t *body = body_of(source->entries[i], "calibration");
            if (!body || strcmp(text_of(body, "tool"), id) != 0)
                continue;
            calibration_row(document, source, id, body);
            any = TRUE;
        }
        if (!any)
            document_row(document,
                         (const char *const[]){taken_tool(source->taken, id),
                                               taken_text(source->taken, "tool", id, "sort"),
                                               "never, as far as known", "", "", "", ""});
    }
}

static void lot_row(Document *document, const Taken *taken, const char *kind, const char *sort,
                    const char *id)
{
    const char *lot = taken_text(taken, kind, id, "lot");
    document_row(document, (const char *const[]){lot ? lot : taken_text(taken, kind, id, "label"),
                                                 taken_text(taken, kind, id, sort),
                                                 taken_text(taken, kind, id, "grade"),
                                                 taken_text(taken, kind, id, "supplier"),
                                                 taken_text(taken, kind, id, "expires")});
}

// Left out where nothing from a lot was used.
static void section_lots(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {{"lot", ALIGN_LEFT},
                                      {"", ALIGN_LEFT},
                                      {"grade", ALIGN_LEFT},
                                      {"from", ALIGN_LEFT},
                                      {"expires", ALIGN_LEFT}};
    static const char *const kinds[][2] = {{"lot", "part"}, {"consumable", "sort"}};
    guint rows = 0;
    for (gsize k = 0; k < G_N_ELEMENTS(kinds); k++) {
        g_autoptr(GPtrArray) ids = taken_ids(source->taken, kinds[k][0]);
        for (guint i = 0; i < ids->len; i++) {
            if (rows++ == 0) {
                document_heading(document, 1, "Lots");
                document_table(document, columns, G_N_ELEMENTS(columns));
            }
            lot_row(document, source->taken, kinds[k][0], kinds[k][1], g_ptr_array_index(ids, i));
        }
    }
}

static gboolean is_kind(const Entry *entry, const char *kind)
{
    return strcmp(entry->kind->name, kind) == 0;
}

static gboolean is_note(const SheetSource *source, const gboolean *live, gsize i)
{
    return live[i] && is_kind(source->entries[i], "note");
}

static gboolean is_cost(const SheetSource *source, const gboolean *live, gsize i)
{
    return live[i] && is_kind(source->entries[i], "cost");
}

// The live entries of one sort, under their heading, each with what `under` (NULL: nothing) says of
// it; nothing if there is none.
static void section_sort(Document *document, const SheetSource *source, const char *heading,
                         gboolean (*is_of)(const SheetSource *, const gboolean *, gsize),
                         char *(*under)(const SheetSource *, const gboolean *, gsize))
{
    const DocumentColumn columns[] = {
        {"", ALIGN_RIGHT}, {"", ALIGN_LEFT}, {"", ALIGN_LEFT}, {"", ALIGN_LEFT}, {"", ALIGN_LEFT}};
    g_autofree gboolean *live = g_new0(gboolean, source->count + 1);
    live_entries(source->entries, source->count, live);
    gboolean begun = FALSE;
    for (gsize i = 0; i < source->count; i++) {
        if (!is_of(source, live, i))
            continue;
        if (!begun) {
            document_heading(document, 1, heading);
            document_table(document, columns, G_N_ELEMENTS(columns));
        }
        begun = TRUE;
        entry_row(document, source, live, (gint64)i + 1);
        g_autofree char *more = under ? under(source, live, i) : NULL;
        if (more)
            document_under(document, more);
    }
}

// The sum of live costs by unit: money by currency, time by its unit.
static void section_sums(Document *document, const SheetSource *source)
{
    g_autofree gboolean *live = g_new0(gboolean, source->count + 1);
    live_entries(source->entries, source->count, live);
    g_autoptr(GHashTable) sums =
        g_hash_table_new_full(g_str_hash, g_str_equal, NULL, (GDestroyNotify)number_free);
    g_autoptr(GPtrArray) units = g_ptr_array_new();
    for (gsize i = 0; i < source->count; i++) {
        const Entry *entry = source->entries[i];
        const char *unit =
            strcmp(entry->kind->name, "cost") == 0 ? entry_value(entry, "amount", "unit") : NULL;
        const char *amount = unit ? entry_value(entry, "amount", "value") : NULL;
        g_autoptr(Number) number = amount && live[i] ? number_from_text(amount, NULL) : NULL;
        if (!number)
            continue;
        const Number *before = g_hash_table_lookup(sums, unit);
        if (!before)
            g_ptr_array_add(units, (gpointer)unit);
        g_hash_table_insert(sums, (gpointer)unit,
                            before ? number_add(before, number) : number_copy(number));
    }
    for (guint i = 0; i < units->len; i++) {
        const char *unit = g_ptr_array_index(units, i);
        g_autofree char *sum = number_decimal(g_hash_table_lookup(sums, unit), 2);
        g_autofree char *line = g_strdup_printf("In sum %s %s.", sum, unit);
        document_line(document, line);
    }
}

Document *sheet_record(const SheetSource *source)
{
    g_autofree char *title = g_strconcat("Workshop record ", source->build, NULL);
    Document *document = document_new("record", title);
    section_head(document, source);
    section_entries(document, source);
    section_verdicts(document, source);
    section_settings(document, source);
    section_claims(document, source);
    section_tools(document, source);
    section_lots(document, source);
    section_sort(document, source, "Interruptions", is_interruption, interruption_words);
    section_sort(document, source, "Notes", is_note, NULL);
    section_sort(document, source, "Costs", is_cost, NULL);
    section_sums(document, source);
    section_precedence(document);
    section_digest(document, source);
    return document;
}
