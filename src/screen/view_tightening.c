// Bolts of a step, one after the other in their order, stage by stage.
#include "before_closing.h"
#include "clock_line.h"
#include "line_words.h"
#include "others.h"
#include "tightening_about.h"
#include "tightening_page.h"
#include "toolbox.h"
#include "view.h"
#include "words.h"

#include <string.h>

typedef struct {
    char *number; // of the build
    char *set, *step;
    guint here;      // the turn in hand
    gboolean settle; // begin with what is in doubt
    gboolean over;   // opened over what goes on behind it
    guint opened;    // how many entries there were then
    gboolean placed; // by -Enter or +Enter: it stays there though it is done
    guint asked;     // the stage for which the wrench was asked, 0: none yet
    Moment tried;    // the end of the wait that was entered last as waited
    gint64 answered; // seq of the interruption whose question was answered
} Bolts;

static gpointer open(Desk *desk, const char *argument)
{
    Bolts *bolts = g_new0(Bolts, 1);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 3);
    bolts->number = g_strdup(desk->number);
    bolts->set = g_strdup(parts[0]);
    bolts->step = g_strdup(parts[1]);
    bolts->over = g_strcmp0(parts[2], "over") == 0;
    bolts->opened = desk_build(desk) ? session_entries(desk_build(desk))->len : 0;
    bolts->settle = parts[2] && !bolts->over;
    return bolts;
}

static void close(gpointer state)
{
    Bolts *bolts = state;
    g_free(bolts->number);
    g_free(bolts->set);
    g_free(bolts->step);
    g_free(bolts);
}

static Tightening *tightening_of(const Bolts *bolts, Desk *desk)
{
    Session *session = desk_build(desk);
    const PlanStep *step = session ? plan_step(session_plan(session), bolts->step) : NULL;
    return step ? tightening_new(session_plan(session), session_assessment(session), step,
                                 bolts->set)
                : NULL;
}

// The turn in hand; NULL when all are done.
static const Turn *in_hand(Bolts *bolts, const Tightening *tightening)
{
    for (guint i = 0; bolts->settle && i < tightening->turns->len; i++)
        if (requirement_is_left(tightening_turn(tightening, i)->made)) {
            bolts->here = i;
            bolts->placed = TRUE;
            bolts->settle = FALSE;
        }
    bolts->settle = FALSE;
    if (!bolts->placed)
        bolts->here = tightening_next(tightening, 0);
    return tightening_turn(tightening, bolts->here);
}

// Whether what was done in front of the bolts has been struck since they were opened over it: that
// is asked again first.
static gboolean struck_behind(const Bolts *bolts, Desk *desk)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    const Entry *newest = entries->len ? entries->pdata[entries->len - 1] : NULL;
    if (!bolts->over || entries->len <= bolts->opened || strcmp(newest->kind->name, "strike") != 0)
        return FALSE;
    const Entry *struck = entries->pdata[entry_number(newest, "entry") - 1];
    const char *set =
        kind_field(struck->kind, "tightening") ? entry_text(struck, "tightening") : NULL;
    return g_strcmp0(set, bolts->set) != 0;
}

// INTERRUPTION ----------------------------------------------------------------------------------

// The newest time that work was put down, unless a bolt of this set was ticked or loosened since;
// 0 if there is none.
static gint64 interrupted(const Bolts *bolts, Desk *desk)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    for (guint i = entries->len; i-- > 0;) {
        const Entry *entry = entries->pdata[i];
        if (strcmp(entry->kind->name, "put down") == 0)
            return entry->seq;
        if (kind_field(entry->kind, "tightening") &&
            g_strcmp0(entry_text(entry, "tightening"), bolts->set) == 0)
            return 0;
    }
    return 0;
}

// Whether nobody knows how the bolt in hand was left: a pull by angle does not tell whether it was
// begun. A pull to a torque may be done twice.
static gboolean is_question(const Bolts *bolts, Desk *desk, const Tightening *tightening,
                            const Turn *turn)
{
    StageKind kind = tightening_stage(tightening, turn->stage)->kind;
    gboolean angle = kind == STAGE_TURN || kind == STAGE_ANGLE;
    gint64 seq = angle ? interrupted(bolts, desk) : 0;
    return seq != 0 && seq != bolts->answered;
}

