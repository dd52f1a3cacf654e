// A setting by trials: moved, read loose, tightened, read again at each place.
#include "about.h"
#include "bench_field.h"
#include "clock_line.h"
#include "line_words.h"
#include "supposed.h"
#include "view.h"
#include "widget_digits.h"
#include "widget_groups.h"
#include "widget_trials.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/entry_words.h>
#include <string.h>

typedef struct {
    char *check, *step;
    gboolean again;  // it was done and is in doubt: begin with a move
    gboolean look;   // only looked at
    gboolean placed; // by -Enter or +Enter: `here` is asked, whatever is next
    TrialNext here;
    const PlanTightening *opened; // the tightening that was opened last from here
    Trials *trials;               // as of so many entries; NULL before the first
    guint seen;
    Supposed supposed; // by what is typed
} Setting;

static gpointer open(Desk *desk, const char *argument)
{
    Setting *setting = g_new0(Setting, 1);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 3);
    (void)desk;
    setting->check = g_strdup(parts[0]);
    setting->step = g_strdup(parts[1]);
    setting->look = g_strcmp0(parts[2], "look") == 0;
    setting->again = parts[2] && !setting->look;
    return setting;
}

static void close(gpointer state)
{
    Setting *setting = state;
    supposed_forget(&setting->supposed);
    trials_free(setting->trials);
    g_free(setting->check);
    g_free(setting->step);
    g_free(setting);
}

// The trials as they stand; NULL if the plan has no such setting.
static const Trials *trials_of(Setting *setting, Desk *desk)
{
    Session *session = desk_build(desk);
    const GPtrArray *entries = session ? session_entries(session) : NULL;
    if (setting->trials && entries && setting->seen == entries->len)
        return setting->trials;
    g_clear_pointer(&setting->trials, trials_free);
    const Plan *plan = session ? session_plan(session) : NULL;
    const PlanStep *step = plan ? plan_step(plan, setting->step) : NULL;
    const PlanCheck *check = step ? plan_check(plan, setting->check) : NULL;
    if (!check || !check->setting)
        return NULL;
    setting->seen = entries->len;
    setting->trials = trials_new(plan, step, check, session_assessment(session),
                                 (const Entry *const *)entries->pdata, entries->len);
    trials_judge(setting->trials);
    return setting->trials;
}

static TrialNext asked(Setting *setting, const Trials *trials)
{
    if (setting->placed && setting->here.ask == TRIAL_TIGHTEN)
        setting->placed = trials_open_hold(trials) != NULL;
    return setting->placed ? setting->here : trials_next(trials, setting->again);
}

static const Requirement *made_at(const Trials *trials, const TrialNext *next)
{
    return trials->made[next->ask == TRIAL_LOOSE || next->ask == TRIAL_TIGHT ? next->place : 0];
}

// LINES -----------------------------------------------------------------------------------------

// Whether a move is typed as a step, with its sign, and not as where the adjuster stands. Where it
// can stand below its zero, a minus is part of the place.
static gboolean is_step(const Trials *trials, const char *typed)
{
    const Number *least = trials->check->setting->least;
    return *typed == '+' || (*typed == '-' && (!least || number_sign(least) >= 0));
}

static char *move_line(const Trials *trials, const char *typed)
{
    gint64 mistyped = trials_mistyped(trials);
    gboolean by = is_step(trials, typed);
    g_autofree char *after =
        mistyped ? g_strdup_printf(" after #%" G_GINT64_FORMAT, mistyped) : g_strdup("");
    return g_strdup_printf("move %s in %s %s %s%s", trials->check->name, trials->step->name,
                           by ? "by" : "to", *typed == '+' ? typed + 1 : typed, after);
}

static char *read_line(Desk *desk, const Trials *trials, const TrialNext *next, const char *typed)
{
    const Requirement *made = made_at(trials, next);
    g_autofree char *target = line_target(trials->plan, made);
    ToolNeed need = bench_need(made);
    const char *gauge = need.sort ? toolbox_for(desk, &need) : NULL;
    return g_strdup_printf("read %s %s%s%s%s", target, typed,
                           next->ask == TRIAL_LOOSE ? " loose" : "", gauge ? " with " : "",
                           gauge ? gauge : "");
}

