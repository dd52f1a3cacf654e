// A plan of several bolt sets, each of which is tightened by rules of its own, and a story of it
// with a wrench.
#pragma once
#include "story.h"

static const char bolts_plan[] =
    "plan: Bolts\n"
    "units: [mm, N·m, °, min]\n"
    "axes: {rod: 1..2, side: a/b}\n"
    "consumables:\n"
    "  paste: {kind: silicone, fit within: 5 min}\n"
    "steps:\n"
    "  Mock-up:\n"
    "    fasteners:\n"
    "      caps: {bolts: 1..4, stages: 40 > 75, order: 3-4-1-2, then off: yes, lubricant: oil}\n"
    "    checks:\n"
    "      bore: {limits: 50.00..50.10, decimals: 2, with: caps}\n"
    "  Final:\n"
    "    retighten: {caps: as before}\n"
    "    checks:\n"
    "      drag: {limits: 0..1, rests on: caps}\n"
    "      turns: {limits: \"yes\", rests on: caps}\n"
    "      seen tight: {limits: \"yes\", with: caps}\n"
    "  Wheel:\n"
    "    fasteners:\n"
    "      wheel: {bolts: 1..6, order: 1-4-3-6-5-2, stages: 30 > +50°, use: once}\n"
    "      rods: {bolts: [rod, side], stages: 30 > 60, each: rod}\n"
    "      head: {bolts: 1..3, stages: 30 > wait 10 min > 60}\n"
    "      nuts: {bolts: 1..2, stages: 60 + run-down torque}\n"
    "      once: {bolts: 1..1, stages: 40 > wait 1 min, use: once}\n"
    "      stretched: {bolts: 1..2, stages: until length, ceiling: 60}\n"
    "    checks:\n"
    "      length: {limits: 0.1..0.2}\n"
    "      run-down torque: {unit: N·m, decimals: 0, limits: any}\n"
    "    after: nothing\n";

static inline void begin_plan(Story *story, const char *of)
{
    story_begin(story, of);
    story_take_tool(story, "01", "micrometer", "1/1000");
    story_enter(story, "take",
                "{'what':'tool','format':1,'seq':3,'body':{'id':'6f1c2d30-0000-4000-8000-"
                "000000000009','label':'W1','sort':'click wrench','least':{'value':'20','unit':"
                "'N·m','typed':'20'},'greatest':{'value':'100','unit':'N·m','typed':'100'}}}");
    story_enter(story, "take",
                "{'what':'calibration','format':1,'seq':4,'body':{'id':'6f1c2d30-0000-4000-8000-"
                "000000000109','tool':'6f1c2d30-0000-4000-8000-000000000009','date':'2001-01-01',"
                "'found':'good'}}");
}

static inline void begin(Story *story)
{
    begin_plan(story, bolts_plan);
}

static inline void expect_bolts(const Story *story, const char *set, guint stage, const char *bolts,
                                const char *expected)
{
    char **all = g_strsplit(bolts, " ", -1);
    for (guint i = 0; all[i]; i++) {
        char *name = g_strdup_printf("bolt %s[%s], stage %u", set, all[i], stage);
        story_expect(story, name, expected);
        g_free(name);
    }
    g_strfreev(all);
}
