// What happens at one place: arithmetic on a value together with the weights of what is in it.
// Places made here own their value and weights; place_clear frees them.
#pragma once
#include <standbook/value/array.h>

// Adds an independent ± to a value; its source lies below those of all that the value has.
void place_add_doubt(Place *place, const Number *doubt, gint source);
Place place_reading(const Number *value, Bound bound, gint source, guint32 doubts);
Place place_constant(const Number *value, const Number *doubt, gint source);
Place place_open(const char *note);
Place place_copy(const Place *place);
void place_clear(Place *place);

Place place_combine(ArrayOperation operation, const Place *one, const Place *other);
Place place_negate(const Place *place);
Place place_abs(const Place *place);
Place place_sqrt(const Place *place);
Place place_power(const Place *place, gint exponent);
// Folds `count` members, at least one.
Place place_fold(Fold fold, const Place *const *members, gsize count, ArrayVariance variance,
                 gpointer user);
