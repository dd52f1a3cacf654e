#include "setting_state.h"
#include <math.h>

static const double negligible = 1e-12, ln_negligible = -27.6, far = 6;

SettingQuadrature setting_quadrature_new(void)
{
    return (SettingQuadrature){gsl_integration_glfixed_table_alloc(8),
                               gsl_integration_glfixed_table_alloc(20)};
}

void setting_quadrature_free(SettingQuadrature quadrature)
{
    gsl_integration_glfixed_table_free(quadrature.narrow);
    gsl_integration_glfixed_table_free(quadrature.wide);
}

typedef struct {
    double zeroth, first, second; // moments about the value read
} Moments;

// The normal density (without its constant) times 1 - slope |x|, added with a weight.
static void add_point(double mean, double per_sd, double x, double weight, double slope,
                      Moments *sum)
{
    double z = (x - mean) * per_sd;
    double share = weight * (1 - slope * fabs(x)) * exp(-0.5 * z * z);
    sum->zeroth += share;
    sum->first += share * x;
    sum->second += share * x * x;
}

// Adds the moments over from..to, by Gauss-Legendre with an even number of points.
static void add_piece(const SettingQuadrature *quadrature, double mean, double sd, double from,
                      double to, double slope, Moments *sum)
{
    from = fmax(from, mean - far * sd);
    to = fmin(to, mean + far * sd);
    if (from >= to)
        return;
    double middle = (from + to) / 2, half = (to - from) / 2, per_sd = 1 / sd;
    const gsl_integration_glfixed_table *table = half <= sd ? quadrature->narrow : quadrature->wide;
    for (size_t i = 0; i < table->n / 2; i++) {
        double away = half * table->x[i], weight = half * table->w[i];
        add_point(mean, per_sd, middle - away, weight, slope, sum);
        add_point(mean, per_sd, middle + away, weight, slope, sum);
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

SettingWindow setting_window(const SettingQuadrature *quadrature, double mean, double variance,
                             double value, double graduation, gboolean difference)
{
    static const double root_two_pi = 2.50662827463100050242;
    double sd = sqrt(variance);
    Moments sum = {0, 0, 0};
    if (!difference && graduation / 2 - fabs(mean - value) > far * sd)
        return (SettingWindow){mean, variance, 0, FALSE}; // nothing new: it all lies inside
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
