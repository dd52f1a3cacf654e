#include "tool_lines.h"

#include "beginning.h"
#include "line_words.h"

#include <standbook/base/error.h>
#include <standbook/work/words.h>
#include <string.h>

// KINDS OF TOOLS --------------------------------------------------------------------------------

enum { GAUGES = 1 << NEED_GAUGE, WRENCHES = 1 << NEED_TORQUE, ANGLES = 1 << NEED_ANGLE, ALL = 7 };

// What a person has in the hand, and how the questions speak of it.
static const struct {
    const char *sort;              // the word of plans; NULL: it must be said
    const char *letter;            // in front of its number
    const char *what;              // an example of its name; NULL: the sort
    const char *unit;              // what its range must be of; NULL: anything
    const char *range, *doubt;     // examples
    const char *stand_in;          // a range that fits as long as none is known
    const char *undated;           // what follows without a calibration
} tools[] = {
    [NEED_GAUGE] = {NULL, "G", NULL, NULL, "50 to 75 mm", "0.004 mm", "",
                    "never, its division counts"},
    [NEED_TORQUE] = {"torque wrench", "W", "click wrench", "N·m", "10 to 60 Nm", "2 Nm",
                     " range 0..1 N·m", "never, its work is in doubt"},
    [NEED_ANGLE] = {"angle gauge", "A", "dial on the square", "°", "0 to 360 deg", "1 deg",
                    " range 0..360 deg", "never"},
};

static const char any_gauge[] = "gauge";

void tool_said_init(ToolSaid *said, Need need, const char *sort)
{
    *said = (ToolSaid){.need = need};
    said->sort = g_strdup(tools[need].sort ? tools[need].sort : sort ? sort : any_gauge);
}

void tool_said_clear(ToolSaid *said)
{
    for (guint i = 0; i < TOOL_ANSWERS; i++)
        g_free(said->answers[i]);
    g_free(said->sort);
}

// QUESTIONS -------------------------------------------------------------------------------------

static const struct {
    int of;              // which kinds of tools are asked that
    gboolean calibrated; // only one that was
    const char *word, *next, *hint;
    const char *otherwise; // what an empty answer means; NULL: the example, or the sort, or another
                           // thing for each kind
} questions[TOOL_ANSWERS] = {
    [TOOL_LABEL] = {ALL, FALSE, "number", "its number?", "one word, as it is marked on it: ", NULL},
    [TOOL_WHAT] = {ALL, FALSE, "what", "what is it?", "as sheets name it: ", NULL},
    [TOOL_RANGE] = {ALL, FALSE, "range", "its range?",
                    "what it measures, from and to: ", "not known"},
    [TOOL_STEP] = {GAUGES | ANGLES, FALSE, "division", "smallest division?",
                   "its resolution: ", "not known"},
    [TOOL_REACH] = {WRENCHES, FALSE, "reach", "its reach?",
                    "grip to square, for adapters: ", "not known"},
    [TOOL_DAY] = {ALL, FALSE, "calibrated", "calibrated when?", "day found good: ", NULL},
    [TOOL_DUE] = {ALL, TRUE, "next due", "next due?", "none, or the day it runs out: ", NULL},
    [TOOL_DOUBT] = {ALL, TRUE, "doubt (U)", "doubt (U)?",
                    "how far off at most, k = 2: ", "not said"},
};

static gboolean is_said(const char *answer)
{
    return answer && *answer;
}

gboolean tool_asks(const ToolSaid *said, ToolAnswer answer)
{
    return (questions[answer].of & 1 << said->need) &&
           (!questions[answer].calibrated || is_said(said->answers[TOOL_DAY]));
}

// `W5`, the first of its letter that no tool has.
static char *label_free(const Desk *desk, Need need)
{
    for (guint i = 1;; i++) {
        g_autofree char *label = g_strdup_printf("%s%u", tools[need].letter, i);
        if (!shop_find(session_shop(desk->shop), "tool", label))
            return g_steal_pointer(&label);
    }
}

// The day so many months behind a moment, or before it.
static char *day_of(Moment moment, int months)
{
    g_autoptr(GDateTime) at = g_date_time_new_from_unix_utc(moment);
    g_autoptr(GDateTime) day = g_date_time_add_months(at, months);
    return g_date_time_format(day, "%Y-%m-%d");
}

// The day that was typed, `2025-03-13` or `13 March 2025`.
static Moment day_said(const char *answer)
{
    Words words;
    g_autofree char *day = NULL;
    return words_begin(&words, answer, NULL) && words_date(&words, &day, NULL) ? moment_of_day(day)
                                                                               : 0;
}