// The log line for what is typed; NULL where that says nothing.
static char *line_of(Desk *desk, const Trials *trials, const TrialNext *next, const char *typed)
{
    if (!*typed || (strlen(typed) == 1 && strchr("+-.", *typed)))
        return NULL;
    if (next->ask == TRIAL_MOVE)
        return move_line(trials, typed);
    return next->ask == TRIAL_LOOSE || next->ask == TRIAL_TIGHT
               ? read_line(desk, trials, next, typed)
               : NULL;
}

static void suppose(Setting *setting, Desk *desk, const Trials *trials, const TrialNext *next,
                    const char *typed)
{
    g_autofree char *line = line_of(desk, trials, next, typed);
    supposed_take(&setting->supposed, desk, line);
}

// WORDS -----------------------------------------------------------------------------------------

static char *at_words(const Requirement *made)
{
    return *made->place ? g_strdup_printf(" at %s", made->place) : g_strdup("");
}

// `idler carrier, jackscrew locknut`
static char *set_names(const GPtrArray *tightenings)
{
    GString *names = g_string_new(NULL);
    for (guint i = 0; i < tightenings->len; i++)
        g_string_append_printf(names, "%s%s", i ? ", " : "",
                               ((const PlanTightening *)tightenings->pdata[i])->group->name);
    return g_string_free(names, FALSE);
}

// Whether what holds it must come loose before the next move; a figure typed wrong moves nothing.
static gboolean must_loosen(const Trials *trials)
{
    g_autoptr(GPtrArray) slack = trials_to_slacken(trials);
    return slack->len && !trials_mistyped(trials);
}

static char *next_words(Desk *desk, const Trials *trials, const TrialNext *next)
{
    const Requirement *made = made_at(trials, next);
    g_autofree char *at = at_words(made);
    ToolNeed need = bench_need(made);
    const char *sort = need.sort;
    const char *gauge = sort ? toolbox_for(desk, &need) : NULL;
    g_autofree char *with = gauge  ? g_strdup_printf("   %s %s", gauge, sort)
                            : sort ? g_strdup_printf("   g: which %s?", sort)
                                   : g_strdup("");
    if (next->ask == TRIAL_MOVE)
        return g_strdup_printf("%smove the %s · type where it stands",
                               must_loosen(trials) ? "loosen, " : "", trials->check->setting->move);
    if (next->ask == TRIAL_TIGHTEN)
        return g_strdup_printf("tighten %s", next->tightening->group->name);
    return g_strdup_printf("%s%s%s", next->ask == TRIAL_LOOSE ? "loose" : "tight", at, with);
}

// What comes behind the one asked.
static char *then_words(const Trials *trials, const TrialNext *next)
{
    const PlanTightening *hold = trials_open_hold(trials);
    g_autoptr(GPtrArray) slack = trials_to_slacken(trials);
    g_autofree char *names = set_names(slack);
    g_autofree char *tighten =
        hold ? g_strdup_printf("tighten %s", hold->group->name) : g_strdup("tighten");
    const char *loose = trials->check->setting->loose ? "read it loose" : tighten;
    if (next->ask == TRIAL_MOVE)
        return must_loosen(trials) ? g_strdup_printf("loosened: %s; then %s", names, loose)
                                   : g_strdup(loose);
    if (next->ask == TRIAL_LOOSE)
        return g_strdup(tighten);
    if (next->ask == TRIAL_TIGHT && next->place + 1 < trials->places)
        return g_strdup_printf("tight at %s", trials->made[next->place + 1]->place);
    return g_strdup(next->ask == TRIAL_TIGHTEN ? "read it tight" : "the verdict on this try");
}

// `▼ FAIL, 0.01 under`, `? DOUBT, basis, 0.01 under`, `√ pass`: whatever is in doubt, how far it
// lies outside tells the next move.
static char *reading_words(const Requirement *made)
{
    g_autofree char *fault = fault_words(made), *outside = figure_outside(made);
    gboolean doubted = made->verdict == VERDICT_IN_DOUBT && *outside;
    return *fault ? g_strdup_printf("%s%s%s", fault + strlen(" · "), doubted ? ", " : "",
                                    doubted ? outside : "")
                  : g_strdup(verdict_mark(made->verdict, made->reason));
}

