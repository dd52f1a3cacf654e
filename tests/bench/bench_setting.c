// Engines set by trial in simulation: by what people do, by the adviser, and by the adviser with an
// earlier build of the family; all meet the same engines. Measures only, and never fails.
//   bench_setting [--engines N] [--seed S] [--row R] [--jobs J] [--unlike] [--found] [--time]
//   bench_setting --draws FILE [--engines N] [--seed S] [--row R]
#include "setting/draws.h"
#include "setting/methods.h"
#include <math.h>
#include <stdio.h>
#include <time.h>

static const Job jobs[] = {
    {"0.001 in", 2, 4, 0.0254, FALSE},         {"1/64 in", 2, 4, 25.4 / 64, FALSE},
    {"1/64 in, A - B", 2, 4, 25.4 / 64, TRUE}, {"1/32 in", 2, 4, 25.4 / 32, FALSE},
    {"1/32 in, A - B", 2, 4, 25.4 / 32, TRUE}, {"0.01 on 0.10 mm", 0.10, 0.546, 0.01, FALSE},
};

static const struct {
    const char *name;
    Method *method;
} methods[] = {
    {"bisection", method_bisection},
    {"secant", method_secant},
    {"secant, geometry", method_secant_geometry},
    {"shop rule", method_shop},
    {"adviser", method_adviser},
    {"adviser, family", method_adviser_family},
};
enum { METHODS = G_N_ELEMENTS(methods), SHOP = 3, ADVISER = 4 };

typedef struct {
    guint count, trials[NEVER + 1], moves, twice, overran, wrong, covered, intervals, outside;
    guint contradictions[SETTING_FINDINGS];
} Tally;

static void tally_add(Tally *tally, const Outcome *outcome)
{
    tally->count++;
    tally->trials[outcome->trials]++;
    tally->moves += outcome->moves;
    tally->twice += outcome->twice;
    tally->overran += outcome->overran ? 1 : 0;
    tally->wrong += outcome->wrong ? 1 : 0;
    tally->covered += outcome->covered;
    tally->intervals += outcome->intervals;
    tally->outside += outcome->outside;
    for (int i = 0; i < SETTING_FINDINGS; i++)
        tally->contradictions[i] += outcome->contradictions[i];
}

static void tally_join(Tally *tally, const Tally *other)
{
    // Nothing but counts.
    guint *to = (guint *)tally;
    const guint *from = (const guint *)other;
    for (gsize i = 0; i < sizeof *tally / sizeof *to; i++)
        to[i] += from[i];
}

static double mean_trials(const Tally *tally)
{
    double sum = 0;
    for (guint i = 0; i <= NEVER; i++)
        sum += i * (double)tally->trials[i];
    return sum / tally->count;
}

static guint quantile_trials(const Tally *tally, double share)
{
    guint so_far = 0;
    for (guint i = 0; i <= NEVER; i++)
        if ((so_far += tally->trials[i]) >= share * tally->count)
            return i;
    return NEVER;
}

static double percent(guint part, guint whole)
{
    return whole ? 100.0 * part / whole : 0;
}

// The 95 % interval of a share (E. B. Wilson 1927), in %.
static void binomial(guint part, guint whole, double *from, double *to)
{
    double n = whole, p = part / n, z = 1.959963985, about = 1 + z * z / n;
    double middle = (p + z * z / (2 * n)) / about;
    double half = z / about * sqrt(p * (1 - p) / n + z * z / (4 * n * n));
    *from = 100 * (middle - half);
    *to = 100 * (middle + half);
}

// One job done by some of the methods over a share of the engines.
typedef struct {
    const Job *job;
    const Drawing *drawing;
    guint engines, first, step, from_method, to_method;
    guint64 seed;
    Tally tallies[METHODS];
} Share;

static gpointer run_share(gpointer data)
{
    Share *share = data;
    for (guint i = share->first; i < share->engines; i += share->step) {
        Random random = random_of(share->seed, i);
        Engine engine = engine_draw(share->job, share->drawing, &random);
        for (guint m = share->from_method; m < share->to_method; m++) {
            Outcome outcome = methods[m].method(&engine, share->drawing, random);
            tally_add(&share->tallies[m], &outcome);
        }
    }
    return NULL;
}

typedef struct {
    int engines, row, jobs;
    gint64 seed;
    gboolean unlike, found, time;
    char *draws; // file to write the engines to; NULL: they are set
} Options;

static Share run_all(const Options *options, const Job *job, const Drawing *drawing, guint from,
                     guint to)
{
    guint count = (guint)options->jobs;
    g_autofree Share *shares = g_new0(Share, count);
    g_autofree GThread **threads = g_new0(GThread *, count);
    for (guint i = 0; i < count; i++) {
        shares[i] = (Share){.job = job,
                            .drawing = drawing,
                            .engines = (guint)options->engines,
                            .first = i,
                            .step = count,
                            .from_method = from,
                            .to_method = to,
                            .seed = (guint64)options->seed};
        threads[i] = g_thread_new("share", run_share, &shares[i]);
    }
    for (guint i = 0; i < count; i++)
        g_thread_join(threads[i]);
    for (guint i = 1; i < count; i++)
        for (guint m = 0; m < METHODS; m++)
            tally_join(&shares[0].tallies[m], &shares[i].tallies[m]);
    return shares[0];
}