// Whether a plan or the need says what it is, so that its name may be left out.
static gboolean is_of_a_sort(const ToolSaid *said)
{
    return strcmp(said->sort, any_gauge) != 0;
}

// The unit that stands behind the last digit of a text; NULL if none does. *figures: whether a
// digit is there, and words behind it.
static Unit *unit_behind(const char *text, gboolean *figures)
{
    const char *last = text + strlen(text);
    while (last > text && !g_ascii_isdigit(last[-1]))
        last--;
    *figures = last > text && last[strspn(last, " ")];
    last += strspn(last, " ");
    return *last ? unit_parse(last, NULL) : NULL;
}

// The unit of its range, in which its doubt is typed; NULL if that is not known.
static Unit *range_unit(const ToolSaid *said)
{
    gboolean figures = FALSE;
    const char *range = said->answers[TOOL_RANGE];
    return is_said(range) ? unit_behind(range, &figures) : NULL;
}

static char *doubt_example(const ToolSaid *said)
{
    gboolean figures = FALSE;
    g_autoptr(Unit) own = range_unit(said), usual = unit_behind(tools[said->need].doubt, &figures);
    return own && strcmp(unit_text(own), unit_text(usual)) != 0
               ? g_strconcat("a figure in ", unit_text(own), NULL)
               : g_strdup(tools[said->need].doubt);
}

// What is asked; of its doubt the unit too.
static char *next_words(const ToolSaid *said, ToolAnswer answer)
{
    g_autoptr(Unit) unit = answer == TOOL_DOUBT ? range_unit(said) : NULL;
    return unit ? g_strdup_printf("%s in %s?", questions[answer].word, unit_text(unit))
                : g_strdup(questions[answer].next);
}

static char *example(const ToolSaid *said, const Desk *desk, ToolAnswer answer)
{
    switch (answer) {
    case TOOL_LABEL:
        return label_free(desk, said->need);
    case TOOL_WHAT:
        return g_strdup(tools[said->need].what ? tools[said->need].what
                        : is_of_a_sort(said)   ? said->sort
                                               : "caliper");
    case TOOL_RANGE:
        return g_strdup(tools[said->need].range);
    case TOOL_STEP:
        return g_strdup(said->need == NEED_GAUGE ? "0.01 mm" : "1 deg");
    case TOOL_REACH:
        return g_strdup("420 mm");
    case TOOL_DAY:
        return day_of(desk->now, -1);
    case TOOL_DUE:
        return day_of(day_said(said->answers[TOOL_DAY]), 12);
    default:
        return doubt_example(said);
    }
}

// What an empty answer means where it says nothing itself; NULL: it stands for an answer.
static const char *meaning(Need need, ToolAnswer answer)
{
    return answer == TOOL_DAY ? tools[need].undated : questions[answer].otherwise;
}

void tool_question(const ToolSaid *said, const Desk *desk, ToolAnswer answer,
                   ToolQuestion *question)
{
    g_autofree char *such = example(said, desk, answer);
    const char *means = meaning(said->need, answer);
    gboolean must = (answer == TOOL_RANGE && tools[said->need].unit) ||
                    (answer == TOOL_WHAT && !is_of_a_sort(said));
    *question = (ToolQuestion){.word = questions[answer].word,
                               .next = next_words(said, answer),
                               .hint = g_strconcat(questions[answer].hint, such, NULL)};
    if (must)
        return;
    question->instead = g_strdup(means ? "" : answer == TOOL_WHAT ? said->sort : such);
    question->otherwise = g_strdup(means ? means : question->instead);
}

void tool_question_clear(ToolQuestion *question)
{
    g_free(question->next);
    g_free(question->hint);
    g_free(question->otherwise);
    g_free(question->instead);
}

static const char no_day[] = "none"; // it never runs out, as the paper says

// LINES -----------------------------------------------------------------------------------------

static void add_said(GString *line, const char *phrase, const char *answer)
{
    if (is_said(answer))
        g_string_append_printf(line, " %s %s", phrase, answer);
}

// What no plan names is of the sort that it is called.
static const char *sort_words(const ToolSaid *said)
{
    const char *what = said->answers[TOOL_WHAT];
    return is_of_a_sort(said) || !is_said(what) ? said->sort : what;
}

