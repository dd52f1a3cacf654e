#include "toolbox.h"

#include <standbook/base/text.h>
#include <standbook/work/ago.h>
#include <standbook/work/tool_standing.h>
#include <standbook/work/working.h>
#include <standbook/work/wrench.h>
#include <string.h>

const char *need_words(Need need)
{
    static const char *const words[] = {
        [NEED_GAUGE] = "gauge", [NEED_TORQUE] = "wrench", [NEED_ANGLE] = "angle gauge"};
    return words[need];
}

static const char *need_key(const ToolNeed *need)
{
    static const char *const keys[] = {"any gauge", "a torque wrench", "an angle gauge"};
    return need->need == NEED_GAUGE && need->sort ? need->sort : keys[need->need];
}

static gboolean measures(const Entry *tool, const char *unit_words)
{
    g_autoptr(Unit) unit = unit_parse(unit_words, NULL);
    return tool_measures(tool, unit_kind(unit));
}

static gboolean serves(const Entry *tool, const ToolNeed *need)
{
    const char *sort = entry_text(tool, "sort");
    if (need->need == NEED_TORQUE)
        return measures(tool, "N·m");
    if (need->need == NEED_ANGLE)
        return measures(tool, "°");
    if (need->check && tool_reads_otherwise(tool, need->check->kind))
        return FALSE;
    return !need->sort || g_strcmp0(sort, need->sort) == 0;
}

static const Entry *tool_of(const Desk *desk, const char *label)
{
    return label ? shop_find(session_shop(desk->shop), "tool", label) : NULL;
}

// The tools used in the build in hand, the newest first; looked for anew once there are more
// entries.
static const GPtrArray *used(Desk *desk)
{
    const Session *session = desk_build(desk);
    const GPtrArray *entries = session ? session_entries(session) : NULL;
    const Shop *shop = session_shop(desk->shop);
    guint count = entries ? entries->len : 0;
    gint64 known = count + shop_last(shop);
    if (desk->used && desk->used_of == session && desk->used_known == known)
        return desk->used;
    g_clear_pointer(&desk->used, g_ptr_array_unref);
    desk->used = g_ptr_array_new();
    desk->used_of = session;
    desk->used_known = known;
    for (guint i = count; i-- > 0;) {
        const char *id = entry_tool(entries->pdata[i]);
        const Entry *tool = id ? shop_by_id(shop, "tool", id) : NULL;
        if (tool && !g_ptr_array_find(desk->used, tool, NULL))
            g_ptr_array_add(desk->used, (gpointer)tool);
    }
    return desk->used;
}

gboolean toolbox_has(const Desk *desk, const char *label)
{
    g_autoptr(GPtrArray) tools = shop_in_use(session_shop(desk->shop), "tool", NULL);
    for (guint i = 0; i < tools->len; i++)
        if (strcmp(shop_label(tools->pdata[i]), label) == 0)
            return TRUE;
    return FALSE;
}

gboolean toolbox_serves(const Desk *desk, const ToolNeed *need, const char *label)
{
    const Entry *tool = tool_of(desk, label);
    return tool && serves(tool, need);
}

// FOUND WRONG -----------------------------------------------------------------------------------

// The calibration that stands against a tool; NULL if none does.
static const Entry *wrong_of(const Desk *desk, const char *label)
{
    const Entry *tool = tool_of(desk, label);
    return tool ? tool_found_wrong(session_shop(desk->shop), tool, desk->now) : NULL;
}

static char *wrong_key(const char *label)
{
    return g_strconcat(label, " found wrong", NULL);
}

// Who takes a tool takes it in spite of what was found till then.
static void take_as_found(Desk *desk, const char *label)
{
    const Entry *wrong = wrong_of(desk, label);
    g_autofree char *key = wrong_key(label);
    if (wrong)
        g_hash_table_insert(desk->tools, g_steal_pointer(&key), g_strdup(entry_text(wrong, "id")));
    else
        g_hash_table_remove(desk->tools, key);
}

// Whether it was found wrong and nobody has taken it since: then it is not taken by itself.
static gboolean is_refused(const Desk *desk, const char *label)
{
    const Entry *wrong = wrong_of(desk, label);
    g_autofree char *key = wrong ? wrong_key(label) : NULL;
    return wrong && g_strcmp0(g_hash_table_lookup(desk->tools, key), entry_text(wrong, "id")) != 0;
}

