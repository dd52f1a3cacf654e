// What the keys do at the bench beside taking what is typed.
#include "bench_acts.h"

#include "bench_said.h"
#include "concede.h"
#include "decide.h"
#include "line_words.h"
#include "reworked.h"
#include "struck.h"
#include "uphold.h"

#include <standbook/sheet/figures.h>
#include <string.h>

Go bench_go_to(Bench *bench, guint here)
{
    bench->here = here;
    bench->part = STATE_ASKED;
    g_clear_pointer(&bench->named, g_free);
    supposed_forget(&bench->supposed);
    return go(GO_STAY);
}

char *bench_bolts_argument(const Requirement *made)
{
    g_autofree char *name = requirement_name(made);
    gboolean open = made->verdict == VERDICT_OPEN;
    return g_strconcat(made->name, "\n", made->step->name, open ? NULL : "\n", name, NULL);
}

char *bench_again_argument(const Requirement *made)
{
    g_autofree char *name = requirement_name(made);
    return g_strjoin("\n", made->name, made->step->name, name, "again", NULL);
}

// Whether what is typed would stand beside a reading that it does not agree with; where two
// disagree already, only behind one that failed: then it is work to be expected.
static gboolean would_disagree(const Bench *bench, const BenchWork *work, const Requirement *made)
{
    const guint32 disagree = reason_bit(REASON_DISAGREE);
    const Requirement *fault = bench_fault(work, made, NOWHERE);
    const Assessment *then = bench->supposed.made;
    const Requirement *supposed = then ? then->requirements->pdata[bench->here] : NULL;
    gboolean asks = !(made->doubts & disagree) || (fault && fault->verdict == VERDICT_FAIL);
    return asks && made->entry && supposed && (supposed->doubts & disagree);
}

// Whether the reading that stands there was sealed: the engine went on since, and what is read now
// is another matter, also where the two agree; not once it was said that it was worked on.
static gboolean was_sealed(const BenchWork *work, const Requirement *made)
{
    const GPtrArray *gates = work->agenda.assessment->gates;
    gboolean stands = made->entry && !(made->doubts & reason_bit(REASON_BASIS));
    for (guint i = 0; stands && i < gates->len; i++)
        if (((const GateCount *)gates->pdata[i])->sealed > made->entry)
            return TRUE;
    return FALSE;
}

// What stands there, in words: `0.20 before`.
static char *before_words(const Requirement *made, gboolean sealed)
{
    g_autofree char *value = figure_value(made);
    return g_strdup_printf("%s %s", value, sealed ? "before the seal" : "before");
}

char *bench_disagree_words(const Bench *bench, const BenchWork *work)
{
    const Requirement *made = bench_requirement(work, bench->here);
    gboolean read = made && made->asked == ASKED_READ && !made->check->formula && made->value;
    if (!read || !would_disagree(bench, work, made))
        return NULL;
    g_autofree char *before = figure_value(made);
    return g_strdup_printf("%s stands, they disagree", before);
}

// `ring gap 1 0.20 before, 0.35 now`
static char *both_values(const BenchWork *work, const Requirement *made, const char *typed)
{
    g_autofree char *before = before_words(made, was_sealed(work, made)),
                    *title = requirement_title(made);
    return g_strdup_printf("%s %s, %s now", title, before, typed);
}

char *bench_both_words(const Bench *bench, const Desk *desk, const BenchWork *work,
                       const char *typed)
{
    const Requirement *made = bench_requirement(work, bench->here);
    if (!made || !made->value || !desk->both_stand)
        return NULL;
    gboolean sealed = was_sealed(work, made);
    g_autofree char *values = both_values(work, made, typed), *before = before_words(made, sealed);
    return strcmp(desk->both_stand, values) == 0
               ? g_strdup_printf("%s; Enter again keeps both%s", before, sealed ? "" : ", in doubt")
               : NULL;
}

