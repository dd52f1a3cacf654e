#include "bolts_beside.h"

#include "bench_work.h"

#include <string.h>

// The next place of the step that is not of this set; other sets count.
static guint beside_bolts(const BenchWork *work, const Turn *turn, guint at, gint direction)
{
    guint count = work->agenda.assessment->requirements->len;
    for (guint i = at + (guint)direction; i < count; i += (guint)direction) {
        const Requirement *made = bench_requirement(work, i);
        gboolean same = requirement_is_bolted(made) && strcmp(made->name, turn->made->name) == 0;
        if (bench_asks(work, i) && made->asked != ASKED_SIGN && !same)
            return i;
    }
    return NOWHERE;
}

Go bolts_leave(Desk *desk, const Turn *turn, gint direction)
{
    BenchWork work;
    guint at = 0;
    const char *step = turn->made->step->name;
    if (!bench_work(desk, step, &work) ||
        !g_ptr_array_find(work.agenda.assessment->requirements, turn->made, &at))
        return go(GO_STAY);
    guint found = beside_bolts(&work, turn, at, direction);
    if (found != NOWHERE) {
        g_autofree char *name = requirement_name(bench_requirement(&work, found));
        return go_instead(VIEW_BENCH, g_strconcat(step, "\n", name, "\nbeside", NULL));
    }
    return direction < 0 ? go(GO_STAY) : go_instead(VIEW_CLOSING, g_strdup(step));
}
