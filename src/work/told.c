#include <standbook/base/text.h>
#include <standbook/work/told.h>

#include <standbook/record/live.h>
#include <standbook/value/formula.h>
#include <standbook/work/ago.h>
#include <standbook/work/claim.h>
#include <standbook/work/concession.h>
#include <standbook/work/parts_at.h>
#include <standbook/work/working.h>
#include <string.h>

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
    Moment now;                // 0: every day is said with its year
    GPtrArray *tools, *people; // const char *
} Told;

static void see_hands(Told *told, gint64 seq)
{
    if (seq < 1 || (gsize)seq > told->agenda->count)
        return;
    const Entry *entry = told->agenda->entries[seq - 1];
    const char *tool = entry_tool(entry);
    const char *label = tool ? taken_tool(told->taken, tool) : NULL;
    const char *initials = taken_initials(told->taken, entry->by);
    text_add_once(told->tools, label);
    text_add_once(told->people, initials);
}

static Spread spread_of(Told *told, const char *name, const Requirement *made)
{
    Spread spread = {0};
    const GPtrArray *all = told->agenda->assessment->requirements;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *one = all->pdata[i];
        if (!one->check || one->withdrawn || strcmp(one->check->name, name) != 0 ||
            common_axes(told->agenda->plan, one, made) < 0)
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

// `main bore 59.786 to 59.790; main journal 59.742`: of what is no sum. "" where nothing was read.
static char *spreads_words(const Formula *formula, const Spread *spreads)
{
    GString *line = g_string_new(NULL);
    for (gsize i = 0; formula && i < formula_name_count(formula); i++) {
        g_autofree char *words = spread_words(formula_name(formula, i), &spreads[i]);
        if (words)
            g_string_append_printf(line, "%s%s", line->len ? "; " : "", words);
    }
    return g_string_free(line, FALSE);
}

// What it was worked out from; of a reading only with what and by whom.
static void tell_origin(Told *told, const Requirement *made, GPtrArray *lines)
{
    const Formula *formula = made->check->formula;
    gsize names = formula ? formula_name_count(formula) : 0;
    g_autofree Spread *spreads = g_new0(Spread, names + 1);
    for (gsize i = 0; i < names; i++)
        spreads[i] = spread_of(told, formula_name(formula, i), made);
    if (!formula)
        see_hands(told, made->entry);
    g_autofree char *sum = working_named_words(told->agenda, made);
    g_autofree char *origin = sum ? g_strdup(sum) : spreads_words(formula, spreads);
    g_autofree char *hands = hands_words(told);
    const char *joint = !*origin || !*hands ? "" : sum ? ", " : "; ";
    if (*origin || *hands)
        g_ptr_array_add(lines, g_strconcat(origin, joint, hands, NULL));
    const char *by_plan = requirement_by_plan_said(made);
    if (by_plan)
        g_ptr_array_add(lines, g_strdup(by_plan));
}

static void tell_parts(const Told *told, const Requirement *made, GPtrArray *lines)
{
    g_autoptr(GPtrArray) parts = parts_at(told->agenda, made);
    g_autoptr(GPtrArray) told_parts = part_lines(parts, told->taken, made);
    while (told_parts->len)
        g_ptr_array_add(lines, g_ptr_array_steal_index(told_parts, 0));
}

// DECISIONS ---------------------------------------------------------------------------------------

// Whether an uphold speaks of this bolt, part or signature as it was done last.
static gboolean upholds_done(const Entry *entry, const Requirement *made)
{
    g_autofree const char **labels = entry_labels(entry, g_strv_length(made->labels));
    gboolean here =
        labels ? g_strv_equal(labels, (const char *const *)made->labels) : made->labels[0] == NULL;
    return here && made->upheld && entry->seq > made->entry &&
           strcmp(entry_text(entry, "asked"), asked_words(made->asked)) == 0 &&
           strcmp(entry_text(entry, "name"), made->name) == 0 &&
           g_strcmp0(entry_text(entry, "step"), made->step->name) == 0 &&
           entry_number(entry, "stage") == made->stage;
}

// Whether an uphold speaks of this place, or of one that it is worked out from: the labels of all
// axes that the two checks share agree.
static gboolean upholds_here(const Plan *plan, const Entry *entry, const Requirement *made)
{
    if (!made->check)
        return upholds_done(entry, made);
    const char *name = entry_text(entry, "name");
    const PlanCheck *other = plan_check(plan, name);
    const Formula *formula = made->check->formula;
    if (!other || (strcmp(name, made->name) != 0 && !(formula && formula_uses(formula, name))))
        return FALSE;
    g_autofree const char **labels = entry_labels(entry, other->places->len);
    return places_meet(made->check->places, (const char *const *)made->labels, other->places,
                       labels);
}

GPtrArray *upholds_about(const Plan *plan, const Entry *const *entries, gsize count,
                         const Requirement *made)
{
    GPtrArray *upholds = g_ptr_array_new();
    g_autofree gboolean *live = g_new0(gboolean, count + 1);
    if (made->upheld > 0 && (gsize)made->upheld <= count)
        g_ptr_array_add(upholds, (gpointer)entries[made->upheld - 1]);
    live_entries(entries, count, live);
    for (gsize i = 0; i < count; i++)
        if (live[i] && strcmp(entries[i]->kind->name, "uphold") == 0 &&
            entries[i]->seq != made->upheld && upholds_here(plan, entries[i], made))
            g_ptr_array_add(upholds, (gpointer)entries[i]);
    return upholds;
}

// `11 Mar`, in another year `11 Mar 2025`
static char *day_of(const Told *told, const Entry *entry)
{
    return ago_day(entry_moment(entry), told->now);
}

// `Upheld 11 Mar 2025 by MO and JT: the effect is under 0.002`
static void tell_upholds(const Told *told, const Requirement *made, GPtrArray *lines)
{
    const Agenda *agenda = told->agenda;
    g_autoptr(GPtrArray) upholds =
        upholds_about(agenda->plan, agenda->entries, agenda->count, made);
    for (guint i = 0; i < upholds->len; i++) {
        const Entry *entry = upholds->pdata[i];
        g_autofree char *day = day_of(told, entry);
        const char *second = taken_initials(told->taken, entry_text(entry, "second"));
        g_autofree char *line = g_strconcat(
            "Upheld ", day, " by ", taken_initials(told->taken, entry->by), second ? " and " : "",
            second ? second : "", ": ", entry_text(entry, "why"), NULL);
        if (!g_ptr_array_find_with_equal_func(lines, line, g_str_equal, NULL))
            g_ptr_array_add(lines, g_steal_pointer(&line));
    }
}

// `Conceded 26 Feb 2025 by EV, customer, telephone: honed oversize outside`; whoever accepted it by
// himself is named once.
static void tell_decision(const Told *told, const char *word, gint64 seq, GPtrArray *lines)
{
    static const char *const fields[] = {"decision", "limits", "who", "how", "consent", "source"};
    if (seq < 1 || (gsize)seq > told->agenda->count)
        return;
    const Entry *entry = told->agenda->entries[seq - 1];
    g_autofree char *day = day_of(told, entry);
    const char *by = taken_initials(told->taken, entry->by);
    g_autoptr(GString) line = g_string_new(word);
    g_string_append_printf(line, " %s by %s", day, by);
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++) {
        const char *text = kind_field(entry->kind, fields[i]) ? entry_text(entry, fields[i]) : NULL;
        if (text && strcmp(text, by) != 0)
            g_string_append_printf(line, ", %s", text);
    }
    const char *why = kind_field(entry->kind, "why") ? entry_text(entry, "why") : NULL;
    g_autofree char *sentences = why ? concession_sentences(why) : NULL;
    if (sentences)
        g_string_append_printf(line, ": %s", sentences);
    g_ptr_array_add(lines, g_strdup(line->str));
}

