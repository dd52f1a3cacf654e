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

// WORDS -----------------------------------------------------------------------------------------

static gboolean names_one_of(const char *phrase, const char *words)
{
    g_auto(GStrv) all = g_strsplit(words, " ", -1);
    for (guint i = 0; all[i]; i++)
        if (strstr(phrase, all[i]))
            return TRUE;
    return FALSE;
}

// What is said of one surface or one layer each, in small letters: `oil on threads, dry under head`
// are `oil`, `threads`, `dry` and `head`. NULL gives no phrase. The caller frees.
static GStrv phrases_of(const char *text)
{
    static const char parted[] = "[,;/+&]|\\b(?:and|or|on|in|at|with|under|between|then)\\b";
    g_autofree char *lower = g_utf8_strdown(text ? text : "", -1);
    return g_regex_split_simple(parted, lower, 0, 0);
}

static Band united(Band one, Band other)
{
    return (Band){MIN(one.low, other.low), MAX(one.high, other.high)};
}

// Adds what another phrase names to what is known.
static Known know(Known known, Band *all, Band named)
{
    gboolean differs = known && (named.low != all->low || named.high != all->high);
    *all = known ? united(*all, named) : named;
    return differs ? KNOWN_UNITED : MAX(known, KNOWN_ALONE);
}

// FRICTION --------------------------------------------------------------------------------------

// The words are looked for in this order: moly grease is moly, dry moly paste is moly.
static const struct {
    const char *words; // of which one stands in the phrase
    Band friction;
    gboolean prepared; // says only how it was before anything else was put on
} frictions[] = {
    {"degreas", {0.14, 0.24}, TRUE},
    {"moly graphite ptfe anti-seize copper paste wax", {0.04, 0.16}, FALSE},
    {"locker lock adhesive", {0.14, 0.24}, FALSE},
    {"oil grease sealant lube", {0.08, 0.16}, FALSE},
    {"dry none", {0.14, 0.24}, FALSE},
    {"clean", {0.14, 0.24}, TRUE},
};

// `lead-free moly` says nothing of lead: what is left is moly. The caller frees.
static char *without_free(const char *lubricant)
{
    static const char free_of[] = "[^\\s,;/+&]+[- ]free\\b(?!\\s+(?:of|from)\\b)";
    g_autoptr(GRegex) regex = g_regex_new(free_of, G_REGEX_CASELESS, 0, NULL);
    return g_regex_replace_literal(regex, lubricant ? lubricant : "", -1, 0, "", 0, NULL);
}

// Words such as `no oil` or `free of oil` name what is not there.
static gboolean denies(const char *lubricant)
{
    static const char *const words[] = {"no", "not", "without", "free", NULL};
    g_autofree char *lower = g_utf8_strdown(lubricant, -1);
    g_auto(GStrv) all = g_strsplit_set(lower, " ,;-", -1);
    for (guint i = 0; all[i]; i++)
        if (g_strv_contains(words, all[i]))
            return TRUE;
    return FALSE;
}

// What the phrases name, of those rows that say how it was prepared or of those that do not.
static Known named_friction(GStrv phrases, gboolean prepared, Band *friction)
{
    Known known = KNOWN_NOT;
    for (guint i = 0; phrases[i]; i++) {
        gsize row = 0;
        while (row < G_N_ELEMENTS(frictions) && !names_one_of(phrases[i], frictions[row].words))
            row++;
        if (row < G_N_ELEMENTS(frictions) && frictions[row].prepared == prepared)
            known = know(known, friction, frictions[row].friction);
    }
    return known;
}

Known friction_of(const char *lubricant, Band *friction)
{
    g_autofree char *said = without_free(lubricant);
    g_auto(GStrv) phrases = phrases_of(said);
    gboolean denied = denies(said);
    Known known = denied ? KNOWN_NOT : named_friction(phrases, FALSE, friction);
    if (!denied && !known)
        known = named_friction(phrases, TRUE, friction);
    if (!known)
        *friction = (Band){0.04, 0.24};
    return known;
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

static gboolean is_gasket(const char *phrase)
{
    return strstr(phrase, "gasket") != NULL;
}

static Band elasticity_at(gsize material)
{
    double elasticity = materials[material].elasticity * gigapascal;
    return (Band){elasticity, elasticity};
}

gboolean names_gasket(const char *material)
{
    g_auto(GStrv) phrases = phrases_of(material);
    for (guint i = 0; phrases[i]; i++)
        if (is_gasket(phrases[i]))
            return TRUE;
    return FALSE;
}

Known elasticity_of(const char *material, Band *elasticity)
{
    g_auto(GStrv) phrases = phrases_of(material);
    Known known = KNOWN_NOT;
    for (guint i = 0; phrases[i]; i++)
        for (gsize j = 0; j < G_N_ELEMENTS(materials); j++)
            if (strstr(phrases[i], materials[j].name) && !is_gasket(phrases[i]))
                known = know(known, elasticity, elasticity_at(j));
    if (!known)
        *elasticity = united(elasticity_at(0), elasticity_at(2));
    return known;
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

Band preload_by_angle_on_gasket(const Thread *thread, Band snug, Band angle, Band bolt, Band joint)
{
    const Band nothing = {0, 0};
    return united(preload_by_angle(thread, snug, nothing, bolt, joint),
                  preload_by_angle(thread, snug, angle, bolt, joint));
}

Band preload_by_stretch(Band bolt, Band stretch)
{
    return (Band){bolt.low * stretch.low, bolt.high * stretch.high};
}
