// A build judged entry after entry is what it is when judged whole, after every entry.
#include "random.h"
#include "same.h"

#include <standbook/judge/judgement.h>
#include <stdlib.h>

enum { LEDGERS = 15, ENTRIES = 60 };

// What the halves of test_properties.c do not have: choices, limits and stages that are formulas,
// findings of findings, parts of a grade, a bolt set taken back in between.
static const char wide_head[] =
    "plan: Wide\nunits: [mm, N·m, °, min]\naxes: {main: 1..2, grade: A/B}\n"
    "gates: [first start, hand over]\n"
    "given: {wall: {A: 0, B: 0.05}}\n"
    "consumables:\n  paste: {kind: silicone, fit within: 5 min, fluid after: 10 min, run after: 20 "
    "min}\n"
    "steps:\n  Begin:\n    gate: first start\n    checks: {ready: \"yes\"}\n";

static const char wide_half[] =
    "  Step %1$s:\n"
    "    after: nothing\n"
    "    gate: hand over\n"
    "    fit:\n"
    "      shells %1$s: {at: main, use: new, track: lot}\n"
    "    fasteners:\n"
    "      caps %1$s: {bolts: 1..4, order: 2-1-3-4, stages: 40 > slacken > 30 + drag %1$s > wait 3 "
    "min > +60°, lubricant: paste, ceiling: 90}\n"
    "      studs %1$s: {bolts: [main, left/right], stages: 20 > 30}\n"
    "    checks:\n"
    "      drag %1$s: {unit: N·m, decimals: 1, with: [shells %1$s, caps %1$s]}\n"
    "      wide %1$s: {at: main, decimals: 2, with: caps %1$s}\n"
    "      thin %1$s: {at: main, decimals: 2, doubt: 0.002, with: shells %1$s, rests on: caps "
    "%1$s}\n"
    "      gap %1$s = wide %1$s - thin %1$s - 2 * wall: {limits: -0.30..0.20, choose: grade}\n"
    "      play %1$s: {at: main, limits: 0.5 * thin %1$s .. 1.5 * thin %1$s}\n"
    "      most %1$s = max(play %1$s): {limits: at most 0.40, rests on: shells %1$s}\n"
    "      fine %1$s: {at: main, limits: 0.10..0.40}\n"
    "      first %1$s: {at: main, limits: 0.15..0.30, settled by: [found %1$s, colour %1$s]}\n"
    "      found %1$s: {at: main, limits: 0.15..0.30, settled by: fine %1$s}\n"
    "      seen %1$s = max(found %1$s): {limits: at most 0.25, settled by: decision}\n"
    "      colour %1$s: {at: main, limits: dry of dry/damp/wet, with: [shells %1$s, caps %1$s]}\n"
    "  After %1$s:\n"
    "    after: Step %1$s\n"
    "    begins: run\n"
    "    retighten: {caps %1$s: as before}\n"
    "    read again: [play %1$s, most %1$s, colour %1$s]\n"
    "    hold: {seen: second person}\n";

