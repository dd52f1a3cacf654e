#include "judge.h"

#include <standbook/judge/tool_rule.h>
#include <standbook/rules/consumable.h>
#include <string.h>

enum { SECONDS_OF_A_DAY = 86400 };

static const char *body_text(const json_t *body, const char *field)
{
    return json_string_value(json_object_get(body, field));
}

// A value of a taken body in base units, NULL if it is not there. `width` leaves out the offset of
// a temperature.
static Number *body_value(const Judge *judge, const json_t *body, const char *field, gboolean width)
{
    const json_t *value = json_object_get(body, field);
    const char *text = body_text(value, "value"), *unit_words = body_text(value, "unit");
    g_autoptr(Number) number = text ? number_from_text(text, NULL) : NULL;
    const Unit *unit = judge_unit(judge, unit_words);
    if (!number)
        return NULL;
    return width ? unit_width_to_base(unit, number) : unit_to_base(unit, number);
}

static gint64 day_done(const Judge *judge, gint64 seq)
{
    return judge->done[seq - 1] / SECONDS_OF_A_DAY;
}

static const json_t *taken_body(const Entry *entry, const char *what)
{
    if (g_strcmp0(entry_text(entry, "what"), what) != 0)
        return NULL;
    return json_object_get(entry->body, "body");
}

// The newest `take` or `news` about an id, NULL if there is none.
static const Entry *known_entry(const Judge *judge, const char *what, const char *id)
{
    GPtrArray *about = id ? g_hash_table_lookup(judge->known, id) : NULL;
    if (id && !g_hash_table_contains(judge->consulted, id))
        g_hash_table_add(judge->consulted, g_strdup(id));
    for (guint i = about ? about->len : 0; i-- > 0;)
        if (taken_body(g_ptr_array_index(about, i), what))
            return g_ptr_array_index(about, i);
    return NULL;
}

json_t *judge_known(const Judge *judge, const char *what, const char *id)
{
    const Entry *entry = known_entry(judge, what, id);
    return entry ? (json_t *)taken_body(entry, what) : NULL;
}

// A calibration as the ledger came to know it.
typedef struct {
    ToolCalibration rule;
    Number *expanded, *repeat;
    Number *variance; // u² of a reading, NULL if no uncertainty is stated
    char *gauge;      // the tool with this calibration
} Calibration;

// A tool as the ledger knows it, made at its first use.
typedef struct {
    gboolean taken;
    Number *least, *greatest, *graduation;
    GArray *calibrations; // Calibration, by day, then seq
} Tool;

static void calibration_clear(gpointer data)
{
    Calibration *calibration = data;
    number_free(calibration->expanded);
    number_free(calibration->repeat);
    number_free(calibration->variance);
    g_free(calibration->gauge);
}

void judge_tool_free(gpointer data)
{
    Tool *tool = data;
    number_free(tool->least);
    number_free(tool->greatest);
    number_free(tool->graduation);
    g_array_unref(tool->calibrations);
    g_free(tool);
}

static gint calibration_order(gconstpointer a, gconstpointer b)
{
    const Calibration *one = a, *other = b;
    if (one->rule.day != other->rule.day)
        return one->rule.day < other->rule.day ? -1 : 1;
    return (one->rule.seq > other->rule.seq) - (one->rule.seq < other->rule.seq);
}

static Calibration calibration_of(const Judge *judge, const Entry *entry, const json_t *body)
{
    return (Calibration){
        .rule = tool_calibration(body, entry->seq),
        .expanded = body_value(judge, body, "uncertainty", TRUE),
        .repeat = body_value(judge, body, "repeat", TRUE),
        .gauge = g_strdup_printf("%s %" G_GINT64_FORMAT, body_text(body, "tool"), entry->seq)};
}