// WAITS -----------------------------------------------------------------------------------------

static void say_wait(Desk *desk, const Turn *turn, const char *amount, Page *page)
{
    Moment over = tightening_wait_over(desk, turn);
    if (over <= desk->now) {
        page_say(&page->unit, "Enter = waited");
        page_say(&page->next, "%s", amount);
        return;
    }
    g_autofree char *until = until_words(over);
    page_say(&page->unit, "%s", until);
    page_say(&page->next, "%s · %" G_GINT64_FORMAT " min left · it ends by itself", amount,
             (over - desk->now + 59) / 60);
}

// Whether the person who picked the step up last works at this terminal: of several terminals, one
// enters that a wait is over.
static gboolean picked_up_here(const Bolts *bolts, Desk *desk)
{
    Session *session = desk_build(desk);
    const GPtrArray *entries = session_entries(session);
    for (guint i = entries->len; i-- > 0;) {
        const Entry *entry = entries->pdata[i];
        if (strcmp(entry->kind->name, "pick up") != 0 ||
            g_strcmp0(entry_text(entry, "step"), bolts->step) != 0)
            continue;
        const Entry *person = shop_by_id(session_shop(session), "person", entry->by);
        return person && g_strcmp0(shop_label(person), desk->who) == 0;
    }
    return FALSE;
}

// TOOLS -----------------------------------------------------------------------------------------

static gboolean stage_needs(const Stage *stage, ToolNeed *need, Number **value)
{
    gboolean angle = stage->kind == STAGE_TURN || stage->kind == STAGE_ANGLE;
    if (stage->kind != STAGE_TORQUE && stage->kind != STAGE_UNTIL && !angle)
        return FALSE;
    *value = stage->formula ? formula_constant(stage->formula) : NULL;
    *need = (ToolNeed){angle ? NEED_ANGLE : NEED_TORQUE, NULL, *value};
    return TRUE;
}

// The tool in hand for a stage; NULL if none is needed, or none is there (*asked).
static const char *stage_tool(Desk *desk, const Stage *stage, gboolean *asked)
{
    g_autoptr(Number) value = NULL;
    ToolNeed need;
    gboolean needed = stage_needs(stage, &need, &value);
    const char *tool = needed ? toolbox_for(desk, &need) : NULL;
    *asked = needed && !tool;
    return tool;
}

static Go ask_tool(const Stage *stage)
{
    g_autoptr(Number) value = NULL;
    ToolNeed need;
    if (!stage_needs(stage, &need, &value))
        return go(GO_STAY);
    g_autofree char *text = value ? number_text(value) : g_strdup("");
    return go_open(VIEW_GAUGE,
                   g_strdup_printf("%c\n%s", need.need == NEED_ANGLE ? 'A' : 'T', text));
}

// WORDS -----------------------------------------------------------------------------------------

static char *bolt_words(const Turn *turn)
{
    return *turn->made->place ? g_strdup_printf("bolt %s", turn->made->place) : g_strdup("bolt");
}

static gboolean by_group(const Tightening *tightening, const Stage *stage)
{
    return tightening->plan->group->as_group &&
           (stage->kind == STAGE_TORQUE || stage->kind == STAGE_SNUG);
}

static char *lubricant_words(const Tightening *tightening, guint position)
{
    const GPtrArray *lubricants = tightening->plan->group->lubricants;
    for (guint i = 0; lubricants && i < lubricants->len; i++) {
        const PlanLubricant *lubricant = lubricants->pdata[i];
        if (lubricant->positions[position])
            return g_strdup_printf(" · %s", lubricant->words);
    }
    return g_strdup("");
}

