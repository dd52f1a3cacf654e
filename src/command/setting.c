#include "answer.h"
#include "subcommands.h"

#include <standbook/sheet/setting_sheet.h>
#include <standbook/work/earlier.h>

// The setting of that name in the plan; NULL, with *near what may have been meant, if there is
// none.
static const PlanCheck *setting_named(const Plan *plan, const char *name, char **near)
{
    const PlanCheck *check = plan_check(plan, name);
    if (check && check->setting && check->setting->inputs->len)
        return check;
    g_autoptr(GPtrArray) names = g_ptr_array_new();
    for (guint i = 0; i < plan->steps->len; i++) {
        const PlanStep *step = plan->steps->pdata[i];
        for (guint j = 0; j < step->checks->len; j++) {
            const PlanCheck *each = step->checks->pdata[j];
            if (each->setting && each->setting->inputs->len)
                g_ptr_array_add(names, (gpointer)each->name);
        }
    }
    g_ptr_array_add(names, NULL);
    g_autofree char *all = g_strjoinv(", ", (GStrv)names->pdata);
    g_autofree char *has =
        *all ? g_strconcat("; the plan has ", all, NULL) : g_strdup("; the plan has no setting");
    *near = hint_nearest(name, (const char *const *)names->pdata, names->len - 1, has);
    return NULL;
}

static void say_setting(const Opened *opened, const Trials *trials, const NextMove *next,
                        gboolean json)
{
    if (json) {
        json_t *whole = setting_json(trials, next);
        say_json(whole);
        json_decref(whole);
        return;
    }
    g_autoptr(Document) document = sheet_setting(trials, next, opened->taken, opened->number);
    say_document(document, FALSE);
}

static int setting(const char *number, const char *name, Common *common)
{
    GError *error = NULL;
    g_autofree char *near = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(Opened) opened = book ? opened_new(book, number, &error) : NULL;
    if (!opened)
        return fail_with(error);
    const Plan *plan = opened_plan(opened);
    const PlanCheck *check = setting_named(plan, name, &near);
    if (!check)
        return fail_saying(
            STANDBOOK_ERROR_MISUSE, "`%s` %s%s", name,
            plan_check(plan, name) ? "is not set by trials" : "is no check of the plan", near);
    g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
    g_autoptr(Trials) trials =
        trials_new(plan, check->step, check, assessment,
                   (const Entry *const *)opened->entries->pdata, opened->entries->len);
    trials_judge(trials);
    g_autoptr(GArray) earlier = earlier_settings(book, opened->number, trials);
    g_auto(NextMove) next = next_move_of(trials, earlier);
    say_setting(opened, trials, &next, common->json);
    return 0;
}

int setting_run(int argc, char **argv, Common *common)
{
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, "BUILD CHECK",
        "What is set by moving and reading: its tries, what is asked next, and the move that\n"
        "is advised:\n\n"
        "  standbook setting TL-0412 \"idler backlash\"",
        NULL, &status);
    if (!words)
        return status;
    return arguments_fit(words, 2, 2, "setting BUILD CHECK") ? setting(words[0], words[1], common)
                                                             : STANDBOOK_ERROR_MISUSE;
}
