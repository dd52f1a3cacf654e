#include "addition.h"

#include "check_typed.h"
#include "line_words.h"

#include <string.h>

const char *addition_answer(const Addition *addition, guint index)
{
    if (index < addition->answers->len)
        return addition->answers->pdata[index];
    return addition->card && index == addition->sort->why ? "came up at the bench"
                                                          : addition->sort->questions[index].sample;
}

// LINES -----------------------------------------------------------------------------------------

// A text of YAML in double quotes.
static char *quoted(const char *text)
{
    g_autoptr(GString) escaped = g_string_new(text);
    g_string_replace(escaped, "\\", "\\\\", 0);
    g_string_replace(escaped, "\"", "\\\"", 0);
    return g_strdup_printf("\"%s\"", escaped->str);
}

// What follows the name in a plan: limits alone, or with the places. More places of a check keep
// its limits unless others are said.
static char *definition(const CheckTyped *typed, const char *limits)
{
    g_autofree char *kept = check_typed_limits(typed), *text = quoted(limits);
    const GPtrArray *has = typed->grows ? typed->like->check->limits : NULL;
    gboolean for_all = has && has->len == 1 && !((const PlanLimit *)has->pdata[0])->label;
    gboolean keeps = for_all && kept && strcmp(kept, limits) == 0;
    if (!typed->at)
        return g_strdup(limits);
    if (keeps)
        return g_strdup_printf("{at: %s}", typed->at);
    return *limits == '{' ? g_strdup_printf("{at: %s, %s", typed->at, limits + 1)
                          : g_strdup_printf("{at: %s, limits: %s}", typed->at, text);
}

const PlanCheck *addition_named_check(const Addition *addition, const Agenda *agenda)
{
    g_auto(CheckTyped) typed = check_typed(agenda, addition->step, addition_answer(addition, 0));
    return typed.at || typed.grows ? NULL : plan_check(agenda->plan, typed.name);
}

// One of a step before this one that this one does not read yet.
const PlanStep *addition_reads_again(const Addition *addition, const Agenda *agenda)
{
    const PlanCheck *check = addition_is_check(addition) && addition->answers->len
                                 ? addition_named_check(addition, agenda)
                                 : NULL;
    const PlanStep *step = plan_step(agenda->plan, addition->step);
    if (!check || !step || !plan_step_follows(step, check->step))
        return NULL;
    for (guint i = 0; i < step->read_again->len; i++)
        if (((const PlanName *)step->read_again->pdata[i])->check == check)
            return NULL;
    return check->step;
}

static char *again_line(const Addition *addition)
{
    g_autofree char *name = line_quoted(addition_answer(addition, 0));
    g_autofree char *why = line_quoted(addition_answer(addition, 2));
    return g_strdup_printf("add check %s %s in %s: again", name, why, addition->step);
}

static char *check_line(const Addition *addition, const Agenda *agenda)
{
    if (addition_reads_again(addition, agenda))
        return again_line(addition);
    g_auto(CheckTyped) typed = check_typed(agenda, addition->step, addition_answer(addition, 0));
    g_autofree char *kept = check_typed_limits(&typed);
    const char *limits = addition->answers->len < 2 && kept ? kept : addition_answer(addition, 1);
    g_autofree char *name = line_quoted(typed.name), *defined = definition(&typed, limits);
    g_autofree char *why = line_quoted(addition_answer(addition, 2));
    return g_strdup_printf("add check %s %s in %s: %s", name, why, addition->step, defined);
}

static const char untracked[] = "neither";

// Its places as a check has them, and what tells one of it from another.
static char *part_line(const Addition *addition, const Agenda *agenda)
{
    g_auto(CheckTyped) typed = check_typed(agenda, addition->step, addition_answer(addition, 0));
    const char *track = addition_answer(addition, 1);
    gboolean tracked = strcmp(track, untracked) != 0;
    g_autofree char *name = line_quoted(typed.name), *sort = quoted(track);
    g_autofree char *why = line_quoted(addition_answer(addition, 2));
    GString *line = g_string_new(NULL);
    g_string_append_printf(line, "add part %s %s in %s", name, why, addition->step);
    if (typed.at || tracked)
        g_string_append_printf(line, ": {%s%s%s%s%s}", typed.at ? "at: " : "",
                               typed.at ? typed.at : "", typed.at && tracked ? ", " : "",
                               tracked ? "track: " : "", tracked ? sort : "");
    return g_string_free(line, FALSE);
}

