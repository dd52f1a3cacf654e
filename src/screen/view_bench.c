// The bench: readings, looks and parts of a step, one place after the other.
#include "before_closing.h"
#include "bench_acts.h"
#include "bench_detail.h"
#include "bench_said.h"
#include "clock_line.h"
#include "gauge_lines.h"
#include "no_gauge.h"
#include "to_lay.h"
#include "tool_digits.h"
#include "widget_checks.h"
#include "words.h"

#include <standbook/work/coarse.h>
#include <standbook/work/finding.h>
#include <standbook/work/summary.h>
#include <string.h>

static gpointer open(Desk *desk, const char *argument)
{
    Bench *bench = g_new0(Bench, 1);
    (void)desk;
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 3);
    bench->step = g_strdup(parts[0]);
    bench->settle = g_strdup(parts[1]);
    bench->beside = parts[1] && g_strcmp0(parts[2], "beside") == 0;
    bench->here = bench->last = NOWHERE;
    return bench;
}

static void close(gpointer state)
{
    Bench *bench = state;
    supposed_forget(&bench->supposed);
    slip_forget(&bench->slip);
    g_clear_pointer(&bench->struck, g_array_unref);
    taken_free(bench->taken);
    g_free(bench->settle);
    g_free(bench->named);
    g_free(bench->aside);
    g_free(bench->gauges);
    g_free(bench->held);
    g_free(bench->step);
    g_free(bench);
}

// ORDER -----------------------------------------------------------------------------------------

// The next open place behind the one in hand; if there is none, the first open one.
static guint next_open(const Bench *bench, const BenchWork *work)
{
    guint next =
        bench->here == NOWHERE ? NOWHERE : bench_search(work, bench->here + 1, 1, bench_is_open);
    return next == NOWHERE ? bench_search(work, 0, 1, bench_is_open) : next;
}

// Where nothing is open and what stands is read again, on to the next place of the same check, else
// to what is left: the page that closes the step does not come between two readings.
static guint next_to_settle(const Bench *bench, const BenchWork *work, guint next)
{
    const Requirement *taken = bench_requirement(work, bench->here);
    if (!bench->settles || !taken || (next != NOWHERE && bench_is_work(work, next)))
        return next;
    guint behind = bench_search(work, bench->here + 1, 1, bench_is_work);
    const Requirement *then = bench_requirement(work, behind);
    guint left = bench_first_left(work);
    if (then && (left != NOWHERE || strcmp(then->name, taken->name) == 0))
        return behind;
    return left == NOWHERE ? next : left;
}

// Where it goes on after what was taken: behind it; after the last place of what was added, where
// it was before that, if that is still open.
static guint next_after(Bench *bench, const BenchWork *work)
{
    guint next = next_to_settle(bench, work, next_open(bench, work));
    const Requirement *taken = bench_requirement(work, bench->here);
    const Requirement *then = taken ? bench_requirement(work, next) : NULL;
    if (then && strcmp(then->name, taken->name) == 0)
        return next;
    guint aside = bench_open_named(work, bench->aside);
    g_clear_pointer(&bench->aside, g_free);
    return aside == NOWHERE ? next : aside;
}

static const Requirement *in_hand(Bench *bench, const BenchWork *work)
{
    if (!bench->begun) {
        bench->begun = TRUE;
        guint left_off = summary_left_off(&work->agenda, work->step);
        bench->here = bench_newest(work);
        bench->here = left_off == NOWHERE ? next_open(bench, work) : left_off;
    }
    if (bench->settle) {
        bench_go_to(bench, bench_to_settle(work, bench->settle));
        bench->part = bench->beside ? STATE_ASKED : STATE_AGAIN;
        bench->settles = !bench->beside;
        g_clear_pointer(&bench->settle, g_free);
    }
    if (bench->here == NOWHERE || !bench_asks(work, bench->here))
        bench_go_to(bench, next_open(bench, work));
    return bench_requirement(work, bench->here);
}

