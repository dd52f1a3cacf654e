// preload and adapter: what is worked out at the bench without a build or a store.
#include "subcommands.h"

#include <math.h>
#include <standbook/rules/tool.h>
#include <standbook/value/reading.h>
#include <standbook/work/bolt_estimate.h>
#include <stdlib.h>

static const char service_data[] =
    "An estimate in bands: the maker's current service data comes first.";

// READING ---------------------------------------------------------------------------------------

static gboolean refuse_amount(const char *what, const char *text, GError **error)
{
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "%s: `%s` cannot be; write an amount above 0", what, text);
    return FALSE;
}

// An amount above 0. On TRUE or FALSE the caller clears *reading.
static gboolean read_positive(const char *what, const char *text, const char *unit_name,
                              Reading *reading, GError **error)
{
    g_autoptr(Unit) unit = *unit_name ? unit_parse(unit_name, NULL) : NULL;
    if (!reading_parse(text, unit, reading, NULL, error)) {
        g_prefix_error(error, "%s: ", what);
        return FALSE;
    }
    return (number_sign(reading->value) > 0 && isfinite(number_double(reading->value)) &&
            reading->bound == BOUND_NONE) ||
           refuse_amount(what, text, error);
}

// The same in base units, with the ± that was typed; *has_doubt says whether one was.
static gboolean read_amount(const char *what, const char *text, const char *unit_name, Band *band,
                            gboolean *has_doubt, GError **error)
{
    g_auto(Reading) reading = {0};
    if (!read_positive(what, text, unit_name, &reading, error))
        return FALSE;
    double value = number_double(reading.value);
    double doubt = reading.doubt ? number_double(reading.doubt) : 0;
    *band = (Band){value - doubt, value + doubt};
    *has_doubt = reading.doubt != NULL;
    return band->low > 0 || refuse_amount(what, text, error);
}

// PRELOAD ---------------------------------------------------------------------------------------

typedef enum { TORQUE, SNUG, ANGLE, STRETCH, CLAMPED, SHANK, BEARING, FRICTION, AMOUNTS } Amount;

static const struct {
    const char *name, *unit;
    Band (*usual)(double); // what is taken where no ± is typed
    const char *help, *form;
} amounts[AMOUNTS] = {
    [TORQUE] = {"torque", "N·m", bolt_torque_band, "the torque on it, ±4 % unless typed", "N·m"},
    [SNUG] = {"snug", "N·m", bolt_torque_band, "the torque in front of the angle", "N·m"},
    [ANGLE] = {"angle", "°", NULL, "the angle behind it, ±2° unless typed", "°"},
    [STRETCH] = {"stretch", "mm", bolt_stretch_band, "what it became longer, ±10 % unless typed",
                 "mm"},
    [CLAMPED] = {"clamped", "mm", NULL, "the length clamped", "mm"},
    [SHANK] = {"shank", "mm", NULL, "how much of it the bolt has no thread in", "mm"},
    [BEARING] = {"bearing", "mm", NULL, "mean diameter that the head turns on", "mm"},
    [FRICTION] = {"friction", "", NULL, "in thread and under the head: 0.12 ± 0.02", "µ"},
};

typedef struct {
    char *strength, *lubricant, *material, *typed[AMOUNTS];
} PreloadTyped;

