// The customer's sheet: what is fitted, each with what it came from or why it is used again; new
// parts of which nothing more is known are only named.
#include "sections.h"

#include <standbook/record/live.h>
#include <standbook/record/order.h>
#include <standbook/work/words.h>
#include <string.h>

// What is in at one place.
typedef struct {
    const Entry *entry;
    GStrv labels;            // of the place
    const Requirement *made; // what was asked there; NULL for nothing
} Fitted;

static void fitted_free(gpointer data)
{
    Fitted *fitted = data;
    g_strfreev(fitted->labels);
    g_free(fitted);
}

// Those that a part's or bolt set's places are named by; NULL where the plan has no such thing.
static const GPtrArray *axes_of(const SheetSource *source, const Entry *entry)
{
    const char *name = entry_text(entry, "part");
    const PlanPart *part = plan_part(source->plan, name);
    const PlanGroup *group = part ? NULL : plan_group(source->plan, name);
    return part ? part->axes : group ? group->axes : NULL;
}

// Puts in what was fitted at a place; what was there comes out. Takes the labels.
static void fit_at(GPtrArray *all, const Entry *entry, GStrv labels)
{
    const char *name = entry_text(entry, "part");
    for (guint i = 0; i < all->len; i++) {
        Fitted *before = all->pdata[i];
        if (strcmp(entry_text(before->entry, "part"), name) != 0 ||
            !g_strv_equal((const char *const *)before->labels, (const char *const *)labels))
            continue;
        before->entry = entry;
        g_strfreev(labels);
        return;
    }
    Fitted *fitted = g_new(Fitted, 1);
    *fitted = (Fitted){.entry = entry, .labels = labels};
    g_ptr_array_add(all, fitted);
}

// What is asked for at the place; NULL where the plan asks for nothing to be fitted.
static const Requirement *asked_at(const SheetSource *source, const Fitted *fitted)
{
    const GPtrArray *all = source->assessment->requirements;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (each->asked == ASKED_FIT && !each->withdrawn &&
            strcmp(each->name, entry_text(fitted->entry, "part")) == 0 &&
            g_strv_equal((const char *const *)each->labels, (const char *const *)fitted->labels))
            return each;
    }
    return NULL;
}

// What is in now, place by place, by the last that was fitted there in the order of the work.
static GPtrArray *fitted_places(const SheetSource *source)
{
    g_autofree gboolean *live = g_new0(gboolean, source->count + 1);
    g_autofree gint64 *ranked = g_new0(gint64, source->count + 1);
    GPtrArray *all = g_ptr_array_new_with_free_func(fitted_free);
    live_entries(source->entries, source->count, live);
    rank_order(source->entries, source->count, ranked);
    for (gsize i = 0; i < source->count; i++) {
        const Entry *entry = source->entries[ranked[i] - 1];
        if (!live[ranked[i] - 1] || strcmp(entry->kind->name, "fit") != 0)
            continue;
        const GPtrArray *axes = axes_of(source, entry);
        for (guint place = 0; place < (axes ? places_count(axes) : 1); place++) {
            GStrv labels = axes ? places_labels(axes, place) : g_new0(char *, 1);
            if (entry_reaches(entry, (const char *const *)labels))
                fit_at(all, entry, labels);
            else
                g_strfreev(labels);
        }
    }
    for (guint i = 0; i < all->len; i++)
        ((Fitted *)all->pdata[i])->made = asked_at(source, all->pdata[i]);
    return all;
}

static const char *text_of(const Fitted *fitted, const char *field)
{
    return entry_text(fitted->entry, field);
}

static gboolean is_judged_alike(const Requirement *one, const Requirement *other)
{
    return one && other ? one->verdict == other->verdict && one->reason == other->reason &&
                              one->upheld == other->upheld && one->conceded == other->conceded
                        : one == other;
}

