#include <standbook/rules/tool.h>

#include <math.h>

enum { JULIAN_1970 = 719163 };

const char *tool_state_words(ToolState state)
{
    static const char *const words[] = {
        [TOOL_GOOD] = "good",         [TOOL_OVERDUE] = "overdue",
        [TOOL_UNKNOWN] = "unknown",   [TOOL_OUT_OF_RANGE] = "out of range",
        [TOOL_WRONG] = "found wrong",
    };
    return words[state];
}

ToolState tool_range_state(ToolSort sort, mpq_srcptr least, mpq_srcptr greatest, mpq_srcptr used_at)
{
    if (sort == TOOL_TORQUE && !greatest)
        return TOOL_UNKNOWN;
    if (greatest && mpq_cmp(used_at, greatest) > 0)
        return TOOL_OUT_OF_RANGE;
    mpq_t fifth;
    mpq_init(fifth);
    if (sort == TOOL_TORQUE && !least) {
        mpq_set_ui(fifth, 1, 5);
        mpq_mul(fifth, fifth, greatest);
        least = fifth;
    }
    gboolean below = least && mpq_cmp(used_at, least) < 0;
    mpq_clear(fifth);
    return below ? TOOL_OUT_OF_RANGE : TOOL_GOOD;
}

gint64 tool_default_due(gint64 day)
{
    GDate date;
    g_date_clear(&date, 1);
    g_date_set_julian(&date, (guint32)(day + JULIAN_1970));
    g_date_add_years(&date, 1);
    return (gint64)g_date_get_julian(&date) - JULIAN_1970;
}

static gboolean is_before(const ToolCalibration *calibration, const ToolUse *use)
{
    if (calibration->day != use->day)
        return calibration->day < use->day;
    return calibration->seq < use->seq;
}

gboolean tool_last_day(ToolSort sort, const ToolCalibration *calibration, gint64 *day)
{
    gboolean usual = sort == TOOL_TORQUE && calibration->found != TOOL_FOUND_WRONG;
    if (!calibration->has_due && !usual)
        return FALSE;
    *day = calibration->has_due ? calibration->due : tool_default_due(calibration->day);
    return TRUE;
}

static gboolean is_overdue(ToolSort sort, const ToolCalibration *calibration, const ToolUse *use)
{
    if (sort == TOOL_TORQUE && use->count > TOOL_USES_MOST)
        return TRUE;
    gint64 last = 0;
    return tool_last_day(sort, calibration, &last) && use->day > last;
}

static ToolState state_when_used(ToolSort sort, const ToolCalibration *before, const ToolUse *use)
{
    if (!before)
        return sort == TOOL_TORQUE ? TOOL_UNKNOWN : TOOL_GOOD;
    if (before->found == TOOL_FOUND_WRONG)
        return TOOL_WRONG;
    return is_overdue(sort, before, use) ? TOOL_OVERDUE : TOOL_GOOD;
}

static ToolState settle(ToolState state, const ToolCalibration *after)
{
    if (!after || state == TOOL_WRONG || after->found == TOOL_ADJUSTED)
        return state;
    return after->found == TOOL_FOUND_GOOD ? TOOL_GOOD : TOOL_WRONG;
}

ToolStanding tool_use_standing(ToolSort sort, const ToolCalibration *calibrations, gsize count,
                               const ToolUse *use)
{
    gsize earlier = 0;
    while (earlier < count && is_before(&calibrations[earlier], use))
        earlier++;
    const ToolCalibration *before = earlier > 0 ? &calibrations[earlier - 1] : NULL;
    const ToolCalibration *after = earlier < count ? &calibrations[earlier] : NULL;
    ToolState state = settle(state_when_used(sort, before, use), after);
    return (ToolStanding){
        .state = MAX(state, use->range),
        .before = (gssize)earlier - 1,
        .after = after ? (gssize)earlier : -1,
    };
}

Number *tool_setting(const Number *torque, const Number *length, const Number *reach)
{
    g_autoptr(Number) whole = number_add(length, reach);
    if (number_sign(length) <= 0 || number_sign(whole) <= 0)
        return NULL;
    g_autoptr(Number) turned = number_multiply(torque, length);
    return number_divide(turned, whole);
}

Number *tool_reach_along(const Number *reach, const Number *angle)
{
    if (!angle)
        return number_copy(reach);
    g_autofree char *cosine = g_strdup_printf("%.12f", cos(number_double(angle) * G_PI / 180));
    g_autoptr(Number) share = number_from_text(cosine, NULL);
    return number_multiply(reach, share);
}

// What it gave of what it was set to.
static Number *ratio_at(const ToolGave *gave)
{
    return number_divide(gave->gave, gave->set);
}

// The setting nearest to `set` from below (or at it), or from above; NULL if there is none.
static const ToolGave *beside(const ToolGave *rows, gsize count, const Number *set, gboolean above)
{
    const ToolGave *nearest = NULL;
    for (gsize i = 0; i < count; i++) {
        gint to = number_compare(rows[i].set, set);
        gint nearer = nearest ? number_compare(rows[i].set, nearest->set) : 0;
        if ((above ? to > 0 : to <= 0) && (!nearest || (above ? nearer < 0 : nearer > 0)))
            nearest = &rows[i];
    }
    return nearest;
}

// On the straight line from the ratio at one setting to that at the other.
static Number *ratio_between(const ToolGave *below, const ToolGave *above, const Number *set)
{
    g_autoptr(Number) from = ratio_at(below), to = ratio_at(above);
    g_autoptr(Number) rise = number_subtract(to, from);
    g_autoptr(Number) gone = number_subtract(set, below->set);
    g_autoptr(Number) whole = number_subtract(above->set, below->set);
    g_autoptr(Number) part = number_divide(gone, whole);
    g_autoptr(Number) more = number_multiply(rise, part);
    return number_add(from, more);
}

Number *tool_gave(const ToolGave *rows, gsize count, const Number *set)
{
    const ToolGave *below = beside(rows, count, set, FALSE);
    const ToolGave *above = beside(rows, count, set, TRUE);
    if (!below && !above)
        return NULL;
    g_autoptr(Number) ratio =
        below && above ? ratio_between(below, above, set) : ratio_at(below ? below : above);
    return number_multiply(set, ratio);
}