// The tool used last in the build in hand that serves this need, of all or of those that may be
// taken by themselves; NULL if there is none.
static const char *used_last(Desk *desk, const ToolNeed *need, gboolean all)
{
    const GPtrArray *tools = used(desk);
    for (guint i = 0; i < tools->len; i++)
        if (serves(tools->pdata[i], need) &&
            (all || !is_refused(desk, shop_label(tools->pdata[i]))))
            return shop_label(tools->pdata[i]);
    return NULL;
}

// SERVING ---------------------------------------------------------------------------------------

// Whether it measures what is read at a check that names no sort.
static gboolean measures_that(const Entry *tool, const ToolNeed *need)
{
    return need->sort || !need->check || tool_measures(tool, need->check->kind);
}

// Whether its range holds the value, or has anything of what may be read there.
static gboolean fits(const Entry *tool, const ToolNeed *need)
{
    if (!measures_that(tool, need))
        return FALSE;
    return need->value ? tool_holds(tool, need->value)
                       : tool_reaches(tool, need->least, need->greatest);
}

static void add_serving(const Desk *desk, const ToolNeed *need, gboolean holding, GPtrArray *labels)
{
    g_autoptr(GPtrArray) tools = shop_in_use(session_shop(desk->shop), "tool", NULL);
    for (guint i = 0; i < tools->len; i++) {
        const Entry *tool = tools->pdata[i];
        if (serves(tool, need) && fits(tool, need) == holding)
            text_add_once(labels, shop_label(tool));
    }
}

// Those that fit first.
static void add_all_serving(const Desk *desk, const ToolNeed *need, GPtrArray *labels)
{
    add_serving(desk, need, TRUE, labels);
    add_serving(desk, need, FALSE, labels);
}

static const char *in_hand(const Desk *desk, const ToolNeed *need)
{
    return g_hash_table_lookup(desk->tools, need_key(need));
}

static const char none[] = "";                   // no label, in the place of a gauge
static const char beyond_key[] = "out of range"; // the tool that was taken all the same

// `W1 100`, `G03 bore`: for what it was taken.
static char *beyond_words(const ToolNeed *need, const char *label)
{
    g_autofree char *value = need->value ? number_text(need->value) : g_strdup("");
    return g_strconcat(label, " ", need->check ? need->check->name : value, NULL);
}

static gboolean is_beyond(const Desk *desk, const ToolNeed *need, const char *label)
{
    g_autofree char *words = beyond_words(need, label);
    return g_strcmp0(g_hash_table_lookup(desk->tools, beyond_key), words) == 0;
}

gboolean toolbox_is_none(const Desk *desk, const ToolNeed *need)
{
    return g_strcmp0(in_hand(desk, need), none) == 0;
}

// The label if that tool fits what is needed, or was taken for it all the same, else NULL.
static const char *holding(const Desk *desk, const ToolNeed *need, const char *label)
{
    const Entry *tool = tool_of(desk, label);
    gboolean ended = tool && shop_end(session_shop(desk->shop), tool, NULL);
    return tool && !ended && (fits(tool, need) || is_beyond(desk, need, label)) ? label : NULL;
}

// A wrench that pulls until a check passes is told by its ceiling, as a gauge is.
static ToolSort sort_of(const ToolNeed *need)
{
    return need->need == NEED_TORQUE && !need->ceiling ? TOOL_TORQUE : TOOL_GAUGE;
}

// How often a torque wrench was used since its calibration; -1 where nobody counts. It is counted
// in the store, so not at every key.
static gint64 uses_of(const Desk *desk, const ToolNeed *need, const Entry *tool)
{
    if (sort_of(need) != TOOL_TORQUE || !tool)
        return -1;
    const gint64 *known = g_hash_table_lookup(desk->uses, shop_label(tool));
    gint64 uses = known ? *known : tool_uses(session_shop(desk->shop), tool, desk->book);
    if (!known)
        g_hash_table_insert(desk->uses, g_strdup(shop_label(tool)), g_memdup2(&uses, sizeof uses));
    return uses;
}

static const char joined[] = " with "; // a wrench and its adapter

// The wrench or gauge of a label, with its adapter, and what it is set to; NULL if that is not
// known.
typedef struct {
    const Entry *tool;
    Number *set;
} Setting;

