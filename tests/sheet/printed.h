// A small engine's build, and what its sheets say of it; for the tests of this folder.
#pragma once
#include "../judge/story.h"

#include <standbook/sheet/sheet.h>
#include <stdlib.h>

static const char plan[] = "plan: Two steps\n"
                           "units: [mm, N·m]\n"
                           "axes: {cylinder: 1..6}\n"
                           "gates: [first start, hand over]\n"
                           "steps:\n"
                           "  Block:\n"
                           "    gate: first start\n"
                           "    fit: {shells: {use: may be reused, track: lot}}\n"
                           "    fasteners:\n"
                           "      caps: {bolts: 1..3, stages: 40 > 75, order: 1-2-3}\n"
                           "    checks:\n"
                           "      bore: {limits: 90.000..90.030, decimals: 3}\n"
                           "      skirt: {at: cylinder, limits: 0.040..0.060, decimals: 3}\n"
                           "      float: {limits: 0.05..0.25}\n"
                           "      depth: {limits: at least 7.0, decimals: 1}\n"
                           "      crank end: {decimals: 3}\n"
                           "      taper = 2 * crank end - crank end: any\n"
                           "      clean: yes\n"
                           "  Run:\n"
                           "    gate: hand over\n"
                           "    after: Block\n"
                           "    checks:\n"
                           "      no leaks: yes\n";

static inline void read_skirts(Story *story)
{
    static const char *const typed[] = {"0.050", "0.051", "0.049", "0.052", "0.050", "0.066"};
    for (guint i = 0; i < G_N_ELEMENTS(typed); i++) {
        g_autofree char *place = g_strdup_printf("'place':['%u'],", i + 1);
        g_autofree char *value = g_strdup_printf("%ld/1000", strtol(typed[i] + 2, NULL, 10));
        story_read(story, "skirt", place, typed[i], value, "01");
    }
}

static inline void tick(Story *story, const char *stage, const char *bolts)
{
    g_autofree char *body =
        g_strdup_printf("{'tightening':'caps','step':'Block','stage':%s,"
                        "'bolts':[%s],'tool':'6f1c2d30-0000-4000-8000-000000000009'}",
                        stage, bolts);
    story_tick(story, body);
}

static inline void begin(Story *story)
{
    story_begin(story, plan);
    story_take_tool(story, "01", "micrometer", "1/1000");
    story_take_tool(story, "09", "click wrench", "1/10");
    story_enter(story, "take",
                "{'what':'engine','format':1,'seq':3,'body':{'id':'6f1c2d30-0000-4000-8000-"
                "000000000003','family':'Small twin','serial':'ST-0042'}}");
    story_read(story, "bore", "", "90.150", "90150/1000", "01");
    story_enter(story, "strike", "{'entry':6,'cause':'typo'}");
    story_read(story, "bore", "", "90.015", "90015/1000", "01");
    read_skirts(story);
    story_enter(story, "concede",
                "{'asked':'read','name':'skirt','step':'Block','place':['6'],'reasons':['high'],"
                "'side':'high','bound':{'value':'66/1000','unit':'mm','typed':'0.066'},'why':"
                "'honed oversize outside','who':'customer','how':'telephone'}");
    story_read(story, "float", "", "0.28", "28/100", "01");
    story_enter(story, "amend",
                "{'check':'float','limits':'0.05..0.30','why':'other thrust plate'}");
    story_read(story, "depth", "", "7.0", "7", "01");
    story_enter(story, "rework", "{'name':'crank end','work':'ground, Brackwater'}");
    story_read(story, "crank end", "", "51.750", "51750/1000", "01");
    story_enter(story, "cost",
                "{'what':'grinding','amount':{'value':'1140','unit':'GBP','typed':'1140.00'}}");
    story_enter(story, "cost",
                "{'what':'credit','amount':{'value':'-120','unit':'GBP','typed':'-120.00'}}");
    story_enter(story, "note", "{'text':'he is late with the money'}");
    story_enter(story, "put down", "{'note':'telephone'}");
    story_enter(story, "fit",
                "{'part':'shells','use':'reused','evidence':'no wear seen',"
                "'label':'MB-1'}");
    tick(story, "1", "'1','2','3'");
    tick(story, "2", "'1','3','2'");
}

typedef Document *(*Sheet)(const SheetSource *source, guint gate);

static inline Document *customer(const SheetSource *source, guint gate)
{
    (void)gate;
    return sheet_customer(source);
}

static inline Document *record(const SheetSource *source, guint gate)
{
    (void)gate;
    return sheet_record(source);
}

static inline char *print(const Story *story, Sheet sheet, guint gate)
{
    const Entry *const *entries = (const Entry *const *)story->entries->pdata;
    g_autoptr(Assessment) assessment = assess(story->plan, entries, story->entries->len, 0, NULL);
    g_autoptr(Taken) taken = taken_new(entries, story->entries->len, NULL);
    const SheetSource source = {story->plan,
                                entries,
                                story->entries->len,
                                assessment,
                                taken,
                                "T-1",
                                "The shop",
                                "7f3a90c1e25d0011",
                                "read bore: pass then, fail today"};
    g_autoptr(Document) document = sheet(&source, gate);
    return document_text(document);
}

// Blanks and line ends count as one blank, so that a table's widths do not matter.
static inline char *flat(const char *text)
{
    g_auto(GStrv) words = g_strsplit_set(text, " \n", -1);
    GString *out = g_string_new(NULL);
    for (guint i = 0; words[i]; i++)
        if (*words[i])
            g_string_append_printf(out, "%s%s", out->len ? " " : "", words[i]);
    return g_string_free(out, FALSE);
}

static inline void expect_said(const char *text, const char *words)
{
    g_autofree char *one_line = flat(text);
    ck_assert_msg(strstr(one_line, words) != NULL, "not said: %s\n%.3000s", words, one_line);
}

static inline void expect_silence(const char *text, const char *words)
{
    g_autofree char *one_line = flat(text);
    ck_assert_msg(strstr(one_line, words) == NULL, "said: %s\n%.3000s", words, one_line);
}
