#include <standbook/work/tool_standing.h>

#include <standbook/judge/tool_rule.h>
#include <standbook/value/unit.h>
#include <standbook/work/ago.h>
#include <standbook/work/wrench.h>

enum { SECONDS_OF_A_DAY = 86400 };

// The calibrations of a tool as they are judged (ToolCalibration), in order.
static GArray *calibrations_of(const Shop *shop, const Entry *tool)
{
    g_autoptr(GPtrArray) entries = shop_calibrations(shop, entry_text(tool, "id"));
    GArray *rules = g_array_new(FALSE, FALSE, sizeof(ToolCalibration));
    for (guint i = 0; i < entries->len; i++) {
        const Entry *entry = entries->pdata[i];
        const ToolCalibration rule = tool_calibration(entry->body, entry->seq);
        g_array_append_val(rules, rule);
    }
    return rules;
}

// Whether its range is one of torque.
static gboolean is_of_torque(const json_t *tool)
{
    const char *words =
        json_string_value(json_object_get(json_object_get(tool, "greatest"), "unit"));
    g_autoptr(Unit) unit = words ? unit_parse(words, NULL) : NULL;
    g_autoptr(Unit) torque = unit_parse("N·m", NULL);
    return unit && kind_equal(unit_kind(unit), unit_kind(torque));
}

static ToolSort sort_of(const json_t *tool)
{
    return is_of_torque(tool) ? TOOL_TORQUE : TOOL_GAUGE;
}

ToolSort tool_sort(const Entry *tool)
{
    return sort_of(tool->body);
}

Moment tool_due(const json_t *tool, const json_t *calibration)
{
    const ToolCalibration rule = tool_calibration(calibration, 0);
    gint64 day = 0;
    return tool_last_day(sort_of(tool), &rule, &day)
               ? day * SECONDS_OF_A_DAY
               : 0;
}

char *tool_due_words(const json_t *tool, const json_t *calibration)
{
    Moment due = tool_due(tool, calibration);
    return due ? tool_day_text(due / SECONDS_OF_A_DAY) : g_strdup("");
}

static char *day_words(gint64 day, Moment now)
{
    return ago_day(day * SECONDS_OF_A_DAY, now);
}

// As if it was used now, within its range.
static ToolStanding standing_now(const GArray *rules, ToolSort sort, gint64 uses, Moment now)
{
    const ToolUse use = {.day = now / SECONDS_OF_A_DAY,
                         .seq = G_MAXINT64,
                         .count = (guint)MAX(uses + 1, 0),
                         .range = TOOL_GOOD};
    return tool_use_standing(sort, (const ToolCalibration *)rules->data, rules->len, &use);
}

// The calibration that found it wrong, of one that stands so.
static guint wrong_at(const GArray *rules, const ToolStanding *standing)
{
    gboolean before =
        standing->before >= 0 &&
        g_array_index(rules, ToolCalibration, standing->before).found == TOOL_FOUND_WRONG;
    return (guint)(before ? standing->before : standing->after);
}

// `4,812 uses`
static char *uses_words(gint64 uses)
{
    enum { THOUSAND = 1000 };
    g_autofree char *front =
        uses >= THOUSAND
            ? g_strdup_printf("%" G_GINT64_FORMAT ",%03d", uses / THOUSAND, (int)(uses % THOUSAND))
            : g_strdup_printf("%" G_GINT64_FORMAT, uses);
    return g_strdup_printf("%s use%s", front, uses == 1 ? "" : "s");
}

static char *calibration_words(const GArray *rules, ToolSort sort, gint64 uses, Moment now)
{
    const ToolStanding standing = standing_now(rules, sort, uses, now);
    const ToolCalibration *last =
        standing.before < 0 ? NULL : &g_array_index(rules, ToolCalibration, standing.before);
    gint64 due = 0;
    gboolean ends = last && tool_last_day(sort, last, &due);
    g_autofree char *until = ends ? day_words(due, now) : NULL;
    g_autofree char *found =
        standing.state == TOOL_WRONG
            ? day_words(g_array_index(rules, ToolCalibration, wrong_at(rules, &standing)).day, now)
            : NULL;
    g_autofree char *times = uses >= 0 ? uses_words(uses) : NULL;
    switch (standing.state) {
    case TOOL_WRONG:
        return g_strdup_printf("FOUND WRONG %s", found);
    case TOOL_OVERDUE:
        return uses >= TOOL_USES_MOST ? g_strdup_printf("OVERDUE after %s", times)
                                      : g_strdup_printf("OVERDUE since %s", until);
    case TOOL_UNKNOWN:
        return g_strdup("never calibrated");
    default:
        return ends ? g_strconcat("due ", until, " √", times ? ", " : "", times,
                                  times ? " since" : "", NULL)
                    : g_strdup("");
    }
}

