#include "setting_state.h"
#include <math.h>

static const double negligible = 1e-12, ln_negligible = -27.6, far = 6;

typedef struct {
    double zeroth, first, second; // moments about the value read
} Moments;

// Adds the moments of the normal times |x| rising straight from `rise` at 0, over from..to.
static void add_piece(const gsl_integration_glfixed_table *quadrature, double mean, double sd,
                      double from, double to, double slope, Moments *sum)
{
    from = fmax(from, mean - far * sd);
    to = fmin(to, mean + far * sd);
    if (from >= to)
        return;
    for (size_t i = 0; i < quadrature->n; i++) {
        double x, weight;
        gsl_integration_glfixed_point(from, to, i, &x, &weight, quadrature);
        double z = (x - mean) / sd;
        double share = weight * (1 - slope * fabs(x)) * exp(-0.5 * z * z);
        sum->zeroth += share;
        sum->first += share * x;
        sum->second += share * x * x;
    }
}

double setting_window_variance(double graduation, gboolean difference)
{
    return graduation * graduation / (difference ? 6 : 12);
}

static SettingWindow normal_window(double mean, double variance, double value, double own)
{
    double away = value - mean, sum = variance + own;
    return (SettingWindow){mean + variance / sum * away, variance * own / sum,
                           ln_negligible - 0.5 * away * away / sum, TRUE};
}

SettingWindow setting_window(const gsl_integration_glfixed_table *quadrature, double mean,
                             double variance, double value, double graduation, gboolean difference)
{
    static const double root_two_pi = 2.50662827463100050242;
    double sd = sqrt(variance);
    Moments sum = {0, 0, 0};
    if (difference) {
        add_piece(quadrature, mean - value, sd, -graduation, 0, 1 / graduation, &sum);
        add_piece(quadrature, mean - value, sd, 0, graduation, 1 / graduation, &sum);
    } else {
        add_piece(quadrature, mean - value, sd, -graduation / 2, graduation / 2, 0, &sum);
    }
    double weight = sum.zeroth / (sd * root_two_pi);
    if (!(weight >= negligible))
        return normal_window(mean, variance, value,
                             setting_window_variance(graduation, difference));
    double centre = sum.first / sum.zeroth;
    return (SettingWindow){value + centre, sum.second / sum.zeroth - centre * centre, log(weight),
                           FALSE};
}
