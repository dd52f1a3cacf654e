// How long the judge takes over a build with 2,000 readings and 200 formulas, whole and for one
// reading more. Measures only, and never fails on time.
#include <standbook/judge/judgement.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

enum { FORMULAS = 200, READINGS_EACH = 10, ROUNDS = 20, ONE_MORE = 100 };

static char *name_of(guint number)
{
    return g_strdup_printf("%c%c%c", 'a' + (char)(number / 100), 'a' + (char)(number / 10 % 10),
                           'a' + (char)(number % 10));
}

static char *plan_text(void)
{
    GString *text = g_string_new(
        "plan: Bench\nunits: [mm]\naxes: {place: 1..10}\nsteps:\n  All:\n    checks:\n");
    for (guint i = 0; i < FORMULAS; i++) {
        g_autofree char *name = name_of(i);
        g_string_append_printf(text, "      bore %s: {at: place, decimals: 3}\n", name);
        g_string_append_printf(
            text, "      wear %s = max(bore %s) - min(bore %s): {limits: 0.01..0.20}\n", name, name,
            name);
    }
    return g_string_free(text, FALSE);
}

static void enter(GPtrArray *entries, const char *kind, char *body)
{
    Entry *entry = entry_new(kind_newest(kind));
    json_decref(entry->body);
    entry->body = json_loads(g_strdelimit(body, "'", '"'), 0, NULL);
    g_free(body);
    entry->ledger = g_strdup("6f1c2d30-0000-4000-8000-000000000001");
    entry->by = g_strdup("6f1c2d30-0000-4000-8000-0000000000aa");
    entry->at = moment_text(1000000000 + 60 * (Moment)entries->len);
    entry->seq = entries->len + 1;
    g_ptr_array_add(entries, entry);
}

static const char tool[] = "6f1c2d30-0000-4000-8000-000000000009";

static GPtrArray *entries_of_all(void)
{
    GPtrArray *entries = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free);
    enter(entries, "take",
          g_strdup_printf("{'what':'tool','format':1,'seq':1,'body':{'id':'%s','label':'G03',"
                          "'sort':'bore gauge'}}",
                          tool));
    enter(entries, "take",
          g_strdup_printf("{'what':'calibration','format':1,'seq':2,'body':{'id':'%s','tool':'%s',"
                          "'date':'2001-01-01','found':'good','uncertainty':{'value':'1/250',"
                          "'unit':'mm','typed':'0.004'}}}",
                          tool, tool));
    for (guint i = 0; i < FORMULAS * READINGS_EACH; i++) {
        g_autofree char *name = name_of(i / READINGS_EACH);
        enter(entries, "read",
              g_strdup_printf("{'check':'bore %s','place':['%u'],'step':'All','value':{'value':"
                              "'%u/1000','unit':'mm','typed':'%u.%03u'},'tool':'%s'}",
                              name, i % READINGS_EACH + 1, 59790 + 7 * (i % 11), 59,
                              790 + 7 * (i % 11), tool));
    }
    return entries;
}

static double milliseconds_since(clock_t before, guint rounds)
{
    return 1000.0 * (double)(clock() - before) / CLOCKS_PER_SEC / rounds;
}

// One reading more, again and again: supposed only, then entered.
static void measure_one_more(const Plan *plan, GPtrArray *entries)
{
    g_autoptr(Judgement) judgement = judgement_new(plan);
    guint known = entries->len;
    for (guint i = 0; i < known; i++)
        judgement_add(judgement, entries->pdata[i]);
    const Assessment *now = judgement_now(judgement);
    for (guint i = 0; i < ONE_MORE; i++)
        enter(entries, "read",
              g_strdup_printf("{'check':'bore aab','place':['%u'],'step':'All','value':{'value':"
                              "'59800/1000','unit':'mm','typed':'59.800'},'tool':'%s'}",
                              i % 10 + 1, tool));
    clock_t before = clock();
    for (guint i = 0; i < ONE_MORE; i++)
        assessment_free(
            judgement_suppose(judgement, (const Entry *const *)&entries->pdata[known], 1));
    printf("  one reading more, supposed: %.4f ms\n", milliseconds_since(before, ONE_MORE));
    before = clock();
    for (guint i = 0; i < ONE_MORE; i++) {
        judgement_add(judgement, entries->pdata[known + i]);
        now = judgement_now(judgement);
    }
    printf("  one reading more, entered: %.4f ms (%u pass)\n", milliseconds_since(before, ONE_MORE),
           now->counts[VERDICT_PASS]);
}

int main(void)
{
    g_autofree char *text = plan_text();
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    g_autoptr(GPtrArray) entries = entries_of_all();
    guint passed = 0;
    clock_t before = clock();
    for (guint i = 0; plan && i < ROUNDS; i++) {
        g_autoptr(Assessment) assessment =
            assess(plan, (const Entry *const *)entries->pdata, entries->len, 0, NULL);
        passed = assessment->counts[VERDICT_PASS];
    }
    double each = milliseconds_since(before, ROUNDS);
    printf("assess %u readings, %u formulas (%u pass): %.2f ms of CPU\n", FORMULAS * READINGS_EACH,
           FORMULAS, passed, each);
    if (plan)
        measure_one_more(plan, entries);
    return plan ? 0 : 1;
}