// What the digits mean: `0.07 mm ±.01   ▼ FAIL, 0.01 under`.
static char *meaning(const Setting *setting, const Trials *trials, const TrialNext *next,
                     const char *typed)
{
    const PlanSetting *plan = trials->check->setting;
    const char *unit = plan->unit_text ? plan->unit_text : "";
    if (setting->supposed.problem)
        return g_strdup(setting->supposed.problem);
    if (next->ask == TRIAL_MOVE)
        return is_step(trials, typed)
                   ? g_strdup_printf("moved by %s %s", typed, unit)
                   : g_strdup_printf("the %s stands at %s %s now", plan->move, typed, unit);
    if (next->ask == TRIAL_LOOSE)
        return g_strdup_printf("%s, loose: it advises and is not judged", typed);
    const Requirement *now = made_at(trials, next);
    for (guint i = 0; i < trials->assessment->requirements->len; i++) {
        if (trials->assessment->requirements->pdata[i] != now)
            continue;
        const Requirement *made = setting->supposed.made->requirements->pdata[i];
        g_autofree char *value = figure_value(made), *doubt = figure_doubt(made);
        g_autofree char *fault = reading_words(made);
        return g_strdup_printf("%s %s %s   %s", value, figure_unit(made), doubt, fault);
    }
    return g_strdup("");
}

// PAINT -----------------------------------------------------------------------------------------

static void paint_keys(Page *page)
{
    page_key(page, ACTION_STRIKE, NULL);
    page_key(page, ACTION_PUT_DOWN, NULL);
    page_key(page, ACTION_ON, NULL);
    page_key(page, ACTION_MORE, NULL);
    page_key(page, ACTION_WHY, NULL);
    page_key(page, ACTION_HELP, NULL);
}

enum { UNIT_WIDTH = 3 }; // columns behind the field

// A unit that is a word, as short as there is room behind the field: `trn`.
static char *short_unit(const char *unit)
{
    if (!unit || g_utf8_strlen(unit, -1) <= UNIT_WIDTH)
        return g_strdup(unit ? unit : "");
    GString *made = g_string_new(NULL);
    guint count = 0;
    for (const char *at = unit; *at && count < UNIT_WIDTH; at = g_utf8_next_char(at))
        if (at == unit || !strchr("aeiou", *at)) {
            g_string_append_unichar(made, g_utf8_get_char(at));
            count++;
        }
    return g_string_free(made, FALSE);
}

static void paint_rows(Setting *setting, Desk *desk, const Trials *trials, const TrialNext *next,
                       const char *typed, Page *page)
{
    const PlanSetting *plan = trials->check->setting;
    const Unit *unit = trials->check->unit;
    g_autofree char *words = next_words(desk, trials, next), *then = then_words(trials, next);
    g_autofree char *moved = short_unit(plan->unit_text);
    page_say(&page->next, "%s", words);
    page_say(&page->then, "%s", then);
    page->field = next->ask == TRIAL_TIGHTEN ? ASKS_TICK : ASKS_NUMBER;
    if (next->ask == TRIAL_TIGHTEN)
        page_say(&page->unit, "Enter = go on");
    else if (next->ask == TRIAL_MOVE)
        page_say(&page->unit, "%s", moved);
    else
        page_say(&page->unit, "%s", unit ? unit_text(unit) : "");
    if (!setting->supposed.line)
        return;
    g_autofree char *means = meaning(setting, trials, next, typed);
    page->means = TRUE;
    page_say(&page->then, "%s", means);
}

static void paint_look(Page *page)
{
    page->field = ASKS_KEY;
    page_say(&page->next, "any key goes back");
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_UP, "any key", "goes back and does nothing else"};
}

// What is in hand over the whole body, its strip below.
static void paint_far(const Trials *trials, const TrialNext *next, const char *typed, Page *page)
{
    enum { DOT = 3, HIGH = 2, LEFT = 5, ROW = 3, BELOW = 14 };
    const Trial *last = trials_last(trials);
    g_autofree char *at = at_words(made_at(trials, next));
    guint number = MAX(1, trials->all->len) + (next->ask == TRIAL_MOVE && last && last->read);
    g_autofree char *head = g_strdup_printf("try %u · %s%s", number,
                                            next->ask == TRIAL_MOVE ? trials->check->setting->move
                                            : next->ask == TRIAL_LOOSE ? "loose"
                                                                       : "tight",
                                            next->ask == TRIAL_MOVE ? "" : at);
    g_autofree char *stands = last && next->ask == TRIAL_MOVE
                                  ? trial_position_words(trials->check, last->position)
                                  : g_strdup("");
    const char *shown = *typed ? typed : stands;
    guint dot = digits_dot(shown, DOT, PAGE_WIDTH - LEFT);
    canvas_put(page->body, 1, LEFT, 0, style_of(TYPE_BOLD, ROLE_CALM), head);
    if (dot)
        digits_paint(page->body, ROW, LEFT, dot, HIGH, style_of(0, 0), shown);
    g_autofree char *strip = last ? trial_strip(trials, last) : g_strdup("");
    g_autofree char *outcome = last && last->read ? trial_outcome(trials, last) : g_strdup("");
    g_autofree char *line = g_strdup_printf("%s   %s", strip, outcome);
    canvas_put(page->body, BELOW, LEFT, 0,
               verdict_style(last && last->read ? last->verdict : VERDICT_OPEN), line);
}

