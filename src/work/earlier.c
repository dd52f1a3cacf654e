#include <standbook/work/earlier.h>

#include <string.h>

// Whether it is moved by the same adjuster, in the same unit.
static gboolean is_alike(const PlanSetting *one, const PlanSetting *other)
{
    return g_strcmp0(one->move, other->move) == 0 &&
           g_strcmp0(one->unit_text, other->unit_text) == 0;
}

gboolean earlier_learned(const Trials *here, const Plan *plan, const Assessment *assessment,
                         const Entry *const *entries, gsize count, SettingLearned *learned)
{
    const PlanCheck *check = plan_check(plan, here->check->name);
    if (!check || !check->setting || !plan_is_family(plan, here->plan) ||
        !is_alike(check->setting, here->check->setting))
        return FALSE;
    g_autoptr(Trials) trials = trials_new(plan, check->step, check, assessment, entries, count);
    if (!trials->all->len)
        return FALSE;
    trials_judge(trials);
    g_auto(NextMove) next = next_move_of(trials, NULL);
    *learned = next.learned;
    return next_move_teaches(&next);
}

static gboolean learn(Book *book, const char *number, const Trials *here, SettingLearned *learned)
{
    g_autoptr(Opened) opened = opened_new(book, number, NULL);
    if (!opened)
        return FALSE;
    g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
    return earlier_learned(here, opened_plan(opened), assessment,
                           (const Entry *const *)opened->entries->pdata, opened->entries->len,
                           learned);
}

GArray *earlier_settings(Book *book, const char *number, const Trials *here)
{
    GArray *all = g_array_new(FALSE, FALSE, sizeof(SettingLearned));
    g_autoptr(Shop) shop = shop_open(book, NULL);
    g_autoptr(GPtrArray) numbers = build_numbers(book, NULL);
    if (shop && numbers)
        numbers_newest_first(numbers, shop);
    for (guint i = 0; numbers && i < numbers->len && all->len < EARLIER_MOST; i++) {
        SettingLearned learned;
        if (strcmp(numbers->pdata[i], number) != 0 &&
            learn(book, numbers->pdata[i], here, &learned))
            g_array_append_val(all, learned);
    }
    return all;
}
