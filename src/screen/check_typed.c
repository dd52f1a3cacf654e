#include "check_typed.h"

#include <standbook/sheet/figures.h>
#include <string.h>

void check_typed_clear(CheckTyped *typed)
{
    g_free(typed->name);
    g_free(typed->at);
}

// PLACES ----------------------------------------------------------------------------------------

static gboolean is_label(const char *text)
{
    const char *at = text;
    while (*at && g_unichar_isalnum(g_utf8_get_char(at)))
        at = g_utf8_next_char(at);
    return *text && !*at;
}

// Whether nothing but labels stands there, with what parts them.
static gboolean are_labels(const char *text)
{
    g_autofree char *plain = g_strdelimit(g_strdup(text), "./, ", 'x');
    return is_label(plain);
}

// Parts what stands in brackets at the end, or a range without them, from the name in front.
// FALSE if there is neither.
static gboolean part_labels(const char *typed, char **name, char **labels)
{
    const char *open = g_str_has_suffix(typed, "]") ? strchr(typed, '[') : NULL;
    const char *blank = strrchr(typed, ' ');
    const char *at = open ? open : blank && strstr(blank, "..") ? blank : NULL;
    if (!at)
        return FALSE;
    g_autofree char *inside = g_strdup(at + 1);
    if (open)
        inside[strlen(inside) - 1] = '\0';
    g_strstrip(inside);
    if (!are_labels(inside))
        return FALSE;
    *name = g_strchomp(g_strndup(typed, (gsize)(at - typed)));
    *labels = g_steal_pointer(&inside);
    return TRUE;
}

// Whether labels make places by themselves; a word alone belongs to the name: `rod front`.
static gboolean stands_alone(const char *labels)
{
    gsize length = strlen(labels);
    return !is_label(labels) || length == 1 || g_ascii_isdigit(labels[length - 1]);
}

// Labels as a plan takes them for an axis of their own: one alone is a range of one.
static char *axis_words(const Plan *plan, const char *labels)
{
    gboolean alone = is_label(labels) && stands_alone(labels) && !plan_axis(plan, labels);
    return alone ? g_strdup_printf("%s..%s", labels, labels) : g_strdup(labels);
}

static char *at_words(const Plan *plan, const char *labels)
{
    g_auto(GStrv) parts = g_strsplit(labels, ",", -1);
    for (gsize i = 0; parts[i]; i++) {
        char *words = axis_words(plan, g_strstrip(parts[i]));
        g_free(parts[i]);
        parts[i] = words;
    }
    g_autofree char *all = g_strjoinv(", ", parts);
    return g_strdup_printf("[%s]", all);
}

// WHAT IS LIKE IT -------------------------------------------------------------------------------

// A name without its numbers.
static char *stem_of(const char *name)
{
    g_auto(GStrv) words = g_strsplit(name, " ", -1);
    GString *stem = g_string_new(NULL);
    for (gsize i = 0; words[i]; i++)
        if (strspn(words[i], "0123456789") < strlen(words[i]))
            g_string_append_printf(stem, "%s ", words[i]);
    return g_string_free(stem, FALSE);
}

// The newest check of that name, or of one with other numbers alone.
static const Requirement *newest_like(const Agenda *agenda, const char *name, gboolean same)
{
    const GPtrArray *all = agenda->assessment->requirements;
    g_autofree char *stem = stem_of(name);
    for (guint i = all->len; i-- > 0;) {
        const Requirement *made = all->pdata[i];
        if (!made->check || !made->added || made->withdrawn)
            continue;
        g_autofree char *other = stem_of(made->name);
        if (same ? strcmp(made->name, name) == 0 : *stem && strcmp(other, stem) == 0)
            return made;
    }
    return NULL;
}

// The added check of that name that more places can follow in the step.
static const Requirement *growing(const Agenda *agenda, const char *step, const char *name)
{
    const Requirement *made = newest_like(agenda, name, TRUE);
    gboolean grows = made && strcmp(made->check->step->name, step) == 0 &&
                     made->check->axes->len == 1 && !made->check->formula;
    return grows ? made : NULL;
}

// `rod 4` where `rod` has places.
static void grow_bare(const Agenda *agenda, const char *step, CheckTyped *made)
{
    const char *blank = strrchr(made->name, ' ');
    if (!blank || !is_label(blank + 1) || !g_ascii_isdigit(blank[strlen(blank) - 1]))
        return;
    g_autofree char *front = g_strndup(made->name, (gsize)(blank - made->name));
    const Requirement *like = growing(agenda, step, front);
    if (!like)
        return;
    made->at = at_words(agenda->plan, blank + 1);
    made->grows = TRUE;
    made->like = like;
    g_free(made->name);
    made->name = g_steal_pointer(&front);
}

CheckTyped check_typed(const Agenda *agenda, const char *step, const char *typed)
{
    CheckTyped made = {0};
    g_autofree char *labels = NULL;
    if (part_labels(typed, &made.name, &labels)) {
        made.like = growing(agenda, step, made.name);
        made.grows = made.like != NULL;
        if (made.grows || stands_alone(labels))
            made.at = at_words(agenda->plan, labels);
        else {
            g_free(made.name);
            made.name = g_strdelimit(g_strndup(typed, strlen(typed) - 1), "[", ' ');
        }
    } else {
        made.name = g_strdup(typed);
        grow_bare(agenda, step, &made);
    }
    if (!made.like)
        made.like = newest_like(agenda, made.name, FALSE);
    return made;
}

char *check_typed_limits(const CheckTyped *typed)
{
    const Requirement *like = typed->like;
    guint count = like ? like->check->limits->len : 0;
    const PlanLimit *last = count ? like->check->limits->pdata[count - 1] : NULL;
    if (!like || !like->amended || (!like->lower && !like->upper))
        return last ? g_strdup(limits_text(last->limits)) : NULL;
    const Unit *unit = like->check->unit;
    g_autofree char *limits = figure_limits(like);
    return g_strconcat(limits, unit ? " " : "", unit ? unit_text(unit) : "", NULL);
}
