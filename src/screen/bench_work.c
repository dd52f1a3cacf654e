#include "bench_work.h"

#include "decide.h"
#include "setting_tries.h"

#include <standbook/work/coarse.h>
#include <standbook/work/finding.h>
#include <standbook/work/trials.h>
#include <string.h>

gboolean bench_work(Desk *desk, const char *step, BenchWork *work)
{
    Session *session = desk_build(desk);
    if (!session)
        return FALSE;
    work->agenda = session_agenda(session);
    work->step = plan_step(work->agenda.plan, step);
    return work->step != NULL;
}

const Requirement *bench_requirement(const BenchWork *work, guint index)
{
    return index < work->agenda.assessment->requirements->len
               ? g_ptr_array_index(work->agenda.assessment->requirements, index)
               : NULL;
}

gboolean bench_asks(const BenchWork *work, guint index)
{
    return agenda_asks(&work->agenda, work->step, index);
}

gboolean bench_is_open(const BenchWork *work, guint index)
{
    return bench_asks(work, index) && agenda_is_open(&work->agenda, index);
}

gboolean bench_is_work(const BenchWork *work, guint index)
{
    return bench_asks(work, index) && bench_requirement(work, index)->asked != ASKED_SIGN;
}

guint bench_search(const BenchWork *work, guint from, gint direction, BenchWanted wanted)
{
    guint count = work->agenda.assessment->requirements->len;
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
         left->check && left->check->formula && i < work->agenda.assessment->requirements->len; i++)
        if (bench_asks(work, i) && agenda_goes_into(bench_requirement(work, i), left))
            return i;
    return NOWHERE;
}

