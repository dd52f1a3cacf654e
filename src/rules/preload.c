#include <standbook/rules/preload.h>

#include <math.h>
#include <string.h>

static const double gigapascal = 1e9;

double band_middle(Band band)
{
    return (band.low + band.high) / 2;
}

Band band_around(double value, double share)
{
    return (Band){value * (1 - share), value * (1 + share)};
}

// FRICTION --------------------------------------------------------------------------------------

// The words are looked for in this order: moly grease is moly, dry moly paste is moly.
static const struct {
    const char *words; // of which one stands in the lubricant's name
    Band friction;
} frictions[] = {
    {"moly graphite ptfe anti-seize copper paste wax", {0.04, 0.16}},
    {"locker lock adhesive", {0.14, 0.24}},
    {"oil grease sealant lube", {0.08, 0.16}},
    {"dry none clean", {0.14, 0.24}},
};

static gboolean names_one_of(const char *lubricant, const char *words)
{
    g_autofree char *lower = g_utf8_strdown(lubricant, -1);
    g_auto(GStrv) all = g_strsplit(words, " ", -1);
    for (guint i = 0; all[i]; i++)
        if (strstr(lower, all[i]))
            return TRUE;
    return FALSE;
}

// Words such as `no oil` name what is not there.
static gboolean denies(const char *lubricant)
{
    static const char *const words[] = {"no", "not", "without", NULL};
    g_autofree char *lower = g_utf8_strdown(lubricant, -1);
    g_auto(GStrv) all = g_strsplit_set(lower, " ,;", -1);
    for (guint i = 0; all[i]; i++)
        if (g_strv_contains(words, all[i]))
            return TRUE;
    return FALSE;
}

gboolean friction_of(const char *lubricant, Band *friction)
{
    gboolean names = lubricant && !denies(lubricant);
    for (gsize i = 0; names && i < G_N_ELEMENTS(frictions); i++) {
        if (!names_one_of(lubricant, frictions[i].words))
            continue;
        *friction = frictions[i].friction;
        return TRUE;
    }
    *friction = (Band){0.08, 0.24};
    return FALSE;
}

// TORQUE ----------------------------------------------------------------------------------------

double preload_torque(const Thread *thread, double bearing, double friction, double preload)
{
    return preload * (thread->pitch / (2 * G_PI) +
                      thread_pitch_diameter(thread) * friction / sqrt(3) + bearing * friction / 2);
}

Band preload_by_torque(const Thread *thread, double bearing, Band friction, Band torque)
{
    return (Band){torque.low / preload_torque(thread, bearing, friction.high, 1),
                  torque.high / preload_torque(thread, bearing, friction.low, 1)};
}

double preload_at_yield(const Thread *thread, double yield, double friction, double share)
{
    double pitch_diameter = thread_pitch_diameter(thread);
    double diameter = (pitch_diameter + thread_root_diameter(thread)) / 2;
    double twist = 1.5 * pitch_diameter / diameter *
                   (thread->pitch / (G_PI * pitch_diameter) + 2 / sqrt(3) * friction);
    return share * yield * thread_stress_area(thread) / sqrt(1 + 3 * twist * twist);
}

// STIFFNESS -------------------------------------------------------------------------------------

static const struct {
    const char *name;
    double elasticity; // GPa
} materials[] = {{"steel", 207}, {"iron", 100}, {"alloy", 71}};

gboolean elasticity_of(const char *material, Band *elasticity)
{
    *elasticity =
        (Band){materials[2].elasticity * gigapascal, materials[0].elasticity * gigapascal};
    for (gsize i = 0; material && i < G_N_ELEMENTS(materials); i++) {
        if (!names_one_of(material, materials[i].name))
            continue;
        elasticity->low = elasticity->high = materials[i].elasticity * gigapascal;
        return TRUE;
    }
    return FALSE;
}

double bolt_stiffness(const Thread *thread, double clamped, double shank)
{
    double whole = G_PI / 4 * thread->diameter * thread->diameter;
    double threaded = thread_stress_area(thread);
    return whole * threaded * materials[0].elasticity * gigapascal /
           (whole * (clamped - shank) + threaded * shank);
}

double cone_stiffness(double elasticity, double hole, double face, double thickness)
{
    double slope = 2 / sqrt(3) * thickness; // how much wider the cone has become, 2 tan 30°
    return G_PI / sqrt(3) * elasticity * hole /
           log((slope + face - hole) * (face + hole) / ((slope + face + hole) * (face - hole)));
}

double joint_stiffness(const Thread *thread, double clamped, double elasticity)
{
    return cone_stiffness(elasticity, thread->diameter, 1.5 * thread->diameter, clamped / 2) / 2;
}

// ANGLE AND STRETCH -----------------------------------------------------------------------------

static double in_series(double one, double other)
{
    return one * other / (one + other);
}

Band preload_by_angle(const Thread *thread, Band snug, Band angle, Band bolt, Band joint)
{
    double travel = thread->pitch / (2 * G_PI); // of the thread, per radian
    return (Band){snug.low + travel * angle.low * in_series(bolt.low, joint.low),
                  snug.high + travel * angle.high * in_series(bolt.high, joint.high)};
}

Band preload_by_stretch(Band bolt, Band stretch)
{
    return (Band){bolt.low * stretch.low, bolt.high * stretch.high};
}
