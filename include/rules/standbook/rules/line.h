// A straight line through points, by least squares, with its doubts, as the working shows it.
// Advice does not rest on it. GSL does the sums (gsl_fit_linear, gsl_fit_mul, gsl_cdf_tdist_Pinv);
// the formulas are those of any text on regression, e.g. NIST/SEMATECH e-Handbook 4.1.4.1.
#pragma once
#include <glib.h>

typedef struct {
    double intercept, slope;       // 0 for a line through the origin
    double intercept_sd, slope_sd; // standard deviations of both
    double residual_sd;            // root of the sum of squares over `freedom`
    guint freedom;                 // points less what was fitted
    double covariance;             // of intercept and slope
} Line;

// Of `count` points; x and y in any units. FALSE when they tell no line or no doubt: fewer than
// three points (two through the origin), or no two different x (none but 0 through the origin).
gboolean line_fit(const double *x, const double *y, gsize count, gboolean through_origin,
                  Line *line);

// The value to expect at x, and in *half half the width of the interval that holds one new value
// with this two-sided chance (0.95): Student's t times √(s² + variance of the line there).
double line_predict(const Line *line, double x, double chance, double *half);

// The value that Student's t, or for freedom 0 the normal, stays below with this chance.
double line_quantile(guint freedom, double chance);