// Work that is added or struck moves the places: the one in hand is found by its name. Where it is
// gone itself, it goes on as after it; what is added comes before the signature.
static void keep_place(Bench *bench, const BenchWork *work)
{
    const Requirement *made = bench_requirement(work, bench->here);
    g_autofree char *name = made ? requirement_name(made) : NULL;
    if (!bench->named || g_strcmp0(name, bench->named) == 0)
        return;
    guint place = bench_named(work, bench->named);
    bench->last = bench_newest(work);
    if (place == NOWHERE) {
        bench->here--; // what stood behind it stands there now; before the first is nowhere
        place = bench_open_named(work, bench->aside);
    } else if (bench_requirement(work, place)->asked == ASKED_SIGN)
        bench->here = place = NOWHERE;
    bench_go_to(bench, place == NOWHERE ? next_open(bench, work) : place);
}

static void know_place(Bench *bench, const BenchWork *work)
{
    const Requirement *made = bench_requirement(work, bench->here);
    g_free(bench->named);
    bench->named = made ? requirement_name(made) : NULL;
}

// WHAT IS TYPED ---------------------------------------------------------------------------------

static void suppose(Bench *bench, Desk *desk, const BenchWork *work, const char *typed,
                    const char *gauge)
{
    g_autofree char *line =
        *typed ? bench_line(desk, &work->agenda, bench->here, bench->part, typed, gauge) : NULL;
    supposed_take(&bench->supposed, desk, line);
}

// PAINT -----------------------------------------------------------------------------------------

// Reads the ledger again only when there is more of it; what was supposed and asked before is past.
static void know(Bench *bench, const BenchWork *work)
{
    const Agenda *agenda = &work->agenda;
    if (bench->struck && bench->known == agenda->count)
        return;
    g_clear_pointer(&bench->struck, g_array_unref);
    taken_free(bench->taken);
    supposed_forget(&bench->supposed);
    slip_forget(&bench->slip);
    bench->struck = working_struck(agenda, work->step);
    bench->taken = taken_new(agenda->entries, agenda->count, NULL);
    bench->known = agenda->count;
    bench->looked = NOWHERE;
}

// What each gauge can tell, where the one that was used cannot: worked out anew when it is another
// place, another gauge, or there is more in the ledger.
static const char *gauges_of(Bench *bench, Desk *desk, const BenchWork *work)
{
    const Requirement *made = bench_requirement(work, bench->here);
    const Requirement *fault = made ? bench_fault(work, made, bench->last) : NULL;
    if (!fault || !is_coarse(fault))
        return NULL;
    const char *gauge = bench_gauge(desk, &work->agenda, bench->here, "");
    if (bench->looked == bench->here && g_strcmp0(bench->held, gauge) == 0)
        return bench->gauges;
    g_auto(GaugeChoices) choices = session_gauges(desk_build(desk), bench->here, gauge);
    g_free(bench->gauges);
    g_free(bench->held);
    const ToolNeed need = bench_need(made);
    g_autoptr(GPtrArray) labels = tool_digits(desk, &need, &choices);
    bench->gauges = choices.gauges->len ? gauge_lines(&choices, labels) : NULL;
    bench->held = g_strdup(gauge);
    bench->looked = bench->here;
    return bench->gauges;
}

// Said of what is typed, else of what was read here last.
static char *apart_words(const Bench *bench, const Checks *checks)
{
    guint index = *checks->typed ? bench->here : bench->last;
    if (index == NOWHERE)
        return NULL;
    const Agenda agenda = checks_agenda(checks);
    return working_apart(&agenda, checks_at(checks, index, NULL));
}

static const char nothing_read[] =
    "a part is fitted here, no value: Backspace erases, Enter alone is new";

static const char fitted_already[] =
    "a part is fitted here, no value: Backspace erases, then l fits it again";

static const char lot_not_seen[] =
    "the shop has no such lot yet; Enter asks once more, then enters it";

// Behind what may be typed at a finding that waits, what answers it.
static const char *decide_words(const Requirement *made)
{
    if (!finding_waits(made))
        return "";
    return made->check->by_decision ? "   waits for a decision: c" : "   c: a decision answers it";
}

