// Before a gate: what is still missing, and what stands. Empty is the proof.
#include "clock_line.h"
#include "line_words.h"
#include "telling.h"
#include "toolbox.h"
#include "view.h"
#include "widget_groups.h"
#include "widget_subjects.h"
#include "words.h"

#include <standbook/work/agenda_item.h>
#include <standbook/work/clocks.h>
#include <string.h>

typedef struct {
    char *gate;     // by name; NULL: the next of the build
    guint at;       // which gap NEXT speaks of
    gboolean asked; // whether it is to be sealed
} Proof;

static gpointer open(Desk *desk, const char *argument)
{
    Proof *proof = g_new0(Proof, 1);
    (void)desk;
    proof->gate = g_strdup(argument);
    return proof;
}

static void close(gpointer state)
{
    Proof *proof = state;
    g_free(proof->gate);
    g_free(proof);
}

// WHAT IS MISSING -------------------------------------------------------------------------------

typedef struct {
    Told told;
    guint gate;
    GArray *gaps; // Subject
} Gaps;

static void gaps_clear(Gaps *gaps)
{
    g_clear_pointer(&gaps->gaps, g_array_unref);
    told_clear(&gaps->told);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Gaps, gaps_clear)

static gboolean gaps_init(Gaps *gaps, Proof *proof, Desk *desk)
{
    *gaps = (Gaps){.gaps = NULL};
    if (!told_init(&gaps->told, desk))
        return FALSE;
    gint named = proof->gate ? plan_gate(gaps->told.agenda.plan, proof->gate) : -1;
    gaps->gate = named >= 0 ? (guint)named : gate_next(&gaps->told.agenda);
    gaps->told.telling.agenda = &gaps->told.agenda;
    gaps->gaps = subjects_missing(&gaps->told.telling, gaps->gate);
    proof->at = gaps->gaps->len ? MIN(proof->at, gaps->gaps->len - 1) : 0;
    return TRUE;
}

static const Requirement *made_at(const Gaps *gaps, guint index)
{
    return g_ptr_array_index(gaps->told.agenda.assessment->requirements, index);
}

static const GateCount *gate_of(const Gaps *gaps)
{
    return gaps->told.agenda.assessment->gates->pdata[gaps->gate];
}

// What is to be done first of a gap: of bolts the lowest stage, of what is worked out a reading
// that goes into it. AGENDA_NOWHERE: nothing can be typed for it.
static guint place_of(const Gaps *gaps, const Subject *gap)
{
    guint found = AGENDA_NOWHERE;
    for (guint i = 0; i < gap->places->len; i++) {
        guint index = g_array_index(gap->places, guint, i);
        if (requirement_is_left(made_at(gaps, index)) &&
            (found == AGENDA_NOWHERE || made_at(gaps, index)->stage < made_at(gaps, found)->stage))
            found = index;
    }
    const Requirement *made = found == AGENDA_NOWHERE ? NULL : made_at(gaps, found);
    gboolean waits =
        made && made->finding && made->own_verdict != VERDICT_OPEN && made->verdict == VERDICT_OPEN;
    return !made || waits ? AGENDA_NOWHERE : agenda_input(&gaps->told.agenda, found);
}

// Whether the step was ever begun: else its cautions come first.
static gboolean is_begun(const Gaps *gaps, const PlanStep *step)
{
    const Agenda *agenda = &gaps->told.agenda;
    for (gsize i = agenda->count; i-- > 0;)
        if (strcmp(agenda->entries[i]->kind->name, "pick up") == 0 &&
            g_strcmp0(entry_text(agenda->entries[i], "step"), step->name) == 0)
            return TRUE;
    return FALSE;
}

typedef enum {
    DO_NOTHING, // no gap
    DO_WAIT,    // a finding that later work answers
    DO_OPEN,    // in its step
    DO_HERE,
} Doing;

// What can be done here about the gap in hand. `item` is set for DO_HERE and is to be cleared.
static Doing doing(const Gaps *gaps, const Proof *proof, AgendaItem *item)
{
    if (!gaps->gaps->len)
        return DO_NOTHING;
    guint place = place_of(gaps, &g_array_index(gaps->gaps, Subject, proof->at));
    if (place == AGENDA_NOWHERE)
        return DO_WAIT;
    *item = agenda_item(&gaps->told.agenda, place);
    gboolean asks_more = item->field == AGENDA_PART && !item->new_needed;
    if (is_begun(gaps, item->made->step) && !asks_more)
        return DO_HERE;
    agenda_item_clear(item);
    return DO_OPEN;
}