// What certificates claim there.
static void tell_claims(const Agenda *agenda, const Requirement *made, GPtrArray *lines)
{
    g_autoptr(GArray) claims = claims_of(agenda->assessment, agenda->entries, agenda->count);
    for (guint i = 0; i < claims->len; i++)
        if (g_array_index(claims, Claim, i).made == made)
            g_ptr_array_add(lines, claim_words(&g_array_index(claims, Claim, i)));
}

GPtrArray *told_lines(const Agenda *agenda, const Taken *taken, const Requirement *made, Moment now)
{
    GPtrArray *lines = g_ptr_array_new_with_free_func(g_free);
    g_autoptr(GPtrArray) tools = g_ptr_array_new(), people = g_ptr_array_new();
    Told told = {agenda, taken, now, tools, people};
    if (made->check) {
        tell_origin(&told, made, lines);
        tell_parts(&told, made, lines);
        tell_claims(agenda, made, lines);
    }
    tell_upholds(&told, made, lines);
    tell_decision(&told, "Conceded", made->conceded, lines);
    if (made->amended != made->conceded)
        tell_decision(&told, "Limits amended", made->amended, lines);
    tell_decision(&told, "Decided", made->decided, lines);
    for (guint i = 0; i < made->notes->len; i++)
        g_ptr_array_add(lines, g_strdup(made->notes->pdata[i]));
    return lines;
}