enum { DETAIL_WIDTH = 50, DETAIL_ROWS = 24 };

// `09:36  MO  loose at 1 0.07 mm`
static char *detail_entry(const Taken *taken, const Entry *entry)
{
    gboolean move = strcmp(entry->kind->name, "move") == 0;
    const json_t *to = move ? json_object_get(entry->body, "to") : NULL;
    const char *field = !move ? "value" : to ? "to" : "moved";
    g_autofree char *value = value_words(json_object_get(entry->body, field));
    g_autofree char *when = entry_when(entry);
    const char *label = move ? NULL : entry_list_item(entry, "place", 0);
    const char *state = move ? (to ? "to" : "by") : entry_text(entry, "state");
    return g_strdup_printf(" %s  %s  %s%s%s %s", when + 11, taken_initials(taken, entry->by),
                           state ? state : "tightened", label ? " at " : "", label ? label : "",
                           value);
}

static guint detail_try(Canvas *about, guint row, const Taken *taken, const Trials *trials,
                        const Trial *trial)
{
    g_autofree char *head = trial->read ? trial_outcome(trials, trial) : g_strdup("");
    g_autofree char *line = g_strdup_printf("try %u  %s", trial->number, head);
    canvas_put(about, row++, 1, 0, verdict_style(trial->read ? trial->verdict : VERDICT_OPEN),
               line);
    for (guint i = 0; i < trial->entries->len; i++) {
        g_autofree char *words = detail_entry(taken, trial->entries->pdata[i]);
        canvas_put(about, row++, 1, 0, style_of(0, 0), words);
    }
    for (guint i = 0; i < trial->notes->len; i++) {
        g_autofree char *note = g_strdup_printf(" \"%s\"", (char *)trial->notes->pdata[i]);
        canvas_put(about, row++, 1, 0, style_of(0, 0), note);
    }
    return row;
}

// At the right of a wide screen: the tries entry by entry, and what was entered last.
static void paint_detail(Desk *desk, const Trials *trials, const TrialNext *next, Page *page)
{
    guint width = page_detail_width(page->width), row = 1;
    if (!width)
        return;
    gboolean third = width > 2 * DETAIL_WIDTH - 12;
    g_autoptr(Taken) taken = taken_new(trials->entries, trials->count, NULL);
    const Requirement *made = made_at(trials, next);
    g_autofree char *limits = figure_limits(made), *at = at_words(made);
    g_autofree char *line = g_strdup_printf("limits %s", limits);
    g_autofree char *name = g_strdup_printf("%s%s", trials->check->name, at);
    page->detail = canvas_new_growing(width, page->body->ascii);
    g_autoptr(Canvas) about = canvas_new_growing(third ? DETAIL_WIDTH : width, page->body->ascii);
    canvas_put(about, 0, 1, 0, style_of(TYPE_BOLD, 0), name);
    canvas_put(about, row++, 1, 0, style_of(0, 0), line);
    for (guint i = 0; i < trials->all->len; i++)
        row = detail_try(about, row + 1, taken, trials, trials->all->pdata[i]);
    canvas_copy(page->detail, 0, 0, about, 0, row);
    if (third)
        about_build(page->detail, 1, DETAIL_WIDTH + 1, DETAIL_ROWS, desk_build(desk));
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Setting *setting = state;
    g_autofree char *title = desk_title(desk, desk->number);
    const Trials *trials = trials_of(setting, desk);
    page_say(&page->status, "%s", title);
    page->status_right = clock_line(desk);
    page_say(&page->head, "%s", setting->step);
    paint_keys(page);
    if (!trials)
        return;
    TrialNext next = setting->look ? (TrialNext){.ask = TRIAL_DONE} : asked(setting, trials);
    g_autofree char *head = step_words(trials->step);
    page_say(&page->head, "%s", head);
    page_say(&page->count, "%u %s, %u min", trials->all->len,
             trials->all->len == 1 ? "try" : "tries", trials->minutes);
    suppose(setting, desk, trials, &next, typed);
    if (desk->big) {
        paint_far(trials, &next, typed, page);
    } else {
        g_auto(Advice) advice = advice_of(trials);
        guint row = trials_paint(page->body, 0, trials, &next, typed, &page->focus);
        advice_paint(page->body, row + 1, &advice);
    }
    if (setting->look)
        paint_look(page);
    else
        paint_rows(setting, desk, trials, &next, typed, page);
    paint_detail(desk, trials, &next, page);
}