// TOOLS -----------------------------------------------------------------------------------------

// Which tool the place needs; FALSE: none. `*value` is freed with number_free.
static gboolean needs_tool(const AgendaItem *item, ToolNeed *need, Number **value)
{
    *value = NULL;
    if (item->field == AGENDA_VALUE && item->gauge) {
        *need = (ToolNeed){NEED_GAUGE, item->gauge, NULL};
        return TRUE;
    }
    StageKind kind = item->stage ? item->stage->kind : STAGE_SNUG;
    gboolean angle = kind == STAGE_TURN || kind == STAGE_ANGLE;
    if (!angle && kind != STAGE_TORQUE && kind != STAGE_UNTIL)
        return FALSE;
    *value =
        item->amount && item->amount_unit ? unit_to_base(item->amount_unit, item->amount) : NULL;
    *need = (ToolNeed){angle ? NEED_ANGLE : NEED_TORQUE, NULL, *value};
    return TRUE;
}

static const char *tool_for(Desk *desk, const AgendaItem *item, gboolean *missing)
{
    ToolNeed need;
    Number *value = NULL;
    gboolean needed = needs_tool(item, &need, &value);
    const char *tool = needed ? toolbox_for(desk, &need) : NULL;
    *missing = needed && !tool;
    number_free(value);
    return tool;
}

static Go ask_tool(const AgendaItem *item)
{
    ToolNeed need;
    Number *value = NULL;
    if (!needs_tool(item, &need, &value))
        return go(GO_STAY);
    g_autofree char *text = value ? number_text(value) : g_strdup("");
    char *argument = need.need == NEED_GAUGE
                         ? g_strconcat("G", need.sort, NULL)
                         : g_strdup_printf("%c\n%s", need.need == NEED_ANGLE ? 'A' : 'T', text);
    number_free(value);
    return go_open(VIEW_GAUGE, argument);
}

// PAINT -----------------------------------------------------------------------------------------

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

static void paint_body(const Gaps *gaps, const Proof *proof, Page *page)
{
    const GateCount *gate = gate_of(gaps);
    guint count = gaps->gaps->len;
    g_autofree char *many = g_strdup_printf("%u GAP%s", count, count == 1 ? "" : "S");
    g_autofree char *words = g_strdup_printf("%s. %u things are asked before %s.",
                                             count          ? many
                                             : gate->sealed ? "No gap, and sealed"
                                                            : "No gap",
                                             all_asked(gate), gate->name);
    canvas_put(page->body, 0, 1, 0, style_of(TYPE_BOLD, 0), words);
    guint row = paint_all(gaps, gaps->gaps, 2, page);
    if (count) {
        canvas_put(page->body, 2 + proof->at, 0, 1, style_of(TYPE_BOLD, 0), ">");
        page->focus = 2 + proof->at;
    }
    paint_standing(gaps, row + (count ? 1 : 0), page);
}

static void say_field(const AgendaItem *item, Page *page)
{
    static const struct {
        Asks field;
        const char *unit, *hint;
    } fields[] = {
        [AGENDA_VALUE] = {ASKS_NUMBER, "", NULL},
        [AGENDA_GO_NO_GO] = {ASKS_NUMBER, "1/0", "1 yes   0 no"},
        [AGENDA_CHOICE] = {ASKS_NUMBER, "no.", NULL},
        [AGENDA_COUNT] = {ASKS_NUMBER, "pcs", NULL},
        [AGENDA_TEXT] = {ASKS_TEXT, " ", "in words"},
        [AGENDA_TICK] = {ASKS_TICK, "Enter = tight", NULL},
        [AGENDA_PART] = {ASKS_TEXT, " ", "as the packet says; scan or type"},
        [AGENDA_SIGNATURE] = {ASKS_TICK, "Enter = sign", "/ and a digit: another person signs"},
    };
    gboolean waits = item->made->asked == ASKED_WAIT;
    gboolean untracked = item->field == AGENDA_PART && !item->track;
    page->field = untracked ? ASKS_TICK : fields[item->field].field;
    page_say(&page->unit, "%s",
             untracked    ? "Enter = new"
             : waits      ? "Enter = over"
             : item->unit ? item->unit
                          : fields[item->field].unit);
    if (fields[item->field].hint && !untracked)
        page_say(&page->then, "%s", fields[item->field].hint);
    g_autoptr(GString) choices = g_string_new(NULL);
    for (guint i = 0; item->field == AGENDA_CHOICE && item->choices[i]; i++)
        g_string_append_printf(choices, "%s%u %s", i ? "   " : "", i + 1, item->choices[i]);
    if (choices->len)
        page_say(&page->then, "%s", choices->str);
}

