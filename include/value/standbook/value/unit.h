// Units and the kinds they measure. A value is always held in the base units m, kg, s, ° (degree),
// K and their products; a unit only matters where a value is read or shown. Factors are exact
// (NIST SP 811:2008, appendix B). °C and °F have an offset at reading and showing only.
#pragma once
#include <standbook/value/number.h>

// The kind of a value: its exponents. Angle is a kind of its own; a pure number has none.
typedef struct {
    gint8 length, mass, time, angle, temperature;
} Kind;

gboolean kind_equal(Kind one, Kind other);
gboolean kind_is_pure(Kind kind);
Kind kind_multiply(Kind one, Kind other);
Kind kind_divide(Kind one, Kind other);
Kind kind_power(Kind kind, gint exponent); // -9 to 9
// Halves the exponents. FALSE when one of them is odd.
gboolean kind_root(Kind kind, Kind *root);
// `a length`, `a torque`, `a pure number`, or the base units in words for a kind without a name
// (`a value in m·K`). The caller frees with g_free.
char *kind_text(Kind kind) G_GNUC_WARN_UNUSED_RESULT;

// A unit never changes once made; copies are shared.
typedef struct Unit Unit;

// Reads a whole unit as people type it: `mm`, `"`, `N·m`, `Nm`, `ft-lb`, `°C`, `kgf/cm²`, `%`.
// Upper and lower case differ. NULL and STANDBOOK_ERROR_MISUSE with a suggestion if unknown.
Unit *unit_parse(const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;
// The same where a value in `wanted` is expected: only units of its kind are suggested. NULL: any.
Unit *unit_parse_for(const char *text, const Unit *wanted,
                     GError **error) G_GNUC_WARN_UNUSED_RESULT;
// How many bytes at the start of `text` look like a unit (letters, ° " % and what joins them
// without a space, or the two parts of a torque with one: `lbf ft`); 0 if it cannot be the start of
// one. Whether it is one, unit_parse says.
gsize unit_span(const char *text);
// A unit of the table, for manuals and tests; the texts are constant.
typedef struct {
    const char *text;      // as shown
    const char *spellings; // as typed beside it, with blanks between
    const char *factor;    // of one unit in base units, exact: a decimal, whole/whole or a quotient
    const char *offset;    // what 0 of the unit is in base units; NULL for none
    Kind kind;
} UnitListed;

// The unit at `index` of the table; FALSE behind the last.
gboolean unit_listed(gsize index, UnitListed *unit);
Unit *unit_copy(const Unit *unit) G_GNUC_WARN_UNUSED_RESULT;
void unit_free(Unit *unit); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Unit, unit_free)

// The spelling shown (`N·m` for `Nm`); lives as long as the unit.
const char *unit_text(const Unit *unit);
Kind unit_kind(const Unit *unit);
gboolean unit_equal(const Unit *one, const Unit *other); // same spelling shown

// To and from base units. NULL for `unit` means a pure number.
Number *unit_to_base(const Unit *unit, const Number *number) G_GNUC_WARN_UNUSED_RESULT;
Number *unit_from_base(const Unit *unit, const Number *base) G_GNUC_WARN_UNUSED_RESULT;
// The same for a difference, a width or a doubt: without the offset of °C and °F.
Number *unit_width_to_base(const Unit *unit, const Number *width) G_GNUC_WARN_UNUSED_RESULT;
Number *unit_width_from_base(const Unit *unit, const Number *base) G_GNUC_WARN_UNUSED_RESULT;
// The unit in which a difference of two values of `unit` is shown: K for °C, itself otherwise
// (°F too gives K). The caller frees.
Unit *unit_of_difference(const Unit *unit) G_GNUC_WARN_UNUSED_RESULT;
// A value in base units for show: `59.790 mm`, `8°`, `90 %`, `≈1.41 mm`; NULL for `unit` shows a
// pure number. Rounded half away from zero to `decimals`. The caller frees with g_free.
char *unit_show(const Unit *unit, const Number *base, guint decimals) G_GNUC_WARN_UNUSED_RESULT;
// The same as number_short has it: `75 N·m`, `22.5°`, `14.8 lbf·ft`.
char *unit_show_short(const Unit *unit, const Number *base) G_GNUC_WARN_UNUSED_RESULT;
