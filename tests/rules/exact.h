// Exact numbers for tests, written as a person writes them: "0.086", "-5.40", "33/20".
#pragma once
#include <check.h>
#include <glib.h>
#include <gmp.h>
#include <string.h>

// Sets `number`, which must be initialised. A decimal point is allowed without a fraction bar.
static inline void exact_set(mpq_ptr number, const char *text)
{
    const char *point = strchr(text, '.');
    g_autoptr(GString) digits = g_string_new(text);
    if (point) {
        g_string_erase(digits, point - text, 1);
        g_string_append_c(digits, '/');
        g_string_append_c(digits, '1');
        for (const char *place = point + 1; *place; place++)
            g_string_append_c(digits, '0');
    }
    ck_assert_int_eq(mpq_set_str(number, digits->str, 10), 0);
    mpq_canonicalize(number);
}

// Adds sign · 10⁻¹²: a hair to either side of a boundary.
static inline void exact_nudge(mpq_ptr number, int sign)
{
    mpq_t hair;
    mpq_init(hair);
    mpq_set_si(hair, sign, 1000000000000);
    mpq_canonicalize(hair);
    mpq_add(number, number, hair);
    mpq_clear(hair);
}