static void say_next(Desk *desk, const Tightening *tightening, const Turn *turn, Page *page)
{
    const Stage *stage = tightening_stage(tightening, turn->stage);
    gboolean asked;
    const char *tool = stage_tool(desk, stage, &asked);
    g_autofree char *bolt = bolt_words(turn);
    g_autofree char *amount = tightening_words(tightening, turn->stage);
    g_autofree char *lubricant = lubricant_words(tightening, turn->position);
    page->field = ASKS_TICK;
    if (stage->kind == STAGE_WAIT) {
        say_wait(desk, turn, amount, page);
    } else if (by_group(tightening, stage)) {
        page_say(&page->unit, "Enter = all %u", tightening->bolts);
        page_say(&page->next, "all %u · %s · %s%s", tightening->bolts, amount,
                 tool ? tool : "g: which wrench?", lubricant);
    } else {
        page_say(&page->unit, "Enter = %s", stage->kind == STAGE_SLACKEN ? "loose" : "tight");
        page_say(&page->next, "%s · %u of %u · %s%s%s%s", bolt, turn->turn, tightening->bolts,
                 amount, tool || asked ? " · " : "",
                 tool    ? tool
                 : asked ? "g: which wrench?"
                         : "",
                 lubricant);
    }
}

// What the wrench shows, in the unit that it is taken in.
static char *shown_words(const Tightening *tightening, const Turn *turn, const char *typed)
{
    StageKind kind = tightening_stage(tightening, turn->stage)->kind;
    gboolean bare = g_ascii_isdigit(typed[strlen(typed) - 1]);
    gboolean torque = kind == STAGE_TORQUE || kind == STAGE_UNTIL || kind == STAGE_SNUG;
    return g_strconcat(typed, bare && torque ? " " : "", bare && torque ? tightening->torque : "",
                       NULL);
}

// The bolts still to come at this stage, or the stage behind it.
static void say_then(const Tightening *tightening, guint here, Page *page)
{
    g_autoptr(GString) places = g_string_new(NULL);
    g_autofree char *after = NULL;
    guint stage = tightening_turn(tightening, here)->stage, count = 0;
    for (guint i = here + 1; i < tightening->turns->len && places->len < 50 && !after; i++) {
        const Turn *next = tightening_turn(tightening, i);
        if (next->made->verdict != VERDICT_OPEN)
            continue;
        if (next->stage != stage)
            after = tightening_words(tightening, next->stage);
        else
            g_string_append_printf(places, "%s%s", count++ ? ", " : "", next->made->place);
    }
    if (count)
        page_say(&page->then, "bolt%s %s%s%s", count > 1 ? "s" : "", places->str,
                 after ? ", then " : "", after ? after : "");
    else
        page_say(&page->then, after ? "the next stage, %s" : "the set is whole", after);
}

// PAINT -----------------------------------------------------------------------------------------

static void paint_keys(Page *page)
{
    page_key(page, ACTION_TAKE, "tight");
    page_key(page, ACTION_STRIKE, NULL);
    page_key(page, ACTION_PUT_DOWN, NULL);
    page_key(page, ACTION_BACK, "back a bolt");
    page_key(page, ACTION_MORE, NULL);
    page_key(page, ACTION_HELP, NULL);
}

// Says which bolts another person tightened.
static void name_others(Desk *desk, Tightening *tightening)
{
    for (guint i = 0; i < tightening->turns->len; i++) {
        Turn *turn = &g_array_index(tightening->turns, Turn, i);
        if (turn->made->verdict != VERDICT_OPEN)
            turn->by = others_initials(desk, turn->made->entry);
    }
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Bolts *bolts = state;
    g_autofree char *title = desk_title(desk, desk->number);
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    page_say(&page->status, "%s", title);
    page->status_right = clock_line(desk);
    paint_keys(page);
    if (!tightening)
        return;
    name_others(desk, tightening);
    const Turn *turn = in_hand(bolts, tightening);
    page_say(&page->head, "S%02u  %s, %u bolts", tightening->plan->step->index + 1, bolts->set,
             tightening->bolts);
    g_autofree char *others = others_here(desk, bolts->step);
    page_say(&page->count, "%s%sstage %u of %u", others ? others : "", others ? " · " : "",
             turn ? turn->stage : tightening->stages, tightening->stages);
    gboolean asked;
    const char *tool =
        turn ? stage_tool(desk, tightening_stage(tightening, turn->stage), &asked) : NULL;
    g_autofree char *bolt = turn ? bolt_words(turn) : g_strdup("");
    if (turn && is_question(bolts, desk, tightening, turn)) {
        tightening_question(tightening, turn, page);
        tightening_bolts(tightening, turn, TRUE, tool, page);
        tightening_left(desk, interrupted(bolts, desk), bolt, page);
        return;
    }
    if (turn && desk->big)
        tightening_far(tightening, turn, tool, page);
    else
        tightening_about(desk, turn ? interrupted(bolts, desk) : 0, bolt, tool,
                         tightening_bolts(tightening, turn, FALSE, tool, page) + 1, page);
    if (!turn)
        return;
    say_next(desk, tightening, turn, page);
    say_then(tightening, bolts->here, page);
    if (*typed) {
        page->means = TRUE;
        g_autofree char *shown = shown_words(tightening, turn, typed);
        page_say(&page->then, "%s, as the wrench shows it", shown);
    }
}

