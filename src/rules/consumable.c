#include <standbook/rules/consumable.h>

const char *window_words(WindowAnswer answer)
{
    static const char *const words[] = {
        [WINDOW_OK] = "in time",
        [WINDOW_LATE] = "late",
        [WINDOW_EARLY] = "early",
        [WINDOW_WENT_BACK] = "the clock went back",
    };
    return words[answer];
}

gboolean window_elapsed(const Moment *moments, gsize count, mpq_ptr minutes)
{
    gboolean forward = TRUE;
    for (gsize i = 1; i < count; i++)
        forward = forward && moments[i] >= moments[i - 1];
    gint64 seconds = forward ? moments[count - 1] - moments[0] : -1;
    mpq_set_si(minutes, (long)seconds, 60);
    mpq_canonicalize(minutes);
    return forward;
}

WindowAnswer window_within(mpq_srcptr elapsed, mpq_srcptr allowed)
{
    if (mpq_sgn(elapsed) < 0)
        return WINDOW_WENT_BACK;
    return mpq_cmp(elapsed, allowed) <= 0 ? WINDOW_OK : WINDOW_LATE;
}

WindowAnswer window_after(mpq_srcptr elapsed, mpq_srcptr wait)
{
    if (mpq_sgn(elapsed) < 0)
        return WINDOW_WENT_BACK;
    return mpq_cmp(elapsed, wait) >= 0 ? WINDOW_OK : WINDOW_EARLY;
}

const char *consumable_words(ConsumableState state)
{
    static const char *const words[] = {
        [CONSUMABLE_FIT_BEFORE] = "FIT BEFORE",
        [CONSUMABLE_LATE] = "LATE",
        [CONSUMABLE_NO_FLUID_BEFORE] = "no fluid before",
        [CONSUMABLE_NO_RUN_BEFORE] = "no run before",
        [CONSUMABLE_CURED] = "cured",
        [CONSUMABLE_WENT_BACK] = "the clock went back",
    };
    return words[state];
}

static gboolean still_waits(mpq_srcptr elapsed, mpq_srcptr wait)
{
    return wait && window_after(elapsed, wait) == WINDOW_EARLY;
}

ConsumableState consumable_state(const ConsumableClocks *clocks, mpq_srcptr elapsed,
                                 gboolean fitted)
{
    if (mpq_sgn(elapsed) < 0)
        return CONSUMABLE_WENT_BACK;
    if (!fitted && clocks->fit_within)
        return window_within(elapsed, clocks->fit_within) == WINDOW_OK ? CONSUMABLE_FIT_BEFORE
                                                                       : CONSUMABLE_LATE;
    if (still_waits(elapsed, clocks->fluid_after))
        return CONSUMABLE_NO_FLUID_BEFORE;
    return still_waits(elapsed, clocks->run_after) ? CONSUMABLE_NO_RUN_BEFORE : CONSUMABLE_CURED;
}

mpq_srcptr consumable_clock(const ConsumableClocks *clocks, ConsumableState state)
{
    switch (state) {
    case CONSUMABLE_FIT_BEFORE:
    case CONSUMABLE_LATE:
        return clocks->fit_within;
    case CONSUMABLE_NO_FLUID_BEFORE:
        return clocks->fluid_after;
    case CONSUMABLE_NO_RUN_BEFORE:
        return clocks->run_after;
    default:
        return NULL;
    }
}