guint bench_first_left(const BenchWork *work)
{
    for (guint i = 0; i < work->agenda.assessment->requirements->len; i++) {
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

guint bench_to_settle(const BenchWork *work, const char *name)
{
    const Requirement *made = requirement_of_name(work->agenda.assessment, name);
    guint index;
    if (!made || !g_ptr_array_find(work->agenda.assessment->requirements, made, &index))
        return bench_first_left(work);
    return input_of(work, made, index);
}

// Where the newest entry of the step was made: the work goes on behind it.
guint bench_newest(const BenchWork *work)
{
    guint newest = NOWHERE;
    gint64 entry = 0;
    for (guint i = 0; i < work->agenda.assessment->requirements->len; i++)
        if (bench_asks(work, i) && bench_requirement(work, i)->entry > entry) {
            newest = i;
            entry = bench_requirement(work, i)->entry;
        }
    return newest;
}

guint bench_named(const BenchWork *work, const char *name)
{
    const Requirement *made = name ? requirement_of_name(work->agenda.assessment, name) : NULL;
    guint index = NOWHERE;
    gboolean found = made && g_ptr_array_find(work->agenda.assessment->requirements, made, &index);
    return found ? index : NOWHERE;
}

guint bench_open_named(const BenchWork *work, const char *name)
{
    guint index = bench_named(work, name);
    return index != NOWHERE && bench_is_open(work, index) ? index : NOWHERE;
}

guint bench_added(const BenchWork *work, gint64 seq)
{
    const Entry *entry = work->agenda.entries[seq - 1];
    const char *name = strcmp(entry->kind->name, "add") == 0 &&
                               strcmp(entry_text(entry, "what"), "tightening") != 0
                           ? entry_text(entry, "name")
                           : NULL;
    for (guint i = 0; name && i < work->agenda.assessment->requirements->len; i++)
        if (bench_is_open(work, i) && strcmp(bench_requirement(work, i)->name, name) == 0)
            return i;
    return NOWHERE;
}

guint bench_place_of(const BenchWork *work, gint64 seq)
{
    const GPtrArray *all = work->agenda.assessment->requirements;
    for (guint i = 0; seq > 0 && i < all->len; i++)
        if (bench_asks(work, i) && bench_requirement(work, i)->entry == seq)
            return i;
    return NOWHERE;
}

const Requirement *bench_in_question(const BenchWork *work, guint here, guint last)
{
    const Requirement *made = bench_requirement(work, here);
    gboolean through = !made || made->asked == ASKED_SIGN;
    return through && last != NOWHERE ? bench_requirement(work, last) : made;
}

static gboolean is_fault(const Requirement *made)
{
    return made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT;
}

// Whether what is read there is that, or goes into it.
static gboolean bears_on(const Requirement *made, const Requirement *found)
{
    return made == found ||
           (made->check && found->check && found->check->formula && agenda_goes_into(made, found));
}

const Requirement *bench_fault(const BenchWork *work, const Requirement *made, guint last)
{
    const Requirement *before = bench_requirement(work, last), *fault = NULL;
    if (made && is_fault(made))
        return made;
    for (guint i = 0; i < work->agenda.assessment->requirements->len; i++) {
        const Requirement *each = bench_requirement(work, i);
        gboolean meant = (made && bears_on(made, each)) || (before && bears_on(before, each));
        if (each->step != work->step || !is_fault(each) || !meant)
            continue;
        if (!fault || (fault->verdict != VERDICT_FAIL && each->verdict == VERDICT_FAIL))
            fault = each;
    }
    return fault;
}

const Requirement *bench_any_fault(const BenchWork *work)
{
    for (guint i = 0; i < work->agenda.assessment->requirements->len; i++) {
        const Requirement *each = bench_requirement(work, i);
        if (each->step == work->step && !each->withdrawn && is_fault(each))
            return each;
    }
    return NULL;
}

// The first finding of the step that waits for its answer and that what was read there goes into;
// NULL if none does.
static const Requirement *waiting_there(const BenchWork *work, const Requirement *made)
{
    for (guint i = 0; made && i < work->agenda.assessment->requirements->len; i++) {
        const Requirement *each = bench_requirement(work, i);
        if (each->step == work->step && finding_waits(each) && bears_on(made, each))
            return each;
    }
    return NULL;
}

const Requirement *bench_to_decide(const BenchWork *work, const Requirement *made, guint last)
{
    const Requirement *near[] = {waiting_there(work, made),
                                 waiting_there(work, bench_requirement(work, last))};
    return decide_meant(work->agenda.assessment, work->step, near);
}

// That, or, where nothing was read yet, the first that waits at all.
static const Requirement *waiting(const BenchWork *work, const Requirement *made)
{
    const Requirement *there = waiting_there(work, made);
    if (there || (made && made->entry))
        return there;
    for (guint i = 0; i < work->agenda.assessment->requirements->len; i++) {
        const Requirement *each = bench_requirement(work, i);
        if (each->step == work->step && finding_waits(each))
            return each;
    }
    return NULL;
}

const Requirement *bench_asked_why(const BenchWork *work, const Requirement *made, guint last)
{
    const Requirement *fault = bench_fault(work, made, last);
    const Requirement *found = fault ? NULL : waiting(work, made);
    return fault ? fault : found ? found : made;
}

guint bench_to_read_again(const BenchWork *work, guint index)
{
    const Requirement *read = bench_requirement(work, index);
    for (guint i = 0; read->check && i < work->agenda.assessment->requirements->len; i++) {
        const Requirement *made = bench_requirement(work, i);
        if (made->step == work->step && is_coarse(made) && made->check->places->len == 0 &&
            read->check->places->len == 0 && made->check->formula && agenda_goes_into(read, made))
            return input_of(work, made, i);
    }
    return NOWHERE;
}

char *bench_setting(const BenchWork *work, const Requirement *made)
{
    const Agenda *agenda = &work->agenda;
    SettingDue due = trials_setting(agenda->plan, work->step, made, agenda->assessment,
                                    agenda->entries, agenda->count);
    return due.check ? setting_tries_argument(due.check->name, work->step->name, due.place,
                                              due.again ? "again" : NULL)
                     : NULL;
}
