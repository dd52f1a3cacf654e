// What holds of every ledger, tried on random ones. A seed that fails is named, so that it can be
// tried again by itself.
#include "story.h"

#include <standbook/judge/keep.h>
#include <stdlib.h>

enum { LEDGERS = 150, ENTRIES = 60 };

// Two halves that share nothing, so that the order between them cannot matter: `%1$s` is a or b.
static const char half[] =
    "  Step %1$s:\n"
    "    after: nothing\n"
    "    fit:\n"
    "      shells %1$s: {at: main, use: new}\n"
    "    fasteners:\n"
    "      caps %1$s: {bolts: 1..4, order: 2-1-3-4, stages: 40 > +60° > wait 3 min > 50, use: "
    "once, "
    "then off: yes, lubricant: paste}\n"
    "    checks:\n"
    "      bore %1$s: {at: main, limits: 0.10..0.40, with: caps %1$s}\n"
    "      free %1$s: {at: main, decimals: 2, rests on: [caps %1$s, shells %1$s]}\n"
    "      gap %1$s = bore %1$s - free %1$s: {limits: -0.20..0.20, wear: 0.25}\n"
    "      worst %1$s = max(gap %1$s): {limits: at most 0.25}\n"
    "      found %1$s = range(free %1$s): {limits: 0..0.10, settled by: [worst %1$s]}\n"
    "      clean %1$s: {at: main, limits: \"yes\", rests on: caps %1$s}\n"
    "      lash %1$s: {at: main, limits: 0.10..0.30, set: {move: screw, unit: turn, step: 1/8 "
    "turn, "
    "loose: yes}, rests on: caps %1$s}\n"
    "    hold: {seen: second person}\n"
    "  Again %1$s:\n"
    "    after: Step %1$s\n"
    "    retighten: {caps %1$s: 50}\n"
    "    read again: [lash %1$s, worst %1$s]\n";

static char *plan_of_halves(void)
{
    GString *plan = g_string_new("plan: Random\nunits: [mm, N·m, °, min]\naxes: {main: 1..2}\n"
                                 "consumables:\n  paste: {kind: silicone, fit within: 5 min}\n"
                                 "steps:\n");
    for (const char *name = "ab"; *name; name++) {
        char word[2] = {*name, '\0'};
        char **parts = g_strsplit(half, "%1$s", -1);
        char *text = g_strjoinv(word, parts);
        g_string_append(plan, text);
        g_free(text);
        g_strfreev(parts);
    }
    return g_string_free(plan, FALSE);
}

// The bodies: @ is the half, # a place, $ a bolt, % a number of hundredths, ! a step, ? one of the
// words that follow it in angle brackets.
static const struct {
    const char *kind, *body;
    guint weight;
} patterns[] = {
    {"read",
     "{'check':'<bore|free|lash> @','place':['#'],'step':'Step @','value':{'value':'%/100','unit':"
     "'mm','typed':'0.%'},'tool':'6f1c2d30-0000-4000-8000-0000000000<01|02|03>'}",
     12},
    {"read",
     "{'check':'lash @','place':['#'],'step':'Again @','value':{'value':'<|<|>>%/100','unit':'mm',"
     "'typed':'0.%'}}",
     3},
    {"look", "{'check':'clean @','place':['#'],'answer':'<yes|no>'}", 3},
    {"tick",
     "{'tightening':'caps @','step':'Step @','stage':<1|2|4>,'bolts':['$'],'tool':"
     "'6f1c2d30-0000-4000-8000-0000000000<09|03>'}",
     12},
    {"tick", "{'tightening':'caps @','step':'Step @','stage':<1|2|4>,'bolts':['2','1','3','4']}",
     4},
    {"tick", "{'tightening':'caps @','step':'Again @','stage':1,'bolts':['$']}", 2},
    {"slacken", "{'tightening':'caps @','step':'<Step|Again> @','bolts':['$']}", 2},
    {"slacken", "{'tightening':'caps @','step':'Step @','bolts':['1','2','3','4']}", 1},
    {"waited", "{'tightening':'caps @','step':'Step @','stage':3}", 1},
    {"move", "{'check':'lash @','place':['#'],'step':'<Step|Again> @'}", 2},
    {"fit", "{'part':'shells @','place':['#'],'use':'<new|reused>'}", 2},
    {"fit", "{'part':'caps @','place':['$'],'use':'<new|reused>'}", 2},
    {"rework", "{'name':'<free|bore|gap> @','place':['#'],'step':'Step @','work':'ground'}", 1},
    {"laid", "{'consumable':'paste','tightening':'caps @','step':'Step @'}", 1},
    {"sign", "{'step':'<Step|Again> @','signature':<1|2>}", 2},
    {"reopen", "{'step':'Step @','why':'x'}", 1},
    {"concede",
     "{'asked':'read','name':'<gap|bore|lash> @','step':'Step @','place':['#'],'reasons':["
     "'<high|low|gauge|beyond wear>'],'side':'<high|low>','why':'x','who':'y'}",
     2},
    {"uphold",
     "{'asked':'read','name':'<gap|bore|free|lash> @','step':'Step @','place':['#'],'doubt':"
     "'<basis|tool|disagree>','why':'x'}",
     3},
    {"uphold",
     "{'asked':'bolt','name':'caps @','step':'Step @','doubt':'<order|tool|part>','why':'x'}", 1},
    {"decide", "{'check':'found @','step':'Step @','decision':'<keep|look closer>','why':'x'}", 1},
    {"amend", "{'check':'<lash|bore> @','place':['#'],'limits':'0.05..0.35','why':'x'}", 1},
    {"not needed",
     "{'asked':'<read|read|look>','name':'<bore|free|clean> @','step':'Step @','place':['#'],'why':"
     "'x'}",
     1},
    {"not needed", "{'asked':'bolt','name':'caps @','step':'Step @','place':['$'],'why':'x'}", 1},
    {"withdraw", "{'what':'check','name':'<lash|free> @','place':['#'],'why':'x'}", 1},
    {"note", "{'text':'talked to @'}", 1},
};

