// What falls due in a build and of the shop's tools.
#include <standbook/work/waits.h>

#include <standbook/work/ago.h>
#include <standbook/work/concession.h>
#include <standbook/work/summary.h>
#include <standbook/work/tool_standing.h>
#include <string.h>

static const gint64 DAY = 86400;

enum { DAYS_NEAR = 30, WATCH = 3 }; // a line of a concession

static void due_clear(gpointer data)
{
    Due *due = data;
    g_free(due->what);
    g_free(due->why);
    g_free(due->when);
}

static GArray *dues_new(void)
{
    GArray *dues = g_array_new(FALSE, FALSE, sizeof(Due));
    g_array_set_clear_func(dues, due_clear);
    return dues;
}

// Takes the three texts.
static void add(GArray *dues, char *what, char *why, char *when)
{
    const Due due = {what, why, when};
    g_array_append_val(dues, due);
}

// How many bolts of the group are not settled in the step, at any of its stages; `*all` of how
// many.
static guint bolts_left(const Agenda *agenda, const PlanGroup *group, const PlanStep *step,
                        guint *all)
{
    guint left = 0;
    *all = 0;
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(agenda, i);
        if (made->asked != ASKED_BOLT || made->step != step || made->withdrawn ||
            strcmp(made->name, group->name) != 0)
            continue;
        left += requirement_is_left(made) ? 1 : 0;
        (*all)++;
    }
    return left;
}

// How many bolts of the group need a person at each verdict in the step, at any of its stages.
static void count_left(const Agenda *agenda, const PlanGroup *group, const PlanStep *step,
                       guint counts[VERDICTS])
{
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(agenda, i);
        if (made->asked == ASKED_BOLT && made->step == step && !made->withdrawn &&
            strcmp(made->name, group->name) == 0 && requirement_is_left(made))
            counts[made->verdict]++;
    }
}

static void add_begun(GArray *dues, const Agenda *agenda, const PlanGroup *group,
                      const PlanStep *step)
{
    guint all = 0, left = bolts_left(agenda, group, step, &all), counts[VERDICTS] = {0};
    if (left == 0 || left == all)
        return;
    count_left(agenda, group, step, counts);
    const char *half = counts[VERDICT_OPEN] ? "HALF " : "";
    add(dues, g_strdup(group->name), g_strdup_printf("%stightened in S%02u", half, step->index + 1),
        summary_left("%u of %u left", counts, all));
}

// Bolts that were begun and left, where the work is not in hand.
static void add_half_tightened(GArray *dues, const Agenda *agenda)
{
    const PlanStep *here = summary_standpoint(agenda).step;
    for (guint i = 0; i < agenda->plan->steps->len; i++) {
        const PlanStep *step = agenda->plan->steps->pdata[i];
        for (guint j = 0; step != here && j < step->tightenings->len; j++) {
            const PlanTightening *tightening = step->tightenings->pdata[j];
            add_begun(dues, agenda, tightening->group, step);
        }
    }
}

static void add_retightening(GArray *dues, const Agenda *agenda, const PlanTightening *later)
{
    const PlanGroup *group = later->group;
    guint all = 0, first = bolts_left(agenda, group, group->step, &all);
    gboolean through = all > 0 && first == 0;
    guint left = through ? bolts_left(agenda, group, later->step, &all) : 0;
    if (!left)
        return;
    const PlanStep *held = agenda_held_by(agenda, later->step);
    g_autofree char *after = held ? g_strdup_printf(", after S%02u", held->index + 1) : NULL;
    add(dues, g_strdup(group->name), g_strdup_printf("retighten in S%02u", later->step->index + 1),
        g_strdup_printf("%u of %u left%s", left, all, after ? after : ""));
}

static void add_retightenings(GArray *dues, const Agenda *agenda)
{
    for (guint i = 0; i < agenda->plan->steps->len; i++) {
        const PlanStep *step = agenda->plan->steps->pdata[i];
        for (guint j = 0; j < step->tightenings->len; j++) {
            const PlanTightening *each = step->tightenings->pdata[j];
            if (each->again && step->gate > each->group->step->gate)
                add_retightening(dues, agenda, each);
        }
    }
}

static void add_wrong_tools(GArray *dues, const Telling *telling)
{
    const Agenda *agenda = telling->agenda;
    g_autoptr(GHashTable) said = g_hash_table_new(g_str_hash, g_str_equal);
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(agenda, i);
        const Entry *news = made->reason == REASON_TOOL && requirement_is_left(made) &&
                                    !g_hash_table_contains(said, made->name)
                                ? wrong_tool(agenda, i)
                                : NULL;
        if (!news)
            continue;
        g_hash_table_add(said, (gpointer)made->name);
        g_autofree char *day = ago_day(entry_moment(news), telling->now);
        add(dues, g_strdup(made->name),
            g_strdup_printf("%s with %s", made->asked == ASKED_BOLT ? "tightened" : "read",
                            wrong_tool_label(telling->taken, news)),
            g_strdup_printf("found wrong %s", day));
    }
}

