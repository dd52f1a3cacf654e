#include <standbook/base/text.h>
#include <standbook/work/parts_at.h>

#include <standbook/value/formula.h>
#include <string.h>

// Axes that a requirement's labels belong to: those of a check's places, of a part's.
static const GPtrArray *axes_of(const Plan *plan, const Requirement *made)
{
    const PlanPart *part = made->asked == ASKED_FIT ? plan_part(plan, made->name) : NULL;
    return part ? part->axes : made->check ? made->check->places : NULL;
}

gint common_axes(const Plan *plan, const Requirement *one, const Requirement *other)
{
    const GPtrArray *one_axes = axes_of(plan, one), *other_axes = axes_of(plan, other);
    gint common = 0;
    for (guint i = 0; one_axes && i < one_axes->len; i++)
        for (guint j = 0; other_axes && j < other_axes->len; j++) {
            if (strcmp(axis_name(one_axes->pdata[i]), axis_name(other_axes->pdata[j])) != 0)
                continue;
            if (g_strcmp0(one->labels[i], other->labels[j]) != 0)
                return -1;
            common++;
        }
    return common;
}

// Whether a word of one name begins as one of the other: `pistons`, `piston clearance`.
static gboolean share_a_word(const char *one, const char *other)
{
    enum { LEAST = 4 }; // characters
    g_auto(GStrv) words = g_strsplit(one, " ", -1), others = g_strsplit(other, " ", -1);
    for (guint i = 0; words[i]; i++)
        for (guint j = 0; others[j]; j++) {
            gsize length = MIN(strlen(words[i]), strlen(others[j]));
            if (length >= LEAST && strncmp(words[i], others[j], length) == 0)
                return TRUE;
        }
    return FALSE;
}

static gboolean has_to_do_with(const char *part, const PlanCheck *check)
{
    if (share_a_word(part, check->name))
        return TRUE;
    for (gsize i = 0; check->formula && i < formula_name_count(check->formula); i++)
        if (share_a_word(part, formula_name(check->formula, i)))
            return TRUE;
    return FALSE;
}

static gboolean is_fitted(const Requirement *part)
{
    return part->asked == ASKED_FIT && part->answer && !part->withdrawn;
}

GPtrArray *parts_at(const Agenda *agenda, const Requirement *made)
{
    const GPtrArray *all = agenda->assessment->requirements;
    GPtrArray *parts = g_ptr_array_new();
    if (is_fitted(made))
        g_ptr_array_add(parts, (gpointer)made);
    for (guint i = 0; made->check && i < all->len; i++) {
        const Requirement *part = all->pdata[i];
        if (is_fitted(part) && common_axes(agenda->plan, part, made) >= 1 &&
            has_to_do_with(part->name, made->check))
            g_ptr_array_add(parts, (gpointer)part);
    }
    return parts;
}

static gboolean is_same_part(const Requirement *one, const Requirement *other)
{
    return strcmp(one->name, other->name) == 0 && strcmp(one->answer, other->answer) == 0;
}

// `upper`: the labels of these parts that the place itself does not say.
static char *own_labels(const GPtrArray *parts, const Requirement *made)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (guint i = 0; i < parts->len; i++) {
        const Requirement *part = parts->pdata[i];
        for (guint l = 0; part->labels[l]; l++)
            if (!g_strv_contains((const char *const *)made->labels, part->labels[l]))
                text_add_once(labels, part->labels[l]);
    }
    g_ptr_array_add(labels, NULL);
    return g_strjoinv("/", (GStrv)labels->pdata);
}

static const char *lot_of(const Taken *taken, const char *label)
{
    g_autoptr(GPtrArray) ids = taken_ids(taken, "lot");
    for (guint i = 0; i < ids->len; i++)
        if (g_strcmp0(taken_text(taken, "lot", ids->pdata[i], "label"), label) == 0)
            return ids->pdata[i];
    return NULL;
}

// `places` are the labels to be said, or "".
static char *part_line(const Taken *taken, const Requirement *part, const char *places)
{
    g_autofree char *name = g_strconcat(part->name, *places ? " " : "", places, NULL);
    const char *lot = lot_of(taken, part->answer);
    if (!lot)
        return g_strconcat(name, ": ", part->answer, NULL);
    const char *words = taken_text(taken, "lot", lot, "part");
    const char *supplier = taken_text(taken, "lot", lot, "supplier");
    gboolean named = words && g_str_has_prefix(words, part->name);
    return g_strconcat(name, named ? words + strlen(part->name) : "", ", lot ", part->answer,
                       words && !named ? ", " : "", words && !named ? words : "",
                       supplier ? ", " : "", supplier ? supplier : "", NULL);
}

// Takes those of the name and lot of the first out of `parts`. `*others` says whether some of that
// name are of another.
static GPtrArray *take_alike(GPtrArray *parts, gboolean *others)
{
    const Requirement *first = parts->pdata[0];
    GPtrArray *alike = g_ptr_array_new();
    for (guint i = 0; i < parts->len;)
        if (is_same_part(parts->pdata[i], first))
            g_ptr_array_add(alike, g_ptr_array_remove_index(parts, i));
        else
            i++;
    *others = FALSE;
    for (guint i = 0; i < parts->len; i++)
        *others = *others || strcmp(((Requirement *)parts->pdata[i])->name, first->name) == 0;
    return alike;
}

GPtrArray *part_lines(const GPtrArray *parts, const Taken *taken, const Requirement *made)
{
    GPtrArray *lines = g_ptr_array_new_with_free_func(g_free);
    g_autoptr(GPtrArray) left = g_ptr_array_copy((GPtrArray *)parts, NULL, NULL);
    const char *divided = ""; // the name whose parts are not all alike
    while (left->len) {
        gboolean others;
        g_autoptr(GPtrArray) alike = take_alike(left, &others);
        const Requirement *part = alike->pdata[0];
        if (others)
            divided = part->name;
        gboolean apart = strcmp(divided, part->name) == 0;
        g_autofree char *labels = apart ? own_labels(alike, made) : g_strdup("");
        g_ptr_array_add(lines, part_line(taken, part, labels));
    }
    return lines;
}

char *part_names(const GPtrArray *parts)
{
    GString *words = g_string_new(NULL);
    g_autoptr(GPtrArray) names = g_ptr_array_new();
    for (guint i = 0; i < parts->len; i++)
        text_add_once(names, ((const Requirement *)parts->pdata[i])->name);
    for (guint n = 0; n < names->len; n++) {
        g_autoptr(GPtrArray) labels = g_ptr_array_new();
        for (guint i = 0; i < parts->len; i++) {
            const Requirement *part = parts->pdata[i];
            if (strcmp(part->name, names->pdata[n]) == 0 && part->labels[0])
                text_add_once(labels, part->labels[0]);
        }
        g_string_append_printf(words, "%s%s", n ? ", " : "", (const char *)names->pdata[n]);
        for (guint i = 0; i < labels->len; i++)
            g_string_append_printf(words, " %s", (const char *)labels->pdata[i]);
    }
    return g_string_free(words, FALSE);
}