// One of the words in angle brackets: `<yes|no>`.
static const char *pick_word(GRand *random, const char *from, GString *into)
{
    const char *end = strchr(from, '>');
    while (end[1] == '>') // a `>` may itself be a word
        end++;
    char *inner = g_strndup(from + 1, (gsize)(end - from - 1));
    char **words = g_strsplit(inner, "|", -1);
    g_string_append(into, words[g_rand_int_range(random, 0, (gint)g_strv_length(words))]);
    g_strfreev(words);
    g_free(inner);
    return end + 1;
}

static char *fill_in(GRand *random, const char *pattern, char name)
{
    GString *body = g_string_new(NULL);
    gint hundredths = g_rand_int_range(random, 10, 45);
    for (const char *c = pattern; *c;) {
        if (*c == '<') {
            c = pick_word(random, c, body);
            continue;
        }
        if (*c == '@')
            g_string_append_c(body, name);
        else if (*c == '#')
            g_string_append_printf(body, "%d", g_rand_int_range(random, 1, 3));
        else if (*c == '$')
            g_string_append_printf(body, "%d", g_rand_int_range(random, 1, 5));
        else if (*c == '%')
            g_string_append_printf(body, "%d", hundredths);
        else
            g_string_append_c(body, *c);
        c++;
    }
    return g_string_free(body, FALSE);
}

static guint pick_pattern(GRand *random)
{
    guint sum = 0, at = 0;
    for (guint i = 0; i < G_N_ELEMENTS(patterns); i++)
        sum += patterns[i].weight;
    gint left = g_rand_int_range(random, 0, (gint)sum);
    while (left >= (gint)patterns[at].weight)
        left -= (gint)patterns[at++].weight;
    return at;
}

static void begin(Story *story, const char *plan)
{
    story_begin(story, plan);
    story_take_tool(story, "01", "feelers", "1/1000");
    story_take_tool(story, "02", "feelers", "1/20");
    story_take_tool(story, "03", "feelers", "1/1000");
    story_take_tool(story, "09", "click wrench", "1/1000");
}

// Adds one random entry of a half; NULL for either.
static void enter(Story *story, GRand *random, const char *halves)
{
    guint at = pick_pattern(random);
    char name = halves[g_rand_int_range(random, 0, (gint)strlen(halves))];
    char *body = fill_in(random, patterns[at].body, name);
    Entry *entry = story_enter(story, patterns[at].kind, body);
    if (g_rand_boolean(random)) {
        g_free(entry->by);
        entry->by = g_strdup("6f1c2d30-0000-4000-8000-0000000000bb");
    }
    g_free(body);
}