// `mount nuts · nut 4 · 69 N·m · W3`
static void say_item(Desk *desk, const AgendaItem *item, Page *page)
{
    gboolean missing = FALSE;
    const char *tool = tool_for(desk, item, &missing);
    gboolean bolt = item->made->asked == ASKED_BOLT;
    g_autoptr(GString) words = g_string_new(bolt || !*item->place ? item->made->name : item->place);
    if (bolt)
        g_string_append_printf(words, " · %s", item->place);
    if (item->amount_words)
        g_string_append_printf(words, " · %s", item->amount_words);
    if (item->again)
        g_string_append(words, " again");
    if (item->hold)
        g_string_append_printf(words, ": %s", item->hold);
    if (tool || missing)
        g_string_append_printf(words, " · %s",
                               tool   ? tool
                               : bolt ? "g: which wrench?"
                                      : "g: which?");
    page_say(&page->next, "%s", words->str);
    say_field(item, page);
}

static void say_next(const Gaps *gaps, const Proof *proof, Desk *desk, Page *page)
{
    AgendaItem item = {0};
    const Subject *gap = gaps->gaps->len ? &g_array_index(gaps->gaps, Subject, proof->at) : NULL;
    const Subject *then =
        proof->at + 1 < gaps->gaps->len ? &g_array_index(gaps->gaps, Subject, proof->at + 1) : NULL;
    page_say(&page->then, "%s", then ? then->name : "");
    page->field = ASKS_TICK;
    switch (doing(gaps, proof, &item)) {
    case DO_NOTHING:
        page->field = ASKS_NOTHING;
        page_say(&page->next, "%s: nothing is missing", gate_of(gaps)->name);
        page_say(&page->then, "r prints the sheets   q goes back");
        break;
    case DO_WAIT:
        page_say(&page->next, "%s: later work answers it", gap->name);
        page_say(&page->unit, "Enter = on");
        break;
    case DO_OPEN:
        page_say(&page->next, "%s", gap->name);
        page_say(&page->unit, "Enter = open");
        break;
    case DO_HERE:
        say_item(desk, &item, page);
        agenda_item_clear(&item);
        break;
    }
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Proof *proof = state;
    g_auto(Gaps) gaps = {0};
    g_autofree char *title = desk_title(desk, desk->number);
    (void)typed;
    page_say(&page->status, "%s", title);
    page->status_right = clock_line(desk);
    page_say(&page->head, "Proof");
    if (!gaps_init(&gaps, proof, desk))
        return;
    const GateCount *gate = gate_of(&gaps);
    g_autofree char *counts = tally_words(gate->counts);
    page_say(&page->head, "Proof: %s", gate->name);
    page_say(&page->count, "%u = %s", all_asked(gate), counts);
    paint_body(&gaps, proof, page);
    say_next(&gaps, proof, desk, page);
    page_key(page, ACTION_STRIKE, NULL);
    page_key(page, ACTION_PUT_DOWN, NULL);
    page_key(page, ACTION_ON, "next gap");
    page_key(page, ACTION_PRINT, NULL);
    page_key(page, ACTION_MORE, NULL);
    page_key(page, ACTION_HELP, NULL);
}

// KEYS ------------------------------------------------------------------------------------------

static Go step_to(Proof *proof, const Gaps *gaps, gint direction)
{
    guint count = gaps->gaps->len;
    if (count)
        proof->at = (proof->at + (direction > 0 ? 1 : count - 1)) % count;
    return go(GO_STAY);
}

