#include "bench_detail.h"

#include "beside.h"
#include "line_words.h"
#include "toolbox.h"
#include "widget_digits.h"
#include "widget_groups.h"
#include "widget_strip.h"
#include "words.h"

#include <standbook/record/live.h>
#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <standbook/work/ago.h>
#include <standbook/work/claim.h>
#include <string.h>

enum {
    WORD_COLUMN = 3,
    FIGURE_COLUMN = 20,
    SAID_COLUMN = 33,
    BESIDE_COLUMN = 18,
    BESIDE_CELLS = 31,
    TURNS_MOST = 4,
};

static const Style plain, bold = {TYPE_BOLD, ROLE_CALM};

// What is painted, row by row.
typedef struct {
    Canvas *canvas;
    guint row;
    Desk *desk;
    const Checks *checks;
    Agenda agenda; // as it would be
    const Requirement *made;
    const char **causes; // why an entry of the agenda was struck; NULL if it counts
} Detail;

static void put_line(Detail *detail, guint column, Style style, const char *text)
{
    canvas_put(detail->canvas, detail->row++, column, 0, style, text);
}

// A figure, what it is in front, where it is from behind.
static void put_figure(Detail *detail, const char *what, const char *figure, const char *said)
{
    canvas_put(detail->canvas, detail->row, WORD_COLUMN, FIGURE_COLUMN - WORD_COLUMN - 1, plain,
               what);
    canvas_put(detail->canvas, detail->row, FIGURE_COLUMN, 0, plain, figure);
    canvas_put(detail->canvas, detail->row++, SAID_COLUMN, 0, plain, said);
}

// What an entry says, struck out if it no longer counts: `──90.100──`.
static char *figure_of(const Detail *detail, const Entry *entry)
{
    g_autofree char *figure = value_words(json_object_get(entry->body, "value"));
    return detail->causes[entry->seq - 1] ? g_strdup_printf("──%s──", figure)
                                          : g_steal_pointer(&figure);
}

static char *day_of(const Detail *detail, const Entry *entry)
{
    return ago_day(entry_moment(entry), detail->desk->now);
}

// FIGURES ---------------------------------------------------------------------------------------

static void put_now(Detail *detail)
{
    const Requirement *made = detail->made;
    g_autofree char *value = figure_value(made), *doubt = figure_doubt(made);
    g_autofree char *figure = g_strconcat(*value ? value : "·", " ", doubt, NULL);
    put_figure(detail, "now", figure, *detail->checks->typed ? "typed, not taken" : "");
}

// Whether an entry is about this place alone.
static gboolean is_at(const Entry *entry, const Requirement *made)
{
    return g_strcmp0(entry_text(entry, "check"), made->name) == 0 &&
           entry_is_at(entry, (const char *const *)made->labels);
}

// What somebody else's certificate says of it.
static void put_claims(Detail *detail)
{
    for (gsize i = 0; i < detail->agenda.count; i++) {
        const Entry *entry = detail->agenda.entries[i];
        if (strcmp(entry->kind->name, "claim") != 0 || !is_at(entry, detail->made))
            continue;
        g_auto(Claim) claim = claim_beside(entry, detail->made);
        const char *cause = detail->causes[i];
        g_autofree char *figure = figure_of(detail, entry);
        g_autofree char *day = day_of(detail, entry);
        g_autofree char *said =
            g_strconcat(cause ? "struck: " : "claim, ", cause ? cause : day, NULL);
        put_figure(detail, entry_text(entry, "certificate"), figure, said);
        if (cause || !claim.difference)
            continue;
        g_autofree char *width = check_stated_width(detail->made->check, claim.difference);
        g_autofree char *score = claim_score_words(&claim);
        put_figure(detail, "own - claim", width, "");
        if (*score)
            put_figure(detail, "E_n", score, claim_answer_words(claim.answer));
    }
}

// Readings of this place that no longer count, or were taken before.
static void put_before(Detail *detail)
{
    for (gsize i = 0; i < detail->agenda.count; i++) {
        const Entry *entry = detail->agenda.entries[i];
        if (strcmp(entry->kind->name, "read") != 0 || !is_at(entry, detail->made) ||
            entry->seq == detail->made->entry)
            continue;
        const char *cause = detail->causes[i];
        g_autofree char *figure = figure_of(detail, entry);
        g_autofree char *day = day_of(detail, entry);
        const char *who = taken_initials(detail->checks->taken, entry->by);
        g_autofree char *said =
            cause ? g_strconcat("struck: ", cause, NULL) : g_strconcat(day, ", ", who, NULL);
        put_figure(detail, "before", figure, said);
    }
}