static void print_head(void)
{
    printf("%-17s %6s %6s %3s %6s %7s %7s  %s\n", "", "trials", "median", "p90", "moves", "overran",
           "wrong", "95 % interval covers");
}

static void print_tally(const char *name, const Tally *tally)
{
    printf("%-17s %6.3f %6u %3u %6.2f %6.2f%% %6.2f%%", name, mean_trials(tally),
           quantile_trials(tally, 0.5), quantile_trials(tally, 0.9),
           (double)tally->moves / tally->count, percent(tally->overran, tally->count),
           percent(tally->wrong, tally->count));
    if (tally->intervals) {
        double from, to;
        binomial(tally->covered, tally->intervals, &from, &to);
        printf("  %5.2f%% (%.2f to %.2f)", percent(tally->covered, tally->intervals), from, to);
    }
    printf("\n");
}

static void print_false(const char *name, const Tally *tally)
{
    static const char *const kinds[SETTING_FINDINGS] = {
        [SETTING_SLIP] = "slip",           [SETTING_SHIFT] = "shift",
        [SETTING_PLACE] = "place",         [SETTING_WRONG_WAY] = "wrong way",
        [SETTING_SLOPE_OFF] = "slope off", [SETTING_CANNOT] = "cannot",
        [SETTING_COARSE] = "coarse",       [SETTING_OUT_OF_REACH] = "out of reach",
        [SETTING_TOO_MANY] = "too many"};
    printf("%-17s read again %.2f%%; outside the travel %u; said:", name,
           percent(tally->twice, tally->count), tally->outside);
    for (int i = 1; i < SETTING_FINDINGS; i++)
        printf(" %s %.2f%%", kinds[i], percent(tally->contradictions[i], tally->count));
    printf("\n");
}

static void print_row(const Options *options, const Job *job)
{
    Share share = run_all(options, job, &engine_usual, 0, METHODS);
    printf("\n%s: %d engines, seed %" G_GINT64_FORMAT "\n", job->name, options->engines,
           options->seed);
    print_head();
    for (guint m = 0; m < METHODS; m++)
        print_tally(methods[m].name, &share.tallies[m]);
    for (guint m = ADVISER; m < METHODS; m++)
        print_false(methods[m].name, &share.tallies[m]);
    fflush(stdout);
}

static gboolean wanted(const Options *options, guint row)
{
    return options->row == 0 || (guint)options->row == row + 1;
}

// Engines unlike the model, one thing at a time.
static void print_unlike(const Options *options)
{
    Drawing all[9];
    for (guint i = 0; i < G_N_ELEMENTS(all); i++)
        all[i] = engine_usual;
    all[0].name = "shift repeats to 15 %", all[0].repeat = 0.15;
    all[1].name = "hand twice as coarse", all[1].hand = 1.0 / 24;
    all[2].name = "slope within factor 3", all[2].slope_factor = 3;
    all[3].name = "curvature 30 %", all[3].curve = 0.3;
    all[4].name = "spread 60 %", all[4].spread = 0.6;
    all[5].name = "tight answers 10 % more", all[5].ratio = 0.1;
    all[6].name = "lost motion 1/16 turn", all[6].lost = 1.0 / 16;
    all[7].name = "no geometry", all[7].no_geometry = TRUE;
    all[8].name = "direction not known", all[8].no_direction = TRUE;
    for (guint row = 0; row < G_N_ELEMENTS(jobs); row++)
        for (guint i = 0; i < G_N_ELEMENTS(all) && wanted(options, row); i++) {
            Share share = run_all(options, &jobs[row], &all[i], SHOP, ADVISER + 1);
            printf("\n%s, %s: %d engines, seed %" G_GINT64_FORMAT "\n", jobs[row].name, all[i].name,
                   options->engines, options->seed);
            print_head();
            print_tally("shop rule", &share.tallies[SHOP]);
            print_tally("adviser", &share.tallies[ADVISER]);
            print_false("adviser", &share.tallies[ADVISER]);
            fflush(stdout);
        }
}

// What is wrong from the start, and whether it is said.
static void print_found(const Options *options)
{
    Drawing backward = engine_usual, off = engine_usual;
    backward.backward = TRUE;
    off.slope_off = TRUE;
    off.slope_factor = 3;
    for (guint row = 0; row < G_N_ELEMENTS(jobs); row++) {
        if (!wanted(options, row))
            continue;
        Share wrong = run_all(options, &jobs[row], &backward, ADVISER, ADVISER + 1);
        Share steep = run_all(options, &jobs[row], &off, ADVISER, ADVISER + 1);
        const Tally *one = &wrong.tallies[ADVISER], *other = &steep.tallies[ADVISER];
        printf("\n%s: wrong direction found in %.2f%%, slope three times off in %.2f%%\n",
               jobs[row].name, percent(one->contradictions[SETTING_WRONG_WAY], one->count),
               percent(other->contradictions[SETTING_SLOPE_OFF], other->count));
        print_head();
        print_tally("wrong direction", one);
        print_tally("slope off", other);
        print_false("wrong direction", one);
        print_false("slope off", other);
        fflush(stdout);
    }
}

