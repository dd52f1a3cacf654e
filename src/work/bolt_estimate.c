#include <standbook/work/bolt_estimate.h>

#include <standbook/base/error.h>

static const double degree = G_PI / 180;

Band bolt_torque_band(double torque)
{
    return band_around(torque, 0.04);
}

Band bolt_stretch_band(double stretch)
{
    return band_around(stretch, 0.10);
}

Band bolt_angle_band(double angle)
{
    return (Band){MAX(0, angle - 2 * degree), angle + 2 * degree};
}

static gboolean is_said(Band band)
{
    return band.high > 0;
}

static void assume(BoltEstimate *estimate, const char *format, ...) G_GNUC_PRINTF(2, 3);
static void assume(BoltEstimate *estimate, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    g_ptr_array_add(estimate->assumed, g_strdup_vprintf(format, arguments));
    va_end(arguments);
}

static void take_friction(const BoltAsked *asked, BoltEstimate *estimate)
{
    Known known = KNOWN_ALONE;
    estimate->friction = asked->friction;
    if (!is_said(asked->friction))
        known = friction_of(asked->lubricant, &estimate->friction);
    Band band = estimate->friction;
    g_autofree char *figures = band.low < band.high
                                   ? g_strdup_printf("%.2f to %.2f", band.low, band.high)
                                   : g_strdup_printf("%.2f", band.low);
    assume(estimate, "friction %s in thread and under the head, %s%s", figures,
           is_said(asked->friction) ? "as said"
           : known                  ? asked->lubricant
                                    : "not known: from moly to dry",
           known == KNOWN_UNITED ? ": from the least to the greatest of what is named" : "");
}

static double bearing_of(const BoltAsked *asked, BoltEstimate *estimate)
{
    double bearing = asked->bearing > 0 ? asked->bearing : thread_bearing_diameter(&asked->thread);
    assume(estimate, "%s turns on a ring of %.1f mm, %s", asked->bearing > 0 ? "it" : "the head",
           bearing * 1e3, asked->bearing > 0 ? "as said" : "as a hexagon head does");
    return bearing;
}

static gboolean has_gasket(const BoltAsked *asked)
{
    return asked->gasket || names_gasket(asked->material);
}

// From threaded over its whole length to not at all, if nobody says how much.
static Band bolt_of(const BoltAsked *asked, BoltEstimate *estimate)
{
    double clamped = asked->clamped, shank = asked->shank;
    if (shank > 0)
        assume(estimate, "%.4g mm clamped, %.4g mm of them without thread; steel bolt",
               clamped * 1e3, shank * 1e3);
    else
        assume(estimate, "%.4g mm clamped, threaded all along or not at all; steel bolt",
               clamped * 1e3);
    return (Band){bolt_stiffness(&asked->thread, clamped, shank),
                  bolt_stiffness(&asked->thread, clamped, shank > 0 ? shank : clamped)};
}

static Band joint_of(const BoltAsked *asked, BoltEstimate *estimate)
{
    Band elasticity;
    Known known = elasticity_of(asked->material, &elasticity);
    assume(estimate, "what is clamped is %s, stiff as two cones of 30°%s",
           known ? asked->material : "anything from alloy to steel",
           has_gasket(asked) ? ""
                             : ", metal on metal; a gasket between would take part of the "
                               "angle");
    return (Band){joint_stiffness(&asked->thread, asked->clamped, elasticity.low),
                  joint_stiffness(&asked->thread, asked->clamped, elasticity.high)};
}

static Band by_angle(const BoltAsked *asked, double bearing, Band bolt, BoltEstimate *estimate)
{
    const Thread *thread = &asked->thread;
    Band snug = preload_by_torque(thread, bearing, estimate->friction, asked->snug),
         joint = joint_of(asked, estimate);
    if (!has_gasket(asked))
        return preload_by_angle(thread, snug, asked->angle, bolt, joint);
    assume(estimate,
           "%s lies between: how far it gives way is not published, it may take all of the angle "
           "or none",
           asked->gasket ? asked->gasket : "a gasket");
    return preload_by_angle_on_gasket(thread, snug, asked->angle, bolt, joint);
}

