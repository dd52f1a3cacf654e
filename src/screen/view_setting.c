// A setting by trials: moved, read loose, tightened, read again at each place.
#include "before_closing.h"
#include "clock_line.h"
#include "concede.h"
#include "setting_page.h"
#include "setting_tries.h"
#include "setting_words.h"
#include "slip.h"
#include "uphold.h"
#include "view.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/move_slip.h>
#include <string.h>

typedef struct {
    SettingTries tries;
    gboolean again;  // it was done and is in doubt: begin with a move
    gboolean look;   // only looked at
    gboolean placed; // by -Enter or +Enter: `here` is asked, whatever is next
    TrialNext here;
    gint64 unadvised;             // the newest entry when the advice was passed over by +Enter
    const PlanTightening *opened; // the tightening that was opened last from here
    Supposed supposed;            // by what is typed
    Slip slip;                    // a line that was asked about once
    guint ready; // so many entries when it might go on without a reason for closing
} Setting;

static gpointer open(Desk *desk, const char *argument)
{
    Setting *setting = g_new0(Setting, 1);
    const char *behind = setting_tries_open(&setting->tries, argument);
    (void)desk;
    setting->look = g_strcmp0(behind, "look") == 0;
    setting->placed = g_strcmp0(behind, "back") == 0;
    setting->here = (TrialNext){.ask = TRIAL_MOVE};
    setting->again = behind && !setting->look && !setting->placed;
    return setting;
}

static void close(gpointer state)
{
    Setting *setting = state;
    supposed_forget(&setting->supposed);
    slip_forget(&setting->slip);
    setting_tries_clear(&setting->tries);
    g_free(setting);
}

static const Trials *trials_of(Setting *setting, Desk *desk)
{
    return setting_tries_now(&setting->tries, desk);
}

// The seq of the newest move or reading that counts; 0 if there is none.
static gint64 newest_of(const Trials *trials)
{
    const Trial *last = trials_last(trials);
    return last && last->entries->len
               ? ((const Entry *)last->entries->pdata[last->entries->len - 1])->seq
               : 0;
}

static TrialNext asked(Setting *setting, const Trials *trials)
{
    if (setting->placed && setting->here.ask == TRIAL_TIGHTEN)
        setting->placed = trials_open_hold(trials) != NULL;
    if (setting->placed)
        return setting->here;
    TrialNext next = trials_next(trials, setting->again);
    return setting->unadvised && setting->unadvised == newest_of(trials)
               ? next
               : next_move_ask(&setting->tries.advised, trials, next);
}

static void suppose(Setting *setting, Desk *desk, const Trials *trials, const TrialNext *next,
                    const char *typed)
{
    g_autofree char *line = setting_line(desk, trials, next, typed);
    supposed_take(&setting->supposed, desk, line);
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

static void paint_rows(Setting *setting, Desk *desk, const Trials *trials, const TrialNext *next,
                       const char *typed, Page *page)
{
    const PlanSetting *plan = trials->check->setting;
    const Unit *unit = setting_made(trials, next)->check->unit;
    g_autofree char *words = setting_next(desk, trials, next, &setting->tries.advised),
                    *then = setting_then(trials, next, &setting->tries.advised);
    page_say(&page->next, "%s", words);
    g_autofree char *wrong = setting_wrong_gauge(desk, trials, next);
    page_say(&page->then, "%s", wrong ? wrong : then);
    page->field = next->ask == TRIAL_TIGHTEN ? ASKS_TICK : ASKS_NUMBER;
    if (next->ask == TRIAL_TIGHTEN)
        page_say(&page->unit, "Enter = go on");
    else if (next->ask == TRIAL_MOVE)
        page_say(&page->unit, "%s", plan->unit_text ? plan->unit_text : "");
    else
        page_say(&page->unit, "%s", unit ? unit_text(unit) : "");
    if (!setting->supposed.line)
        return;
    const char *slip = slip_asked(&setting->slip, setting->supposed.line);
    g_autofree char *means = setting_meaning(&setting->supposed, trials, next, typed);
    if (!slip && !means)
        return;
    page->means = TRUE;
    page_say(&page->then, "%s", slip ? slip : means);
}

static void paint_look(Page *page)
{
    page->field = ASKS_KEY;
    page_say(&page->next, "any key goes back");
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_UP, "any key", "goes back and does nothing else"};
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Setting *setting = state;
    g_autofree char *title = desk_title(desk, desk->number);
    const Trials *trials = trials_of(setting, desk);
    page_say(&page->status, "%s", title);
    page->status_right = clock_line(desk, trials ? trials->step : NULL);
    page_say(&page->head, "%s", setting->tries.step);
    paint_keys(page);
    if (!trials)
        return;
    TrialNext next = setting->look ? (TrialNext){.ask = TRIAL_DONE} : asked(setting, trials);
    g_autofree char *head = step_words(trials->step), *place = setting_place(trials);
    page_say(&page->head, "%s%s%s", head, *place ? " · " : "", place);
    page_say(&page->count, "%u %s, %u min", trials->all->len,
             trials->all->len == 1 ? "try" : "tries", trials_minutes(trials));
    suppose(setting, desk, trials, &next, typed);
    if (desk->big)
        setting_far(trials, &next, &setting->tries.advised, typed,
                    setting_typed(&setting->supposed, trials, &next), page);
    else
        setting_body(trials, &next, &setting->tries.advised, typed, page);
    if (setting->look)
        paint_look(page);
    else
        paint_rows(setting, desk, trials, &next, typed, page);
    setting_detail(desk, trials, &next, page);
}

