// Places in brackets: labels in any order, each alone or behind the name of its axis.
#include <standbook/base/text.h>
#include <standbook/work/words.h>
#include <string.h>

enum { LABELS_SHOWN = 12 };

static const Axis *axis_at(const GPtrArray *axes, guint index)
{
    return g_ptr_array_index(axes, index);
}

// `main 1 2 3, end front rear`
static char *axes_in_words(const GPtrArray *axes)
{
    GString *text = g_string_new(NULL);
    for (guint i = 0; i < axes->len; i++) {
        const Axis *axis = axis_at(axes, i);
        gboolean named = !strstr(axis_name(axis), ".."); // else the labels are all of its name
        g_string_append_printf(text, "%s%s", i ? ", " : "", named ? axis_name(axis) : "");
        for (gsize j = 0; j < MIN(axis_size(axis), LABELS_SHOWN); j++)
            g_string_append_printf(text, "%s%s", named || j ? " " : "", axis_label(axis, j));
        if (axis_size(axis) > LABELS_SHOWN)
            g_string_append_printf(text, " … %s", axis_label(axis, axis_size(axis) - 1));
    }
    return g_string_free(text, FALSE);
}

static gboolean refuse_label(const Words *words, const GPtrArray *axes, const char *name,
                             const char *label, const char *at, GError **error)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (guint i = 0; i < axes->len; i++)
        for (gsize j = 0; j < axis_size(axis_at(axes, i)); j++)
            g_ptr_array_add(labels, (gpointer)axis_label(axis_at(axes, i), j));
    // Of labels this short every one is near.
    const char *near = g_utf8_strlen(label, -1) < 3
                           ? NULL
                           : text_nearest(label, (const char *const *)labels->pdata, labels->len);
    if (near)
        return words_refuse(words, at, error, "`%s` has no place `%s`; did you mean `%s`?", name,
                            label, near);
    g_autofree char *all = axes_in_words(axes);
    return words_refuse(words, at, error, "`%s` has no place `%s`; its places are %s", name, label,
                        all);
}

// A label of an axis that is picked already: two places at once.
static gboolean refuse_second(const Words *words, const Axis *axis, const char *label,
                              GError **error)
{
    return words_refuse(words, words->at, error,
                        "`%s` is a second %s; name one in a line, or leave it out for all", label,
                        axis_name(axis));
}

// The axis that a pick names in front of its label, or the only one that has the label and is not
// picked yet. -1 with an error if there is none, or more than one.
static gssize axis_of(const Words *words, const GPtrArray *axes, const char *name, const char *pick,
                      const gssize *picked, gssize *label, GError **error)
{
    const char *last = strrchr(pick, ' ');
    g_autofree char *front = g_strchomp(g_strndup(pick, last ? (gsize)(last - pick) : 0));
    gssize found = -1;
    for (guint i = 0; i < axes->len; i++) {
        gboolean named = last && strcmp(front, axis_name(axis_at(axes, i))) == 0;
        gssize index = axis_find(axis_at(axes, i), last ? last + 1 : pick);
        if (index < 0 || (last && !named) || (!last && picked[i] >= 0))
            continue;
        if (found >= 0) {
            words_refuse(words, words->at, error,
                         "`%s` is a label of %s and of %s; write `%s %s` or `%s %s`", pick,
                         axis_name(axis_at(axes, (guint)found)), axis_name(axis_at(axes, i)),
                         axis_name(axis_at(axes, (guint)found)), pick, axis_name(axis_at(axes, i)),
                         pick);
            return -1;
        }
        found = i;
        *label = index;
    }
    for (guint i = 0; found < 0 && i < axes->len; i++)
        if (picked[i] >= 0 && axis_find(axis_at(axes, i), pick) >= 0) {
            refuse_second(words, axis_at(axes, i), pick, error);
            return -1;
        }
    if (found < 0)
        refuse_label(words, axes, name, pick, words->at, error);
    return found;
}

// The bytes of a label with the name of its axis in front; without one, of one word.
static gsize pick_length(const char *at, const GPtrArray *axes)
{
    gsize whole = strcspn(at, ",[]\"");
    for (guint i = 0; i < axes->len; i++) {
        const char *axis = axis_name(axis_at(axes, i));
        gsize length = strlen(axis);
        if (length < whole && strncmp(at, axis, length) == 0 && strchr(" \t", at[length]))
            return length + strspn(at + length, " \t") +
                   strcspn(at + length + strspn(at + length, " \t"), " \t,[]\"");
    }
    return strcspn(at, " \t,[]\"");
}

static gboolean read_pick(Words *words, const GPtrArray *axes, const char *name, gssize *picked,
                          GError **error)
{
    gsize length = pick_length(words->at, axes);
    g_autofree char *pick = g_strndup(words->at, length);
    if (!*pick)
        return words_refuse(words, words->at, error, "a label is missing here");
    gssize label = 0;
    gssize axis = axis_of(words, axes, name, pick, picked, &label, error);
    if (axis < 0)
        return FALSE;
    if (picked[axis] >= 0)
        return refuse_second(words, axis_at(axes, (guint)axis), pick, error);
    picked[axis] = label;
    words->at += length;
    words->at += strspn(words->at, " \t");
    return TRUE;
}

gboolean words_place(Words *words, const GPtrArray *axes, const char *name, gssize *picked,
                     GError **error)
{
    for (guint i = 0; i < axes->len; i++)
        picked[i] = -1;
    if (*words->at != '[')
        return TRUE;
    if (axes->len == 0)
        return words_refuse(words, words->at, error,
                            "`%s` has only one place; leave the brackets out", name);
    const char *opening = words->at;
    do {
        words->at += *words->at == '[' || *words->at == ',';
        words->at += strspn(words->at, " \t");
        if (!read_pick(words, axes, name, picked, error))
            return FALSE;
    } while (*words->at && !strchr("[]\"", *words->at));
    if (*words->at != ']')
        return words_refuse(words, opening, error, "this bracket is not closed; end it with ]");
    words->at++;
    words->at += strspn(words->at, " \t");
    return TRUE;
}

GArray *places_picked(const GPtrArray *axes, const gssize *picked)
{
    GArray *places = g_array_new(FALSE, FALSE, sizeof(guint));
    guint none = 0;
    g_array_append_val(places, none);
    for (guint i = 0; i < axes->len; i++) {
        guint size = (guint)axis_size(axis_at(axes, i));
        g_autoptr(GArray) before = g_steal_pointer(&places);
        places = g_array_new(FALSE, FALSE, sizeof(guint));
        for (guint j = 0; j < before->len; j++)
            for (guint label = 0; label < size; label++) {
                guint place = g_array_index(before, guint, j) * size + label;
                if (picked[i] < 0 || picked[i] == (gssize)label)
                    g_array_append_val(places, place);
            }
    }
    return places;
}

GStrv places_labels(const GPtrArray *axes, guint place)
{
    GStrv labels = g_new0(char *, axes->len + 1);
    for (guint i = axes->len; i > 0; i--) {
        const Axis *axis = axis_at(axes, i - 1);
        guint size = (guint)axis_size(axis);
        labels[i - 1] = g_strdup(axis_label(axis, place % size));
        place /= size;
    }
    return labels;
}