// The labels of a wrench and of its adapter, NULL for none.
static GStrv parts_of(const ToolNeed *need, const char *label)
{
    return g_strsplit(label, need->need == NEED_TORQUE ? joined : "\n", 2);
}

static Setting setting_of(const Desk *desk, const ToolNeed *need, const char *label)
{
    g_auto(GStrv) parts = parts_of(need, label);
    const Entry *tool = tool_of(desk, parts[0]);
    const Shop *shop = session_shop(desk->shop);
    return (Setting){tool,
                     need->value ? wrench_setting(need->value, shop, parts[0], parts[1]) : NULL};
}

static gboolean is_doubtful(const Desk *desk, const ToolNeed *need, const char *label)
{
    const Setting setting = setting_of(desk, need, label);
    g_autoptr(Number) set = setting.set;
    return tool_is_doubtful(session_shop(desk->shop), setting.tool, sort_of(need), set,
                            uses_of(desk, need, setting.tool), desk->now);
}

// Puts what would leave its work in doubt behind the others, both in their order.
static void doubtful_last(const Desk *desk, const ToolNeed *need, GPtrArray *labels)
{
    g_autoptr(GPtrArray) doubtful = g_ptr_array_new();
    guint kept = 0;
    for (guint i = 0; i < labels->len; i++) {
        gpointer label = labels->pdata[i];
        if (is_doubtful(desk, need, label))
            g_ptr_array_add(doubtful, label);
        else
            labels->pdata[kept++] = label;
    }
    for (guint i = 0; i < doubtful->len; i++)
        labels->pdata[kept++] = doubtful->pdata[i];
}

GPtrArray *toolbox_all(Desk *desk, const ToolNeed *need)
{
    GPtrArray *labels = g_ptr_array_new();
    text_add_once(labels, holding(desk, need, in_hand(desk, need)));
    text_add_once(labels, holding(desk, need, used_last(desk, need, FALSE)));
    add_all_serving(desk, need, labels);
    doubtful_last(desk, need, labels);
    return labels;
}

// The gauges of the shop that fit and that nobody refused; of those the good ones, where any is.
// *held says whether any fits at all.
static GPtrArray *gauges_that_fit(const Desk *desk, const ToolNeed *need, gboolean *held)
{
    GPtrArray *all = g_ptr_array_new();
    add_serving(desk, need, TRUE, all);
    *held = all->len > 0;
    for (guint i = all->len; i-- > 0;)
        if (is_refused(desk, all->pdata[i]))
            g_ptr_array_remove_index(all, i);
    doubtful_last(desk, need, all);
    for (guint i = all->len; i-- > 1;)
        if (is_doubtful(desk, need, all->pdata[i]) && !is_doubtful(desk, need, all->pdata[0]))
            g_ptr_array_remove_index(all, i);
    return all;
}

// The gauge in hand, used last, or the only one, of those that fit; NULL for none or several, and
// *held says whether any does. What would leave its work in doubt is not taken by itself where
// another that fits would not.
static const char *gauge_for(Desk *desk, const ToolNeed *need, gboolean *held)
{
    const char *first = holding(desk, need, in_hand(desk, need));
    if (first && !is_refused(desk, first))
        return first;
    first = holding(desk, need, used_last(desk, need, FALSE));
    if (first && !is_doubtful(desk, need, first))
        return first;
    g_autoptr(GPtrArray) all = gauges_that_fit(desk, need, held);
    gboolean better = all->len && !is_doubtful(desk, need, all->pdata[0]);
    if (first && !better)
        return first;
    return all->len == 1 ? all->pdata[0] : NULL;
}

// The same need, as long as nothing is typed.
static ToolNeed before_value(const ToolNeed *need)
{
    ToolNeed before = *need;
    before.value = NULL;
    return before;
}

const char *toolbox_for(Desk *desk, const ToolNeed *need)
{
    if (toolbox_is_none(desk, need))
        return NULL;
    const ToolNeed before = need->need == NEED_GAUGE ? before_value(need) : *need;
    if (need->need == NEED_GAUGE && need->sort) {
        gboolean held = FALSE;
        const char *gauge = gauge_for(desk, need, &held);
        return gauge || held ? gauge : gauge_for(desk, &before, &held);
    }
    const char *label = holding(desk, &before, in_hand(desk, need));
    return is_refused(desk, label) ? NULL : label;
}