static const Pattern wide[] = {
    {"read",
     "{'check':'<wide|thin|play|found|first|fine> @','place':['#'],'step':'Step "
     "@','value':{'value':"
     "'%/100','unit':'mm','typed':'0.%'},'tool':'6f1c2d30-0000-4000-8000-0000000000<01|02|03|04>'}",
     16},
    {"read",
     "{'check':'play @','place':['#'],'step':'After @','value':{'value':'<|<|>>%/100','unit':'mm',"
     "'typed':'0.%'}}",
     4},
    {"read", "{'check':'drag @','value':{'value':'%/10','unit':'N·m','typed':'%'}}", 5},
    {"look", "{'check':'colour @','place':['#'],'step':'<Step|After> @','answer':'<dry|wet>'}", 4},
    {"choose", "{'check':'gap @','place':['#'],'label':'<A|B>'}", 3},
    {"tick",
     "{'tightening':'caps @','step':'<Step|Step|After> @','stage':<1|2|3|5>,'bolts':['$'],'tool':"
     "'6f1c2d30-0000-4000-8000-0000000000<09|03|05|05>'}",
     10},
    {"tick",
     "{'tightening':'caps @','step':'<Step|After> @','stage':<1|2|3|5>,'bolts':['2','1','3','4'],"
     "'tool':'6f1c2d30-0000-4000-8000-000000000009'}",
     8},
    {"tick",
     "{'tightening':'caps @','step':'<Step|After> @','stage':3,'bolts':['$'],'value':{'value':'<|||"
     "<|>><27|28|30|34|37|38>','unit':'N·m','typed':'x'},'tool':'6f1c2d30-0000-4000-8000-"
     "000000000009'}",
     6},
    {"tick",
     "{'tightening':'studs @','step':'Step @','stage':<1|2>,'bolts':['<1, left','1, right|2, "
     "left','2, right|2, left','1, left>'],'tool':'6f1c2d30-0000-4000-8000-000000000009'}",
     8},
    {"slacken", "{'tightening':'caps @','step':'<Step|After> @','bolts':['$']}", 2},
    {"slacken", "{'tightening':'caps @','step':'<Step|After> @','bolts':['1','2','3','4']}", 1},
    {"waited", "{'tightening':'caps @','step':'Step @','stage':4}", 2},
    {"fit",
     "{'part':'shells @','place':['#'],'use':'<new|reused>','lot':'6f1c2d30-0000-4000-8000-"
     "0000000000<21|22|23>'}",
     4},
    {"rework", "{'name':'<gap|thin|most|shells> @','place':['#'],'step':'Step @','work':'ground'}",
     1},
    {"laid",
     "{'consumable':'paste','tightening':'<caps|shells> @','step':'Step @','item':'6f1c2d30-0000-"
     "4000-8000-000000000031'}",
     3},
    {"sign", "{'step':'<Step|After> @','signature':<1|2>}", 4},
    {"reopen", "{'step':'After @','why':'x'}", 1},
    {"concede",
     "{'asked':'<read|read|look>','name':'<gap|play|most|colour> @','step':'<Step|After> "
     "@','place':"
     "['#'],'reasons':['<high|low|gauge|look>'],'why':'x','who':'y'}",
     2},
    {"uphold",
     "{'asked':'read','name':'<gap|play|thin|most> @','step':'Step @','doubt':'<basis|tool>','why':"
     "'x'}",
     2},
    {"uphold",
     "{'asked':'<bolt|fit|sign|wait>','name':'<caps @|shells @|Step @|After @>','doubt':"
     "'<order|tool|part|window>','why':'x'}",
     3},
    {"decide",
     "{'check':'<seen|found|first> @','step':'Step @','decision':'<keep|look closer>','why':'x'}",
     2},
    {"amend",
     "{'check':'<play|gap> @','limits':'<0.05..0.35|0.5 * wide @ .. 0.40|0.8 * fine @[1] .. 0.40>',"
     "'why':'x'}",
     2},
    {"not needed",
     "{'asked':'<read|look|fit>','name':'<thin|play|colour|shells> @','step':'Step @','place':["
     "'#'],'why':'x'}",
     1},
    {"withdraw", "{'what':'check','name':'<play|first> @','place':['#'],'why':'x'}", 1},
    {"take",
     "{'what':'lot','format':1,'seq':7,'body':{'id':'6f1c2d30-0000-4000-8000-0000000000<21|22|23>',"
     "'label':'L','part':'shells','grade':'<A|B>'}}",
     1},
    {"take",
     "{'what':'tool','format':1,'seq':8,'body':{'id':'6f1c2d30-0000-4000-8000-000000000004',"
     "'label':'T04','sort':'feelers','graduation':{'value':'1/100','unit':'mm','typed':'0.01'}}}",
     1},
    {"news",
     "{'what':'recall','format':1,'seq':9,'body':{'lot':'6f1c2d30-0000-4000-8000-0000000000<21|22|"
     "23>','why':'x'}}",
     1},
    {"seal",
     "{'gate':'<first start|hand over>','covers':1,'edition':'x','assessment':'"
     "0000000000000000000000000000000000000000000000000000000000000000','counts':{'open':0,'pass':"
     "0,'fail':0,'in doubt':0,'conceded':0,'noted':0,'not needed':0}}",
     1},
    {"note", "{'text':'talked to @'}", 2},
};

