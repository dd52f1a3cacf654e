// Functions of the trade that formulas may call beside min, max and the like. Each is a formula of
// its own, so that units, places and doubt go through it as through any other; a bare number where
// a length is meant is refused.
#pragma once
#include <standbook/value/unit.h>

enum { TRADE_PARAMETERS = 6 };

// One function. All texts are static.
typedef struct {
    const char *name;
    struct {
        const char *name; // NULL behind the last
        const char *unit; // any of its kind will do: `mm`; "" a pure number; NULL: a material
    } parameters[TRADE_PARAMETERS];
    const char *formula; // of the names of the parameters
    const char *note;    // what is to be minded, or NULL
    const char *source;
} TradeFunction;

// The functions in the order of the manual; NULL behind the last. Two may have one name, with
// another number of parameters.
const TradeFunction *trade_function(gsize index);
guint trade_parameters(const TradeFunction *function); // how many it has
// The function of that name with so many parameters; NULL if there is none.
const TradeFunction *trade_find(const char *name, guint count);

// A material and how it grows: per kelvin, with U (k = 2), as decimals.
typedef struct {
    const char *name, *expansion, *doubt, *source;
} TradeMaterial;

// In the order of the manual; NULL behind the last.
const TradeMaterial *trade_material(gsize index);
