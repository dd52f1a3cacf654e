#include "bench_work.h"

#include <standbook/work/trials.h>

gboolean bench_work(Desk *desk, const char *step, BenchWork *work)
{
    Session *session = desk_build(desk);
    if (!session)
        return FALSE;
    *work = (BenchWork){session_assessment(session), session_plan(session),
                        plan_step(session_plan(session), step)};
    return work->step != NULL;
}

const Requirement *bench_requirement(const BenchWork *work, guint index)
{
    return index < work->assessment->requirements->len
               ? g_ptr_array_index(work->assessment->requirements, index)
               : NULL;
}

gboolean bench_asks(const BenchWork *work, guint index)
{
    const Requirement *made = bench_requirement(work, index);
    gboolean worked_out = made && made->asked == ASKED_READ && made->check->formula;
    return made && made->step == work->step && !made->withdrawn && !worked_out &&
           made->verdict != VERDICT_NOT_NEEDED;
}

gboolean bench_is_open(const BenchWork *work, guint index)
{
    return bench_asks(work, index) && bench_requirement(work, index)->verdict == VERDICT_OPEN;
}

guint bench_search(const BenchWork *work, guint from, gint direction, BenchWanted wanted)
{
    guint count = work->assessment->requirements->len;
    for (guint i = from; i < count; i += (guint)direction) // below 0 it wraps, and ends
        if (wanted(work, i))
            return i;
    return NOWHERE;
}

// What is to be read again for what is left: itself, or an input of what is worked out.
static guint input_of(const BenchWork *work, const Requirement *left, guint index)
{
    if (bench_asks(work, index))
        return index;
    for (guint i = 0;
         left->check && left->check->formula && i < work->assessment->requirements->len; i++)
        if (bench_asks(work, i) && bench_requirement(work, i)->check &&
            formula_uses(left->check->formula, bench_requirement(work, i)->check->name))
            return i;
    return NOWHERE;
}

guint bench_first_left(const BenchWork *work)
{
    for (guint i = 0; i < work->assessment->requirements->len; i++) {
        const Requirement *made = bench_requirement(work, i);
        if (made->step != work->step || made->withdrawn || made->asked == ASKED_SIGN ||
            !requirement_is_left(made))
            continue;
        guint found = input_of(work, made, i);
        if (found != NOWHERE)
            return found;
    }
    return NOWHERE;
}

// Where the newest entry of the step was made: the work goes on behind it.
guint bench_newest(const BenchWork *work)
{
    guint newest = NOWHERE;
    gint64 entry = 0;
    for (guint i = 0; i < work->assessment->requirements->len; i++)
        if (bench_asks(work, i) && bench_requirement(work, i)->entry > entry) {
            newest = i;
            entry = bench_requirement(work, i)->entry;
        }
    return newest;
}

// Whether the plan asks for nothing here but a signature: a card on which checks are named as they
// come.
gboolean bench_is_card(const BenchWork *work)
{
    for (guint i = 0; i < work->assessment->requirements->len; i++) {
        const Requirement *made = bench_requirement(work, i);
        if (made->step == work->step && made->asked != ASKED_SIGN && !made->added)
            return FALSE;
    }
    return TRUE;
}

// What is outside or in doubt because of the place in hand: itself, else the heaviest that is
// worked out from it; NULL if nothing is.
const Requirement *bench_fault(const BenchWork *work, const Requirement *made)
{
    const Requirement *fault = NULL;
    if (made && (made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT))
        return made;
    for (guint i = 0; i < work->assessment->requirements->len; i++) {
        const Requirement *each = bench_requirement(work, i);
        gboolean outside = each->verdict == VERDICT_FAIL || each->verdict == VERDICT_IN_DOUBT;
        if (each->step != work->step || !outside || each->asked != ASKED_READ)
            continue;
        if (!fault || (fault->verdict != VERDICT_FAIL && each->verdict == VERDICT_FAIL))
            fault = each;
    }
    return fault;
}

char *bench_setting(Desk *desk, const BenchWork *work, const Requirement *made)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    gboolean again;
    const PlanCheck *check =
        trials_setting(work->plan, work->step, made, work->assessment,
                       (const Entry *const *)entries->pdata, entries->len, &again);
    return check ? g_strconcat(check->name, "\n", work->step->name, again ? "\nagain" : "", NULL)
                 : NULL;
}
