#include <gsl/gsl_cdf.h>
#include <gsl/gsl_fit.h>
#include <math.h>
#include <standbook/rules/line.h>

static gboolean tells_a_line(const double *x, gsize count, gboolean through_origin)
{
    if (count < (through_origin ? 2 : 3))
        return FALSE;
    double same = through_origin ? 0 : x[0];
    for (gsize i = 0; i < count; i++)
        if (x[i] < same || x[i] > same)
            return TRUE;
    return FALSE;
}

gboolean line_fit(const double *x, const double *y, gsize count, gboolean through_origin,
                  Line *line)
{
    *line = (Line){0};
    if (!tells_a_line(x, count, through_origin))
        return FALSE;
    double intercept_variance = 0, slope_variance = 0, squares = 0;
    if (through_origin)
        gsl_fit_mul(x, 1, y, 1, count, &line->slope, &slope_variance, &squares);
    else
        gsl_fit_linear(x, 1, y, 1, count, &line->intercept, &line->slope, &intercept_variance,
                       &line->covariance, &slope_variance, &squares);
    line->freedom = (guint)count - (through_origin ? 1 : 2);
    line->intercept_sd = sqrt(intercept_variance);
    line->slope_sd = sqrt(slope_variance);
    line->residual_sd = sqrt(squares / line->freedom);
    return TRUE;
}

double line_predict(const Line *line, double x, double chance, double *half)
{
    double of_line = line->intercept_sd * line->intercept_sd + 2 * x * line->covariance +
                     x * x * line->slope_sd * line->slope_sd;
    double variance = line->residual_sd * line->residual_sd + of_line;
    *half = line_quantile(line->freedom, (1 + chance) / 2) * sqrt(variance);
    return line->intercept + line->slope * x;
}

double line_quantile(guint freedom, double chance)
{
    return freedom ? gsl_cdf_tdist_Pinv(chance, freedom) : gsl_cdf_ugaussian_Pinv(chance);
}