Go bench_ask_rework(Bench *bench, Desk *desk, const BenchWork *work, const char *line,
                    const char *typed)
{
    const Requirement *made = bench_requirement(work, bench->here);
    if (!made || made->asked != ASKED_READ || made->check->formula || !made->value)
        return go(GO_STAY);
    const char *as = reworked_words(&work->agenda, made, desk->now);
    g_autofree char *place = line_target(work->agenda.plan, made);
    g_autofree char *target = g_strconcat(place, "\n", as, NULL);
    if (!line)
        return go_open(VIEW_REWORK, g_steal_pointer(&target));
    g_autofree char *answered = bench_both_words(bench, desk, work, typed);
    if ((!was_sealed(work, made) && !would_disagree(bench, work, made)) || answered)
        return go(GO_STAY);
    g_autofree char *values = both_values(work, made, typed);
    return go_first(go_open(
        VIEW_REWORK, g_strdup_printf("%s\n%" G_GINT64_FORMAT "\n%s", target, made->entry, values)));
}

void bench_ask_to_add(Bench *bench, const BenchWork *work)
{
    bench->asked_to_add = TRUE;
    bench->known_then = work->agenda.count;
}

// The place of what was entered last: of that who is through with the step goes back to. NOWHERE
// for who is not, or who entered nothing that has a place there.
static guint entered_last(const Bench *bench, const Desk *desk, const BenchWork *work)
{
    const Requirement *made = bench_requirement(work, bench->here);
    guint last = made && made->asked != ASKED_SIGN ? NOWHERE : bench_place_of(work, desk->last_seq);
    return last != NOWHERE && bench_is_work(work, last) ? last : NOWHERE;
}

// Behind the last place is the signature, or nowhere, and behind that the close of the step.
static Go move(Bench *bench, const Desk *desk, const BenchWork *work, gint direction)
{
    guint count = work->agenda.assessment->requirements->len;
    guint from = (bench->here == NOWHERE ? count : bench->here) + (guint)direction;
    guint last = direction < 0 ? entered_last(bench, desk, work) : NOWHERE;
    guint found = last != NOWHERE ? last
                                  : bench_search(work, from, direction,
                                                 direction < 0 ? bench_is_work : bench_asks);
    bench->offered = bench->offered && direction < 0;
    g_clear_pointer(&bench->aside, g_free);
    if (found != NOWHERE)
        return bench_go_to(bench, found);
    return direction < 0 ? go(GO_STAY) : go_instead(VIEW_CLOSING, g_strdup(bench->step));
}

// A key pressed, and what it is about.
typedef struct {
    Bench *bench;
    Desk *desk;
    const BenchWork *work;
    const Requirement *made; // the place in question; NULL if there is none
} Acting;

static Go go_on(Acting *acting)
{
    return move(acting->bench, acting->desk, acting->work, 1);
}

static Go go_back(Acting *acting)
{
    return move(acting->bench, acting->desk, acting->work, -1);
}

static Go ask_gauge(Acting *acting)
{
    const Bench *bench = acting->bench;
    const Requirement *made = bench_requirement(acting->work, bench->here);
    const char *sort = made && made->check && made->check->gauge ? made->check->gauge : "";
    return go_open(VIEW_GAUGE, g_strdup_printf("G%s\n\n%u", sort, bench->here));
}

// A part that is fitted is fitted once more. Of a reading in hand, or where the step has no bolt of
// the one read last, whether it was worked on since; else to the bolt of the step that was ticked
// last, and whether it is loosened; an Enter ticks nothing.
static Go go_again(Acting *acting)
{
    Bench *bench = acting->bench;
    const Requirement *here = bench_requirement(acting->work, bench->here);
    if (here && here->asked == ASKED_FIT && here->verdict != VERDICT_OPEN) {
        bench->part = STATE_AGAIN;
        return go(GO_STAY);
    }
    Go rework = bench_ask_rework(bench, acting->desk, acting->work, NULL, "");
    if (rework.kind != GO_STAY)
        return rework;
    const BenchWork *work = acting->work;
    const Requirement *last = NULL;
    for (guint i = 0; i < work->agenda.assessment->requirements->len; i++) {
        const Requirement *made = bench_requirement(work, i);
        if (made->asked == ASKED_BOLT && bench_asks(work, i) &&
            made->entry > (last ? last->entry : 0))
            last = made;
    }
    if (!last && bench->last != NOWHERE && !bench->asked_to_add) {
        bench_go_to(bench, bench->last);
        rework = bench_ask_rework(bench, acting->desk, work, NULL, "");
    }
    if (!last)
        return rework.kind != GO_STAY ? rework : go(GO_DEFAULT);
    return go_instead(VIEW_TIGHTENING, bench_again_argument(last));
}