// OVERDUE ---------------------------------------------------------------------------------------

// `OVERDUE since 1 Mar`, `FOUND WRONG 11 Mar`; NULL if nothing stands against it but its range.
static char *fault_of(const Desk *desk, const char *label)
{
    const Entry *tool = tool_of(desk, label);
    return tool ? tool_fault_words(session_shop(desk->shop), tool, TOOL_GAUGE, desk->now) : NULL;
}

// A good one beside it that fits; NULL for none.
static const char *good_beside(const Desk *desk, const ToolNeed *need)
{
    gboolean held;
    g_autoptr(GPtrArray) all = gauges_that_fit(desk, need, &held);
    return all->len && !is_doubtful(desk, need, all->pdata[0]) ? all->pdata[0] : NULL;
}

// `D1 OVERDUE since 1 Mar: its reading is in doubt; g takes another, D2 is good`, of a gauge that
// nobody took in hand at this terminal; NULL if nothing stands against it.
static char *overdue_words(const Desk *desk, const ToolNeed *need, const char *taken)
{
    g_autofree char *fault = taken && need->need == NEED_GAUGE ? fault_of(desk, taken) : NULL;
    if (!fault || g_strcmp0(taken, in_hand(desk, need)) == 0)
        return NULL;
    const char *good = good_beside(desk, need);
    return g_strdup_printf("%s %s: its reading is in doubt%s%s%s", taken, fault,
                           good ? "; g takes another, " : "", good ? good : "",
                           good ? " is good" : "");
}

// The gauge used last that is passed over because it is overdue and others are good; NULL if none
// is.
static const char *passed_as_overdue(Desk *desk, const ToolNeed *need, const char *taken)
{
    const char *last = need->need == NEED_GAUGE && need->sort ? used_last(desk, need, FALSE) : NULL;
    return last && g_strcmp0(last, taken) != 0 && holding(desk, need, last) &&
                   !holding(desk, need, in_hand(desk, need)) && is_doubtful(desk, need, last)
               ? last
               : NULL;
}

// WHY ANOTHER -----------------------------------------------------------------------------------

// What put it out of use; NULL while it is in use.
static const Entry *end_of(const Desk *desk, const char *label)
{
    const Entry *tool = tool_of(desk, label);
    return tool ? shop_end(session_shop(desk->shop), tool, NULL) : NULL;
}

// Whether it is passed over, as out of use, by what was found or, of a gauge, by its range.
static gboolean is_passed(const Desk *desk, const ToolNeed *need, const char *label)
{
    const Entry *tool = need->need == NEED_GAUGE ? tool_of(desk, label) : NULL;
    return end_of(desk, label) || is_refused(desk, label) ||
           (tool && measures_that(tool, need) && !holding(desk, need, label));
}

char *toolbox_reads(const Entry *tool)
{
    g_autofree char *range = tool_range_words(tool);
    return g_strdup_printf("%s reads %s", shop_label(tool), range);
}

// `G03 is out of use (put aside 14:02, 3 min ago)`.
static char *ended_words(const Desk *desk, const char *label, const Entry *end)
{
    g_autofree char *when = ago_words(entry_moment(end), desk->now);
    return g_strdup_printf("%s is out of use (%s %s)", label, entry_text(end, "how"), when);
}

// `G03 was found wrong on 11 Mar`, `G03 reads 0-25 mm`.
static char *passed_words(const Desk *desk, const char *label)
{
    const Entry *end = end_of(desk, label);
    if (end)
        return ended_words(desk, label, end);
    const Entry *wrong = is_refused(desk, label) ? wrong_of(desk, label) : NULL;
    g_autofree char *day =
        wrong ? ago_day(moment_of_day(entry_text(wrong, "date")), desk->now) : NULL;
    return wrong ? g_strdup_printf("%s was found wrong on %s", label, day)
                 : toolbox_reads(tool_of(desk, label));
}