static void add_watched(GArray *dues, const Agenda *agenda)
{
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(agenda, i);
        char *watch = conceded_line(agenda, made, WATCH);
        if (watch)
            add(dues, requirement_title(made), watch, g_strdup("conceded"));
    }
}

GArray *dues_of_build(const Telling *telling)
{
    GArray *dues = dues_new();
    add_half_tightened(dues, telling->agenda);
    add_wrong_tools(dues, telling);
    add_retightenings(dues, telling->agenda);
    add_watched(dues, telling->agenda);
    return dues;
}

// TOOLS -----------------------------------------------------------------------------------------

// `in 5 days`, `today`, `1 day past`.
static char *days_words(gint64 days)
{
    if (days == 0)
        return g_strdup("today");
    const char *plural = ABS(days) == 1 ? "" : "s";
    return days > 0 ? g_strdup_printf("in %" G_GINT64_FORMAT " day%s", days, plural)
                    : g_strdup_printf("%" G_GINT64_FORMAT " day%s past", -days, plural);
}

static Moment due_of(const Entry *tool, const Entry *last)
{
    return last ? tool_due(tool->body, last->body) : 0;
}

// What was found wrong is due whether a build is using it or not, as long as it is not put right;
// what a build uses, before it runs out. FALSE if neither is so.
static gboolean add_tool(GArray *dues, const Entry *tool, const Entry *last, gboolean in_use,
                         Moment now)
{
    gboolean wrong = last && g_strcmp0(entry_text(last, "found"), "wrong") == 0;
    Moment due = due_of(tool, last);
    gint64 days = due / DAY - now / DAY;
    if (!wrong && (!in_use || !due || days > DAYS_NEAR))
        return FALSE;
    g_autofree char *day = ago_day(wrong ? moment_of_day(entry_text(last, "date")) : due, now);
    add(dues, g_strdup_printf("%s %s", entry_text(tool, "label"), entry_text(tool, "sort")),
        g_strdup_printf(wrong ? "found wrong %s" : "calibration due %s", day),
        wrong ? g_strdup("not put right") : days_words(days));
    return TRUE;
}

static const Entry *last_calibration(const Shop *shop, const Entry *tool)
{
    g_autoptr(GPtrArray) made = shop_calibrations(shop, entry_text(tool, "id"));
    return made->len ? made->pdata[made->len - 1] : NULL;
}

// Whether its work would be in doubt: its calibration ran out, or, of a wrench, it never had one.
static gboolean is_overdue(const Shop *shop, const Entry *tool, Moment now)
{
    return tool_is_doubtful(shop, tool, tool_sort(tool), NULL, -1, now);
}

// One that no build uses.
static void add_overdue(GArray *dues, const Shop *shop, const Entry *tool, Moment now)
{
    const Entry *last = last_calibration(shop, tool);
    Moment due = due_of(tool, last);
    g_autofree char *day = due ? ago_day(due, now) : NULL;
    add(dues, g_strdup_printf("%s %s", entry_text(tool, "label"), entry_text(tool, "sort")),
        day ? g_strdup_printf("calibration due %s", day) : g_strdup("never calibrated"),
        day ? days_words(due / DAY - now / DAY) : g_strdup("before it is used"));
}

// `B1 D1 F1 W2 …`
static char *labels_of(const GPtrArray *tools)
{
    enum { ROOM = 20 };
    GString *labels = g_string_new(NULL);
    for (guint i = 0; i < tools->len; i++) {
        const char *label = entry_text(tools->pdata[i], "label");
        if (labels->len && g_utf8_strlen(labels->str, -1) + 1 + g_utf8_strlen(label, -1) > ROOM) {
            g_string_append(labels, " …");
            break;
        }
        g_string_append_printf(labels, "%s%s", labels->len ? " " : "", label);
    }
    return g_string_free(labels, FALSE);
}

// Those that no build uses: a line each for a few, one for many.
static void add_all_overdue(GArray *dues, const Shop *shop, const GPtrArray *tools, Moment now)
{
    enum { FEW = 2 };
    for (guint i = 0; tools->len <= FEW && i < tools->len; i++)
        add_overdue(dues, shop, tools->pdata[i], now);
    if (tools->len > FEW)
        add(dues, g_strdup_printf("%u tools overdue", tools->len), labels_of(tools),
            g_strdup("no build uses them"));
}

GArray *dues_of_tools(const Shop *shop, GHashTable *used, Moment now)
{
    GArray *dues = dues_new();
    g_autoptr(GPtrArray) tools = shop_in_use(shop, "tool", NULL), overdue = g_ptr_array_new();
    for (guint i = 0; i < tools->len; i++) {
        const Entry *tool = tools->pdata[i];
        gboolean in_use = g_hash_table_contains(used, entry_text(tool, "id"));
        if (!add_tool(dues, tool, last_calibration(shop, tool), in_use, now) &&
            is_overdue(shop, tool, now))
            g_ptr_array_add(overdue, (gpointer)tool);
    }
    add_all_overdue(dues, shop, overdue, now);
    return dues;
}
