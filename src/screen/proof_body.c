#include "proof_body.h"

#include "about.h"
#include "beside.h"
#include "clock_line.h"
#include "to_lay.h"
#include "widget_groups.h"
#include "widget_subjects.h"
#include "words.h"

#include <standbook/work/ago.h>
#include <standbook/work/clocks.h>
#include <standbook/work/gate.h>

enum { SAID = 34 }; // column, as of the subjects

static guint paint_all(const Gaps *gaps, GArray *subjects, guint row, Page *page)
{
    for (guint i = 0; i < subjects->len; i++)
        subject_paint(page->body, row++, &gaps->told.agenda, &g_array_index(subjects, Subject, i));
    return row;
}

// What kept it from being filled or run last, and since when that is over.
static char *over_words(const Gaps *gaps)
{
    const Agenda *agenda = &gaps->told.agenda;
    Moment now = gaps->told.telling.now;
    Clock clock;
    if (!clock_over(agenda->plan, agenda->entries, agenda->count, now, &clock))
        return g_strdup("none runs");
    g_autofree char *day = ago_day(clock.at, now), *time = moment_text(clock.at);
    return g_strdup_printf("%s may %s since %s %.5s", clock.subject,
                           clock.sort == CLOCK_NO_RUN ? "run" : "be filled", day, time + 11);
}

// What was to be laid in steps that are signed, and is not: no clock runs of it. Returns the row
// behind.
static guint paint_not_laid(const Gaps *gaps, guint row, Page *page)
{
    g_autoptr(GArray) layings = layings_passed_over(&gaps->told.agenda, gaps->gate);
    for (guint i = 0; i < layings->len; i++) {
        const Laying *laying = &g_array_index(layings, Laying, i);
        g_autofree char *words = laying_words(laying);
        g_autofree char *said = g_strdup_printf("not laid in %s", laying->step->name);
        line_paint(page->body, row++, VERDICT_OPEN, words, said);
    }
    return row;
}

static guint paint_clocks(const Gaps *gaps, guint row, Page *page)
{
    const Agenda *agenda = &gaps->told.agenda;
    guint before = row;
    row = paint_not_laid(gaps, row, page);
    Moment now = gaps->told.telling.now;
    g_autoptr(GArray) clocks =
        clocks_running(agenda->plan, agenda->assessment, agenda->entries, agenda->count, now);
    for (guint i = 0; i < clocks->len; i++) {
        const Clock *clock = &g_array_index(clocks, Clock, i);
        g_autofree char *until = clock_until(clock, now);
        g_autofree char *said = g_strconcat(clock->subject, " ", until, NULL);
        line_paint(page->body, row++, VERDICT_OPEN, "clocks", said);
    }
    if (clocks->len || row > before)
        return row;
    g_autofree char *over = over_words(gaps);
    line_paint(page->body, row, VERDICT_PASS, "clocks", over);
    return row + 1;
}

// Behind the last sum, that of the parts, the lots that were there and were not used, where there
// is room; else in a line of their own.
static guint paint_sums(const Gaps *gaps, const char *lots, guint row, Page *page)
{
    enum { ROOM = PAGE_WIDTH - SAID };
    g_autoptr(GArray) sums = gate_sums(&gaps->told.agenda, gaps->gate);
    for (guint i = 0; i < sums->len; i++) {
        const GateSum *sum = &g_array_index(sums, GateSum, i);
        Verdict verdict = sum->settled == sum->all ? VERDICT_PASS : VERDICT_OPEN;
        g_autofree char *both = g_strconcat(sum->said, "; ", lots, NULL);
        gboolean last = lots && i + 1 == sums->len && g_utf8_strlen(both, -1) <= ROOM;
        line_paint(page->body, row++, verdict, sum->what, last ? both : sum->said);
        lots = last ? NULL : lots;
    }
    if (lots)
        line_paint(page->body, row++, VERDICT_PASS, "lots", lots);
    return row;
}

// Returns the row behind.
static guint paint_standing(const Gaps *gaps, const char *lots, guint row, Page *page)
{
    row = paint_sums(gaps, lots, row, page);
    row = paint_clocks(gaps, row, page);
    g_autoptr(GArray) standing = subjects_standing(&gaps->told.telling, gaps->gate);
    return paint_all(gaps, standing, row, page);
}

