// The customer's sheet: what is fitted, each with what it came from or why it is used again; new
// parts of which nothing more is known are only named.
#include "sections.h"

#include <standbook/record/live.h>
#include <string.h>

// `lot RX-77`, `no. PS-6003/1`.
static char *origin_words(const SheetSource *source, const Entry *entry)
{
    const char *lot = taken_text(source->taken, "lot", entry_text(entry, "lot"), "label");
    const char *serial = entry_text(entry, "serial");
    if (!lot)
        lot = entry_text(entry, "label");
    return serial ? g_strconcat("no. ", serial, NULL)
           : lot  ? g_strconcat("lot ", lot, NULL)
                  : g_strdup("");
}

static gboolean is_part_of(const Entry *one, const Entry *other)
{
    return strcmp(entry_text(one, "part"), entry_text(other, "part")) == 0;
}

// What is fitted still: live entries that no later one put something else in place of, in order.
static GPtrArray *fitted_entries(const SheetSource *source)
{
    g_autofree gboolean *live = g_new0(gboolean, source->count + 1);
    live_entries(source->entries, source->count, live);
    GPtrArray *fitted = g_ptr_array_new();
    for (gsize i = 0; i < source->count; i++) {
        const Entry *entry = source->entries[i];
        if (!live[i] || strcmp(entry->kind->name, "fit") != 0)
            continue;
        for (guint before = fitted->len; before-- > 0;) {
            const Entry *earlier = fitted->pdata[before];
            if (is_part_of(earlier, entry) &&
                (entry_list_length(entry, "place") == 0 || entry_same_place(earlier, entry)))
                g_ptr_array_remove_index(fitted, before);
        }
        g_ptr_array_add(fitted, (gpointer)entry);
    }
    return fitted;
}

// Whether two were fitted alike and differ in their place and number alone.
static gboolean is_fitted_alike(const Entry *one, const Entry *other)
{
    static const char *const fields[] = {"part", "use", "lot", "label", "evidence"};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++)
        if (g_strcmp0(entry_text(one, fields[i]), entry_text(other, fields[i])) != 0)
            return FALSE;
    return TRUE;
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

// The labels of each entry; none where one of them reaches all places.
static GPtrArray *places_of(const GPtrArray *entries, const GPtrArray *axes)
{
    GPtrArray *places = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < entries->len; i++) {
        const char **labels = entry_labels(entries->pdata[i], axes->len);
        if (labels)
            g_ptr_array_add(places, labels);
        else {
            g_ptr_array_set_size(places, 0);
            break;
        }
    }
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

// `main shells 2; 3`: a part with the places of those entries, which belong to it. Where each has a
// number of its own, so that one is seen beside the other, every place is named.
static char *fitted_name(const SheetSource *source, const GPtrArray *entries)
{
    const Entry *first = entries->pdata[0];
    const char *name = entry_text(first, "part");
    const PlanPart *part = plan_part(source->plan, name);
    const PlanGroup *group = part ? NULL : plan_group(source->plan, name);
    const GPtrArray *axes = part ? part->axes : group ? group->axes : NULL;
    GString *words = g_string_new(name);
    if (!axes || axes->len == 0)
        return g_string_free(words, FALSE);
    g_autoptr(GPtrArray) places = places_of(entries, axes);
    for (guint axis = axes->len; axis-- > 0 && !entry_text(first, "serial");)
        fold_axis(places, axes, axis);
    for (guint i = 0; i < places->len; i++)
        append_place(words, places->pdata[i], axes->len, i ? "; " : " ");
    return g_string_free(words, FALSE);
}

// ROWS

// `no. PS-6003/1; PS-6003/2`: where those came from, each of them if it has a number.
static char *fitted_from(const SheetSource *source, const GPtrArray *entries)
{
    g_autofree char *first = origin_words(source, entries->pdata[0]);
    GString *words = g_string_new(first);
    for (guint i = 1; i < entries->len; i++) {
        const char *serial = entry_text(entries->pdata[i], "serial");
        if (serial)
            g_string_append_printf(words, "; %s", serial);
    }
    return g_string_free(words, FALSE);
}

// Takes the first entry and all those alike out of the list.
static GPtrArray *take_alike(GPtrArray *fitted)
{
    GPtrArray *alike = g_ptr_array_new();
    const Entry *first = fitted->pdata[0];
    for (guint i = 0; i < fitted->len;) {
        if (is_fitted_alike(first, fitted->pdata[i]))
            g_ptr_array_add(alike, g_ptr_array_remove_index(fitted, i));
        else
            i++;
    }
    return alike;
}

// Puts a row, or adds a name to the plain ones.
static void fitted_put(Document *document, const SheetSource *source, const GPtrArray *entries,
                       GString *plain, guint *rows)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT}, {"", ALIGN_WHOLE}, {"", ALIGN_LEFT}};
    const Entry *entry = entries->pdata[0];
    const char *use = entry_text(entry, "use"), *why = entry_text(entry, "evidence");
    g_autofree char *name = fitted_name(source, entries), *from = fitted_from(source, entries);
    if (strcmp(use, "new") == 0 && !*from && !why) {
        g_string_append_printf(plain, "%s%s", plain->len ? ", " : "", name);
        return;
    }
    if ((*rows)++ == 0)
        document_table(document, columns, G_N_ELEMENTS(columns));
    g_autofree char *words = g_strconcat(from, *from && why ? ", " : "", why, NULL);
    document_row(document, (const char *const[]){name, use, words});
}

void section_parts(Document *document, const SheetSource *source)
{
    g_autoptr(GPtrArray) fitted = fitted_entries(source);
    g_autoptr(GString) plain = g_string_new(NULL);
    guint rows = 0;
    if (fitted->len)
        document_heading(document, 1, "Fitted");
    while (fitted->len) {
        g_autoptr(GPtrArray) alike = take_alike(fitted);
        fitted_put(document, source, alike, plain, &rows);
    }
    g_autofree char *line = g_strconcat(rows ? "Also new: " : "New: ", plain->str, ".", NULL);
    if (plain->len)
        document_paragraph(document, line);
}