static void paint_rows(Bench *bench, Desk *desk, const BenchWork *work, const char *typed,
                       const char *gauge, Page *page)
{
    const Requirement *made = in_hand(bench, work);
    if (!made)
        return;
    BenchField field = bench_field(desk, &work->agenda, bench->here, bench->part);
    g_autofree char *next = bench_next_words(desk, work, bench->here, bench->part, &field, gauge);
    page->remark = bench_lots(desk, &work->agenda, bench->here, bench->part);
    page->field = field.field;
    page->ask = field.field == ASKS_DIGIT;
    page_say(&page->next, "%s", next);
    page_say(&page->unit, "%s", field.unit);
    guint behind = next_open(bench, work);
    const Requirement *then = bench_requirement(work, behind);
    g_autofree char *then_words = then && then != made ? bench_then_words(then) : g_strdup("");
    page_say(&page->then, "%s%s", field.hint ? field.hint : then_words, decide_words(made));
    const ToolNeed need = bench_need_at(&work->agenda, bench->here);
    g_autofree char *wrong = bench_wrong_gauge(desk, made, &need, gauge);
    if (wrong && !*typed)
        page_say(&page->then, "%s", wrong);
    if (field.field == ASKS_TICK && *typed)
        page_say(&page->then, "%s", nothing_read);
    g_autofree char *tick =
        *typed ? NULL : bench_line(desk, &work->agenda, bench->here, bench->part, typed, gauge);
    const char *asked = slip_asked(&bench->slip, tick ? tick : bench->supposed.line);
    g_autofree char *lot = bench_new_lot(desk, &work->agenda, bench->here, bench->part, typed);
    const char *problem = asked ? asked
                          : lot ? lot_not_seen
                                : supposed_problem(&bench->supposed, typed);
    page->means = *typed && bench->supposed.line && (problem || !bench->supposed.problem);
    gboolean unanswered = problem && problem == bench->supposed.problem && made->check &&
                          field.field == ASKS_NUMBER && field.hint;
    if (unanswered)
        page_say(&page->then, "`%s` is no answer; these are: %s", typed, field.hint);
    else if (problem)
        page_say(&page->then, "%s", problem);
    bench_field_clear(&field);
}

// A question takes no sign that ends with Enter, and strikes nothing.
static void paint_keys_of_question(Page *page)
{
    static const PageKey keys[KEYS_MOST] = {{ACTION_TAKE, "one digit", "answers"},
                                            {ACTION_PUT_DOWN, "/", "put down"},
                                            {ACTION_ON, "Tab", "on"},
                                            {ACTION_BACK, "Up", "back"},
                                            {ACTION_UP, "Backspace", "leaves"},
                                            {ACTION_HELP, "?", "help"}};
    memcpy(page->keys, keys, sizeof keys);
}

// Words take every sign and letter; only what ends with Enter acts beside them.
static void paint_keys(const Desk *desk, Page *page)
{
    if (page->field == ASKS_DIGIT) {
        paint_keys_of_question(page);
        return;
    }
    const Action numbers[] = {ACTION_STRIKE, ACTION_PUT_DOWN,
                              ACTION_ON,     desk->big ? ACTION_BIG : ACTION_BACK,
                              ACTION_MORE,   ACTION_HELP};
    static const Action words[] = {ACTION_TAKE, ACTION_ON, ACTION_BACK, ACTION_MORE};
    gboolean text = page->field == ASKS_TEXT;
    for (gsize i = 0; i < (text ? G_N_ELEMENTS(words) : G_N_ELEMENTS(numbers)); i++)
        page_key(page, text ? words[i] : numbers[i],
                 !text && numbers[i] == ACTION_BIG ? "small again" : NULL);
    if (text)
        page->keys[G_N_ELEMENTS(words)] = (PageKey){ACTION_UP, "Backspace", "leaves"};
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Bench *bench = state;
    BenchWork work;
    g_autofree char *title = desk_title(desk, desk->number);
    page_say(&page->status, "%s", title);
    page_say(&page->head, "%s", bench->step);
    if (!bench_work(desk, bench->step, &work))
        return;
    page->status_right = clock_line(desk, work.step);
    know(bench, &work);
    g_autofree char *head = step_words(work.step);
    page_say(&page->head, "%s", head);
    bench_say_counts(&work, page);
    const Requirement *made = in_hand(bench, &work);
    const char *gauge = made ? bench_gauge(desk, &work.agenda, bench->here, typed) : NULL;
    if (made)
        suppose(bench, desk, &work, typed, gauge);
    paint_rows(bench, desk, &work, typed, gauge, page);
    paint_keys(desk, page);
    Checks checks = {.agenda = &work.agenda,
                     .now = work.agenda.assessment,
                     .supposed = bench->supposed.made,
                     .step = work.step,
                     .here = made,
                     .typed = typed,
                     .gauge = gauge,
                     .taken = bench->taken,
                     .struck = bench->struck,
                     .gauges = gauges_of(bench, desk, &work)};
    g_autofree char *apart = apart_words(bench, &checks);
    checks.apart = apart;
    if (desk->big && made)
        detail_far(&checks, bench->here, page);
    else
        checks_paint(page->body, 0, &checks, &page->focus);
    detail_paint(desk, &checks, bench->here, page);
    if (bench->supposed.made && made && made->check) {
        g_autofree char *words = bench_meaning(&checks, bench->here);
        g_autofree char *both = bench_both_words(bench, desk, &work, typed);
        const char *slip = slip_asked(&bench->slip, bench->supposed.line);
        const char *asked = both ? both : slip;
        g_autofree char *outside = bench_outside(desk, made, gauge, typed);
        g_autofree char *apart_from = bench_disagree_words(bench, &work);
        const char *beside = outside ? outside : apart_from;
        page_say(&page->then, "%s%s%s", asked ? asked : words, !asked && beside ? ": " : "",
                 !asked && beside ? beside : "");
    }
}

