#include <standbook/plan/plan.h>

#include <string.h>

typedef struct {
    const GPtrArray *axes, *labels;
    guint count; // of all places
} Runs;

static gboolean is_meant(const Runs *runs, guint index)
{
    if (index >= runs->count)
        return FALSE;
    g_autofree char *label = places_label(runs->axes, index);
    return g_ptr_array_find_with_equal_func((GPtrArray *)runs->labels, label, g_str_equal, NULL);
}

// `1`, `1, 2`, `1 to 5`: from the place at `first` to that in front of `end`.
static void append_run(const Runs *runs, guint first, guint end, GString *words)
{
    const char *next = runs->axes->len > 1 ? "; " : ", ";
    g_autofree char *from = places_label(runs->axes, first), *to = places_label(runs->axes, end - 1);
    g_string_append_printf(words, "%s%s", words->len ? next : "", from);
    if (end - first > 1)
        g_string_append_printf(words, "%s%s", end - first > 2 ? " to " : next, to);
}

char *places_runs(const GPtrArray *axes, const GPtrArray *labels)
{
    const Runs runs = {axes, labels, places_count(axes)};
    GString *words = g_string_new(NULL);
    for (guint first = 0, end; first < runs.count; first = end) {
        end = first + 1;
        if (!is_meant(&runs, first))
            continue;
        while (is_meant(&runs, end))
            end++;
        append_run(&runs, first, end, words);
    }
    return g_string_free(words, FALSE);
}