// KEYS ------------------------------------------------------------------------------------------

// Asks for a wrench once a stage; goes back to the bench when all is done.
static Go wants(gpointer state, Desk *desk)
{
    Bolts *bolts = state;
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    const Turn *turn = tightening ? in_hand(bolts, tightening) : NULL;
    if (tightening && struck_behind(bolts, desk))
        return go(GO_UP);
    if (!turn)
        return tightening && !bolts->over ? go_instead(VIEW_BENCH, g_strdup(bolts->step))
                                          : go(GO_UP);
    // What was opened over other work closes nothing: that work goes on behind it.
    Go closing =
        bolts->over ? go(GO_STAY) : go_before_closing(desk, tightening->plan->step, turn->made);
    if (closing.kind != GO_STAY)
        return closing;
    gboolean asked;
    const Stage *stage = tightening_stage(tightening, turn->stage);
    stage_tool(desk, stage, &asked);
    if (!asked || bolts->asked == turn->stage || is_question(bolts, desk, tightening, turn))
        return go(GO_STAY);
    bolts->asked = turn->stage;
    return ask_tool(stage);
}

static char *tick_line(Desk *desk, const Tightening *tightening, const Turn *turn,
                       const char *typed)
{
    const Stage *stage = tightening_stage(tightening, turn->stage);
    const char *step = tightening->plan->step->name, *set = tightening->plan->group->name;
    gboolean asked;
    const char *tool = stage_tool(desk, stage, &asked);
    g_autofree char *target = line_target(session_plan(desk_build(desk)), turn->made);
    g_autofree char *with = g_strconcat(tool ? " with " : "", tool, NULL);
    if (stage->kind == STAGE_WAIT)
        return g_strdup_printf("waited %s in %s stage %u", set, step, turn->stage);
    if (by_group(tightening, stage))
        return g_strdup_printf("tighten %s in %s stage %u all%s%s%s", set, step, turn->stage,
                               *typed ? " " : "", typed, with);
    return g_strdup_printf("tighten %s stage %u%s%s%s", target, turn->stage, *typed ? " " : "",
                           typed, with);
}

// Ticks the turn in hand; FALSE with a warning if that is refused.
static gboolean tick(Bolts *bolts, Desk *desk, const char *typed)
{
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    const Turn *turn = in_hand(bolts, tightening);
    if (tightening_wait_over(desk, turn) > desk->now) {
        g_autofree char *until = until_words(tightening_wait_over(desk, turn));
        desk_warn(desk, "The wait runs %s; it ends by itself; `+` Enter goes on without it", until);
        return FALSE;
    }
    g_autofree char *line = tick_line(desk, tightening, turn, typed);
    g_autofree char *bolt = by_group(tightening, tightening_stage(tightening, turn->stage))
                                ? g_strdup_printf("all %u", tightening->bolts)
                                : bolt_words(turn);
    g_autofree char *amount = tightening_words(tightening, turn->stage);
    g_autofree char *read = *typed ? shown_words(tightening, turn, typed) : NULL;
    if (!desk_line(desk, line, NULL))
        return FALSE;
    g_autoptr(Tightening) after = tightening_of(bolts, desk);
    const Turn *done = after ? tightening_turn(after, bolts->here) : NULL;
    g_autofree char *fault = done ? fault_words(done->made) : g_strdup("");
    g_autofree char *time = moment_text(desk->now);
    desk_last(desk, "%s · %s%s%s%s · %.5s %s", bolt, amount, read ? " · shown " : "",
              read ? read : "", fault, time + 11, desk->who ? desk->who : "");
    bolts->placed = FALSE;
    return TRUE;
}