// KEYS ------------------------------------------------------------------------------------------

// What was added while that was asked is what is wanted next.
static void go_to_added(Bench *bench, const Desk *desk, const BenchWork *work)
{
    guint added = bench->asked_to_add && desk->last_seq > (gint64)bench->known_then
                      ? bench_added(work, desk->last_seq)
                      : NOWHERE;
    if (added != NOWHERE)
        bench_go_to(bench, added);
    bench->asked_to_add = FALSE;
}

// The place of what was struck comes back.
static void go_to_struck(Bench *bench, const BenchWork *work)
{
    const Requirement *made = bench->strikes ? bench_requirement(work, bench->stricken) : NULL;
    if (made && made->entry != bench->strikes) {
        bench->begun = TRUE;
        bench_go_to(bench, bench->stricken);
    }
    bench->strikes = 0;
}

// Bolts and the close of the step have screens of their own.
static Go wants(gpointer state, Desk *desk)
{
    Bench *bench = state;
    BenchWork work;
    if (!bench_work(desk, bench->step, &work))
        return go(GO_UP);
    keep_place(bench, &work);
    go_to_struck(bench, &work);
    go_to_added(bench, desk, &work);
    const Requirement *made = in_hand(bench, &work);
    know_place(bench, &work);
    if (made && bench->ready == work.agenda.count && bench->ready_at == bench->here)
        return go(GO_STAY);
    char *setting = bench_setting(&work, made);
    if (setting)
        return go_instead(VIEW_SETTING, setting);
    Go closing = go_before_closing(desk, work.step, made);
    if (closing.kind != GO_STAY)
        return closing;
    Go laying = made ? go_to_lay(desk, &work.agenda, bench->here) : go(GO_STAY);
    if (laying.kind != GO_STAY)
        return laying;
    if (made && requirement_is_bolted(made))
        return go_instead(VIEW_TIGHTENING, bench_bolts_argument(made));
    if (made && made->asked != ASKED_SIGN) {
        bench->ready = work.agenda.count;
        bench->ready_at = bench->here;
        return go(GO_STAY);
    }
    gboolean card = agenda_is_card(&work.agenda);
    if (card && !bench->offered) {
        bench->offered = TRUE;
        bench_ask_to_add(bench, &work);
        return go_open(VIEW_ADD, g_strdup(bench->step));
    }
    if (card)
        return go_instead(VIEW_STEPS, NULL); // nothing more was named; `+` Enter closes it
    return go_instead(VIEW_CLOSING, g_strdup(bench->step));
}

// A part may be fitted although it is too old, recalled or of another grade.
static void warn_part(Desk *desk, const char *place, const Requirement *made)
{
    if (made && made->asked == ASKED_FIT && made->verdict == VERDICT_IN_DOUBT)
        desk_warn(desk, "%s: %s is taken, and in doubt; w says why, * strikes it", place,
                  made->answer);
}

