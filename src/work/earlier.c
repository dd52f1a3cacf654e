#include <standbook/work/earlier.h>

#include <string.h>

// Whether it is moved by the same adjuster, in the same unit.
static gboolean is_alike(const PlanSetting *one, const PlanSetting *other)
{
    return g_strcmp0(one->move, other->move) == 0 &&
           g_strcmp0(one->unit_text, other->unit_text) == 0 && one->each == other->each;
}

static gboolean has_readings(const Trials *trials)
{
    for (guint i = 0; i < trials->all->len; i++)
        if (((const Trial *)trials->all->pdata[i])->readings)
            return TRUE;
    return FALSE;
}

static void learn_at(const Trials *here, const EarlierBuild *build, const PlanCheck *check,
                     guint place, GArray *all)
{
    if (build->entries == here->entries && place == here->first)
        return;
    g_autoptr(Trials) trials = trials_new(build->plan, check->step, check, place, build->assessment,
                                          build->entries, build->count);
    SettingLearned learned;
    if (!has_readings(trials))
        return;
    trials_judge(trials);
    if (next_move_teaches(trials, &learned))
        g_array_append_val(all, learned);
}

void earlier_learn(const Trials *here, const EarlierBuild *build, GArray *all)
{
    const PlanCheck *check = plan_check(build->plan, here->check->name);
    if (!check || !check->setting || !plan_is_family(build->plan, here->plan) ||
        !is_alike(check->setting, here->check->setting))
        return;
    for (guint i = 0; i < setting_count(check) && all->len < EARLIER_MOST; i++)
        learn_at(here, build, check, i, all);
}

void earlier_here(const Trials *here, GArray *all)
{
    const EarlierBuild build = {here->plan, here->assessment, here->entries, here->count};
    if (here->labels)
        earlier_learn(here, &build, all);
}

static void learn(Book *book, const char *number, const Trials *here, GArray *all)
{
    g_autoptr(Opened) opened = opened_new(book, number, NULL);
    if (!opened)
        return;
    g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
    const EarlierBuild build = {opened_plan(opened), assessment,
                                (const Entry *const *)opened->entries->pdata, opened->entries->len};
    earlier_learn(here, &build, all);
}

GArray *earlier_settings(Book *book, const char *number, const Trials *here)
{
    GArray *all = g_array_new(FALSE, FALSE, sizeof(SettingLearned));
    earlier_here(here, all);
    g_autoptr(Shop) shop = shop_open(book, NULL);
    g_autoptr(GPtrArray) numbers = build_numbers(book, NULL);
    if (shop && numbers)
        numbers_newest_first(numbers, shop);
    for (guint i = 0; numbers && i < numbers->len && all->len < EARLIER_MOST; i++)
        if (strcmp(numbers->pdata[i], number) != 0)
            learn(book, numbers->pdata[i], here, all);
    return all;
}