// The engines of the rows asked for, as setting_builder takes them; FALSE if they cannot be
// written.
static gboolean write_draws(const Options *options)
{
    FILE *file = fopen(options->draws, "w");
    if (!file)
        return FALSE;
    for (guint row = 0; row < G_N_ELEMENTS(jobs); row++)
        if (wanted(options, row))
            draws_write(file, &jobs[row], (guint)options->engines, (guint64)options->seed);
    gboolean written = !ferror(file);
    return fclose(file) == 0 && written;
}

// The CPU time of an advice for 20 trials at 8 places, from the first entry on.
static void print_time(void)
{
    enum { TRIALS = 20, PLACES = 8, ROUNDS = 20 };
    SettingModel model;
    setting_model_init(&model);
    model.least = 0;
    model.most = 2;
    model.aim = 0.6;
    model.graduation = 25.4 / 64;
    model.places = PLACES;
    model.geometry = 4;
    model.direction = 1;
    model.step = 1.0 / 48;
    double replay = 0, advice = 0, band = 0;
    for (int round = 0; round < ROUNDS; round++) {
        clock_t start = clock();
        SettingAdviser *adviser = setting_adviser_new(&model);
        for (int trial = 0; trial < TRIALS; trial++) {
            double level = 8 - 0.3 * trial;
            if (trial)
                setting_moved(adviser, -0.3 / 4, TRUE);
            setting_read(adviser, 0, model.graduation * nearbyint(level / model.graduation), FALSE);
            setting_tightened(adviser);
            for (guint p = 0; p < PLACES; p++)
                setting_read(adviser, p,
                             model.graduation *
                                 nearbyint((level + 0.5 + 0.05 * p) / model.graduation),
                             TRUE);
        }
        clock_t replayed = clock();
        SettingAdvice said = setting_advice(adviser);
        clock_t advised = clock();
        SettingBand range;
        setting_band(adviser, &said, &range);
        band += (double)(clock() - advised);
        replay += (double)(replayed - start);
        advice += (double)(advised - replayed);
        setting_adviser_free(adviser);
    }
    double to_ms = 1000.0 / CLOCKS_PER_SEC / ROUNDS;
    printf("20 trials at 8 places: entries %.2f ms, advice %.2f ms, band %.2f ms of CPU\n",
           replay * to_ms, advice * to_ms, band * to_ms);
}

int main(int argc, char **argv)
{
    Options options = {.engines = 2000, .jobs = 2, .seed = 1};
    const GOptionEntry entries[] = {
        {"engines", 0, 0, G_OPTION_ARG_INT, &options.engines, "engines a row", "N"},
        {"seed", 0, 0, G_OPTION_ARG_INT64, &options.seed, "of what is drawn", "S"},
        {"row", 0, 0, G_OPTION_ARG_INT, &options.row, "only this gauge, 1 to 6", "R"},
        {"jobs", 0, 0, G_OPTION_ARG_INT, &options.jobs, "threads", "J"},
        {"unlike", 0, 0, G_OPTION_ARG_NONE, &options.unlike, "engines unlike the model", NULL},
        {"found", 0, 0, G_OPTION_ARG_NONE, &options.found, "faults from the start", NULL},
        {"time", 0, 0, G_OPTION_ARG_NONE, &options.time, "the CPU time of an advice", NULL},
        {"draws", 0, 0, G_OPTION_ARG_FILENAME, &options.draws, "write the engines, set none",
         "FILE"},
        G_OPTION_ENTRY_NULL};
    g_autoptr(GOptionContext) context = g_option_context_new(NULL);
    g_autoptr(GError) error = NULL;
    g_option_context_add_main_entries(context, entries, NULL);
    if (!g_option_context_parse(context, &argc, &argv, &error) || options.engines < 1 ||
        options.jobs < 1) {
        fprintf(stderr, "bench_setting: %s\n", error ? error->message : "at least one of each");
        return 2;
    }
    if (options.draws) {
        gboolean written = write_draws(&options);
        if (!written)
            fprintf(stderr, "bench_setting: cannot write %s\n", options.draws);
        g_free(options.draws);
        return written ? 0 : 3;
    }
    if (options.unlike)
        print_unlike(&options);
    if (options.found)
        print_found(&options);
    if (!options.unlike && !options.found && !options.time)
        for (guint row = 0; row < G_N_ELEMENTS(jobs); row++)
            if (wanted(&options, row))
                print_row(&options, &jobs[row]);
    if (options.row == 0)
        print_time();
    return 0;
}