static gboolean is_outside(const Entry *tool, ToolSort sort, const Number *value)
{
    g_autoptr(Number) least = entry_amount(tool, "least"),
                      greatest = entry_amount(tool, "greatest");
    return tool_range(sort, least, greatest, value) == TOOL_OUT_OF_RANGE;
}

char *tool_range_words(const Entry *tool)
{
    g_autoptr(Number) least = entry_amount(tool, "least"),
                      greatest = entry_amount(tool, "greatest");
    if (!least && !greatest)
        return g_strdup("");
    g_autoptr(Unit) unit = wrench_unit(tool);
    g_autofree char *from = least ? wrench_setting_words(least, unit) : g_strdup("up to ");
    g_autofree char *to = greatest ? wrench_setting_words(greatest, unit) : g_strdup("");
    return g_strdup_printf("%s%s%s%s%s", from, least ? "-" : "", to, unit ? " " : "",
                           unit ? unit_text(unit) : "");
}

char *tool_outside_words(const Entry *tool, ToolSort sort, const Number *value)
{
    if (!is_outside(tool, sort, value))
        return g_strdup("");
    g_autoptr(Unit) unit = wrench_unit(tool);
    g_autofree char *range = tool_range_words(tool), *used = wrench_setting_words(value, unit);
    return g_strdup_printf("%s: %s is outside", range, used);
}

char *tool_ceiling_words(const Entry *tool, const Number *ceiling)
{
    g_autoptr(Number) greatest = entry_amount(tool, "greatest");
    const char *words = greatest ? entry_value(tool, "greatest", "unit") : NULL;
    g_autoptr(Unit) unit = words ? unit_parse(words, NULL) : NULL;
    if (!unit)
        return g_strdup("");
    g_autofree char *to = wrench_setting_words(greatest, unit),
                    *at = wrench_setting_words(ceiling, unit);
    return number_compare(greatest, ceiling) >= 0
               ? g_strdup_printf("ceiling %s %s √", at, unit_text(unit))
               : g_strdup_printf("ends at %s, ceiling %s %s", to, at, unit_text(unit));
}

gint64 tool_uses(const Shop *shop, const Entry *tool, Book *book)
{
    const char *id = entry_text(tool, "id");
    g_autoptr(GPtrArray) all = shop_calibrations(shop, id);
    const Entry *last = all->len ? all->pdata[all->len - 1] : NULL;
    return last ? book_tool_uses(book, id, entry_text(last, "id")) : -1;
}

char *tool_standing_words(const Shop *shop, const Entry *tool, ToolSort sort, const Number *value,
                          gint64 uses, Moment now)
{
    g_autoptr(GArray) rules = calibrations_of(shop, tool);
    g_autofree char *range = tool_outside_words(tool, sort, value);
    gboolean told = sort == TOOL_TORQUE && (uses >= TOOL_USES_MOST || !*range);
    g_autofree char *said = calibration_words(rules, sort, told ? uses : -1, now);
    return g_strconcat(said, *said && *range ? ", " : "", range, NULL);
}

gboolean tool_is_doubtful(const Shop *shop, const Entry *tool, ToolSort sort, const Number *value,
                          gint64 uses, Moment now)
{
    g_autoptr(GArray) rules = calibrations_of(shop, tool);
    return standing_now(rules, sort, uses, now).state != TOOL_GOOD || is_outside(tool, sort, value);
}

char *tool_fault_words(const Shop *shop, const Entry *tool, ToolSort sort, Moment now)
{
    g_autoptr(GArray) rules = calibrations_of(shop, tool);
    return standing_now(rules, sort, -1, now).state == TOOL_GOOD
               ? NULL
               : calibration_words(rules, sort, -1, now);
}

const Entry *tool_found_wrong(const Shop *shop, const Entry *tool, Moment now)
{
    g_autoptr(GArray) rules = calibrations_of(shop, tool);
    const ToolStanding standing = standing_now(rules, TOOL_GAUGE, -1, now);
    if (standing.state != TOOL_WRONG)
        return NULL;
    g_autoptr(GPtrArray) entries = shop_calibrations(shop, entry_text(tool, "id"));
    return entries->pdata[wrong_at(rules, &standing)];
}