typedef struct {
    const char *head, *half;
    const Pattern *patterns;
    gsize count;
} Sort;

static const Sort sorts[] = {
    {head, half, patterns, G_N_ELEMENTS(patterns)},
    {wide_head, wide_half, wide, G_N_ELEMENTS(wide)},
};

// How many ledgers: more where it is asked for.
static guint ledgers(void)
{
    const char *asked = g_getenv("STANDBOOK_LEDGERS");
    return asked ? (guint)atoi(asked) : LEDGERS;
}

static void enter_any(Story *story, GRand *random, const Sort *sort)
{
    enter_one_of(story, random, "ab", sort->patterns, sort->count);
    Entry *entry = story->entries->pdata[story->entries->len - 1];
    gint chance = g_rand_int_range(random, 0, 60);
    if (chance == 0)
        entry->after = g_rand_int_range(random, 8, (gint)entry->seq);
    if (chance == 1)
        enter_news(story);
    if (chance > 1 && chance < 5) {
        char *strike = g_strdup_printf("{'entry':%d,'cause':'typo'}",
                                       g_rand_int_range(random, 9, (gint)entry->seq + 1));
        story_enter(story, "strike", strike);
        g_free(strike);
    }
}

static Assessment *assess_first(const Story *story, guint count)
{
    return assess(story->plan, (const Entry *const *)story->entries->pdata, count, 0, NULL);
}

// Every requirement that is not told as judged anew is as it was before.
static void expect_told(const Judgement *judgement, const Assessment *now, const Assessment *before,
                        const char *where)
{
    const GArray *changed = judgement_changed(judgement);
    for (guint i = 0, at = 0; i < now->requirements->len; i++) {
        const JudgementChange *change =
            at < changed->len ? &g_array_index(changed, JudgementChange, at) : NULL;
        gboolean told = change && change->index == i;
        at += told ? 1 : 0;
        expect_same_requirement(told ? change->before : now->requirements->pdata[i],
                                before->requirements->pdata[i], where);
    }
}

// Asks for the assessment after most entries, so that now and then several come at once.
static void follow_story(const Story *story, GRand *random, const char *where)
{
    Judgement *judgement = judgement_new(story->plan);
    Assessment *before = NULL;
    for (guint i = 0; i < story->entries->len; i++) {
        judgement_add(judgement, story->entries->pdata[i]);
        if (i < 8 || g_rand_int_range(random, 0, 4) == 0)
            continue;
        char *at = g_strdup_printf("%s, entry %u", where, i + 1);
        Assessment *whole = assess_first(story, i + 1);
        const Assessment *now = judgement_now(judgement);
        expect_same_assessment(now, whole, at);
        if (before)
            expect_told(judgement, now, before, at);
        assessment_free(before);
        before = whole;
        g_free(at);
    }
    assessment_free(before);
    judgement_free(judgement);
}

// One whose range ends among the torques that the stages ask for.
static void take_wrench(Story *story)
{
    story_take_tool(story, "05", "click wrench", "1/1000");
    Entry *tool = story->entries->pdata[story->entries->len - 2];
    json_object_set_new(json_object_get(tool->body, "body"), "greatest",
                        json_pack("{ssssss}", "value", "33", "unit", "N·m", "typed", "33"));
}