// A wait that is over is entered as waited without a key, with one bell.
static gboolean idle(gpointer state, Desk *desk)
{
    Bolts *bolts = state;
    Moment over = 0, now = desk->options->now(desk->options->user);
    g_autoptr(Tightening) tightening =
        g_strcmp0(bolts->number, desk->number) == 0 ? tightening_of(bolts, desk) : NULL;
    const Turn *turn = tightening ? tightening_wait(desk, tightening, &over) : NULL;
    if (!turn || over > now || over == bolts->tried || !picked_up_here(bolts, desk))
        return FALSE;
    bolts->tried = over;
    g_autofree char *line = tick_line(desk, tightening, turn, "");
    g_autofree char *amount = tightening_words(tightening, turn->stage);
    if (!desk_line(desk, line, NULL))
        return TRUE;
    g_autofree char *time = moment_text(now);
    desk_last(desk, "%s · %s · waited · %.5s %s", bolts->set, amount, time + 11, desk->who);
    desk_warn(desk, "%s: %s is over, go on", bolts->set, amount);
    return TRUE;
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Bolts *bolts = state;
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    const Turn *turn = tightening ? in_hand(bolts, tightening) : NULL;
    if (!turn)
        return go(GO_STAY);
    gboolean asked;
    const Stage *stage = tightening_stage(tightening, turn->stage);
    stage_tool(desk, stage, &asked);
    if (asked)
        return ask_tool(stage);
    return tick(bolts, desk, typed) ? go(GO_STAY) : go(GO_KEEP);
}

// The answer to how the bolt in hand was left.
static Go digit(gpointer state, Desk *desk, guint digit)
{
    Bolts *bolts = state;
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    const Turn *turn = tightening ? in_hand(bolts, tightening) : NULL;
    if (!turn || digit < 1 || digit > 3)
        return go(GO_STAY);
    gint64 answered = interrupted(bolts, desk);
    gboolean taken = TRUE;
    if (digit == 1)
        taken = tick(bolts, desk, "");
    if (digit == 3) {
        g_autofree char *target = line_target(session_plan(desk_build(desk)), turn->made);
        g_autofree char *line =
            g_strdup_printf("slacken %s \"cannot tell how it was left\"", target);
        taken = desk_line(desk, line, NULL);
        if (taken)
            desk_last(desk, "bolt out: nobody can tell how it was left");
    }
    bolts->answered = taken ? answered : bolts->answered;
    return go(GO_STAY);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Bolts *bolts = state;
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    const Turn *turn = tightening ? in_hand(bolts, tightening) : NULL;
    if (!turn)
        return go(GO_DEFAULT);
    switch (action) {
    case ACTION_BACK:
        bolts->here -= bolts->here > 0 ? 1 : 0;
        bolts->placed = TRUE;
        return go(GO_STAY);
    case ACTION_ON:
        bolts->here += bolts->here + 1 < tightening->turns->len ? 1 : 0;
        bolts->placed = TRUE;
        return go(GO_STAY);
    case ACTION_GAUGE:
        return ask_tool(tightening_stage(tightening, turn->stage));
    case ACTION_NOTE:
        return go_open(VIEW_NOTE, line_target(session_plan(desk_build(desk)), turn->made));
    case ACTION_AGAIN:
        return go_open(VIEW_LOOSEN, line_target(session_plan(desk_build(desk)), turn->made));
    case ACTION_WHY:
        return go_open(VIEW_WHY, requirement_name(turn->made));
    case ACTION_BUILD:
        return go_instead(VIEW_STEPS, NULL);
    case ACTION_CLOSE:
        return go_instead(VIEW_CLOSING, g_strdup(bolts->step));
    default:
        return go(GO_DEFAULT);
    }
}

const ViewOps tightening_view = {.name = "tightening",
                                 .open = open,
                                 .close = close,
                                 .paint = paint,
                                 .wants = wants,
                                 .enter = enter,
                                 .digit = digit,
                                 .act = act,
                                 .idle = idle};
