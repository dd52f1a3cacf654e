// Random ledgers of a plan in two halves.
#pragma once
#include "story.h"

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
    "      play %1$s: {at: main, decimals: 2}\n"
    "      spare %1$s = play %1$s - 0.1 mm: any\n"
    "      slack %1$s = spare %1$s - lash %1$s: {limits: -0.30..0.30, set: {move: bracket, "
    "unit: mm}, rests on: caps %1$s}\n"
    "    hold: {seen: second person}\n"
    "  Again %1$s:\n"
    "    after: Step %1$s\n"
    "    retighten: {caps %1$s: 50}\n"
    "    read again: [lash %1$s, worst %1$s]\n";

static const char head[] = "plan: Random\nunits: [mm, N·m, °, min]\naxes: {main: 1..2}\n"
                           "consumables:\n  paste: {kind: silicone, fit within: 5 min}\n"
                           "steps:\n";

// The plan of that head and a half for each of a and b. The caller frees with g_free.
static inline char *plan_of(const char *head_of_plan, const char *half_of_plan)
{
    GString *plan = g_string_new(head_of_plan);
    for (const char *name = "ab"; *name; name++) {
        char word[2] = {*name, '\0'};
        char **parts = g_strsplit(half_of_plan, "%1$s", -1);
        char *text = g_strjoinv(word, parts);
        g_string_append(plan, text);
        g_free(text);
        g_strfreev(parts);
    }
    return g_string_free(plan, FALSE);
}

static inline char *plan_of_halves(void)
{
    return plan_of(head, half);
}

// The bodies: @ is the half, # a place, $ a bolt, % a number of hundredths, ! a step, ? one of the
// words that follow it in angle brackets.
typedef struct {
    const char *kind, *body;
    guint weight;
} Pattern;

static const Pattern patterns[] = {
    {"read",
     "{'check':'<bore|free|lash|play> @','place':['#'],'step':'Step "
     "@','value':{'value':'%/100','unit':"
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
    {"move", "{'check':'slack @','place':['#'],'step':'Step @'}", 2},
    {"move", "{'check':'slack @','step':'Step @'}", 1},
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
     "{'asked':'read','name':'<gap|bore|free|lash|play|slack> @','step':'Step "
     "@','place':['#'],'doubt':"
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

static inline char *fill_in(GRand *random, const char *pattern, char name)
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

static inline const Pattern *pick_pattern(GRand *random, const Pattern *of, gsize count)
{
    guint sum = 0, at = 0;
    for (guint i = 0; i < count; i++)
        sum += of[i].weight;
    gint left = g_rand_int_range(random, 0, (gint)sum);
    while (left >= (gint)of[at].weight)
        left -= (gint)of[at++].weight;
    return &of[at];
}

static inline void begin(Story *story, const char *plan)
{
    story_begin(story, plan);
    story_take_tool(story, "01", "feelers", "1/1000");
    story_take_tool(story, "02", "feelers", "1/20");
    story_take_tool(story, "03", "feelers", "1/1000");
    story_take_tool(story, "09", "click wrench", "1/1000");
}

// Adds one random entry of a half by one of these patterns.
static inline void enter_one_of(Story *story, GRand *random, const char *halves, const Pattern *of,
                                gsize count)
{
    const Pattern *pattern = pick_pattern(random, of, count);
    char name = halves[g_rand_int_range(random, 0, (gint)strlen(halves))];
    char *body = fill_in(random, pattern->body, name);
    Entry *entry = story_enter(story, pattern->kind, body);
    if (g_rand_boolean(random)) {
        g_free(entry->by);
        entry->by = g_strdup("6f1c2d30-0000-4000-8000-0000000000bb");
    }
    g_free(body);
}

static inline void enter(Story *story, GRand *random, const char *halves)
{
    enter_one_of(story, random, halves, patterns, G_N_ELEMENTS(patterns));
}

// The shop learns that a feeler reads wrong.
static inline void enter_news(Story *story)
{
    story_enter(story, "news",
                "{'what':'calibration','format':1,'seq':9,'body':{'id':'6f1c2d30-0000-4000-8000-"
                "000000000777','tool':'6f1c2d30-0000-4000-8000-000000000003','date':'2001-09-10',"
                "'found':'wrong'}}");
}
