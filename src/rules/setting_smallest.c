#include "setting_state.h"
#include <math.h>
#include <string.h>

// The lesser of the minimum so far and the next value: Clark's first two moments, and the weights
// of both in any covariance.
static SettingSmallest lesser(SettingSmallest so_far, double mean, double variance,
                              double covariance, double *share)
{
    double apart = sqrt(fmax(so_far.variance + variance - 2 * covariance, 0));
    if (apart < 1e-12) {
        *share = so_far.mean <= mean ? 1 : 0;
        return so_far.mean <= mean ? so_far : (SettingSmallest){mean, variance};
    }
    double alpha = (mean - so_far.mean) / apart, density = setting_normal_density(alpha);
    double one = setting_normal(alpha), other = setting_normal(-alpha);
    // About the minimum so far, so that no large squares are subtracted.
    double further = mean - so_far.mean;
    double first = further * other - apart * density;
    double second =
        so_far.variance * one + (variance + further * further) * other - further * apart * density;
    *share = one;
    return (SettingSmallest){so_far.mean + first, fmax(second - first * first, 0)};
}

SettingSmallest setting_smallest(const double *mean, const double *cov, guint count, guint size,
                                 double sign, double *with)
{
    SettingSmallest so_far = {sign * mean[0], cov[0]};
    memcpy(with, cov, size * sizeof *with);
    for (guint i = 1; i < count; i++) {
        const double *row = cov + (gsize)i * size;
        double share;
        so_far = lesser(so_far, sign * mean[i], row[i], with[i], &share);
        for (guint j = 0; j < size; j++)
            with[j] = share * with[j] + (1 - share) * row[j];
    }
    return so_far;
}