// The shop learns that a feeler reads wrong.
static void enter_news(Story *story)
{
    story_enter(story, "news",
                "{'what':'calibration','format':1,'seq':9,'body':{'id':'6f1c2d30-0000-4000-8000-"
                "000000000777','tool':'6f1c2d30-0000-4000-8000-000000000003','date':'2001-09-10',"
                "'found':'wrong'}}");
}

// All verdicts in words, without the numbers of entries.
static char *verdicts(const Story *story, gsize count, gint64 upto)
{
    Assessment *assessment =
        assess(story->plan, (const Entry *const *)story->entries->pdata, count, upto, NULL);
    GString *all = g_string_new(NULL);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        char *name = requirement_name(made);
        char *value = made->value ? number_text(made->value) : NULL;
        g_string_append_printf(all, "%s: %s %s %x %s%s%s%s\n", name, verdict_words(made->verdict),
                               reason_words(made->reason), made->doubts, value ? value : "",
                               made->withdrawn ? " withdrawn" : "", made->upheld ? " upheld" : "",
                               made->conceded ? " conceded" : "");
        g_free(value);
        g_free(name);
    }
    assessment_free(assessment);
    return g_string_free(all, FALSE);
}

static void expect_same(const char *one, const char *other, guint seed, const char *what)
{
    char **ones = g_strsplit(one, "\n", -1), **others = g_strsplit(other, "\n", -1);
    for (guint i = 0; ones[i] && others[i]; i++)
        ck_assert_msg(strcmp(ones[i], others[i]) == 0, "ledger %u, %s: %s / %s", seed, what,
                      ones[i], others[i]);
    g_strfreev(ones);
    g_strfreev(others);
}

static void random_story(Story *story, const char *plan, guint seed, GRand *random)
{
    g_rand_set_seed(random, seed);
    begin(story, plan);
    for (guint i = 0; i < ENTRIES; i++) {
        if (i == ENTRIES / 2 && seed % 2)
            enter_news(story);
        enter(story, random, "ab");
        if (g_rand_int_range(random, 0, 15) == 0) {
            char *strike =
                g_strdup_printf("{'entry':%d,'cause':'typo'}",
                                g_rand_int_range(random, 9, (gint)story->entries->len + 1));
            story_enter(story, "strike", strike);
            g_free(strike);
        }
    }
}

static void renumber(Story *story)
{
    for (guint i = 0; i < story->entries->len; i++)
        ((Entry *)story->entries->pdata[i])->seq = i + 1;
}

START_TEST(every_requirement_has_one_verdict)
{
    char *plan = plan_of_halves();
    GRand *random = g_rand_new_with_seed(1);
    guint seen = 0;
    for (guint seed = 0; seed < LEDGERS; seed++) {
        Story story;
        random_story(&story, plan, seed, random);
        Assessment *assessment = story_assess(&story);
        guint sum = 0, last = 0;
        for (guint i = 0; i < VERDICTS; i++) {
            sum += assessment->counts[i];
            seen |= assessment->counts[i] ? 1U << i : 0;
        }
        ck_assert_uint_eq(assessment->planned + assessment->added - assessment->withdrawn, sum);
        const GateCount *gate =
            assessment->gates->pdata[assessment->gates->len - 1]; // asks for everything
        for (guint i = 0; i < VERDICTS; i++)
            last += gate->counts[i];
        ck_assert_uint_eq(last, sum);
        assessment_free(assessment);
        story_end(&story);
    }
    ck_assert_uint_eq(seen, (1U << VERDICTS) - 1); // the ledgers reach every verdict
    g_rand_free(random);
    g_free(plan);
}
END_TEST

START_TEST(as_of_an_entry_is_the_ledger_up_to_it)
{
    char *plan = plan_of_halves();
    GRand *random = g_rand_new_with_seed(2);
    for (guint seed = 0; seed < LEDGERS; seed++) {
        Story story;
        random_story(&story, plan, seed, random);
        guint upto = (guint)g_rand_int_range(random, 9, (gint)story.entries->len);
        char *then = verdicts(&story, upto, 0);
        char *now = verdicts(&story, story.entries->len, upto);
        expect_same(then, now, seed, "as of");
        g_free(then);
        g_free(now);
        story_end(&story);
    }
    g_rand_free(random);
    g_free(plan);
}
END_TEST