static Tool *tool_new(const Judge *judge, const char *id)
{
    Tool *tool = g_new0(Tool, 1);
    GPtrArray *about = g_hash_table_lookup(judge->known, id);
    const json_t *body = judge_known(judge, "tool", id);
    tool->taken = body != NULL;
    tool->least = body_value(judge, body, "least", FALSE);
    tool->greatest = body_value(judge, body, "greatest", FALSE);
    tool->graduation = body_value(judge, body, "graduation", TRUE);
    tool->calibrations = g_array_new(FALSE, TRUE, sizeof(Calibration));
    g_array_set_clear_func(tool->calibrations, calibration_clear);
    for (guint i = 0; about && i < about->len; i++) {
        const Entry *entry = g_ptr_array_index(about, i);
        const json_t *found = taken_body(entry, "calibration");
        if (!found)
            continue;
        Calibration one = calibration_of(judge, entry, found);
        const ReadingDoubt doubt = {one.gauge, one.expanded, one.repeat, NULL};
        one.variance = one.expanded ? doubt_variance(&doubt) : NULL;
        g_array_append_val(tool->calibrations, one);
    }
    g_array_sort(tool->calibrations, calibration_order);
    return tool;
}

static const Tool *tool_of(const Judge *judge, const char *id)
{
    Tool *tool = g_hash_table_lookup(judge->tools, id);
    if (!tool) {
        tool = tool_new(judge, id);
        g_hash_table_insert(judge->tools, g_strdup(id), tool);
    }
    return tool;
}

static const Calibration *calibration_at(const Tool *tool, gssize index)
{
    return index < 0 ? NULL : &g_array_index(tool->calibrations, Calibration, index);
}

static ToolStanding standing_of(const Judge *judge, const Entry *entry, const Tool *tool,
                                ToolSort sort, ToolState range, guint turn)
{
    gsize count = tool->calibrations->len;
    g_autofree ToolCalibration *rules = g_new(ToolCalibration, count + 1);
    for (gsize i = 0; i < count; i++)
        rules[i] = calibration_at(tool, (gssize)i)->rule;
    gint64 before = entry_number(entry, "uses"); // written where the entry passes TOOL_USES_MOST
    ToolUse use = {.day = day_done(judge, entry->seq),
                   .seq = entry->seq,
                   .count = (guint)MIN(before + turn + 1, G_MAXUINT),
                   .range = range};
    return tool_use_standing(sort, rules, count, &use);
}

// The calibration that says so, or that had run out; NULL where none does.
static const Calibration *calibration_against(const Tool *tool, const ToolStanding *standing)
{
    const Calibration *before = calibration_at(tool, standing->before);
    gboolean then = before && before->rule.found == TOOL_FOUND_WRONG;
    if (standing->state == TOOL_WRONG)
        return then ? before : calibration_at(tool, standing->after);
    return standing->state == TOOL_OVERDUE ? before : NULL;
}

guint32 judge_tool_doubt(const Judge *judge, const Entry *entry, const ToolUsed *used,
                         guint *evidence, gint64 *cause)
{
    const char *id = entry_text(entry, "tool");
    ToolCause why = {used->torque ? TOOL_UNKNOWN : TOOL_GOOD, entry->seq, entry->seq};
    if (id) {
        const Tool *tool = tool_of(judge, id);
        ToolSort sort = used->torque ? TOOL_TORQUE : TOOL_GAUGE;
        ToolState range = tool_range(sort, tool->least, tool->greatest, used->value);
        ToolStanding standing = standing_of(judge, entry, tool, sort, range, used->turn);
        const Calibration *news = calibration_at(tool, standing.after);
        const Calibration *against = calibration_against(tool, &standing);
        if (news && standing.state == TOOL_WRONG)
            *evidence = MAX(*evidence, judge_rank(judge, news->rule.seq));
        why.state = tool->taken ? standing.state : MAX(standing.state, TOOL_UNKNOWN);
        why.entry = against ? against->rule.seq : entry->seq;
    }
    *cause = cause_pack(&why);
    return why.state == TOOL_GOOD ? 0 : reason_bit(REASON_TOOL);
}

// What was typed of the value. FALSE if it says nothing; else the caller clears it.
static gboolean as_typed(const Judge *judge, const Entry *entry, Reading *reading)
{
    const Unit *unit = judge_unit(judge, entry_value(entry, "value", "unit"));
    const char *typed = entry_value(entry, "value", "typed");
    return typed && reading_parse(typed, unit, reading, NULL, NULL);
}