// KEYS ------------------------------------------------------------------------------------------

// Asks for a reason where the step should not go on at what is asked next.
static Go wants_closing(Setting *setting, Desk *desk, const Trials *trials, const TrialNext *next)
{
    if (setting->ready == trials->count)
        return go(GO_STAY);
    Go closing = go_before_closing(desk, trials->step, setting_made(trials, next));
    if (closing.kind == GO_STAY)
        setting->ready = (guint)trials->count;
    return closing;
}

static Go wants(gpointer state, Desk *desk)
{
    Setting *setting = state;
    const Trials *trials = trials_of(setting, desk);
    if (!trials || setting->look)
        return go(trials ? GO_STAY : GO_UP);
    TrialNext next = asked(setting, trials);
    if (next.ask == TRIAL_DONE)
        return go_instead(VIEW_BENCH, g_strdup(setting->tries.step));
    if (next.ask != TRIAL_TIGHTEN) {
        setting->opened = NULL;
        return wants_closing(setting, desk, trials, &next);
    }
    if (setting->opened == next.tightening) // left before it was whole
        return go(GO_STAY);
    setting->opened = next.tightening;
    const char *set = next.tightening->group->name, *step = setting->tries.step;
    return go_open(VIEW_TIGHTENING, g_strdup_printf("%s\n%s\nover\n%s\n%u", set, step,
                                                    setting->tries.check, setting->tries.place));
}

// What is not there is taken, and said.
static void warn_stock(Desk *desk, const Trials *trials, const Number *position)
{
    g_autofree char *there = trial_position_words(trials->check, position);
    if (position && !setting_has_stock(trials->check->setting, position))
        desk_warn(desk, "%s is not in stock; strike it if typed wrong", there);
}

// Whether -Enter goes back from what comes next to this place, which does as it is, and another
// move would bring it nearer.
static gboolean may_be_bettered(const Setting *setting, const Trials *trials)
{
    guint next = trials->first + 1;
    if (!trials->labels || next >= setting_count(trials->check) ||
        !next_move_moves(&setting->tries.advised))
        return FALSE;
    g_autoptr(Trials) other = trials_new(trials->plan, trials->step, trials->check, next,
                                         trials->assessment, trials->entries, trials->count);
    return trials_next(other, FALSE).ask != TRIAL_DONE;
}

static void say_last(Setting *setting, Desk *desk, const TrialNext *next, const char *typed)
{
    const Trials *trials = trials_of(setting, desk);
    const Trial *trial = trials ? trials_last(trials) : NULL;
    if (!trial)
        return;
    const Requirement *made = setting_made(trials, next);
    const char *unit = trials->check->setting->unit_text;
    g_autofree char *at = setting_at(trials, made), *time = moment_text(desk->now);
    const char *who = desk->who ? desk->who : "";
    if (next->ask == TRIAL_MOVE) {
        desk_last(desk, "try %u · %s %s %s · %.5s %s", trial->number, trials->check->setting->move,
                  typed, unit ? unit : "", time + 11, who);
        warn_stock(desk, trials, trial->position);
        return;
    }
    const Requirement *judged = trials->check->formula && trial->places[next->place].entry
                                    ? trials->made[next->place]
                                    : made;
    g_autofree char *outcome = trial_outcome(trials, trial), *fault = fault_words(judged);
    gboolean over = trials_next(trials, FALSE).ask == TRIAL_DONE;
    desk_last(desk, "try %u · %s%s · %s%s%s%s · %.5s %s", trial->number,
              trials_read_word(trials, next->ask == TRIAL_LOOSE), at, typed, over ? " · " : "",
              over                       ? outcome
              : next->ask == TRIAL_LOOSE ? ""
                                         : fault,
              over && may_be_bettered(setting, trials) ? ", -Enter betters it" : "", time + 11,
              who);
}