// A struck move is the one kind that leaves a trace by itself (record.md §5, Setting).
START_TEST(a_struck_entry_never_was)
{
    char *plan = plan_of_halves();
    GRand *random = g_rand_new_with_seed(3);
    for (guint seed = 0; seed < LEDGERS; seed++) {
        Story story;
        g_rand_set_seed(random, seed);
        begin(&story, plan);
        for (guint i = 0; i < ENTRIES; i++)
            enter(&story, random, "ab");
        guint struck = (guint)g_rand_int_range(random, 8, (gint)story.entries->len);
        while (strcmp(((Entry *)story.entries->pdata[struck])->kind->name, "move") == 0)
            struck = (guint)g_rand_int_range(random, 8, (gint)story.entries->len);
        char *strike = g_strdup_printf("{'entry':%u,'cause':'typo'}", struck + 1);
        story_enter(&story, "strike", strike);
        char *with = verdicts(&story, story.entries->len, 0);
        g_ptr_array_remove_index(story.entries, story.entries->len - 1);
        g_ptr_array_remove_index(story.entries, struck);
        renumber(&story);
        char *without = verdicts(&story, story.entries->len, 0);
        expect_same(with, without, seed, "struck");
        g_free(strike);
        g_free(with);
        g_free(without);
        story_end(&story);
    }
    g_rand_free(random);
    g_free(plan);
}
END_TEST

// Windows and waits go by times: those stay with the entries, and the clock on the wall stands.
static void fix_times(Story *story)
{
    for (guint i = 0; i < story->entries->len; i++) {
        Entry *entry = story->entries->pdata[i];
        g_free(entry->done);
        entry->done = entry->at;
        entry->at = moment_text(1000000000 + 60 * 1000);
    }
}

START_TEST(halves_that_share_nothing_do_not_meet)
{
    char *plan = plan_of_halves();
    GRand *random = g_rand_new_with_seed(4);
    for (guint seed = 0; seed < LEDGERS; seed++) {
        Story story;
        g_rand_set_seed(random, seed);
        begin(&story, plan);
        for (guint i = 0; i < ENTRIES; i++)
            enter(&story, random, i % 2 ? "a" : "b");
        fix_times(&story);
        char *mixed = verdicts(&story, story.entries->len, 0);
        for (guint i = 8, j = 8; j < story.entries->len; j += 2, i++) { // all of b, then all of a
            gpointer entry = story.entries->pdata[j];
            memmove(&story.entries->pdata[i + 1], &story.entries->pdata[i],
                    (j - i) * sizeof(gpointer));
            story.entries->pdata[i] = entry;
        }
        renumber(&story);
        char *apart = verdicts(&story, story.entries->len, 0);
        expect_same(mixed, apart, seed, "order");
        g_free(mixed);
        g_free(apart);
        story_end(&story);
    }
    g_rand_free(random);
    g_free(plan);
}
END_TEST

START_TEST(placed_behind_an_entry_is_entered_there)
{
    char *plan = plan_of_halves();
    GRand *random = g_rand_new_with_seed(5);
    for (guint seed = 0; seed < LEDGERS; seed++) {
        Story story;
        g_rand_set_seed(random, seed);
        begin(&story, plan);
        for (guint i = 0; i < ENTRIES; i++)
            enter(&story, random, "ab");
        fix_times(&story);
        guint behind = (guint)g_rand_int_range(random, 8, (gint)story.entries->len - 1);
        Entry *late = story.entries->pdata[story.entries->len - 1];
        late->after = behind;
        char *placed = verdicts(&story, story.entries->len, 0);
        late->after = 0;
        memmove(&story.entries->pdata[behind + 1], &story.entries->pdata[behind],
                (story.entries->len - 1 - behind) * sizeof(gpointer));
        story.entries->pdata[behind] = late;
        renumber(&story);
        char *entered = verdicts(&story, story.entries->len, 0);
        expect_same(placed, entered, seed, "after");
        g_free(placed);
        g_free(entered);
        story_end(&story);
    }
    g_rand_free(random);
    g_free(plan);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("properties");
    TCase *tcase = tcase_create("properties");
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, every_requirement_has_one_verdict);
    tcase_add_test(tcase, as_of_an_entry_is_the_ledger_up_to_it);
    tcase_add_test(tcase, a_struck_entry_never_was);
    tcase_add_test(tcase, halves_that_share_nothing_do_not_meet);
    tcase_add_test(tcase, placed_behind_an_entry_is_entered_there);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