static Go open_gap(const Gaps *gaps, const Proof *proof, Desk *desk)
{
    const Subject *gap = &g_array_index(gaps->gaps, Subject, proof->at);
    const PlanStep *step = made_at(gaps, g_array_index(gap->places, guint, 0))->step;
    if (!is_begun(gaps, step) && step->cautions->len)
        return go_open(VIEW_CAUTION, g_strdup(step->name));
    g_autofree char *line = g_strdup_printf("pick up %s", step->name);
    return desk_line(desk, line, NULL)
               ? go_open(VIEW_BENCH, g_strdup_printf("%s\nleft", step->name))
               : go(GO_KEEP);
}

static Go take(const AgendaItem *item, Desk *desk, const char *typed)
{
    gboolean missing = FALSE;
    AgendaAnswer answer = {.typed = typed, .tool = tool_for(desk, item, &missing)};
    if (missing && item->made->asked == ASKED_BOLT)
        return ask_tool(item);
    g_autofree char *line = agenda_line(item, &answer);
    g_autofree char *place =
        g_strdup(*item->place && item->made->asked != ASKED_BOLT ? item->place : item->made->name);
    if (!line || !desk_line(desk, line, NULL))
        return go(GO_KEEP);
    g_autofree char *time = moment_text(desk->now);
    desk_last(desk, "%s%s%s · %.5s %s", place, *typed ? " · " : "", typed, time + 11, desk->who);
    return go(GO_STAY);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Proof *proof = state;
    g_auto(Gaps) gaps = {0};
    AgendaItem item = {0};
    if (!gaps_init(&gaps, proof, desk))
        return go(GO_UP);
    Doing what = doing(&gaps, proof, &item);
    Go there = go(GO_STAY);
    if (what != DO_NOTHING && what != DO_WAIT && !desk->who)
        there = go_open(VIEW_WHO, NULL);
    else if (what == DO_WAIT)
        there = step_to(proof, &gaps, 1);
    else if (what == DO_OPEN)
        there = open_gap(&gaps, proof, desk);
    else if (what == DO_HERE)
        there = take(&item, desk, typed);
    if (what == DO_HERE)
        agenda_item_clear(&item);
    return there;
}

static Go concede(const Gaps *gaps, const Proof *proof, Desk *desk)
{
    const Subject *gap = gaps->gaps->len ? &g_array_index(gaps->gaps, Subject, proof->at) : NULL;
    if (!gap || gap->verdict == VERDICT_OPEN) {
        desk_warn(desk, "this is open, not outside: there is nothing to concede yet");
        return go(GO_STAY);
    }
    const Requirement *made = made_at(gaps, g_array_index(gap->places, guint, 0));
    g_autofree char *name = requirement_name(made);
    g_autofree char *target = line_target(gaps->told.agenda.plan, made);
    return go_open(VIEW_CONCEDE, g_strdup_printf("%s\n%s", name, target));
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Proof *proof = state;
    g_auto(Gaps) gaps = {0};
    AgendaItem item = {0};
    if (!gaps_init(&gaps, proof, desk))
        return go(GO_DEFAULT);
    switch (action) {
    case ACTION_ON:
        return step_to(proof, &gaps, 1);
    case ACTION_BACK:
        return step_to(proof, &gaps, -1);
    case ACTION_NOTE:
        return go_open(VIEW_NOTE, NULL);
    case ACTION_CONCEDE:
        return concede(&gaps, proof, desk);
    case ACTION_GAUGE:
        if (doing(&gaps, proof, &item) != DO_HERE)
            return go(GO_STAY);
        Go there = ask_tool(&item);
        agenda_item_clear(&item);
        return there;
    case ACTION_BUILD:
        return go_instead(VIEW_STEPS, NULL);
    default:
        return go(GO_DEFAULT);
    }
}

// A gate without a gap is to be sealed; asked once.
static Go wants(gpointer state, Desk *desk)
{
    Proof *proof = state;
    g_auto(Gaps) gaps = {0};
    if (proof->asked || !desk->who || !gaps_init(&gaps, proof, desk))
        return go(GO_STAY);
    if (gaps.gaps->len || gate_of(&gaps)->sealed)
        return go(GO_STAY);
    proof->asked = TRUE;
    return go_open(VIEW_SEAL, g_strdup(gate_of(&gaps)->name));
}

const ViewOps proof_view = {.name = "the proof",
                            .open = open,
                            .close = close,
                            .paint = paint,
                            .wants = wants,
                            .enter = enter,
                            .act = act};