// KEYS ------------------------------------------------------------------------------------------

static Go wants(gpointer state, Desk *desk)
{
    Setting *setting = state;
    const Trials *trials = trials_of(setting, desk);
    if (!trials || setting->look)
        return go(trials ? GO_STAY : GO_UP);
    TrialNext next = asked(setting, trials);
    if (next.ask == TRIAL_DONE)
        return go_instead(VIEW_BENCH, g_strdup(setting->step));
    if (next.ask != TRIAL_TIGHTEN) {
        setting->opened = NULL;
        return go(GO_STAY);
    }
    if (setting->opened == next.tightening) // left before it was whole
        return go(GO_STAY);
    setting->opened = next.tightening;
    return go_open(VIEW_TIGHTENING,
                   g_strdup_printf("%s\n%s\nover", next.tightening->group->name, setting->step));
}

// What was moved further than the adjuster goes is taken, and said.
static void warn_range(Desk *desk, const Trials *trials, const Number *position)
{
    const PlanSetting *plan = trials->check->setting;
    gboolean below = position && plan->least && number_compare(position, plan->least) < 0;
    gboolean above = position && plan->most && number_compare(position, plan->most) > 0;
    if (!below && !above)
        return;
    const Number *end = below ? plan->least : plan->most;
    g_autofree char *there = trial_position_words(trials->check, position);
    g_autofree char *last = trial_position_words(trials->check, end);
    desk_warn(desk, "%s lies beyond the %s, which ends at %s; strike it if typed wrong", there,
              plan->move, last);
}

static void say_last(Setting *setting, Desk *desk, const TrialNext *next, const char *typed)
{
    const Trials *trials = trials_of(setting, desk);
    const Trial *trial = trials ? trials_last(trials) : NULL;
    if (!trial)
        return;
    const Requirement *made = made_at(trials, next);
    const char *unit = trials->check->setting->unit_text;
    g_autofree char *at = at_words(made), *time = moment_text(desk->now);
    const char *who = desk->who ? desk->who : "";
    if (next->ask == TRIAL_MOVE) {
        desk_last(desk, "try %u · %s %s %s · %.5s %s", trial->number, trials->check->setting->move,
                  typed, unit ? unit : "", time + 11, who);
        warn_range(desk, trials, trial->position);
        return;
    }
    g_autofree char *outcome = trial_outcome(trials, trial), *fault = fault_words(made);
    gboolean over = trials_next(trials, FALSE).ask == TRIAL_DONE;
    desk_last(desk, "try %u · %s%s · %s%s%s · %.5s %s", trial->number,
              next->ask == TRIAL_LOOSE ? "loose" : "tight", at, typed, over ? " · " : "",
              over                       ? outcome
              : next->ask == TRIAL_LOOSE ? ""
                                         : fault,
              time + 11, who);
}

// What holds it comes loose before it is moved.
static gboolean loosen(Desk *desk, const Trials *trials)
{
    g_autoptr(GPtrArray) slack = trials_to_slacken(trials);
    g_autoptr(GPtrArray) lines = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < slack->len; i++)
        g_ptr_array_add(lines,
                        g_strdup_printf("slacken %s in %s all",
                                        ((const PlanTightening *)slack->pdata[i])->group->name,
                                        trials->step->name));
    gboolean taken = TRUE;
    for (guint i = 0; i < lines->len && taken; i++)
        taken = desk_line(desk, lines->pdata[i], NULL);
    return taken;
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Setting *setting = state;
    const Trials *trials = trials_of(setting, desk);
    if (!trials)
        return go(GO_UP);
    TrialNext next = asked(setting, trials);
    if (next.ask == TRIAL_TIGHTEN) {
        setting->opened = NULL;
        return go(GO_STAY);
    }
    g_autofree char *line = line_of(desk, trials, &next, typed);
    if (!line)
        return go(GO_KEEP);
    suppose(setting, desk, trials, &next, typed);
    gboolean moves =
        next.ask == TRIAL_MOVE && !trials_mistyped(trials) && !setting->supposed.problem;
    if ((moves && !loosen(desk, trials)) || !desk_line(desk, line, NULL))
        return go(GO_KEEP);
    setting->placed = FALSE;
    setting->again = setting->again && next.ask != TRIAL_MOVE;
    supposed_forget(&setting->supposed);
    say_last(setting, desk, &next, typed);
    return go(GO_STAY);
}