static void make_story(Story *story, GRand *random, guint seed, const Sort *sort, const char *plan)
{
    g_rand_set_seed(random, seed);
    begin(story, plan);
    take_wrench(story);
    for (guint i = 0; i < ENTRIES; i++)
        enter_any(story, random, sort);
}

static void with_stories(void (*with)(const Story *story, GRand *random, const char *where))
{
    GRand *random = g_rand_new();
    for (guint k = 0; k < G_N_ELEMENTS(sorts); k++) {
        char *plan = plan_of(sorts[k].head, sorts[k].half);
        for (guint seed = 0; seed < ledgers(); seed++) {
            Story story;
            make_story(&story, random, seed, &sorts[k], plan);
            char *where = g_strdup_printf("plan %u, ledger %u", k, seed);
            with(&story, random, where);
            g_free(where);
            story_end(&story);
        }
        g_free(plan);
    }
    g_rand_free(random);
}

START_TEST(after_every_entry_it_is_what_the_whole_is)
{
    with_stories(follow_story);
}
END_TEST

static Assessment *suppose(Judgement *judgement, const Story *story, guint count)
{
    gsize from = judgement_entries(judgement);
    return judgement_suppose(judgement, (const Entry *const *)&story->entries->pdata[from], count);
}

// Supposes the next entry, or two, before it is added. What was supposed before stays what it was.
static void suppose_story(const Story *story, GRand *random, const char *where)
{
    Judgement *judgement = judgement_new(story->plan);
    Assessment *earlier = NULL, *earlier_whole = NULL;
    for (guint i = 0; i + 1 < story->entries->len; i++) {
        if (i >= 8 && g_rand_int_range(random, 0, 3)) {
            guint count = g_rand_int_range(random, 1, 3);
            char *at = g_strdup_printf("%s, supposed %u", where, i + 1);
            Assessment *whole = assess_first(story, i + count);
            Assessment *supposed = suppose(judgement, story, count);
            Assessment *before = assess_first(story, i);
            expect_same_assessment(supposed, whole, at);
            expect_same_assessment(judgement_now(judgement), before, at);
            if (earlier)
                expect_same_assessment(earlier, earlier_whole, at);
            assessment_free(before);
            assessment_free(earlier);
            assessment_free(earlier_whole);
            earlier = supposed;
            earlier_whole = whole;
            g_free(at);
        }
        judgement_add(judgement, story->entries->pdata[i]);
        ck_assert_uint_eq(judgement_entries(judgement), i + 1);
    }
    judgement_free(judgement);
    assessment_free(earlier);
    assessment_free(earlier_whole);
}

START_TEST(what_is_supposed_leaves_no_trace)
{
    with_stories(suppose_story);
}
END_TEST

// The plan of stories that random ledgers seldom tell. Nothing is asked behind an entry whose kind
// begins with `+`.
static const char narrow[] =
    "plan: Narrow\nunits: [mm, N·m, °, min]\naxes: {main: 1..3}\nsteps:\n  Work:\n"
    "    fasteners:\n"
    "      studs: {bolts: [main, left/right], stages: 30}\n"
    "      nuts: {bolts: main, stages: 30 + drag}\n"
    "      caps: {bolts: main, stages: 20 > 40}\n"
    "    checks:\n"
    "      drag: {at: main, unit: N·m, decimals: 1, with: studs}\n"
    "      seat: {at: main, limits: 0.10..0.40, with: studs}\n"
    "      first: {limits: 0.15..0.30, settled by: found}\n"
    "      found: {limits: 0.15..0.30, settled by: end}\n"
    "      end: {limits: 0.10..0.40}\n"
    "      play: {limits: 0.10..0.40}\n"
    "      lift: {at: main, limits: 0.10..0.40, with: caps}\n"
    "  Again:\n    retighten: {caps: as before}\n";

// `name` is a bolt set or check, or the whole body where there is nothing behind it.
typedef struct {
    const char *kind, *name, *place, *value, *tool;
} Line;

