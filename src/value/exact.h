// What a Number is inside, for what works with it, writes it and reads it.
#pragma once
#include <standbook/value/number.h>

struct Number {
    mpq_t value;
    gint references;
    gboolean approximate;
};

// Zero, to be set before it is handed on; the caller frees with number_free.
Number *number_new(gboolean approximate) G_GNUC_WARN_UNUSED_RESULT;
