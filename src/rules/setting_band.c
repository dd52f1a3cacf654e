#include "setting_state.h"
#include <math.h>

// An adviser beside another, to try entries on.
static SettingAdviser trial_of(const SettingAdviser *adviser)
{
    SettingAdviser trial = *adviser;
    trial.state = setting_state_copy(adviser->state);
    trial.read = g_memdup2(adviser->read, adviser->model.places * sizeof *adviser->read);
    return trial;
}

static void trial_clear(SettingAdviser *trial)
{
    setting_state_free(trial->state);
    g_free(trial->read);
}

static SettingAdviser trial_read(const SettingAdviser *moved, double inside)
{
    SettingAdviser trial = trial_of(moved);
    setting_read(&trial, 0, setting_outward(moved, inside), FALSE);
    return trial;
}

// Whether the rule says tighten once this is read.
static gboolean would_tighten(const SettingAdviser *moved, long graduations)
{
    SettingAdviser trial = trial_read(moved, (double)graduations * moved->graduation);
    double chance;
    gboolean tighten = setting_says_tighten(&trial, &chance);
    trial_clear(&trial);
    return tighten;
}

// The loose reading at place 0 that goes with the aim.
static double wanted_loose(const SettingAdviser *moved)
{
    const SettingState *state = moved->state;
    SettingOutlook outlook = setting_outlook(moved);
    g_autofree double *weights = setting_weights(state);
    double loose = 0;
    for (guint k = 0; k < state->count; k++)
        loose += weights[k] * state->nodes[k].mean[0];
    double middle = (outlook.from + outlook.to) / 2;
    double wanted = CLAMP(outlook.aim, fmin(outlook.from, middle), fmax(outlook.to, middle));
    wanted += loose - outlook.mean;
    setting_outlook_clear(&outlook);
    return wanted;
}

// The last reading on this side that will do, `good` being one.
static long last_good(const SettingAdviser *moved, long good, long bad)
{
    while (labs(bad - good) > 1) {
        long middle = (good + bad) / 2;
        *(would_tighten(moved, middle) ? &good : &bad) = middle;
    }
    return good;
}

// A reading near the wanted one that will do.
static gboolean find_good(const SettingAdviser *moved, long *graduations)
{
    static const int beside[] = {0, 1, -1, 2, -2};
    long wanted = lround(wanted_loose(moved) / moved->graduation);
    for (guint i = 0; i < G_N_ELEMENTS(beside); i++) {
        *graduations = wanted + beside[i];
        if (would_tighten(moved, *graduations))
            return TRUE;
    }
    return FALSE;
}

static void expect_best(const SettingAdviser *moved, double best, SettingBand *band)
{
    SettingAdviser trial = trial_read(moved, best);
    SettingAdvice advice = setting_advice(&trial);
    band->best = setting_outward(moved, best);
    band->tightest = advice.tightest;
    band->loosest = advice.loosest;
    setting_tightened(&trial);
    band->first = setting_expected(&trial, 0);
    trial_clear(&trial);
}

gboolean setting_band(const SettingAdviser *adviser, const SettingAdvice *advice, SettingBand *band)
{
    if (advice->kind != SETTING_MOVE || !advice->leads_loose)
        return FALSE;
    SettingAdviser moved = trial_of(adviser);
    setting_moved(&moved, advice->move, TRUE);
    long good;
    gboolean found = find_good(&moved, &good);
    if (found) {
        long reach = (long)ceil(1 / moved.graduation) + 3;
        double low = (double)last_good(&moved, good, good - reach) * moved.graduation;
        double high = (double)last_good(&moved, good, good + reach) * moved.graduation;
        band->from = fmin(setting_outward(adviser, low), setting_outward(adviser, high));
        band->to = fmax(setting_outward(adviser, low), setting_outward(adviser, high));
        expect_best(&moved, (double)good * moved.graduation, band);
    }
    trial_clear(&moved);
    return found;
}