enum { LINES = 12 };

static const Line stories[][LINES] = {
    {
        // bolts that come later put those of the reading out of order, but not the reading
        {"tick", "studs", "3, left", NULL, "09"},
        {"tick", "studs", "3, right", NULL, "09"},
        {"read", "seat", "3", "1/5", "01"},
        {"tick", "studs", "1, left", NULL, "09"},
        {"tick", "studs", "1, right", NULL, "09"},
        {"tick", "studs", "2, left", NULL, "09"},
        {"tick", "studs", "2, right", NULL, "09"},
    },
    {
        // a tick that was upheld is made again
        {"tick", "studs", "3, left", NULL, "04"},
        {"tick", "studs", "3, right", NULL, "09"},
        {"read", "seat", "3", "1/5", "01"},
        {.kind = "uphold",
         .name = "{'asked':'bolt','name':'studs','place':['3','left'],'doubt':'tool','why':'x'}"},
        {"tick", "studs", "3, left", NULL, "09"},
    },
    {
        // a finding answered by a finding that is answered
        {"read", "first", NULL, "1/2", "01"},
        {"read", "found", NULL, "1/2", "01"},
        {"read", "end", NULL, "1/5", "01"},
        {"read", "first", NULL, "3/5", "01"},
    },
    {
        // limits of this build use what those of the plan do not
        {"read", "play", NULL, "1/5", "01"},
        {.kind = "amend", .name = "{'check':'play','limits':'0.8 * end .. 0.40','why':'x'}"},
        {"read", "end", NULL, "1/10", "01"},
        {"read", "end", NULL, "39/100", "01"},
    },
    {
        // a stage asks for what counted at its moment, before an uphold cleared a reading
        {"tick", "studs", "3, left", NULL, "04"},
        {"tick", "studs", "3, right", NULL, "09"},
        {"read", "drag", "3", "1", "01"},
        {.kind = "uphold",
         .name = "{'asked':'bolt','name':'studs','place':['3','left'],'doubt':'tool','why':'x'}"},
        {"tick", "studs", "3, left", NULL, "09"},
        {"read", "drag", "3", "4", "02"},
        {"tick", "nuts", "3", NULL, "05"},
    },
    {
        // a bolt taken up again after the others puts them, and what was read with them, in doubt
        {.kind = "tick",
         .name = "{'tightening':'caps','step':'Work','stage':1,'bolts':['1','2','3'],'tool':'"
                 "6f1c2d30-0000-4000-8000-000000000009'}"},
        {.kind = "tick",
         .name = "{'tightening':'caps','step':'Work','stage':2,'bolts':['1','2','3'],'tool':'"
                 "6f1c2d30-0000-4000-8000-000000000009'}"},
        {.kind = "slacken", .name = "{'tightening':'caps','step':'Again','bolts':['1','2','3']}"},
        {.kind = "tick",
         .name = "{'tightening':'caps','step':'Work','stage':1,'bolts':['2'],'tool':'6f1c2d30-0000-"
                 "4000-8000-000000000009'}"},
        {.kind = "tick",
         .name = "{'tightening':'caps','step':'Work','stage':2,'bolts':['2'],'tool':'6f1c2d30-0000-"
                 "4000-8000-000000000009'}"},
        {"read", "lift", "2", "1/5", "01"},
        {.kind = "tick",
         .name = "{'tightening':'caps','step':'Work','stage':1,'bolts':['1'],'tool':'6f1c2d30-0000-"
                 "4000-8000-000000000009'}"},
    },
    {
        // a stage asks for what was read since the last assessment
        {"tick", "studs", "1, left", NULL, "09"},
        {"tick", "studs", "1, right", NULL, "09"},
        {"read", "drag", "1", "1", "01"},
        {"+read", "drag", "1", "4", "01"},
        {"tick", "nuts", "1", NULL, "05"},
    },
};