static const char as_counted[] = "as counted";

// The rows in which the bolts lie, behind `layout:` or without it.
static char *layout_words(const char *rows)
{
    static const char key[] = "layout:";
    const char *at = g_str_has_prefix(rows, key) ? rows + strlen(key) : rows;
    g_autofree char *layout = quoted(at + strspn(at, " "));
    return g_strconcat(", layout: ", layout, NULL);
}

// `3-4-1-2` or the name of a pattern; behind `spiral` the rows.
static char *order_words(const char *order)
{
    g_auto(GStrv) parts = g_strsplit(order, " ", 2);
    gboolean laid = parts[0] && strcmp(parts[0], "spiral") == 0 && parts[1];
    if (strcmp(order, as_counted) == 0)
        return g_strdup("");
    g_autofree char *pattern = quoted(laid ? parts[0] : order);
    g_autofree char *layout = laid ? layout_words(parts[1]) : g_strdup("");
    return g_strconcat(", order: ", pattern, layout, NULL);
}

enum { STAGES_AT = 3 }; // which question of bolts asks for their stages

// A bare count of bolts is their positions; of none there are no positions.
static char *group_line(const Addition *addition, const Agenda *agenda)
{
    (void)agenda;
    const char *bolts = addition_answer(addition, 1);
    gboolean count = strspn(bolts, "0123456789") == strlen(bolts);
    gboolean none = strspn(bolts, "0") == strlen(bolts);
    g_autofree char *name = line_quoted(addition_answer(addition, 0));
    g_autofree char *order = order_words(addition_answer(addition, 2));
    g_autofree char *stages = quoted(addition_answer(addition, STAGES_AT));
    g_autofree char *why = line_quoted(addition_answer(addition, 4));
    return g_strdup_printf("add group %s %s in %s: {bolts: %s%s%s, stages: %s}", name, why,
                           addition->step, count && !none ? "1.." : "", none ? "" : bolts, order,
                           stages);
}

// Behind a step that is signed work has gone on: what is added comes behind all that is signed.
const PlanStep *addition_behind(const Addition *addition, const Agenda *agenda)
{
    const PlanStep *step = plan_step(agenda->plan, addition->step), *last = step;
    const GPtrArray *all = agenda->assessment->requirements;
    gboolean is_signed = FALSE;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *made = all->pdata[i];
        gboolean given = made->asked == ASKED_SIGN && made->entry > 0;
        is_signed = is_signed || (given && made->step == step);
        if (given && last && made->step->index > last->index)
            last = made->step;
    }
    return is_signed ? last : step;
}

static char *step_line(const Addition *addition, const Agenda *agenda)
{
    const PlanStep *behind = addition_behind(addition, agenda);
    g_autofree char *name = line_quoted(addition_answer(addition, 0));
    g_autofree char *why = line_quoted(addition_answer(addition, 1));
    return g_strdup_printf("add step %s %s behind %s", name, why,
                           behind ? behind->name : addition->step);
}

static char *amend_line(const Addition *addition, const Agenda *agenda)
{
    (void)agenda;
    g_autofree char *why = line_quoted(addition_answer(addition, 1));
    g_autofree char *source = line_quoted(addition_answer(addition, 2));
    return g_strdup_printf("amend %s limits %s %s source %s", addition->target,
                           addition_answer(addition, 0), why, source);
}

// QUESTIONS -------------------------------------------------------------------------------------

