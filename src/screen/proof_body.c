#include "proof_body.h"

#include "clock_line.h"
#include "widget_groups.h"
#include "widget_subjects.h"
#include "words.h"

#include <standbook/work/clocks.h>

static guint paint_all(const Gaps *gaps, GArray *subjects, guint row, Page *page)
{
    for (guint i = 0; i < subjects->len; i++)
        subject_paint(page->body, row++, &gaps->told.agenda, &g_array_index(subjects, Subject, i));
    return row;
}

static void paint_line(Page *page, guint row, Verdict verdict, const char *what, const char *said)
{
    canvas_put(page->body, row, 1, 8, verdict_style(verdict), verdict_mark(verdict, REASON_NONE));
    canvas_put(page->body, row, 10, 23, style_of(0, 0), what);
    canvas_put(page->body, row, 34, 0, style_of(0, 0), said);
}

static guint paint_clocks(const Gaps *gaps, guint row, Page *page)
{
    const Agenda *agenda = &gaps->told.agenda;
    Moment now = gaps->told.telling.now;
    g_autoptr(GArray) clocks =
        clocks_running(agenda->plan, agenda->assessment, agenda->entries, agenda->count, now);
    for (guint i = 0; i < clocks->len; i++) {
        const Clock *clock = &g_array_index(clocks, Clock, i);
        g_autofree char *until = moment_text(clock->at);
        g_autofree char *said =
            g_strdup_printf("%s %s %.16s", clock->subject, clock_words(clock, now), until);
        paint_line(page, row++, VERDICT_OPEN, "clocks", said);
    }
    if (!clocks->len)
        paint_line(page, row++, VERDICT_PASS, "clocks", "none runs");
    return row;
}

static void paint_standing(const Gaps *gaps, guint row, Page *page)
{
    g_autoptr(GArray) sums = gate_sums(&gaps->told.agenda, gaps->gate);
    for (guint i = 0; i < sums->len; i++) {
        const GateSum *sum = &g_array_index(sums, GateSum, i);
        Verdict verdict = sum->settled == sum->all ? VERDICT_PASS : VERDICT_OPEN;
        paint_line(page, row++, verdict, sum->what, sum->said);
    }
    row = paint_clocks(gaps, row, page);
    g_autoptr(GArray) standing = subjects_standing(&gaps->told.telling, gaps->gate);
    paint_all(gaps, standing, row, page);
}

static guint all_asked(const GateCount *gate)
{
    guint all = 0;
    for (guint i = 0; i < VERDICTS; i++)
        all += gate->counts[i];
    return all;
}

void proof_body(const Gaps *gaps, guint at, Page *page)
{
    const GateCount *gate = gaps_gate(gaps);
    guint count = gaps->gaps->len;
    g_autofree char *counts = tally_words(gate->counts);
    g_autofree char *many = g_strdup_printf("%u GAP%s", count, count == 1 ? "" : "S");
    g_autofree char *words = g_strdup_printf("%s. %u things are asked before %s.",
                                             count          ? many
                                             : gate->sealed ? "No gap, and sealed"
                                                            : "No gap",
                                             all_asked(gate), gate->name);
    page_say(&page->head, "Proof: %s", gate->name);
    page_say(&page->count, "%u = %s", all_asked(gate), counts);
    canvas_put(page->body, 0, 1, 0, style_of(TYPE_BOLD, 0), words);
    guint row = paint_all(gaps, gaps->gaps, 2, page);
    if (count) {
        canvas_put(page->body, 2 + at, 0, 1, style_of(TYPE_BOLD, 0), ">");
        page->focus = 2 + at;
    }
    paint_standing(gaps, row + (count ? 1 : 0), page);
}
