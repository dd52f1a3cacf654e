#include "setting_state.h"
#include <math.h>

double setting_normal(double x)
{
    return 0.5 * erfc(-x * 0.70710678118654752440);
}

double setting_normal_density(double x)
{
    return 0.39894228040143267794 * exp(-0.5 * x * x);
}

static double below(const SettingPart *parts, guint count, double value)
{
    double sum = 0;
    for (guint i = 0; i < count; i++)
        sum += parts[i].weight * setting_normal((value - parts[i].mean) / sqrt(parts[i].variance));
    return sum;
}

static double quantile(const SettingPart *parts, guint count, double chance, double from, double to)
{
    for (int i = 0; i < 60 && to - from > 1e-12 * (1 + fabs(from)); i++) {
        double middle = (from + to) / 2;
        *(below(parts, count, middle) < chance ? &from : &to) = middle;
    }
    return (from + to) / 2;
}

SettingExpected setting_mixture(const SettingPart *parts, guint count)
{
    double mean = 0, least = INFINITY, most = -INFINITY;
    for (guint i = 0; i < count; i++) {
        double reach = 3 * sqrt(parts[i].variance);
        mean += parts[i].weight * parts[i].mean;
        least = fmin(least, parts[i].mean - reach);
        most = fmax(most, parts[i].mean + reach);
    }
    return (SettingExpected){mean, quantile(parts, count, 0.025, least, most),
                             quantile(parts, count, 0.975, least, most)};
}