// What holds it comes loose before it is moved.
static gboolean loosen(Desk *desk, const Trials *trials)
{
    g_autoptr(GPtrArray) slack = trials_to_slacken(trials);
    g_autoptr(GPtrArray) lines = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < slack->len; i++)
        setting_slacken(trials, slack->pdata[i], lines);
    gboolean taken = TRUE;
    for (guint i = 0; i < lines->len && taken; i++)
        taken = desk_line(desk, lines->pdata[i], NULL);
    return taken;
}

// A likely slip: of a reading by what is read beside it, of a loose one by what is expected as
// well, of a shim by the way it answers, of a move by what is advised.
static gboolean asks_about(Setting *setting, Desk *desk, const Trials *trials,
                           const TrialNext *next, const char *typed, const char *line)
{
    const SettingTries *tries = &setting->tries;
    if (next->ask != TRIAL_MOVE && slip_asks(&setting->slip, desk, line))
        return TRUE;
    char *said = NULL;
    if (next->ask == TRIAL_MOVE)
        said = move_slip(trials, &tries->advised, typed, setting_is_step(trials, typed));
    else if (next->ask == TRIAL_LOOSE)
        said = loose_slip(trials, &tries->advised, tries->earlier, next->place, typed);
    else
        said = way_slip(trials, &tries->advised, next->place, typed);
    return slip_asks_this(&setting->slip, line, said);
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
    g_autofree char *line = setting_line(desk, trials, &next, typed);
    if (!line)
        return go(GO_KEEP);
    suppose(setting, desk, trials, &next, typed);
    gboolean moves =
        next.ask == TRIAL_MOVE && !trials_mistyped(trials) && !setting->supposed.problem;
    if (asks_about(setting, desk, trials, &next, typed, line))
        return go(GO_KEEP);
    if ((moves && !loosen(desk, trials)) || !desk_line(desk, line, NULL))
        return go(GO_KEEP);
    slip_forget(&setting->slip);
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
    const GArray *inputs = trials->reads;
    g_array_append_val(all, one);
    for (guint i = 0; i < inputs->len && trials->check->setting->loose; i++) {
        one = (TrialNext){.ask = TRIAL_LOOSE, .input = i};
        if (g_array_index(inputs, PlanInput, i).of == 0)
            g_array_append_val(all, one);
    }
    if (hold) {
        one = (TrialNext){.ask = TRIAL_TIGHTEN, .tightening = hold};
        g_array_append_val(all, one);
    }
    for (guint i = 0; i < inputs->len; i++) {
        one = (TrialNext){
            .ask = TRIAL_TIGHT, .place = g_array_index(inputs, PlanInput, i).of, .input = i};
        if (trials_needs(trials->inputs[i]))
            g_array_append_val(all, one);
    }
    return all;
}

// On without the move that is advised: tightened as it stands, or done.
static Go go_unadvised(Setting *setting, const Trials *trials, TrialNext next)
{
    if (next.ask == TRIAL_DONE)
        return go_instead(VIEW_BENCH, g_strdup(setting->tries.step));
    setting->unadvised = newest_of(trials);
    return go(GO_STAY);
}

// The next place in that direction that asks for something, or back to one that was set, to be
// moved once more, where each is set by itself; GO_STAY if there is none.
static Go go_to_setting_at(const Trials *trials, gint direction)
{
    guint count = trials->labels ? setting_count(trials->check) : 0;
    for (guint place = trials->first + (guint)direction; place < count; place += (guint)direction) {
        g_autoptr(Trials) other = trials_new(trials->plan, trials->step, trials->check, place,
                                             trials->assessment, trials->entries, trials->count);
        gboolean done = trials_next(other, FALSE).ask == TRIAL_DONE;
        if (!done || (direction < 0 && trials_last(other)))
            return go_instead(VIEW_SETTING,
                              setting_tries_argument(trials->check->name, trials->step->name, place,
                                                     done ? "back" : NULL));
    }
    return go(GO_STAY);
}