static char *body_of(const Line *line)
{
    if (!line->tool)
        return g_strdup(line->name);
    if (!line->value)
        return g_strdup_printf("{'tightening':'%s','step':'Work','stage':1,'bolts':['%s'],'tool':'"
                               "6f1c2d30-0000-4000-8000-0000000000%s'}",
                               line->name, line->place, line->tool);
    char *place = line->place ? g_strdup_printf("'place':['%s'],", line->place) : g_strdup("");
    char *body =
        g_strdup_printf("{'check':'%s',%s'value':{'value':'%s','unit':'%s','typed':'%s'},"
                        "'tool':'6f1c2d30-0000-4000-8000-0000000000%s'}",
                        line->name, place, line->value,
                        strcmp(line->name, "drag") == 0 ? "N·m" : "mm", line->value, line->tool);
    g_free(place);
    return body;
}

static void follow_line(Story *story, Judgement *judgement, const Line *line, const char *where)
{
    gboolean asks = *line->kind != '+';
    char *body = body_of(line);
    judgement_add(judgement, story_enter(story, line->kind + (asks ? 0 : 1), body));
    g_free(body);
    if (!asks)
        return;
    Assessment *whole = story_assess(story);
    expect_same_assessment(judgement_now(judgement), whole, where);
    assessment_free(whole);
}

START_TEST(stories_that_are_seldom_told_hold_too)
{
    const Line *lines = stories[_i];
    Story story;
    begin(&story, narrow);
    take_wrench(&story);
    Judgement *judgement = judgement_new(story.plan);
    for (guint i = 0; i < story.entries->len; i++)
        judgement_add(judgement, story.entries->pdata[i]);
    judgement_now(judgement);
    for (guint i = 0; i < LINES && lines[i].kind; i++) {
        char *where = g_strdup_printf("story %d, line %u", _i, i + 1);
        follow_line(&story, judgement, &lines[i], where);
        g_free(where);
    }
    judgement_free(judgement);
    story_end(&story);
}
END_TEST

// A reading at one of many places does not judge the others' sets, parts and steps anew.
START_TEST(a_reading_touches_only_what_rests_on_it)
{
    char *plan = plan_of(wide_head, wide_half);
    Story story;
    begin(&story, plan);
    Judgement *judgement = judgement_new(story.plan);
    for (guint i = 0; i < story.entries->len; i++)
        judgement_add(judgement, story.entries->pdata[i]);
    guint all = judgement_now(judgement)->requirements->len;
    judgement_add(judgement, story_read(&story, "drag a", "", "5", "5", "01"));
    judgement_now(judgement);
    // itself, and the four bolts and the wait of the set that has it in a stage, in both its steps
    ck_assert_uint_eq(judgement_changed(judgement)->len, 1 + 2 * (4 * 4 + 1));
    judgement_add(judgement, story_read(&story, "thin a", "'place':['1'],", "0.2", "1/5", "01"));
    judgement_now(judgement);
    ck_assert_uint_lt(judgement_changed(judgement)->len, all / 4);
    story_enter(&story, "note", "{'text':'x'}");
    judgement_add(judgement, story.entries->pdata[story.entries->len - 1]);
    ck_assert_int_eq(judgement_now(judgement)->upto, story.entries->len);
    ck_assert_uint_eq(judgement_changed(judgement)->len, 0);
    judgement_free(judgement);
    story_end(&story);
    g_free(plan);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("judgement");
    TCase *tcase = tcase_create("judgement");
    tcase_set_timeout(tcase, 3600);
    tcase_add_test(tcase, after_every_entry_it_is_what_the_whole_is);
    tcase_add_test(tcase, what_is_supposed_leaves_no_trace);
    tcase_add_loop_test(tcase, stories_that_are_seldom_told_hold_too, 0, G_N_ELEMENTS(stories));
    tcase_add_test(tcase, a_reading_touches_only_what_rests_on_it);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