// The places beside it in one window, whose ends are printed.
static void put_beside(Detail *detail)
{
    const Requirement *made = detail->made;
    g_autoptr(GPtrArray) beside = working_beside(&detail->agenda, made);
    g_autoptr(Number) from = NULL, to = NULL;
    if (beside->len < 2 || !working_window(beside, &from, &to))
        return;
    g_autofree char *least = figure_number(made, from), *most = figure_number(made, to);
    const char *same = made->labels[1] ? strchr(made->place, ',') : NULL;
    g_autofree char *head = same ? g_strdup_printf("%s of the %u", same + 2, beside->len)
                                 : g_strdup_printf("all %u", beside->len);
    canvas_put(detail->canvas, ++detail->row, 1, 0, plain, head);
    canvas_put(detail->canvas, detail->row, BESIDE_COLUMN, 0, plain, least);
    canvas_put_right(detail->canvas, detail->row++, BESIDE_COLUMN + BESIDE_CELLS, plain, most);
    for (guint i = 0; i < beside->len; i++) {
        const Requirement *one = beside->pdata[i];
        const Number *values[] = {one->value};
        const Strip strip = {.values = values,
                             .count = one->value ? 1 : 0,
                             .from = from,
                             .to = to,
                             .cells = BESIDE_CELLS};
        g_autofree char *drawn = strip_draw(&strip), *value = figure_value(one);
        g_autofree char *words = g_strdup_printf("%s  %s", one->labels[0], *value ? value : "·");
        canvas_put(detail->canvas, detail->row, WORD_COLUMN, 0, one == made ? bold : plain, words);
        strip_paint(detail->canvas, detail->row++, BESIDE_COLUMN, drawn, one->verdict);
    }
}

// GAUGE -----------------------------------------------------------------------------------------

static void put_calibration(Detail *detail, const Entry *tool)
{
    g_autofree char *now = moment_text(detail->desk->now);
    now[10] = '\0';
    const Shop *shop = session_shop(detail->desk->shop);
    const Entry *calibration = shop_calibration_on(shop, entry_text(tool, "id"), now);
    g_autofree char *marks = value_words(json_object_get(tool->body, "graduation"));
    g_autofree char *doubt =
        calibration ? value_words(json_object_get(calibration->body, "uncertainty")) : NULL;
    g_autofree char *due = toolbox_standing(detail->desk, &(ToolNeed){.need = NEED_GAUGE},
                                            shop_label(tool), NULL, NULL);
    g_autofree char *line =
        g_strdup_printf("%s%s%s%s%s%s", *marks ? "reads " : "", marks, doubt && *doubt ? ", ±" : "",
                        doubt ? doubt : "", *due ? ", " : "", due);
    if (*line)
        put_line(detail, WORD_COLUMN, plain, line);
}

static void put_zero(Detail *detail, const Entry *tool)
{
    const Entry *zero = working_zero(&detail->agenda, entry_text(tool, "id"));
    if (!zero)
        return;
    g_autofree char *size = value_words(json_object_get(zero->body, "value"));
    g_autofree char *when = entry_when(zero);
    const char *master = entry_text(zero, "master");
    g_autofree char *line = g_strdup_printf("zeroed on %s%s%s at %s, %s", size,
                                            master ? " in " : "", master ? master : "", when + 11,
                                            taken_initials(detail->checks->taken, zero->by));
    put_line(detail, WORD_COLUMN, plain, line);
}

static void put_gauge(Detail *detail)
{
    const char *label = detail->checks->gauge;
    const Entry *tool = label ? shop_find(session_shop(detail->desk->shop), "tool", label) : NULL;
    if (!tool)
        return;
    g_autofree char *head =
        g_strdup_printf("gauge %s, %s", label, toolbox_words(detail->desk, label));
    detail->row++;
    put_line(detail, 1, plain, head);
    put_calibration(detail, tool);
    put_zero(detail, tool);
}

// VERDICT ---------------------------------------------------------------------------------------