static Go go_beside(Setting *setting, const Trials *trials, gint direction)
{
    TrialNext next = asked(setting, trials);
    TrialNext unadvised = trials_next(trials, setting->again);
    if (direction > 0 && next.ask == TRIAL_MOVE && unadvised.ask == TRIAL_DONE)
        return go_unadvised(setting, trials, unadvised); // it is left as it stands
    if (direction > 0 && !setting->placed && next.ask != unadvised.ask)
        return go_unadvised(setting, trials, unadvised);
    g_autoptr(GArray) all = stations(trials);
    guint at = 0;
    while (at < all->len && (g_array_index(all, TrialNext, at).ask != next.ask ||
                             g_array_index(all, TrialNext, at).input != next.input))
        at++;
    if (direction < 0 && at == 0)
        return go_to_setting_at(trials, direction);
    at += (guint)direction;
    if (at >= all->len) {
        Go beside = go_to_setting_at(trials, direction);
        return beside.kind == GO_STAY ? go_instead(VIEW_CLOSING, g_strdup(setting->tries.step))
                                      : beside;
    }
    setting->here = g_array_index(all, TrialNext, at);
    setting->placed = TRUE;
    return go(GO_STAY);
}

// Who only looks at a setting that is done upholds nothing there.
static Go concede(Desk *desk, const Trials *trials, const Requirement *made, gboolean looks)
{
    for (guint i = 0; i < trials->places; i++) {
        const Requirement *each = trials->made[i];
        if (each->verdict == VERDICT_FAIL || each->verdict == VERDICT_IN_DOUBT)
            made = made->verdict == VERDICT_FAIL ? made : each;
    }
    gboolean fault = made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT;
    return concede_ask(desk, looks ? NULL : trials->step, fault ? made : NULL,
                       "nothing of this setting is outside or in doubt");
}

// Until it is tightened, the working of the advice.
static Go why(const Trials *trials, const TrialNext *next, const Requirement *made)
{
    if (next->ask == TRIAL_TIGHT || next->ask == TRIAL_DONE)
        return go_open(VIEW_WHY, requirement_name(made));
    return go_open(VIEW_WORKING, setting_tries_argument(trials->check->name, trials->step->name,
                                                        trials->first, NULL));
}

// Of the place to be read, as everywhere.
static Go ask_gauge(const Trials *trials, const Requirement *made)
{
    const char *sort = made->check->gauge ? made->check->gauge : "";
    guint index;
    return g_ptr_array_find(trials->assessment->requirements, made, &index)
               ? go_open(VIEW_GAUGE, g_strdup_printf("G%s\n\n%u", sort, index))
               : go_open(VIEW_GAUGE, g_strconcat("G", sort, NULL));
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Setting *setting = state;
    const Trials *trials = trials_of(setting, desk);
    if (!trials)
        return go(GO_DEFAULT);
    TrialNext next = asked(setting, trials);
    const Requirement *made = setting_made(trials, &next);
    switch (action) {
    case ACTION_ON:
        return go_beside(setting, trials, 1);
    case ACTION_BACK:
        return go_beside(setting, trials, -1);
    case ACTION_GAUGE:
        return ask_gauge(trials, made);
    case ACTION_NOTE:
        return go_open(VIEW_NOTE, g_strdup_printf("%s in %s\n%s", trials->check->name,
                                                  trials->step->name, trials->step->name));
    case ACTION_OVER:
        return go_open(VIEW_OVER, g_strdup(trials->check->name));
    case ACTION_CONCEDE:
        return concede(desk, trials, made, setting->look);
    case ACTION_UPHOLD:
        return setting->look ? go(GO_DEFAULT) : uphold_ask(desk, trials->step, made);
    case ACTION_WHY:
        return setting->look ? go(GO_DEFAULT) : why(trials, &next, made);
    case ACTION_CLOSE:
        return go_instead(VIEW_CLOSING, g_strdup(setting->tries.step));
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
                              .act = act,
                              .acts = {ACTION_ON, ACTION_BACK, ACTION_GAUGE, ACTION_NOTE,
                                       ACTION_CONCEDE, ACTION_UPHOLD, ACTION_WHY, ACTION_CLOSE,
                                       ACTION_BUILD, ACTION_BIG}};