static const Sort sorts[] = {
    {"check",
     "it is added to",
     {{"what is measured?", "its name in words: main 3 oil clearance, or rod[1..4]", "it", NULL},
      {"limits", "0.05 to 0.25 mm, max 0.05 mm, mm (no limit known), yes, text; any", "any", NULL},
      {"why?", "the reason, for the workshop's record", "so", NULL}},
     2,
     check_line},
    {"part",
     "it is added to",
     {{"which part?", "its name in words, or with its places: rod shells[1..2]", "it", NULL},
      {"lot or serial?", "what is asked when it is fitted: lot, serial; Enter: neither", untracked,
       untracked},
      {"why?", "the reason, for the workshop's record", "so", NULL}},
     2,
     part_line},
    {"bolts",
     "it is added to",
     {{"which bolts?", "their name in words", "it", NULL},
      {"how many?", "4, or their positions: L1..L3/R1..R3", "4", NULL},
      {"in which order?", "3-4-1-2, row, criss-cross, spiral 1 2 / 3 4; Enter: as counted",
       as_counted, as_counted},
      {"stages", "with > between: 10 > 25 N·m, or 30 N·m > +60°", "25 N·m", NULL},
      {"why?", "the reason, for the workshop's record", "so", NULL}},
     4,
     group_line},
    {"step",
     "it comes behind",
     {{"which step?", "its name in words", "it", NULL},
      {"why?", "the reason, for the workshop's record", "so", NULL}},
     1,
     step_line},
    {"other limits",
     "",
     {{"other limits", "write others: 255 to 290 N, max 7 mm", "any", NULL},
      {"why?", "the reason, as the sheet prints it", "so", NULL},
      {"whose word?", "the source: a letter, a data sheet, a person", "so", NULL}},
     QUESTIONS_MOST,
     amend_line},
};

Addition *addition_new(const char *argument, gboolean card)
{
    Addition *addition = g_new0(Addition, 1);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 3);
    addition->answers = g_ptr_array_new_with_free_func(g_free);
    addition->step = g_strdup(parts[0]);
    addition->named = !parts[1];
    addition->card = card || addition->named;
    addition->sort = addition->named ? &sorts[0] : NULL;
    if (parts[1] && *parts[1]) {
        addition->target = g_strdup(parts[1]);
        addition->has = g_strdup(parts[2] ? parts[2] : "");
    }
    return addition;
}

void addition_free(Addition *addition)
{
    g_ptr_array_unref(addition->answers);
    g_free(addition->step);
    g_free(addition->target);
    g_free(addition->has);
    g_free(addition);
}

const Sort *addition_sort(const Addition *addition, guint index)
{
    guint offered = (guint)G_N_ELEMENTS(sorts) - (addition->target ? 0 : 1);
    return index < offered ? &sorts[index] : NULL;
}

guint addition_digit_of_bolts(const Addition *addition)
{
    guint index = 0;
    for (const Sort *sort; (sort = addition_sort(addition, index)) && sort->line != group_line;)
        index++;
    return index + 1;
}

gboolean addition_is_check(const Addition *addition)
{
    return addition->sort && addition->sort->line == check_line;
}

gboolean addition_amends(const Addition *addition)
{
    return addition->sort && addition->sort->line == amend_line;
}

gboolean addition_asks_stages(const Addition *addition)
{
    return addition->sort && addition->sort->line == group_line &&
           addition->answers->len == STAGES_AT;
}

gboolean addition_is_naming(const Addition *addition)
{
    return addition->card && addition_is_check(addition) && !addition->answers->len;
}

void addition_begin_naming(Addition *addition)
{
    addition->sort = &sorts[0];
    g_ptr_array_set_size(addition->answers, 0);
}

gboolean addition_ends(const Addition *addition, guint at)
{
    return at + 1 == QUESTIONS_MOST || !addition->sort->questions[at + 1].next ||
           (addition->card && at + 1 == addition->sort->why);
}

char *addition_keeps(const Addition *addition, const Agenda *agenda)
{
    if (!addition_is_check(addition) || addition->answers->len != 1)
        return NULL;
    g_auto(CheckTyped) typed = check_typed(agenda, addition->step, addition_answer(addition, 0));
    return check_typed_limits(&typed);
}

char *addition_alone(const Addition *addition, const Agenda *agenda)
{
    if (!addition->sort)
        return NULL;
    const char *alone = addition->sort->questions[addition->answers->len].alone;
    return alone ? g_strdup(alone) : addition_keeps(addition, agenda);
}

char *addition_said(const Addition *addition)
{
    if (addition_amends(addition))
        return g_strdup_printf("amended: %s, %s", addition->target, addition_answer(addition, 0));
    if (addition_is_check(addition))
        return g_strdup_printf("added: %s, %s", addition_answer(addition, 0),
                               addition_answer(addition, 1));
    return g_strdup_printf("added: %s %s", addition->sort->label, addition_answer(addition, 0));
}
