#include <standbook/value/trade.h>
#include <string.h>

// A function is one row. Signs and sides are said where they could be taken two ways.
static const TradeFunction functions[] = {
    {"swept volume",
     {{"bore", "mm"}, {"stroke", "mm"}},
     "pi / 4 * bore^2 * stroke",
     NULL,
     "Heywood, Internal Combustion Engine Fundamentals, ch. 2"},
    {"clearance volume",
     {{"chamber", "cc"},
      {"gasket bore", "mm"},
      {"gasket", "mm"},
      {"bore", "mm"},
      {"deck", "mm"},
      {"dish", "cc"}},
     "chamber + pi / 4 * gasket bore^2 * gasket + pi / 4 * bore^2 * deck + dish",
     "the deck below 0 where the piston stands proud, the dish below 0 for a dome",
     "Heywood, ch. 2"},
    {"compression ratio",
     {{"swept", "cc"}, {"clearance", "cc"}},
     "(swept + clearance) / clearance",
     NULL,
     "Heywood, ch. 2"},
    {"clearance",
     {{"hole", "mm"}, {"shaft", "mm"}},
     "hole - shaft",
     "below 0 it is an interference",
     "ISO 286-1:2010"},
    {"hole wear",
     {{"now", "mm"}, {"new", "mm"}},
     "now - new",
     "below 0 it is smaller than new",
     "common practice, no published source"},
    {"shaft wear",
     {{"now", "mm"}, {"new", "mm"}},
     "new - now",
     "below 0 it is larger than new",
     "common practice, no published source"},
    {"shim wanted",
     {{"fitted", "mm"}, {"found", "mm"}, {"aim", "mm"}},
     "fitted + found - aim",
     "for a gap that a thicker shim closes",
     "common practice, no published source"},
    {"bolt stretch",
     {{"tight", "mm"}, {"free", "mm"}},
     "tight - free",
     "measured on the same bolt with the same anvils",
     "common practice, no published source"},
    {"elastic stretch",
     {{"force", "N"}, {"length", "mm"}, {"area", "mm²"}, {"modulus", "MPa"}},
     "force * length / (area * modulus)",
     "of one section; add those of a bolt with several",
     "Shigley's Mechanical Engineering Design, 9th ed., ch. 8"},
    {"stress area",
     {{"diameter", "mm"}, {"pitch", "mm"}},
     "pi / 4 * (diameter - 0.9382 * pitch)^2",
     "of ISO metric threads",
     "ISO 898-1:2013"},
    {"spring rate",
     {{"short load", "N"}, {"long load", "N"}, {"short", "mm"}, {"long", "mm"}},
     "(short load - long load) / (long - short)",
     "the loads at a shorter and a longer height",
     "common practice, no published source"},
    {"bind margin",
     {{"installed", "mm"}, {"lift", "mm"}, {"solid", "mm"}},
     "installed - lift - solid",
     NULL,
     "common practice, no published source"},
    {"midpoint",
     {{"one side", "°"}, {"other side", "°"}},
     "(one side + other side) / 2",
     "read on past 360° where the wheel goes through 0",
     "common practice, no published source"},
    {"at20",
     {{"length", "mm"}, {"temperature", "°C"}, {"material", NULL}},
     "length / (1 + material * (temperature - 20 °C) / 1 K)",
     "of a part read with a gauge that is itself at 20 °C, or is corrected to it",
     "ISO 1:2022"},
    {"at20",
     {{"length", "mm"},
      {"temperature", "°C"},
      {"material", NULL},
      {"gauge temperature", "°C"},
      {"gauge material", NULL}},
     "length * (1 + gauge material * (gauge temperature - 20 °C) / 1 K)"
     " / (1 + material * (temperature - 20 °C) / 1 K)",
     "of a part read with a gauge that is warm or cold too",
     "ISO 1:2022"},
};

// Linear expansion about room temperature. Alloys differ; the doubt says by how much they are taken
// to.
static const TradeMaterial materials[] = {
    {"steel", "0.0000115", "0.000001", "ISO 3650:1998, gauge blocks"},
    {"iron", "0.0000105", "0.000001", "grey iron, typical of handbooks, from memory"},
    {"aluminium", "0.000023", "0.000002", "typical of handbooks, from memory"},
    {"brass", "0.000019", "0.0000015", "typical of handbooks, from memory"},
    {"bronze", "0.000018", "0.0000015", "typical of handbooks, from memory"},
    {"magnesium", "0.000026", "0.000001", "typical of handbooks, from memory"},
    {"titanium", "0.0000086", "0.0000005", "typical of handbooks, from memory"},
};

const TradeFunction *trade_function(gsize index)
{
    return index < G_N_ELEMENTS(functions) ? &functions[index] : NULL;
}

guint trade_parameters(const TradeFunction *function)
{
    guint count = 0;
    while (count < TRADE_PARAMETERS && function->parameters[count].name)
        count++;
    return count;
}

const TradeFunction *trade_find(const char *name, guint count)
{
    for (gsize i = 0; i < G_N_ELEMENTS(functions); i++)
        if (strcmp(functions[i].name, name) == 0 && trade_parameters(&functions[i]) == count)
            return &functions[i];
    return NULL;
}

const TradeMaterial *trade_material(gsize index)
{
    return index < G_N_ELEMENTS(materials) ? &materials[index] : NULL;
}