static void put_limits(Detail *detail)
{
    const Requirement *made = detail->made;
    g_autofree char *limits = figure_limits(made);
    g_autofree char *wear = made->wear ? figure_number(made, made->wear) : NULL;
    const char *source = made->check->source;
    g_autofree char *line = g_strdup_printf(
        "%s%s%s%s%s%s", *limits ? "limits " : "no limit known", limits, wear ? ", wear " : "",
        wear ? wear : "", *limits && source ? ": " : "", *limits && source ? source : "");
    detail->row++;
    put_line(detail, 1, plain, line);
    for (guint i = 0; i < made->notes->len; i++)
        put_line(detail, WORD_COLUMN, plain, made->notes->pdata[i]);
}

// What comes out otherwise with what is typed.
static void put_turns(Detail *detail)
{
    guint turns = 0;
    for (guint i = 0; i < detail->checks->now->requirements->len && turns < TURNS_MOST; i++) {
        gboolean differs;
        const Requirement *now = detail->checks->now->requirements->pdata[i];
        const Requirement *then = checks_at(detail->checks, i, &differs);
        if (!differs || then->verdict == now->verdict || then == detail->made)
            continue;
        if (turns++ == 0) {
            detail->row++;
            put_line(detail, 1, plain, "if it stands");
        }
        g_autofree char *name = requirement_title(then), *verdict = figure_verdict(then);
        g_autofree char *line = g_strdup_printf("%s: %s", name, verdict);
        put_line(detail, WORD_COLUMN, verdict_style(then->verdict), line);
    }
}

void detail_paint(Desk *desk, const Checks *checks, guint index, Page *page)
{
    g_autoptr(Canvas) canvas = checks->here ? beside_begin(page) : NULL;
    if (!canvas)
        return;
    const Agenda agenda = checks_agenda(checks);
    g_autofree const char **causes = g_new(const char *, agenda.count + 1);
    live_causes(agenda.entries, agenda.count, causes);
    Detail detail = {canvas, 0, desk, checks, agenda, checks_at(checks, index, NULL), causes};
    g_autofree char *name = requirement_title(detail.made);
    put_line(&detail, 1, bold, name);
    if (detail.made->check) {
        put_now(&detail);
        put_claims(&detail);
        put_before(&detail);
        put_beside(&detail);
        put_gauge(&detail);
        put_limits(&detail);
        put_turns(&detail);
    }
    beside_end(page, canvas, detail.row, desk_build(desk), desk->now);
}

// FAR -------------------------------------------------------------------------------------------

// The labels alone where the whole name is too long to be drawn, without commas.
static char *far_words(const Requirement *made)
{
    g_autofree char *whole = requirement_title(made);
    g_auto(GStrv) parts = g_strsplit(whole, ",", -1);
    g_autofree char *joined = g_strjoinv("", parts);
    if (!*made->place || digits_width(joined, 2) <= PAGE_WIDTH - 2)
        return g_steal_pointer(&joined);
    return g_strjoinv(" ", made->labels);
}

// The place five rows high, the strip and the verdict, the digits ten rows high: the strip between
// keeps them apart.
void detail_far(const Checks *checks, guint index, Page *page)
{
    enum { PLACE_DOT = 2, DOT = 3, HIGH = 2, LEFT = 5, STRIP_ROW = 5, ROW = 6 };
    const Requirement *made = checks_at(checks, index, NULL);
    g_autofree char *place = far_words(made), *value = figure_value(made);
    const char *shown = *checks->typed ? checks->typed : value;
    if (digits_width(place, PLACE_DOT) <= PAGE_WIDTH - LEFT)
        digits_paint(page->body, 0, LEFT, PLACE_DOT, 1, plain, place);
    else
        canvas_put(page->body, 2, LEFT, 0, bold, place);
    guint dot = digits_width(shown, DOT) > PAGE_WIDTH - LEFT ? PLACE_DOT : DOT;
    g_autofree char *strip = strip_text(made), *fault = fault_words(made);
    guint column = strip_paint(page->body, STRIP_ROW, LEFT, strip, made->verdict);
    const char *verdict =
        *fault ? fault + strlen(" · ") : verdict_mark(made->verdict, made->reason, made->check);
    canvas_put(page->body, STRIP_ROW, column + 3, 0, verdict_style(made->verdict),
               made->value || made->answer ? verdict : "");
    digits_paint(page->body, ROW, LEFT, dot, HIGH, plain, shown);
}