// The places where something is asked in a try, in order (TrialNext).
static GArray *stations(const Trials *trials)
{
    GArray *all = g_array_new(FALSE, TRUE, sizeof(TrialNext));
    TrialNext one = {.ask = TRIAL_MOVE};
    const PlanTightening *hold = trials_open_hold(trials);
    g_array_append_val(all, one);
    if (trials->check->setting->loose) {
        one = (TrialNext){.ask = TRIAL_LOOSE};
        g_array_append_val(all, one);
    }
    if (hold) {
        one = (TrialNext){.ask = TRIAL_TIGHTEN, .tightening = hold};
        g_array_append_val(all, one);
    }
    for (guint i = 0; i < trials->places; i++) {
        one = (TrialNext){.ask = TRIAL_TIGHT, .place = i};
        if (trials->made[i]->verdict != VERDICT_NOT_NEEDED)
            g_array_append_val(all, one);
    }
    return all;
}

static Go go_beside(Setting *setting, const Trials *trials, gint direction)
{
    TrialNext next = asked(setting, trials);
    g_autoptr(GArray) all = stations(trials);
    guint at = 0;
    while (at < all->len && (g_array_index(all, TrialNext, at).ask != next.ask ||
                             g_array_index(all, TrialNext, at).place != next.place))
        at++;
    if (direction < 0 && at == 0)
        return go(GO_STAY);
    at += (guint)direction;
    if (at >= all->len)
        return go_instead(VIEW_CLOSING, g_strdup(setting->step));
    setting->here = g_array_index(all, TrialNext, at);
    setting->placed = TRUE;
    return go(GO_STAY);
}

static Go concede(Desk *desk, const Trials *trials, const Requirement *made)
{
    for (guint i = 0; i < trials->places; i++) {
        const Requirement *each = trials->made[i];
        if (each->verdict == VERDICT_FAIL || each->verdict == VERDICT_IN_DOUBT)
            made = made->verdict == VERDICT_FAIL ? made : each;
    }
    if (made->verdict != VERDICT_FAIL && made->verdict != VERDICT_IN_DOUBT) {
        desk_warn(desk, "nothing of this setting is outside or in doubt");
        return go(GO_STAY);
    }
    g_autofree char *name = requirement_name(made), *target = line_target(trials->plan, made);
    return go_open(VIEW_CONCEDE, g_strdup_printf("%s\n%s", name, target));
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Setting *setting = state;
    const Trials *trials = trials_of(setting, desk);
    if (!trials)
        return go(GO_DEFAULT);
    TrialNext next = asked(setting, trials);
    const Requirement *made = made_at(trials, &next);
    switch (action) {
    case ACTION_ON:
        return go_beside(setting, trials, 1);
    case ACTION_BACK:
        return go_beside(setting, trials, -1);
    case ACTION_GAUGE:
        return go_open(VIEW_GAUGE, g_strconcat("G", made->check->gauge, NULL));
    case ACTION_NOTE:
        return go_open(VIEW_NOTE,
                       g_strdup_printf("%s in %s", trials->check->name, trials->step->name));
    case ACTION_OVER:
        return go_open(VIEW_OVER, g_strdup(trials->check->name));
    case ACTION_CONCEDE:
        return concede(desk, trials, made);
    case ACTION_WHY:
        return go_open(VIEW_WHY, requirement_name(made));
    case ACTION_CLOSE:
        return go_instead(VIEW_CLOSING, g_strdup(setting->step));
    case ACTION_BUILD:
        return go_instead(VIEW_STEPS, NULL);
    case ACTION_STRIKE:
        setting->placed = FALSE;
        return go(GO_DEFAULT);
    default:
        return go(GO_DEFAULT);
    }
}

const ViewOps setting_view = {.name = "setting",
                              .open = open,
                              .close = close,
                              .paint = paint,
                              .wants = wants,
                              .enter = enter,
                              .act = act};