// What was typed does not fit the part: what would.
static void warn_unfitted(const Bench *bench, Desk *desk, const BenchWork *work)
{
    BenchField field = bench_field(desk, &work->agenda, bench->here, bench->part);
    gboolean tick = field.field == ASKS_TICK || !field.hint;
    const char *stands = field.field == ASKS_NUMBER ? fitted_already : NULL;
    desk_warn(desk, "%s%s", tick || stands ? "" : "write ",
              stands ? stands : tick ? nothing_read : field.hint);
    bench_field_clear(&field);
}

// A packet that the shop has not seen: its lot is entered once that was asked; one of another part
// is asked about too. FALSE as long as it is not.
static gboolean has_lot(Bench *bench, Desk *desk, const BenchWork *work, const char *line,
                        const char *typed)
{
    g_autofree char *lot = bench_new_lot(desk, &work->agenda, bench->here, bench->part, typed);
    if (!lot)
        return !slip_asks_this(
            &bench->slip, line,
            bench_other_lot(desk, &work->agenda, bench->here, bench->part, typed));
    return (!slip_asks_this(&bench->slip, line,
                            bench_new_lot_words(desk, &work->agenda, bench->here, typed)) &&
            desk_shop_line(desk, lot));
}

// Whether it is now asked about that nobody took a gauge in hand for what is typed.
static gboolean asks_for_gauge(Bench *bench, Desk *desk, const BenchWork *work, const char *typed,
                               const char *gauge)
{
    suppose(bench, desk, work, typed, gauge);
    const Assessment *then = bench->supposed.made;
    return then && slip_asks_this(&bench->slip, bench->supposed.line,
                                  no_gauge_words(desk, &work->agenda,
                                                 then->requirements->pdata[bench->here], gauge));
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Bench *bench = state;
    BenchWork work;
    if (!bench_work(desk, bench->step, &work))
        return go(GO_UP);
    const Requirement *made = in_hand(bench, &work);
    const char *gauge = made ? bench_gauge(desk, &work.agenda, bench->here, typed) : NULL;
    g_autofree char *line =
        made ? bench_line(desk, &work.agenda, bench->here, bench->part, typed, gauge) : NULL;
    if (!line && made && made->asked == ASKED_FIT && *typed)
        warn_unfitted(bench, desk, &work);
    if (!line)
        return go(GO_KEEP);
    g_autofree char *place = bench_place(&work.agenda, bench->here, bench->part);
    Go worked = go(GO_STAY);
    if (!*typed &&
        slip_asks_this(&bench->slip, line, bench_second(desk, &work.agenda, bench->here)))
        return go(GO_KEEP);
    if (!has_lot(bench, desk, &work, line, typed) || slip_asks(&bench->slip, desk, line) ||
        (worked = bench_ask_rework(bench, desk, &work, line, typed)).kind != GO_STAY ||
        asks_for_gauge(bench, desk, &work, typed, gauge) ||
        !desk_line(desk, line, NULL))
        return worked.kind == GO_STAY ? go(GO_KEEP) : worked;
    slip_forget(&bench->slip);
    g_clear_pointer(&desk->both_stand, g_free);
    bench_work(desk, bench->step, &work);
    bench_say_last(desk, place, typed, bench_requirement(&work, bench->here));
    warn_part(desk, place, bench_requirement(&work, bench->here));
    bench->last = bench->here;
    bench->offered = FALSE;
    guint again = bench_to_read_again(&work, bench->here);
    return bench_go_to(bench, again == NOWHERE ? next_after(bench, &work) : again);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    Bench *bench = state;
    (void)desk;
    if (digit >= 1 && digit <= 3)
        bench->part = (PartState)digit;
    return go(GO_STAY);
}

const ViewOps bench_view = {.name = "the bench",
                            .open = open,
                            .close = close,
                            .paint = paint,
                            .wants = wants,
                            .enter = enter,
                            .digit = digit,
                            .act = bench_act,
                            .acts = {ACTION_ON, ACTION_BACK, ACTION_AGAIN, ACTION_GAUGE,
                                     ACTION_NOTE, ACTION_ADD, ACTION_CONCEDE, ACTION_UPHOLD,
                                     ACTION_WHY, ACTION_OVER, ACTION_CLOSE, ACTION_BUILD,
                                     ACTION_BIG}};