// One unit of the last place typed, in base units.
static Number *last_place(const Judge *judge, const Entry *entry)
{
    Reading reading;
    if (!as_typed(judge, entry, &reading))
        return number_from_integer(0);
    Number *place = g_steal_pointer(&reading.place);
    reading_clear(&reading);
    return place;
}

// The ± that was typed behind the value, in base units; NULL if there is none. Few have one: only
// those are read for it.
static Number *typed_doubt(const Judge *judge, const Entry *entry)
{
    const char *typed = entry_value(entry, "value", "typed");
    Reading reading;
    if (!typed || !(strstr(typed, "±") || strstr(typed, "+/-")) ||
        !as_typed(judge, entry, &reading))
        return NULL;
    Number *doubt = g_steal_pointer(&reading.doubt);
    reading_clear(&reading);
    return doubt;
}

// The last uncertainty said of the tool up to a calibration: an adjustment that states none leaves
// the one before in force.
static const Calibration *stated_at(const Tool *tool, gssize index)
{
    for (; index >= 0; index--)
        if (calibration_at(tool, index)->expanded)
            return calibration_at(tool, index);
    return NULL;
}

// A gauge keeps its identity from one calibration to the next; its doubt is that of the calibration
// in force when it was used, else that of its graduation, else that of the last place typed.
void judge_gauge(const Judge *judge, const Entry *entry, ReadingState *reading)
{
    const char *id = entry_text(entry, "tool");
    const Tool *tool = id ? tool_of(judge, id) : NULL;
    ToolStanding standing = {.before = -1};
    reading->doubt.gauge = id;
    reading->own = typed_doubt(judge, entry);
    if (tool)
        standing = standing_of(judge, entry, tool, TOOL_GAUGE, TOOL_GOOD, 0);
    const Calibration *stated = tool ? stated_at(tool, standing.before) : NULL;
    if (stated) {
        reading->doubt.gauge = calibration_at(tool, standing.before)->gauge;
        reading->doubt.expanded = stated->expanded;
        reading->doubt.repeat = stated->repeat;
        reading->gauge = stated->variance;
        return;
    }
    reading->graduation =
        tool && tool->graduation ? number_copy(tool->graduation) : last_place(judge, entry);
    reading->doubt.graduation = reading->graduation;
}

static gboolean is_expired(const Judge *judge, const char *date, gint64 seq)
{
    return date && day_done(judge, seq) > tool_day(date);
}

guint32 judge_lot_doubt(const Judge *judge, const Entry *entry, guint *evidence)
{
    gboolean laid = strcmp(entry->kind->name, "laid") == 0;
    const char *id = entry_text(entry, laid ? "item" : "lot");
    const json_t *body = judge_known(judge, laid ? "consumable" : "lot", id);
    const Entry *recall = known_entry(judge, "recall", id);
    gboolean expired = is_expired(judge, body_text(body, "expires"), entry->seq) ||
                       (laid && is_expired(judge, entry_text(entry, "expires"), entry->seq));
    if (recall)
        *evidence = MAX(*evidence, judge_rank(judge, recall->seq));
    return expired || recall ? reason_bit(REASON_PART) : 0;
}

const char *judge_lot_grade(const Judge *judge, const Entry *entry)
{
    return body_text(judge_known(judge, "lot", entry_text(entry, "lot")), "grade");
}

// Whether the wall clock ran forward over all entries typed between the two.
static gboolean clock_ran_forward(const Judge *judge, gint64 from, gint64 to)
{
    for (gint64 seq = MIN(from, to); seq < MAX(from, to); seq++)
        if (judge->at[seq] < judge->at[seq - 1])
            return FALSE;
    return TRUE;
}

guint32 judge_window(const Judge *judge, gint64 from, gint64 to, gboolean within,
                     const Number *limit)
{
    gint64 seconds = judge->done[to - 1] - judge->done[from - 1];
    if (seconds < 0 || !clock_ran_forward(judge, from, to))
        return reason_bit(REASON_CLOCK);
    g_autoptr(Number) elapsed = number_from_integer((glong)seconds);
    WindowAnswer answer = within ? window_within(number_rational(elapsed), number_rational(limit))
                                 : window_after(number_rational(elapsed), number_rational(limit));
    return answer == WINDOW_OK ? 0 : reason_bit(REASON_WINDOW);
}