static guint all_asked(const GateCount *gate)
{
    guint all = 0;
    for (guint i = 0; i < VERDICTS; i++)
        all += gate->counts[i];
    return all;
}

// `8 GAPS on 5 lines`: a gap is what is left before the gate; what is alike stands on one line.
static char *gap_words(const Gaps *gaps)
{
    guint left = gaps_gate(gaps)->left, lines = gaps->gaps->len;
    g_autofree char *on =
        left == lines ? NULL : g_strdup_printf(" on %u line%s", lines, lines == 1 ? "" : "s");
    return g_strdup_printf("%u GAP%s%s", left, left == 1 ? "" : "S", on ? on : "");
}

// `843 are asked before it`; with what is open and may stay so, `843 asked, 1 optional`.
static char *things_words(const GateCount *gate)
{
    guint optional = gate_optional(gate->counts, gate->left), all = all_asked(gate);
    return optional ? g_strdup_printf("%u asked, %u optional", all, optional)
                    : g_strdup_printf("%u are asked before it", all);
}

// `8 GAPS on 5 lines: not ready for first start. 843 are asked before it.`
static void paint_head(const Gaps *gaps, Page *page)
{
    const GateCount *gate = gaps_gate(gaps);
    g_autofree char *counts = tally_words(gate->counts, 0);
    g_autofree char *gap = gap_words(gaps), *things = things_words(gate);
    g_autofree char *ready =
        gate->left    ? g_strdup_printf("%s: not ready", gap)
        : gate->since ? g_strdup_printf("No gap, %u since its seal: ready", gate->since)
                      : g_strdup(gate->sealed ? "No gap, and sealed: ready" : "No gap: ready");
    g_autofree char *words = g_strdup_printf("%s for %s. %s.", ready, gate->name, things);
    page_say(&page->head, "Proof: %s", gate->name);
    page_say(&page->count, "%u = %s", all_asked(gate), counts);
    canvas_put(page->body, 0, 1, 0, style_of(TYPE_BOLD, 0), words);
}

// The gap in hand, and what was entered about it. Returns the row behind; 0 where none is.
static guint put_gap(const Gaps *gaps, guint at, const Session *session, Canvas *told)
{
    guint place;
    if (gaps_doing(gaps, at, &place) == DO_NOTHING)
        return 0;
    const Subject *gap = gaps_gap(gaps, at);
    const Requirement *made =
        gaps_made(gaps, place != AGENDA_NOWHERE ? place : g_array_index(gap->places, guint, 0));
    g_autofree char *name = requirement_title(made), *step = step_words(made->step);
    canvas_put(told, 0, 1, 0, style_of(TYPE_BOLD, 0), name);
    canvas_put(told, 2, 1, 0, style_of(0, 0), step);
    return about_entries(told, about_figures(told, 4, session, made), session, made);
}

// All behind the head, the first gap in row `first`, with so many blank rows between what is
// missing and what stands. Returns the row behind.
static guint paint_lines(const Gaps *gaps, guint at, const char *lots, guint first, guint blank,
                         Page *page)
{
    guint row = paint_all(gaps, gaps->gaps, first, page);
    if (gaps->gaps->len) {
        canvas_put(page->body, first + at, 0, 1, style_of(TYPE_BOLD, 0), ">");
        page->focus = first + at;
        row += blank;
    }
    return paint_standing(gaps, lots, row, page);
}

// On the least screen the blank rows are left out where all would not be seen with them.
void proof_body(const Gaps *gaps, guint at, const Session *session, Page *page)
{
    enum { ROWS = PAGE_HEIGHT - 8 };
    g_autofree char *lots = gate_lots(&gaps->told.agenda, session_shop(session));
    guint row = paint_lines(gaps, at, lots, 2, 1, page);
    if (row > ROWS && page->width < PAGE_WIDE) {
        gboolean ascii = page->body->ascii;
        canvas_free(page->body);
        page->body = canvas_new_growing(PAGE_WIDTH, ascii);
        paint_lines(gaps, at, lots, 1, 0, page);
    }
    paint_head(gaps, page);
    g_autoptr(Canvas) told = beside_begin(page);
    if (told)
        beside_end(page, told, put_gap(gaps, at, session, told), session, gaps->told.telling.now);
}