// Whether two were fitted alike and differ in their place and number alone.
static gboolean is_fitted_alike(const Fitted *one, const Fitted *other)
{
    static const char *const fields[] = {"part", "use", "lot", "label", "evidence"};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++)
        if (g_strcmp0(text_of(one, fields[i]), text_of(other, fields[i])) != 0)
            return FALSE;
    return !text_of(one, "serial") == !text_of(other, "serial") &&
           is_judged_alike(one->made, other->made);
}

const char *fit_lacks(const SheetSource *source, const Requirement *made)
{
    const PlanPart *part = plan_part(source->plan, made->name);
    const PlanGroup *group = part ? NULL : plan_group(source->plan, made->name);
    gboolean lacks = made->asked == ASKED_FIT && made->verdict == VERDICT_OPEN && made->entry > 0;
    return !lacks ? NULL : part ? part->track : group ? group->track : NULL;
}

// PLACES

// Whether two places have the same labels on every axis but one.
static gboolean agree_beside(const char *const *one, const char *const *other, guint axes,
                             guint axis)
{
    for (guint i = 0; i < axes; i++)
        if (i != axis && g_strcmp0(one[i], other[i]) != 0)
            return FALSE;
    return TRUE;
}

// Where places have every label of an axis, one that names none stands for all of them.
static void fold_axis(GPtrArray *places, const GPtrArray *axes, guint axis)
{
    for (guint i = 0; i < places->len; i++) {
        const char **place = places->pdata[i];
        guint alike = 0;
        for (guint j = 0; j < places->len; j++)
            alike += agree_beside(place, places->pdata[j], axes->len, axis) ? 1 : 0;
        if (alike < axis_size(axes->pdata[axis]))
            continue;
        place[axis] = NULL;
        for (guint j = places->len; j-- > i + 1;)
            if (agree_beside(place, places->pdata[j], axes->len, axis))
                g_ptr_array_remove_index(places, j);
    }
}

// Their labels, to be folded; a label belongs to what was fitted.
static GPtrArray *places_of(const GPtrArray *alike, guint axes)
{
    GPtrArray *places = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < alike->len; i++)
        g_ptr_array_add(places, g_memdup2(((const Fitted *)alike->pdata[i])->labels,
                                          (axes + 1) * sizeof(char *)));
    return places;
}

static void append_place(GString *words, const char *const *place, guint axes, const char *before)
{
    for (guint i = 0; i < axes; i++)
        if (place[i]) {
            g_string_append_printf(words, "%s%s", before, place[i]);
            before = ", ";
        }
}

// ` 2 to 4` along the only axis, where not every place is among them.
static void append_runs(GString *words, const GPtrArray *places, const GPtrArray *axes)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (guint i = 0; i < places->len; i++)
        g_ptr_array_add(labels, ((gpointer *)places->pdata[i])[0]);
    g_autofree char *runs = labels->pdata[0] ? places_runs(axes, labels) : g_strdup("");
    g_string_append_printf(words, "%s%s", *runs ? " " : "", runs);
}

// `main shells 2; 3`: a part with the places of those, which belong to it; `rod bolts` where that
// is all of them. Where each has a number of its own, so that one is seen beside the other, every
// place is named.
static char *fitted_name(const SheetSource *source, const GPtrArray *alike)
{
    const Fitted *first = alike->pdata[0];
    const GPtrArray *axes = axes_of(source, first->entry);
    gboolean numbered = text_of(first, "serial") != NULL;
    GString *words = g_string_new(text_of(first, "part"));
    if (!axes || axes->len == 0)
        return g_string_free(words, FALSE);
    g_autoptr(GPtrArray) places = places_of(alike, axes->len);
    for (guint axis = axes->len; axis-- > 0 && !numbered;)
        fold_axis(places, axes, axis);
    if (axes->len == 1 && !numbered)
        append_runs(words, places, axes);
    for (guint i = 0; i < places->len && (axes->len > 1 || numbered); i++)
        append_place(words, places->pdata[i], axes->len, i ? "; " : " ");
    return g_string_free(words, FALSE);
}

// ROWS

