#include "answer.h"
#include "subcommands.h"

#include <standbook/sheet/setting_sheet.h>
#include <standbook/work/earlier.h>
#include <standbook/work/words.h>

// The setting of that name in the plan; NULL, with *near what may have been meant, if there is
// none.
static const PlanCheck *setting_named(const Plan *plan, const char *name, char **near)
{
    const PlanCheck *check = plan_check(plan, name);
    if (check && setting_count(check))
        return check;
    g_autoptr(GPtrArray) names = g_ptr_array_new();
    for (guint i = 0; i < plan->steps->len; i++) {
        const PlanStep *step = plan->steps->pdata[i];
        for (guint j = 0; j < step->checks->len; j++) {
            const PlanCheck *each = step->checks->pdata[j];
            if (setting_count(each))
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

// The places of a check that is set place by place, `1; 2; 3`, of many the first. The caller frees.
static char *places_words(const PlanCheck *check)
{
    enum { MOST = 24 };
    GString *words = g_string_new(NULL);
    guint count = places_count(check->places);
    for (guint i = 0; i < MIN(count, MOST); i++) {
        g_autofree char *label = places_label(check->places, i);
        g_string_append_printf(words, "%s%s", i ? "; " : "", label);
    }
    g_string_append(words, count > MOST ? "; …" : "");
    return g_string_free(words, FALSE);
}

enum { NO_PLACE = G_MAXUINT };

// The one place that the words name; NO_PLACE if they name none, or several.
static guint place_named(const PlanCheck *check, const char *said)
{
    Words words;
    g_autofree char *bracketed = g_strdup_printf("[%s]", said);
    g_autoptr(GArray) picked = g_array_new(FALSE, TRUE, sizeof(gssize));
    g_array_set_size(picked, check->places->len + 1);
    gssize *labels = &g_array_index(picked, gssize, 0);
    if (!words_begin(&words, bracketed, NULL) ||
        !words_place(&words, check->places, check->name, labels, NULL))
        return NO_PLACE;
    g_autoptr(GArray) places = places_picked(check->places, labels);
    return places->len == 1 ? g_array_index(places, guint, 0) : NO_PLACE;
}

// Which place of the check is meant (NULL: none is said); NO_PLACE with what is wrong said.
static guint find_place(const PlanCheck *check, const char *said)
{
    g_autofree char *all = places_words(check);
    gboolean each = check->setting->each;
    guint place = each && said ? place_named(check, said) : 0;
    if (each == (said != NULL) && place != NO_PLACE)
        return place;
    if (!each)
        fail_saying(STANDBOOK_ERROR_MISUSE, "all places of `%s` are set together; leave `%s` out",
                    check->name, said);
    else if (!said)
        fail_saying(STANDBOOK_ERROR_MISUSE, "`%s` is set place by place; say which: %s",
                    check->name, all);
    else
        fail_saying(STANDBOOK_ERROR_MISUSE, "`%s` is no place of `%s`; it has %s", said,
                    check->name, all);
    return NO_PLACE;
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

static int setting(const char *number, const char *name, const char *at, Common *common)
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
    guint place = find_place(check, at);
    if (place == NO_PLACE)
        return STANDBOOK_ERROR_MISUSE;
    g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
    g_autoptr(Trials) trials =
        trials_new(plan, check->step, check, place, assessment,
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
        argc, argv, common, "BUILD CHECK [PLACE]",
        "What is set by moving and reading: its tries, what is asked next, and the move that\n"
        "is advised; where each place has an adjuster of its own, at that place:\n\n"
        "  standbook setting TL-0412 \"idler backlash\"",
        NULL, &status);
    if (!words)
        return status;
    return arguments_fit(words, 2, 3, "setting BUILD CHECK [PLACE]")
               ? setting(words[0], words[1], words[2], common)
               : STANDBOOK_ERROR_MISUSE;
}