static void typed_clear(PreloadTyped *typed)
{
    g_free(typed->strength);
    g_free(typed->lubricant);
    g_free(typed->material);
    for (guint i = 0; i < AMOUNTS; i++)
        g_free(typed->typed[i]);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(PreloadTyped, typed_clear)

static gboolean read_amounts(const PreloadTyped *typed, Band *bands, GError **error)
{
    for (guint i = 0; i < AMOUNTS; i++) {
        gboolean has_doubt = TRUE;
        if (typed->typed[i] && !read_amount(amounts[i].name, typed->typed[i], amounts[i].unit,
                                            &bands[i], &has_doubt, error))
            return FALSE;
        if (i == ANGLE) // held in degrees
            bands[i] = (Band){bands[i].low * G_PI / 180, bands[i].high * G_PI / 180};
        if (typed->typed[i] && !has_doubt && (amounts[i].usual || i == ANGLE))
            bands[i] = (i == ANGLE ? bolt_angle_band : amounts[i].usual)(bands[i].low);
    }
    return TRUE;
}

static gboolean read_bolt(const char *thread, PreloadTyped *typed, BoltAsked *asked, GError **error)
{
    Band bands[AMOUNTS] = {0};
    if (!thread_parse(thread, &asked->thread, error) || !read_amounts(typed, bands, error))
        return FALSE;
    asked->strength = typed->strength ? g_strstrip(typed->strength) : NULL;
    asked->lubricant = typed->lubricant;
    asked->material = typed->material;
    asked->torque = bands[TORQUE];
    asked->snug = bands[SNUG];
    asked->angle = bands[ANGLE];
    asked->stretch = bands[STRETCH];
    asked->clamped = band_middle(bands[CLAMPED]);
    asked->shank = band_middle(bands[SHANK]);
    asked->bearing = band_middle(bands[BEARING]);
    asked->friction = bands[FRICTION];
    return TRUE;
}

static const char *const ways[PULL_WAYS] = {
    [PULL_BY_TORQUE] = "by torque",
    [PULL_BY_ANGLE] = "by angle",
    [PULL_BY_STRETCH] = "by stretch",
};

static json_t *band_json(Band band)
{
    return json_pack("[f,f]", band.low, band.high);
}

static void say_preload_json(const BoltAsked *asked, const BoltEstimate *estimate)
{
    const Thread *thread = &asked->thread;
    json_t *pulls = json_object(), *assumed = json_array();
    for (guint i = 0; i < PULL_WAYS; i++)
        if (estimate->pull[i].high > 0)
            json_object_set_new(pulls, ways[i], band_json(estimate->pull[i]));
    for (guint i = 0; i < estimate->assumed->len; i++)
        json_array_append_new(assumed, json_string(estimate->assumed->pdata[i]));
    json_t *json = json_pack(
        "{s:f,s:f,s:f,s:f,s:f,s:f,s:o?,s:o?,s:o,s:o,s:o}", "diameter mm", thread->diameter * 1e3,
        "pitch mm", thread->pitch * 1e3, "pitch diameter mm", thread_pitch_diameter(thread) * 1e3,
        "minor diameter mm", thread_minor_diameter(thread) * 1e3, "root diameter mm",
        thread_root_diameter(thread) * 1e3, "stress area mm2", estimate->area * 1e6, "proof load N",
        estimate->proof > 0 ? json_real(estimate->proof) : NULL, "usual torque N·m",
        estimate->usual_torque > 0 ? json_real(estimate->usual_torque) : NULL, "friction",
        band_json(estimate->friction), "preload N", pulls, "assumed", assumed);
    say_json(json);
    json_decref(json);
}

static void say_pull(const BoltEstimate *estimate, PullWay way)
{
    Band pull = estimate->pull[way];
    if (pull.high <= 0)
        return;
    g_autofree char *words = preload_words(pull), *share = proof_share_words(estimate, pull);
    g_autofree char *caution = proof_caution(estimate, pull, FALSE);
    say("%-10s  %s%s%s\n", ways[way], words, share ? ", " : "", share ? share : "");
    if (caution)
        say("            %s\n", caution);
}

static void say_preload(const BoltAsked *asked, const BoltEstimate *estimate, const char *thread)
{
    g_autofree char *line =
        g_strdup_printf("%s: stress area %.4g mm²%s", thread, estimate->area * 1e6,
                        asked->thread.left_hand ? "; LEFT-HAND: it tightens anticlockwise" : "");
    say_clean(line);
    if (estimate->proof > 0)
        say("%s%s: proof load %.3g kN; %.3g N·m use 90 %% of the yield at friction %.2f\n",
            g_ascii_isdigit(*asked->strength) ? "class " : "", asked->strength,
            estimate->proof / 1e3, estimate->usual_torque, band_middle(estimate->friction));
    for (guint i = 0; i < PULL_WAYS; i++)
        say_pull(estimate, i);
    say("Assumed:\n");
    for (guint i = 0; i < estimate->assumed->len; i++) {
        g_autofree char *assumed = g_strdup_printf("  %s", (char *)estimate->assumed->pdata[i]);
        say_clean(assumed);
    }
    say("%s\n", service_data);
}

// Says also by which option what is missing is said. Takes the error.
static int fail_lacking(const BoltEstimate *estimate, GError *error)
{
    g_autoptr(GError) why = estimate->lacking ? error : NULL;
    return why ? fail_saying(STANDBOOK_ERROR_MISUSE, "%s: --%s", why->message, estimate->lacking)
               : fail_with(error);
}

static int preload(const char *thread, PreloadTyped *typed, const Common *common)
{
    GError *error = NULL;
    BoltAsked asked = {0};
    g_auto(BoltEstimate) estimate = {0};
    if (!read_bolt(thread, typed, &asked, &error))
        return fail_with(error);
    if (!bolt_estimate(&asked, &estimate, &error))
        return fail_lacking(&estimate, error);
    if (common->json)
        say_preload_json(&asked, &estimate);
    else
        say_preload(&asked, &estimate, thread);
    return 0;
}

int preload_run(int argc, char **argv, Common *common)
{
    enum { WORDS = 3 };
    static const char usage[] = "THREAD";
    g_auto(PreloadTyped) typed = {0};
    GOptionEntry entries[WORDS + AMOUNTS + 1] = {
        {"class", 0, 0, G_OPTION_ARG_FILENAME, &typed.strength, "8.8, 10.9, grade 8", "CLASS"},
        {"lubricant", 0, 0, G_OPTION_ARG_FILENAME, &typed.lubricant,
         "what is on thread and seat: engine oil, dry", "WORDS"},
        {"material", 0, 0, G_OPTION_ARG_FILENAME, &typed.material,
         "of what is clamped: steel, iron, alloy; with a gasket: \"alloy, gasket\"", "WORDS"},
    };
    for (guint i = 0; i < AMOUNTS; i++)
        entries[WORDS + i] = (GOptionEntry){
            amounts[i].name, 0, 0, G_OPTION_ARG_FILENAME, &typed.typed[i], amounts[i].help,
            amounts[i].form};
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, usage,
        "How far a bolt is pulled by a torque, by an angle behind a snug torque, or by a stretch.\n"
        "THREAD is M10, M10x1.25, 3/8-16 or \"1/2 UNF\". Amounts are typed as at the bench: 71,\n"
        "\"52 lbf·ft\", \"0.15 ± 0.01\".",
        entries, &status);
    if (words)
        status = arguments_fit(words, 1, 1, "preload THREAD [--torque N·m …]")
                     ? preload(words[0], &typed, common)
                     : STANDBOOK_ERROR_MISUSE;
    return status;
}