static gboolean lacks(const BoltAsked *asked, BoltEstimate *estimate, GError **error)
{
    gboolean needs_length = is_said(asked->angle) || is_said(asked->stretch) || asked->shank > 0;
    gboolean length = needs_length && asked->clamped <= 0;
    gboolean snug = is_said(asked->angle) && !is_said(asked->snug);
    estimate->lacking = length ? "clamped" : snug ? "snug" : NULL;
    if (estimate->lacking)
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, "say also %s",
                    length ? "how long the clamped length is"
                           : "the torque that it was snug at before the angle");
    else if (asked->shank > asked->clamped)
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "more is without thread than is clamped; give the shank within the clamped "
                    "length");
    else
        return FALSE;
    return TRUE;
}

static void pull(const BoltAsked *asked, double bearing, BoltEstimate *estimate)
{
    const Thread *thread = &asked->thread;
    Band friction = estimate->friction;
    if (is_said(asked->torque))
        estimate->pull[PULL_BY_TORQUE] =
            preload_by_torque(thread, bearing, friction, asked->torque);
    if (!is_said(asked->angle) && !is_said(asked->stretch))
        return;
    Band bolt = bolt_of(asked, estimate);
    if (is_said(asked->stretch))
        estimate->pull[PULL_BY_STRETCH] = preload_by_stretch(bolt, asked->stretch);
    if (is_said(asked->angle))
        estimate->pull[PULL_BY_ANGLE] = by_angle(asked, bearing, bolt, estimate);
}

gboolean bolt_estimate(const BoltAsked *asked, BoltEstimate *estimate, GError **error)
{
    *estimate = (BoltEstimate){.area = thread_stress_area(&asked->thread)};
    Strength strength = {0};
    if (asked->strength && !thread_strength(&asked->thread, asked->strength, &strength)) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "there is no class `%s` of this size; write 4.6, 4.8, 5.6, 5.8, 6.8, 8.8, 9.8, "
                    "10.9, 12.9, or grade 1, 2, 5 or 8",
                    asked->strength);
        return FALSE;
    }
    if (lacks(asked, estimate, error))
        return FALSE;
    estimate->assumed = g_ptr_array_new_with_free_func(g_free);
    estimate->proof = strength.proof * estimate->area;
    take_friction(asked, estimate);
    double bearing = bearing_of(asked, estimate), middle = band_middle(estimate->friction);
    if (asked->strength)
        estimate->usual_torque =
            preload_torque(&asked->thread, bearing, middle,
                           preload_at_yield(&asked->thread, strength.yield, middle, 0.9));
    pull(asked, bearing, estimate);
    return TRUE;
}

void bolt_estimate_clear(BoltEstimate *estimate)
{
    g_clear_pointer(&estimate->assumed, g_ptr_array_unref);
}

// WORDS -----------------------------------------------------------------------------------------

char *preload_words(Band preload)
{
    g_autofree char *low = g_strdup_printf("%.3g", preload.low / 1e3);
    g_autofree char *high = g_strdup_printf("%.3g", preload.high / 1e3);
    return g_strcmp0(low, high) == 0 ? g_strdup_printf("%s kN", low)
                                     : g_strdup_printf("%s to %s kN", low, high);
}

char *proof_share_words(const BoltEstimate *estimate, Band preload)
{
    return estimate->proof > 0 ? g_strdup_printf("%.0f to %.0f %% of the proof load",
                                                 preload.low / estimate->proof * 100,
                                                 preload.high / estimate->proof * 100)
                               : NULL;
}

char *proof_caution(const BoltEstimate *estimate, Band preload, gboolean may_yield)
{
    if (may_yield || estimate->proof <= 0 || preload.high <= estimate->proof)
        return NULL;
    return g_strdup_printf(
        "Up to %.3g kN, above the proof load of %.3g kN: it may be stretched for good.",
        preload.high / 1e3, estimate->proof / 1e3);
}

char *substitute_words(const char *substitute, Band has, const char *asked, Band wanted)
{
    g_autofree char *one = preload_words(has), *other = preload_words(wanted);
    gboolean lower = has.low<wanted.low, higher = has.high> wanted.high;
    gboolean apart = has.high < wanted.low || has.low > wanted.high;
    const char *stands = apart    ? lower ? "it clamps less, whatever the friction"
                                          : "it clamps more, whatever the friction"
                         : lower  ? higher ? "it may clamp less or more" : "it may clamp less"
                         : higher ? "it may clamp more"
                                  : "it lies within";
    return g_strdup_printf("%s comes to %s, %s would come to %s: %s.", substitute, one, asked,
                           other, stands);
}