char *toolbox_wrong_words(Desk *desk, const ToolNeed *need, const char *taken)
{
    gboolean any = need->need == NEED_GAUGE && !need->sort; // nobody knows what was used for that
    const char *hand = in_hand(desk, need), *last = any ? NULL : used_last(desk, need, TRUE);
    const char *label = is_passed(desk, need, hand) ? hand : last;
    gboolean passed = is_passed(desk, need, label) && !(taken && g_strcmp0(taken, last) == 0) &&
                      g_strcmp0(taken, label) != 0;
    const char *overdue = passed ? NULL : passed_as_overdue(desk, need, taken);
    if (!passed && !overdue)
        return overdue_words(desk, need, taken);
    label = passed ? label : overdue;
    g_autofree char *fault = passed ? NULL : fault_of(desk, label);
    g_autofree char *why =
        passed ? passed_words(desk, label) : g_strdup_printf("%s %s", label, fault);
    return g_strdup_printf("%s%s %s%sg takes another", why, end_of(desk, label) ? ":" : ";",
                           taken ? taken : "", taken ? " is taken, " : "");
}

// WITH AN ADAPTER -------------------------------------------------------------------------------

static const char adapter_key[] = "an adapter";

// The wrenches that hold the value, with an adapter; `known`: only those with which the setting is
// known. Returns how many.
static guint add_with(const Desk *desk, const ToolNeed *need, const GPtrArray *wrenches,
                      const char *adapter, gboolean known, GPtrArray *labels)
{
    guint before = labels->len;
    for (guint i = 0; i < wrenches->len; i++) {
        const Entry *wrench = tool_of(desk, wrenches->pdata[i]);
        g_autoptr(Number) length = entry_amount(wrench, "reach");
        if (tool_holds(wrench, need->value) && (length || !known))
            g_ptr_array_add(labels, g_strconcat(wrenches->pdata[i], joined, adapter, NULL));
    }
    return labels->len - before;
}

GPtrArray *toolbox_wrenches(Desk *desk, const ToolNeed *need)
{
    g_autoptr(GPtrArray) wrenches = toolbox_all(desk, need);
    const Shop *shop = session_shop(desk->shop);
    const Entry *planned = need->sort ? wrench_adapter_tool(shop, need->sort) : NULL;
    g_autoptr(GPtrArray) tools = shop_in_use(shop, "tool", NULL);
    GPtrArray *labels = g_ptr_array_new_with_free_func(g_free);
    if (need->sort && !add_with(desk, need, wrenches, need->sort, TRUE, labels))
        add_with(desk, need, wrenches, need->sort, FALSE, labels);
    for (guint i = 0; i < wrenches->len; i++)
        g_ptr_array_add(labels, g_strdup(wrenches->pdata[i]));
    doubtful_last(desk, need, labels);
    for (guint i = 0; i < tools->len; i++)
        if (wrench_is_adapter(tools->pdata[i]) && tools->pdata[i] != planned)
            add_with(desk, need, wrenches, shop_label(tools->pdata[i]), TRUE, labels);
    return labels;
}

const char *toolbox_adapter(const Desk *desk)
{
    return g_hash_table_lookup(desk->tools, adapter_key);
}

void toolbox_forget_adapter(Desk *desk)
{
    g_hash_table_remove(desk->tools, adapter_key);
}

void toolbox_take(Desk *desk, const ToolNeed *need, const char *label)
{
    g_auto(GStrv) parts = g_strsplit(label, need->need == NEED_TORQUE ? joined : "\n", 2);
    const char *adapter = parts[1] ? parts[1] : "";
    g_hash_table_insert(desk->tools, g_strdup(need_key(need)), g_strdup(parts[0]));
    take_as_found(desk, parts[0]);
    if (need->need != NEED_TORQUE)
        return;
    toolbox_forget_adapter(desk);
    if (strcmp(adapter, need->sort ? need->sort : "") != 0) // other than the plan says
        g_hash_table_insert(desk->tools, g_strdup(adapter_key), g_strdup(adapter));
}

void toolbox_take_beyond(Desk *desk, const ToolNeed *need, const char *label)
{
    g_auto(GStrv) parts = parts_of(need, label);
    toolbox_take(desk, need, label);
    g_hash_table_insert(desk->tools, g_strdup(beyond_key), beyond_words(need, parts[0]));
}

void toolbox_take_none(Desk *desk, const ToolNeed *need)
{
    g_hash_table_insert(desk->tools, g_strdup(need_key(need)), g_strdup(none));
}