// ADAPTER ---------------------------------------------------------------------------------------

typedef struct {
    Reading torque, length, reach, angle;
} AdapterAsked;

static void asked_clear(AdapterAsked *asked)
{
    reading_clear(&asked->torque);
    reading_clear(&asked->length);
    reading_clear(&asked->reach);
    reading_clear(&asked->angle);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(AdapterAsked, asked_clear)

static gboolean read_turned(const char *text, Reading *angle, GError **error)
{
    g_autoptr(Unit) degree = unit_parse("°", NULL);
    g_autoptr(Number) straight = number_from_integer(180);
    if (!reading_parse(text, degree, angle, NULL, error)) {
        g_prefix_error(error, "angle: ");
        return FALSE;
    }
    if (number_sign(angle->value) >= 0 && number_compare(angle->value, straight) <= 0)
        return TRUE;
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "angle: `%s` cannot be; write 0 in line with the wrench, 90 square to it, up to "
                "180 pointing back",
                text);
    return FALSE;
}

static gboolean read_adapter(GStrv words, AdapterAsked *asked, GError **error)
{
    if (!read_positive("torque", words[0], "N·m", &asked->torque, error) ||
        !read_positive("length", words[1], "mm", &asked->length, error) ||
        !read_positive("reach", words[2], "mm", &asked->reach, error))
        return FALSE;
    if (!read_turned(words[3] ? words[3] : "0", &asked->angle, error))
        return FALSE;
    if (!asked->torque.doubt && !asked->length.doubt && !asked->reach.doubt &&
        !asked->angle.doubt && asked->angle.bound == BOUND_NONE)
        return TRUE;
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "a setting is worked out from figures without ± < or >; leave them out");
    return FALSE;
}

// In the unit in which the torque was typed.
static void say_adapter(const AdapterAsked *asked, double setting, double torque)
{
    double one = torque / number_double(asked->torque.number);
    const char *unit = unit_text(asked->torque.unit);
    say("set %.4g %s for %.4g %s on the bolt\n", setting / one, unit, torque / one, unit);
    say("set to %.4g as it is, it would pull %.4g %s\n", torque / one,
        torque / setting * torque / one, unit);
    say("Lengths from the middle of the grip; pull there, square to the wrench. The maker's "
        "current\n"
        "service data comes first.\n");
}

static int adapter(GStrv words, const Common *common)
{
    GError *error = NULL;
    g_auto(AdapterAsked) asked = {0};
    if (!read_adapter(words, &asked, &error))
        return fail_with(error);
    g_autoptr(Number) reach = tool_reach_along(asked.reach.value, asked.angle.value),
                      exact = tool_setting(asked.torque.value, asked.length.value, reach);
    if (!exact)
        return fail_saying(2, "the adapter points back beyond the grip; turn it or take a longer "
                              "wrench");
    double setting = number_double(exact), torque = number_double(asked.torque.value);
    if (!common->json) {
        say_adapter(&asked, setting, torque);
        return 0;
    }
    json_t *json =
        json_pack("{s:f,s:f}", "setting N·m", setting, "as it is N·m", torque / setting * torque);
    say_json(json);
    json_decref(json);
    return 0;
}

int adapter_run(int argc, char **argv, Common *common)
{
    static const char usage[] = "TORQUE LENGTH REACH [ANGLE]";
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, usage,
        "What a torque wrench is set to with an adapter on it: LENGTH from the middle of the grip\n"
        "to its square, REACH from there to the middle of the bolt, ANGLE between them: 0 in "
        "line,\n"
        "90 square, 180 pointing back. An extension in line with the bolt changes nothing.",
        NULL, &status);
    if (words)
        status = arguments_fit(words, 3, 4, "adapter TORQUE LENGTH REACH [ANGLE]")
                     ? adapter(words, common)
                     : STANDBOOK_ERROR_MISUSE;
    return status;
}