static char *tool_line(const ToolSaid *said)
{
    const char *const *answers = (const char *const *)said->answers;
    g_autofree char *what = line_quoted(is_said(answers[TOOL_WHAT]) ? answers[TOOL_WHAT] : "it");
    g_autofree char *sort = line_quoted(sort_words(said));
    GString *line = g_string_new(NULL);
    g_string_append_printf(line, "tool %s %s kind %s", answers[TOOL_LABEL], what, sort);
    if (!is_said(answers[TOOL_RANGE]))
        g_string_append(line, tools[said->need].stand_in);
    add_said(line, "range", answers[TOOL_RANGE]);
    add_said(line, "step", answers[TOOL_STEP]);
    add_said(line, "reach", answers[TOOL_REACH]);
    return g_string_free(line, FALSE);
}

static char *calibration_line(const ToolSaid *said)
{
    GString *line = g_string_new(NULL);
    g_string_append_printf(line, "calibration %s %s", said->answers[TOOL_LABEL],
                           said->answers[TOOL_DAY]);
    if (g_strcmp0(said->answers[TOOL_DUE], no_day) != 0)
        add_said(line, "due", said->answers[TOOL_DUE]);
    g_string_append(line, " good");
    add_said(line, "U", said->answers[TOOL_DOUBT]);
    return g_string_free(line, FALSE);
}

GStrv tool_lines(const ToolSaid *said)
{
    g_autoptr(GStrvBuilder) lines = g_strv_builder_new();
    g_autofree char *tool = tool_line(said);
    g_strv_builder_add(lines, tool);
    if (is_said(said->answers[TOOL_DAY])) {
        g_autofree char *calibration = calibration_line(said);
        g_strv_builder_add(lines, calibration);
    }
    return g_strv_builder_end(lines);
}

// WOULD IT DO -----------------------------------------------------------------------------------

// Whether the range is of what such a tool is needed for; its unit stands behind the last digit. A
// word that is no unit is refused with the line.
static gboolean measures(const ToolSaid *said, Desk *desk)
{
    const char *range = said->answers[TOOL_RANGE], *needed = tools[said->need].unit;
    if (!is_said(range) || !needed)
        return TRUE;
    gboolean figures = FALSE;
    g_autoptr(Unit) unit = unit_behind(range, &figures);
    g_autoptr(Unit) wanted = unit_parse(needed, NULL);
    gboolean no_unit = figures && !unit;
    if (no_unit || (unit && kind_equal(unit_kind(unit), unit_kind(wanted))))
        return TRUE;
    desk_warn(desk, "its range has both ends and a unit: %s", tools[said->need].range);
    return FALSE;
}

// As if entered by who works here, in a session that stores nothing.
static gboolean would_take(Desk *desk, GStrv lines, GError **error)
{
    const ScreenOptions *with = desk->options;
    const SessionOptions options = {
        .now = with->now, .new_id = with->new_id, .user = with->user, .check = TRUE};
    g_autoptr(Session) session = session_open(desk->book, NULL, &options, error);
    for (guint i = 0; session && lines[i]; i++) {
        g_autofree char *line = g_strconcat(desk->who ? desk->who : "", " ", lines[i], NULL);
        if (!session_line(session, line, -1, NULL, error))
            return FALSE;
    }
    return session != NULL;
}

// One word, and no digit alone: that answers questions.
static gboolean label_fits(const ToolSaid *said, GError **error)
{
    const char *label = said->answers[TOOL_LABEL];
    if (!g_ascii_isdigit(*label) || label[1])
        return word_fits(label, error);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "a digit alone answers questions elsewhere; put a letter before it: %s%s",
                tools[said->need].letter, label);
    return FALSE;
}

// A length alone may be of feet or millimetres.
static gboolean has_unit(const char *answer)
{
    gboolean figures = FALSE;
    g_autoptr(Unit) unit = is_said(answer) ? unit_behind(answer, &figures) : NULL;
    return unit || figures || !is_said(answer);
}

gboolean tool_would_do(const ToolSaid *said, Desk *desk)
{
    GError *error = NULL;
    g_auto(GStrv) lines = tool_lines(said);
    if (label_fits(said, &error) && !measures(said, desk))
        return FALSE;
    if (!error && !has_unit(said->answers[TOOL_REACH])) {
        desk_warn(desk, "its reach has a unit: %s mm, or in", said->answers[TOOL_REACH]);
        return FALSE;
    }
    if (!error && would_take(desk, lines, &error))
        return TRUE;
    desk_warn_error(desk, error);
    return FALSE;
}