char *toolbox_as_planned(const ToolNeed *need, const char *label)
{
    gboolean adapter = need->need == NEED_TORQUE && need->sort;
    return g_strconcat(label, adapter ? joined : NULL, need->sort, NULL);
}

const char *toolbox_words(const Desk *desk, const char *label)
{
    const Entry *tool = tool_of(desk, label);
    const char *note = tool ? entry_text(tool, "note") : NULL;
    return note ? note : tool ? entry_text(tool, "sort") : "";
}

char *toolbox_gauge_words(Desk *desk, const char *sort, const char *label)
{
    Session *session = desk_build(desk);
    const Entry *tool = session ? tool_of(desk, label) : NULL;
    if (!label)
        return g_strdup_printf("g: which %s?", sort);
    if (!tool)
        return g_strdup_printf("%s %s", label, sort ? sort : "");
    const Agenda agenda = session_agenda(session);
    g_autofree char *zero = working_zero_words(&agenda, entry_text(tool, "id"), desk->now);
    g_autofree char *fault = fault_of(desk, label);
    gsize shouted = fault ? strspn(fault, G_CSET_A_2_Z " ") : 0; // `OVERDUE `, without its day
    g_autofree char *stands = g_strndup(fault ? fault : "", shouted);
    g_strchomp(stands);
    return g_strdup_printf("%s %s%s%s%s", label, sort ? sort : entry_text(tool, "sort"),
                           *stands ? ", " : "", stands, zero);
}

// HOW IT STANDS ---------------------------------------------------------------------------------

// On the wrench's own scale; "" where no ceiling is asked.
static char *ceiling_words(const Desk *desk, const ToolNeed *need, const char *label,
                           const char *adapter)
{
    g_autoptr(Number) at =
        need->ceiling ? wrench_setting(need->ceiling, session_shop(desk->shop), label, adapter)
                      : NULL;
    return at ? tool_ceiling_words(tool_of(desk, label), at) : g_strdup("");
}

// `least`: fewer uses than that are not told.
static char *standing(const Desk *desk, const ToolNeed *need, const char *label,
                      const char *adapter, const Number *set, gint64 least)
{
    const Entry *tool = tool_of(desk, label);
    if (!tool)
        return g_strdup("");
    const Shop *shop = session_shop(desk->shop);
    gint64 uses = uses_of(desk, need, tool);
    g_autofree char *stands =
        tool_standing_words(shop, tool, sort_of(need), set, uses >= least ? uses : -1, desk->now);
    g_autofree char *ceiling = ceiling_words(desk, need, label, adapter);
    return g_strconcat(stands, *stands && *ceiling ? ", " : "", ceiling, NULL);
}

char *toolbox_standing(const Desk *desk, const ToolNeed *need, const char *label,
                       const char *adapter, const Number *set)
{
    enum { NEARLY_ALL = TOOL_USES_MOST * 9 / 10 };
    return standing(desk, need, label, adapter, set, NEARLY_ALL);
}

char *toolbox_outside(const Desk *desk, const ToolNeed *need, const char *label)
{
    g_auto(GStrv) parts = parts_of(need, label);
    const Entry *tool = tool_of(desk, parts[0]);
    return tool ? tool_outside_words(tool, sort_of(need), need->value) : g_strdup("");
}

// `click wrench 5-25`, of a wrench with an adapter the wrench alone; with what it is set to. What
// is fit for it has a mark in front.
static char *line_of(const Desk *desk, const ToolNeed *need, guint digit, const char *label)
{
    g_auto(GStrv) parts = parts_of(need, label);
    const Setting setting = setting_of(desk, need, label);
    g_autoptr(Number) set = setting.set;
    g_autofree char *stands = standing(desk, need, parts[0], parts[1], set, 0);
    return g_strdup_printf(" %s %u   %s %s%s%s", is_doubtful(desk, need, label) ? " " : "√", digit,
                           label, toolbox_words(desk, parts[0]), *stands ? "   " : "", stands);
}

char *toolbox_lines(const Desk *desk, const ToolNeed *need, const GPtrArray *labels, guint most)
{
    GString *lines = g_string_new(NULL);
    for (guint i = 0; i < labels->len && i < most; i++) {
        g_autofree char *line = line_of(desk, need, i + 1, labels->pdata[i]);
        g_string_append_printf(lines, "%s%s", i ? "\n" : "", line);
    }
    return g_string_free(lines, FALSE);
}
