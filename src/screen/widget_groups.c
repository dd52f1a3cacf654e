#include "widget_groups.h"

#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/finding.h>
#include <standbook/work/summary.h>
#include <string.h>

enum { MARK_COLUMN = 1, NAME_COLUMN = 10, NAME_WIDTH = 26, SAID_COLUMN = 37, SAID_MOST = 6 };

Verdict heaviest_verdict(const guint counts[VERDICTS])
{
    static const Verdict order[] = {VERDICT_FAIL,     VERDICT_IN_DOUBT, VERDICT_OPEN,
                                    VERDICT_CONCEDED, VERDICT_PASS,     VERDICT_NOTED};
    for (gsize i = 0; i < G_N_ELEMENTS(order); i++)
        if (counts[order[i]])
            return order[i];
    return VERDICT_NOT_NEEDED;
}

Style verdict_style(Verdict verdict)
{
    switch (verdict) {
    case VERDICT_FAIL:
        return style_of(TYPE_BOLD, ROLE_HEED);
    case VERDICT_IN_DOUBT:
        return style_of(TYPE_BOLD, ROLE_UNSURE);
    case VERDICT_CONCEDED:
        return style_of(TYPE_PLAIN, ROLE_GRANTED);
    default:
        return style_of(TYPE_PLAIN, ROLE_CALM);
    }
}

static gboolean belong_together(const Requirement *one, const Requirement *other)
{
    return (one->asked == other->asked ||
            (requirement_is_bolted(one) && requirement_is_bolted(other))) &&
           strcmp(one->name, other->name) == 0;
}

static void group_add(Group *group, const Requirement *made)
{
    group->count++;
    group->waiting += finding_waits(made) ? 1 : 0;
    group->counts[made->verdict]++;
    Verdict verdict = heaviest_verdict(group->counts);
    if (group->count == 1 || verdict != group->verdict)
        group->reason = made->reason;
    group->verdict = verdict;
}

GArray *groups_of(const Assessment *assessment, const PlanStep *step)
{
    GArray *groups = g_array_new(FALSE, TRUE, sizeof(Group));
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = g_ptr_array_index(assessment->requirements, i);
        if (made->step != step || made->withdrawn)
            continue;
        Group *last = groups->len ? &g_array_index(groups, Group, groups->len - 1) : NULL;
        if (!last || !belong_together(last->first, made)) {
            g_array_append_val(groups, ((Group){.first = made, .index = i}));
            last = &g_array_index(groups, Group, groups->len - 1);
        }
        group_add(last, made);
    }
    return groups;
}

// What was done, also what was found and waits.
static guint done_of(const Group *group)
{
    return group->count - group->counts[VERDICT_OPEN] + group->waiting;
}

// Whether the values of its places stand side by side.
static gboolean is_told_by_place(const Group *group)
{
    return group->count <= SAID_MOST && !requirement_is_bolted(group->first) && done_of(group);
}

// How many of its places were done, in the word for it, and how many of those need a person.
static char *count_words(const Group *group)
{
    guint done = done_of(group);
    Asked asked = group->first->asked;
    return group->count == 1 ? g_strdup(done ? summary_did(asked) : "")
                             : summary_come(asked, done, group->count, group->counts);
}

// Of several each that is out or in doubt has its mark. Returns the column behind.
static guint put_places(Canvas *canvas, guint row, const Assessment *assessment, const Group *group)
{
    const GPtrArray *all = assessment->requirements;
    guint column = SAID_COLUMN;
    for (guint i = group->index, left = group->count; i < all->len && left; i++) {
        const Requirement *made = all->pdata[i];
        if (made->withdrawn)
            continue;
        left--;
        g_autofree char *value = figure_value(made);
        const char *shown = *value                          ? value
                            : made->verdict == VERDICT_OPEN ? "·"
                                                            : summary_did(made->asked);
        g_autofree char *mark =
            group->count > 1 || group->waiting ? fault_mark(made) : g_strdup("");
        column = canvas_put(canvas, row, column + (column > SAID_COLUMN), 0, style_of(0, 0), shown);
        column = canvas_put(canvas, row, column, 0, verdict_style(verdict_found(made)), mark);
    }
    return column;
}

// What there is to see of it: the values of a few places, else how many are done.
static guint put_said(Canvas *canvas, guint row, const Assessment *assessment, const Group *group)
{
    if (is_told_by_place(group))
        return put_places(canvas, row, assessment, group);
    g_autofree char *words = count_words(group);
    return canvas_put(canvas, row, SAID_COLUMN, 0, style_of(0, 0), words);
}

// `conceded 4, 7`: which of many places; of a few each has its mark. "" where none was.
static char *conceded_words(const Assessment *assessment, const Group *group)
{
    enum { NAMED = 3 };
    const GPtrArray *all = assessment->requirements;
    g_autoptr(GString) places = g_string_new(NULL);
    guint conceded = group->counts[VERDICT_CONCEDED], named = 0;
    if (!conceded || is_told_by_place(group))
        return g_strdup("");
    for (guint i = group->index, left = group->count; i < all->len && left; i++) {
        const Requirement *made = all->pdata[i];
        left -= made->withdrawn ? 0 : 1;
        if (made->verdict == VERDICT_CONCEDED && named < NAMED)
            g_string_append_printf(places, "%s%s", named++ ? "; " : "", made->place);
    }
    return conceded > named
               ? g_strdup_printf("conceded %s and %u more", places->str, conceded - named)
               : g_strdup_printf("conceded %s", places->str);
}

// Why it is outside or in doubt; of what was found and waits, for what; of what nobody measured,
// that.
static char *why_words(const Assessment *assessment, const Group *group)
{
    const char *by_plan = requirement_is_by_plan(group->first) ? "by the plan alone" : "";
    if (group->verdict == VERDICT_FAIL || group->verdict == VERDICT_IN_DOUBT)
        return g_strconcat(reason_said(group->reason), *by_plan ? ", " : "", by_plan, NULL);
    const GPtrArray *all = assessment->requirements;
    for (guint i = group->index; group->waiting && i < all->len; i++) {
        g_autofree char *answer = finding_waits_for(all->pdata[i]);
        if (answer)
            return g_strconcat("waits for ", answer, NULL);
    }
    return *by_plan ? g_strdup(by_plan) : conceded_words(assessment, group);
}

void group_paint(Canvas *canvas, guint row, const Assessment *assessment, const Group *group)
{
    static const Style plain;
    g_autofree char *name =
        g_strconcat(group->first->asked == ASKED_SIGN ? "signed: " : "", group->first->name, NULL);
    guint column = put_said(canvas, row, assessment, group);
    canvas_put(canvas, row, MARK_COLUMN, 8, verdict_style(group->verdict),
               verdict_mark(group->verdict, group->reason, group->first->check));
    canvas_put(canvas, row, NAME_COLUMN, NAME_WIDTH, plain, name);
    g_autofree char *why = why_words(assessment, group);
    canvas_put(canvas, row, column + 2, 0, plain, why);
}