// `lot RX-77`, `no. PS-6003/1; PS-6003/2`: where those came from, each of them if it has a number.
static char *fitted_from(const SheetSource *source, const GPtrArray *alike)
{
    const Fitted *first = alike->pdata[0];
    const char *lot = taken_text(source->taken, "lot", text_of(first, "lot"), "label");
    const char *serial = text_of(first, "serial");
    GString *words = g_string_new(NULL);
    if (!lot)
        lot = text_of(first, "label");
    if (lot && !(serial && g_str_has_prefix(serial, lot))) // which the number says
        g_string_append_printf(words, "lot %s", lot);
    for (guint i = 0; i < alike->len && serial; i++)
        g_string_append_printf(words, "%s%s",
                               i            ? "; "
                               : words->len ? ", no. "
                                            : "no. ",
                               text_of(alike->pdata[i], "serial"));
    return g_string_free(words, FALSE);
}

// Takes the first and all those alike out of the list.
static GPtrArray *take_alike(GPtrArray *fitted)
{
    GPtrArray *alike = g_ptr_array_new_with_free_func(fitted_free);
    g_ptr_array_add(alike, g_ptr_array_steal_index(fitted, 0));
    for (guint i = 0; i < fitted->len;) {
        if (is_fitted_alike(alike->pdata[0], fitted->pdata[i]))
            g_ptr_array_add(alike, g_ptr_array_steal_index(fitted, i));
        else
            i++;
    }
    return alike;
}

// What is to be known of what was fitted so: in doubt, accepted or argued for.
static char *fitted_notes(Document *document, const SheetSource *source, const GPtrArray *alike)
{
    GString *numbers = g_string_new(NULL);
    for (guint i = 0; i < alike->len; i++)
        if (((const Fitted *)alike->pdata[i])->made)
            footnotes_add(numbers, document, source, ((const Fitted *)alike->pdata[i])->made);
    return g_string_free(numbers, FALSE);
}

// Puts a row, or adds a name to the plain ones.
static void fitted_put(Document *document, const SheetSource *source, const GPtrArray *alike,
                       GString *plain, guint *rows)
{
    const DocumentColumn columns[] = {
        {"", ALIGN_LEFT}, {"", ALIGN_WHOLE}, {"", ALIGN_LEFT}, {"", ALIGN_NOTES}};
    const Fitted *first = alike->pdata[0];
    const char *use = text_of(first, "use"), *why = text_of(first, "evidence");
    g_autofree char *name = fitted_name(source, alike), *from = fitted_from(source, alike);
    g_autofree char *notes = fitted_notes(document, source, alike);
    const char *lacks = first->made ? fit_lacks(source, first->made) : NULL;
    if (strcmp(use, "new") == 0 && !*from && !why && !*notes && !lacks) {
        g_string_append_printf(plain, "%s%s", plain->len ? ", " : "", name);
        return;
    }
    if ((*rows)++ == 0)
        document_table(document, columns, G_N_ELEMENTS(columns));
    g_autofree char *unknown = lacks ? g_strconcat(lacks, " not known", NULL) : g_strdup("");
    g_autofree char *words = g_strconcat(from, *from && *unknown ? ", " : "", unknown,
                                         (*from || *unknown) && why ? ", " : "", why, NULL);
    document_row(document, (const char *const[]){name, use, words, notes});
}

void section_parts(Document *document, const SheetSource *source)
{
    g_autoptr(GPtrArray) fitted = fitted_places(source);
    g_autoptr(GString) plain = g_string_new(NULL);
    guint rows = 0;
    if (fitted->len)
        document_heading(document, 1, "Fitted");
    while (fitted->len) {
        g_autoptr(GPtrArray) alike = take_alike(fitted);
        fitted_put(document, source, alike, plain, &rows);
    }
    g_autofree char *line =
        g_strconcat(rows ? "Also fitted, new: " : "New: ", plain->str, ".", NULL);
    if (plain->len)
        document_line(document, line);
    document_footnotes(document);
}
