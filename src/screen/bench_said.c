#include "bench_said.h"

#include "line_words.h"
#include "toolbox.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/clocks.h>

// Of what would change, what weighs most: the place itself if it has limits, else what is worked
// out from it.
static const Requirement *heaviest_change(const Checks *checks)
{
    static const guint weight[VERDICTS] = {
        [VERDICT_OPEN] = 0,     [VERDICT_NOTED] = 1,    [VERDICT_PASS] = 2,
        [VERDICT_CONCEDED] = 3, [VERDICT_IN_DOUBT] = 4, [VERDICT_FAIL] = 5};
    const Requirement *heaviest = NULL;
    const GPtrArray *now = checks->now->requirements;
    for (guint i = 0; checks->supposed && i < now->len; i++) {
        gboolean differs;
        if (now->pdata[i] == checks->supposed->requirements->pdata[i])
            continue; // shared, so it is as it was
        const Requirement *then = checks_at(checks, i, &differs);
        if (!differs || then->verdict == VERDICT_OPEN || then->verdict == VERDICT_NOT_NEEDED)
            continue;
        if (!heaviest || weight[then->verdict] > weight[heaviest->verdict])
            heaviest = then;
    }
    return heaviest;
}

static char *verdict_said(const Requirement *made)
{
    g_autofree char *outside = figure_outside(made);
    g_autofree char *mark =
        g_strstrip(g_strdup(verdict_mark(made->verdict, made->reason, made->check)));
    if (*outside)
        return g_strdup_printf("%s, %s", mark, outside);
    return made->verdict == VERDICT_IN_DOUBT
               ? g_strdup_printf("%s, %s", mark, reason_words(made->reason))
               : g_steal_pointer(&mark);
}

char *bench_meaning(const Checks *checks, guint here)
{
    const Requirement *made = checks_at(checks, here, NULL);
    const Requirement *change = heaviest_change(checks);
    g_autofree char *value = figure_value(made);
    g_autofree char *doubt = figure_doubt(made);
    g_autoptr(GString) words = g_string_new(made->answer); // what is chosen
    if (made->value)
        g_string_append_printf(words, "%s%s %s", words->len ? "   " : "", value, figure_unit(made));
    g_autofree char *inches = made->value ? check_inch_words(made->check, made->value) : NULL;
    if (inches)
        g_string_append_printf(words, " = %s", inches);
    if (!change || change == made) {
        g_autofree char *verdict = verdict_said(made);
        g_string_append_printf(words, " %s   %s", doubt, verdict);
        return g_strdup(words->str);
    }
    g_autofree char *name = requirement_title(change);
    g_autofree char *becomes = figure_value(change);
    g_autofree char *change_doubt = figure_doubt(change);
    g_autofree char *verdict = verdict_said(change);
    g_string_append_printf(words, "   %s becomes %s %s   %s", name, becomes, change_doubt, verdict);
    return g_strdup(words->str);
}

char *bench_has_limits(const Requirement *made)
{
    g_autofree char *title = requirement_title(made), *limits = figure_limits(made);
    const Unit *unit = made->check->unit;
    gboolean bounded = made->lower || made->upper;
    return g_strdup_printf("%s has %s%s%s now", title, *limits ? limits : "no limits",
                           bounded && unit ? " " : "", bounded && unit ? unit_text(unit) : "");
}

char *bench_then_words(const Requirement *made)
{
    return made->asked == ASKED_SIGN ? g_strdup_printf("sign %s", made->name)
                                     : requirement_title(made);
}

// `no run before 21:12`: why nothing of the step should be begun yet; NULL if it may.
static char *soon_words(const Desk *desk, const BenchWork *work)
{
    const Agenda *agenda = &work->agenda;
    Clock clock;
    return clock_forbids(agenda->plan, work->step, agenda->entries, agenda->count, desk->now,
                         &clock)
               ? clock_until(&clock, desk->now)
               : NULL;
}

char *bench_next_words(Desk *desk, const BenchWork *work, guint here, PartState part,
                       const BenchField *field, const char *gauge)
{
    const Requirement *made = bench_requirement(work, here);
    g_autofree char *name = bench_place(&work->agenda, here, part);
    g_autofree char *soon = soon_words(desk, work);
    g_autofree char *place = g_strconcat(name, soon ? " · " : NULL, soon, NULL);
    if (made->asked != ASKED_READ || (!made->check->gauge && !gauge))
        return g_strdup_printf("%s%s%s", place, field->prompt ? "   " : "",
                               field->prompt ? field->prompt : "");
    g_autofree char *with = toolbox_gauge_words(desk, made->check->gauge, gauge);
    return g_strdup_printf("%s%s   %s", place, made->value ? " again" : "", with);
}

void bench_say_counts(const BenchWork *work, Page *page)
{
    guint all = 0, left = 0;
    for (guint i = 0; i < work->agenda.assessment->requirements->len; i++)
        if (bench_asks(work, i) && bench_requirement(work, i)->asked != ASKED_SIGN) {
            all++;
            left += bench_is_open(work, i) ? 1 : 0;
        }
    page_say(&page->count, "%u of %u entered", all - left, all);
}

void bench_say_last(Desk *desk, const char *place, const char *typed, const Requirement *made)
{
    gboolean said = made && (made->check || (made->asked == ASKED_FIT && *typed));
    const char *answer = said ? made->answer : NULL;
    desk_last_entry(desk, "%s · %s", place, answer ? answer : *typed ? typed : "new");
}
