// The demo's idler for the tests of settings: what holds it, and lines taken one after another.
#pragma once
#include "agenda.h"

static const char *const hold = "tighten idler carrier stage 1 all with W4\n"
                                "tighten idler carrier stage 2 all with W4\n"
                                "tighten jackscrew locknut all with W1";
static const char *const loosen = "slacken jackscrew locknut all\nslacken idler carrier all";

static void take_all(const char *lines)
{
    g_auto(GStrv) each = g_strsplit(lines, "\n", -1);
    for (guint i = 0; each[i]; i++)
        take(each[i]);
}
