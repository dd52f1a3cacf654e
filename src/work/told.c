#include <standbook/work/told.h>

#include <standbook/value/formula.h>
#include <string.h>

// Axes that a requirement's labels belong to: those of a check's places, of a part's.
static const GPtrArray *axes_of(const Plan *plan, const Requirement *made)
{
    const PlanPart *part = made->asked == ASKED_FIT ? plan_part(plan, made->name) : NULL;
    return part ? part->axes : made->check ? made->check->places : NULL;
}

// How many axes the two have in common; -1 if their labels differ on one of them.
static gint common_axes(const GPtrArray *one_axes, const Requirement *one,
                        const GPtrArray *other_axes, const Requirement *other)
{
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

static void add_once(GPtrArray *all, const char *word)
{
    for (guint i = 0; i < all->len; i++)
        if (strcmp(all->pdata[i], word) == 0)
            return;
    g_ptr_array_add(all, (gpointer)word);
}

// `G03 and G01`, `G03, G01 and G04`. The caller frees.
static char *joined(const GPtrArray *words)
{
    GString *text = g_string_new(NULL);
    for (guint i = 0; i < words->len; i++)
        g_string_append_printf(text, "%s%s",
                               i == 0                ? ""
                               : i + 1 == words->len ? " and "
                                                     : ", ",
                               (const char *)words->pdata[i]);
    return g_string_free(text, FALSE);
}

// The values of one check at the places that have to do with `made`.
typedef struct {
    const Requirement *least, *most; // NULL: none was read
    guint read, asked;
} Spread;

// What a line is put together from.
typedef struct {
    const Agenda *agenda;
    const Taken *taken;
    GPtrArray *tools, *people; // const char *
} Told;

static void see_hands(Told *told, gint64 seq)
{
    if (seq < 1 || (gsize)seq > told->agenda->count)
        return;
    const Entry *entry = told->agenda->entries[seq - 1];
    const char *tool = kind_field(entry->kind, "tool") ? entry_text(entry, "tool") : NULL;
    const char *label = tool ? taken_tool(told->taken, tool) : NULL;
    const char *initials = taken_initials(told->taken, entry->by);
    if (label)
        add_once(told->tools, label);
    if (initials)
        add_once(told->people, initials);
}

static Spread spread_of(Told *told, const char *name, const Requirement *made)
{
    Spread spread = {0};
    const GPtrArray *all = told->agenda->assessment->requirements;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *one = all->pdata[i];
        if (!one->check || one->withdrawn || strcmp(one->check->name, name) != 0 ||
            common_axes(one->check->places, one, made->check->places, made) < 0)
            continue;
        spread.asked++;
        if (!one->value)
            continue;
        spread.read++;
        if (!spread.least || number_compare(one->value, spread.least->value) < 0)
            spread.least = one;
        if (!spread.most || number_compare(one->value, spread.most->value) > 0)
            spread.most = one;
        see_hands(told, one->entry);
    }
    return spread;
}

// `main bore 59.786 to 59.790`; NULL where nothing was read.
static char *spread_words(const char *name, const Spread *spread)
{
    if (!spread->least)
        return NULL;
    g_autofree char *least = check_value_words(spread->least->check, spread->least->value);
    g_autofree char *most = check_value_words(spread->most->check, spread->most->value);
    gboolean one = strcmp(least, most) == 0;
    return g_strconcat(name, " ", least, one ? "" : " to ", one ? "" : most, NULL);
}

static char *hands_words(const Told *told)
{
    g_autofree char *tools = joined(told->tools), *people = joined(told->people);
    return g_strconcat(tools, *tools && *people ? ", " : "", *people ? "by " : "", people, NULL);
}

// What it was worked out from; of a reading only with what and by whom.
static void tell_origin(Told *told, const Requirement *made, GPtrArray *lines)
{
    g_autoptr(GString) line = g_string_new(NULL);
    const Formula *formula = made->check->formula;
    for (gsize i = 0; formula && i < formula_name_count(formula); i++) {
        const char *name = formula_name(formula, i);
        Spread spread = spread_of(told, name, made);
        g_autofree char *words = spread_words(name, &spread);
        if (words)
            g_string_append_printf(line, "%s%s", line->len ? "; " : "", words);
    }
    if (!formula)
        see_hands(told, made->entry);
    g_autofree char *hands = hands_words(told);
    if (*hands)
        g_string_append_printf(line, "%s%s", line->len ? "; " : "", hands);
    if (line->len)
        g_ptr_array_add(lines, g_strdup(line->str));
}

// Parts fitted at the same place: those that share a label of an axis and differ in none.
static void tell_parts(const Told *told, const Requirement *made, GPtrArray *lines)
{
    const Agenda *agenda = told->agenda;
    const GPtrArray *all = agenda->assessment->requirements;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *part = all->pdata[i];
        if (part->asked != ASKED_FIT || !part->answer ||
            common_axes(axes_of(agenda->plan, part), part, made->check->places, made) < 1)
            continue;
        g_ptr_array_add(lines, g_strdup_printf("%s %s: %s", part->name, part->place, part->answer));
    }
}

GPtrArray *told_lines(const Agenda *agenda, const Taken *taken, const Requirement *made)
{
    GPtrArray *lines = g_ptr_array_new_with_free_func(g_free);
    g_autoptr(GPtrArray) tools = g_ptr_array_new(), people = g_ptr_array_new();
    Told told = {agenda, taken, tools, people};
    if (made->check) {
        tell_origin(&told, made, lines);
        tell_parts(&told, made, lines);
    }
    for (guint i = 0; i < made->notes->len; i++)
        g_ptr_array_add(lines, g_strdup(made->notes->pdata[i]));
    return lines;
}