// Work beside the plan, or other limits: of what is outside because of the place before, else of
// the place in hand; who went back to one that is read means that one.
static Go add(Acting *acting)
{
    Bench *bench = acting->bench;
    const BenchWork *work = acting->work;
    const Requirement *made = acting->made;
    bench_ask_to_add(bench, work);
    if (made && !bench->aside)
        bench->aside = requirement_name(made);
    gboolean open = made && made->verdict == VERDICT_OPEN;
    const Requirement *fault = open ? bench_fault(work, made, bench->last) : NULL;
    const Requirement *meant = fault ? fault : made;
    gboolean check = meant && meant->asked == ASKED_READ;
    g_autofree char *target = check ? line_target(work->agenda.plan, meant) : g_strdup("");
    g_autofree char *has = check ? bench_has_limits(meant) : g_strdup("");
    return go_open(VIEW_ADD, g_strdup_printf("%s\n%s\n%s", bench->step, target, has));
}

static Go take_note(Acting *acting)
{
    const Requirement *made = acting->made;
    g_autofree char *on = made ? line_target(acting->work->agenda.plan, made) : g_strdup("");
    return go_open(VIEW_NOTE, g_strconcat(on, "\n", acting->bench->step, NULL));
}

// What is outside or in doubt goes before a finding that waits, but not before that in hand.
static Go concede(Acting *acting)
{
    const BenchWork *work = acting->work;
    const Requirement *fault = bench_fault(work, acting->made, acting->bench->last);
    const Requirement *found = bench_to_decide(work, acting->made, acting->bench->last);
    if (found && (!fault || found == acting->made))
        return decide_ask(found);
    const Requirement *other = bench_any_fault(work);
    g_autofree char *title = other ? requirement_title(other) : NULL;
    g_autofree char *none =
        other ? g_strdup_printf("nothing is outside or in doubt here, but %s: -Enter back to it",
                                title)
              : g_strdup("nothing in this step is outside or in doubt");
    return concede_ask(acting->desk, work->step, fault, none);
}

static Go uphold(Acting *acting)
{
    return uphold_ask(acting->desk, acting->work->step, acting->made);
}

static Go ask_why(Acting *acting)
{
    const Requirement *made = bench_asked_why(acting->work, acting->made, acting->bench->last);
    return made ? go_open(VIEW_WHY, requirement_name(made)) : go(GO_STAY);
}

static Go look_over(Acting *acting)
{
    const Requirement *made = acting->made;
    return go_open(VIEW_OVER, made && made->check ? g_strdup(made->check->name) : NULL);
}

static Go close_step(Acting *acting)
{
    return go_instead(VIEW_CLOSING, g_strdup(acting->bench->step));
}

static Go go_to_steps(Acting *acting)
{
    (void)acting;
    return go_instead(VIEW_STEPS, NULL);
}

// The place of what is struck comes back.
static Go strike(Acting *acting)
{
    Bench *bench = acting->bench;
    bench->strikes = struck_next(acting->desk);
    bench->stricken = bench_place_of(acting->work, bench->strikes);
    bench->strikes = bench->stricken == NOWHERE ? 0 : bench->strikes;
    return go(GO_DEFAULT);
}

static Go (*const acts[ACTIONS])(Acting *) = {
    [ACTION_ON] = go_on,        [ACTION_BACK] = go_back,     [ACTION_AGAIN] = go_again,
    [ACTION_GAUGE] = ask_gauge, [ACTION_NOTE] = take_note,   [ACTION_ADD] = add,
    [ACTION_CONCEDE] = concede, [ACTION_UPHOLD] = uphold,    [ACTION_WHY] = ask_why,
    [ACTION_OVER] = look_over,  [ACTION_CLOSE] = close_step, [ACTION_BUILD] = go_to_steps,
    [ACTION_STRIKE] = strike,
};

Go bench_act(gpointer state, Desk *desk, Action action)
{
    Bench *bench = state;
    BenchWork work;
    if (!bench_work(desk, bench->step, &work))
        return go(GO_DEFAULT);
    Acting acting = {bench, desk, &work, bench_in_question(&work, bench->here, bench->last)};
    if (action != ACTION_ON && action != ACTION_BACK)
        bench->offered = FALSE; // who comes back from there may name one more
    return acts[action] ? acts[action](&acting) : go(GO_DEFAULT);
}
