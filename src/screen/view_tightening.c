// Bolts of a step, one after the other in their order, stage by stage.
#include "line_words.h"
#include "tightening.h"
#include "toolbox.h"
#include "view.h"
#include "widget_bolts.h"
#include "widget_digits.h"
#include "words.h"

#include <string.h>

typedef struct {
    char *set, *step;
    guint here;      // the turn in hand
    gboolean placed; // by -Enter or +Enter: it stays there though it is done
    guint asked;     // the stage for which the wrench was asked, 0: none yet
} Bolts;

static gpointer open(Desk *desk, const char *argument)
{
    Bolts *bolts = g_new0(Bolts, 1);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 2);
    (void)desk;
    bolts->set = g_strdup(parts[0]);
    bolts->step = g_strdup(parts[1]);
    return bolts;
}

static void close(gpointer state)
{
    Bolts *bolts = state;
    g_free(bolts->set);
    g_free(bolts->step);
    g_free(bolts);
}

static Tightening *tightening_of(const Bolts *bolts, Desk *desk)
{
    Session *session = desk_build(desk);
    const PlanStep *step = session ? plan_step(session_plan(session), bolts->step) : NULL;
    return step ? tightening_new(session_assessment(session), step, bolts->set) : NULL;
}

// The turn in hand; NULL when all are done.
static const Turn *in_hand(Bolts *bolts, const Tightening *tightening)
{
    if (!bolts->placed)
        bolts->here = tightening_next(tightening, 0);
    return tightening_turn(tightening, bolts->here);
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
    g_autofree char *amount = stage_words(stage);
    g_autofree char *lubricant = lubricant_words(tightening, turn->position);
    page->field = ASKS_TICK;
    if (stage->kind == STAGE_WAIT) {
        page_say(&page->unit, "Enter = waited");
        page_say(&page->next, "%s", amount);
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

static void say_then(const Tightening *tightening, guint here, Page *page)
{
    g_autoptr(GString) words = g_string_new(NULL);
    const Turn *turn = tightening_turn(tightening, here);
    guint stage = turn->stage;
    for (guint i = here + 1; i < tightening->turns->len && words->len < 50; i++) {
        const Turn *next = tightening_turn(tightening, i);
        if (next->made->verdict != VERDICT_OPEN)
            continue;
        if (next->stage != stage) {
            g_autofree char *amount = stage_words(tightening_stage(tightening, next->stage));
            g_string_append_printf(words, "%sthen %s", words->len ? ", " : "", amount);
            break;
        }
        g_string_append_printf(words, "%s%s", words->len ? ", " : "bolts ", next->made->place);
    }
    page_say(&page->then, "%s", words->len ? words->str : "the set is whole");
}

// PAINT -----------------------------------------------------------------------------------------

static void paint_stages(const Tightening *tightening, const Turn *here, guint row, Page *page)
{
    g_autoptr(GString) line = g_string_new(" stages  ");
    for (guint stage = 1; stage <= tightening->stages; stage++) {
        g_autofree char *words = stage_words(tightening_stage(tightening, stage));
        guint done = tightening_done(tightening, stage);
        gboolean wait = tightening_stage(tightening, stage)->kind == STAGE_WAIT;
        if (here && here->stage == stage)
            g_string_append_printf(line, " [%s: %u of %u] ", words, done,
                                   wait ? 1 : tightening->bolts);
        else
            g_string_append_printf(line, "  %s%s ", words,
                                   done == (wait ? 1 : tightening->bolts) ? " √" : "");
    }
    canvas_put(page->body, row, 0, 0, style_of(0, 0), line->str);
}

static BoltLook look_of(const Turn *turn, const Turn *here)
{
    if (here && turn->made == here->made)
        return BOLT_HERE;
    return turn->made->verdict == VERDICT_OPEN       ? BOLT_TO_COME
           : turn->made->verdict == VERDICT_IN_DOUBT ? BOLT_DOUBT
                                                     : BOLT_TIGHT;
}

// The bolts of a stage as they are numbered; their labels belong to the assessment.
static GArray *bolts_of(const Tightening *tightening, const Turn *here)
{
    guint stage = here ? here->stage : tightening->stages;
    if (tightening_stage(tightening, stage)->kind == STAGE_WAIT)
        stage = MAX(stage, 2) - 1;
    GArray *bolts = g_array_new(FALSE, TRUE, sizeof(Bolt));
    g_array_set_size(bolts, tightening->bolts);
    for (guint i = 0; i < tightening->turns->len; i++) {
        const Turn *turn = tightening_turn(tightening, i);
        if (turn->stage == stage && turn->made->asked == ASKED_BOLT)
            g_array_index(bolts, Bolt, turn->position) =
                (Bolt){turn->made->place, turn->turn, look_of(turn, here)};
    }
    for (guint i = bolts->len; i-- > 0;) // not needed here
        if (!g_array_index(bolts, Bolt, i).label)
            g_array_remove_index(bolts, i);
    return bolts;
}

enum { DRAWN_WIDTH = 52, DRAWN_ROWS = 11, FIGURE_COLUMN = 53, FIGURE_WIDTH = 26 };

// What the wrench is to show, to be read from the stand.
static void paint_figure(const Tightening *tightening, const Turn *here, Page *page)
{
    const char *text = tightening_stage(tightening, here->stage)->text;
    text += strcspn(text, "0123456789");
    gsize length = strspn(text, "0123456789.");
    g_autofree char *number = g_strndup(text, length);
    g_autofree char *figure =
        g_strconcat(number, g_str_has_prefix(text + length, "°") ? "°" : "", NULL);
    guint dot = digits_width(figure, 4) <= FIGURE_WIDTH ? 4 : 2;
    guint width = digits_width(figure, dot);
    if (!length || width > FIGURE_WIDTH)
        return;
    digits_paint(page->body, 1, FIGURE_COLUMN + FIGURE_WIDTH - width, dot, dot / 2,
                 style_of(TYPE_PLAIN, ROLE_CALM), figure);
}

static void paint_bolts(const Tightening *tightening, const Turn *here, Page *page)
{
    const TreeNode *layout = tightening->plan->group->layout;
    const char *words = layout ? layout->text : NULL;
    gboolean circle = words && strcmp(words, "circle") == 0;
    g_autoptr(GArray) bolts = bolts_of(tightening, here);
    const Bolt *first = (const Bolt *)(gpointer)bolts->data;
    g_autoptr(GPtrArray) rows = bolt_rows(words, first, bolts->len);
    guint row = bolts_paint(page->body, 1, DRAWN_WIDTH, circle ? DRAWN_ROWS + 2 : DRAWN_ROWS, rows,
                            circle, first, bolts->len);
    if (here)
        paint_figure(tightening, here, page);
    paint_stages(tightening, here, MAX(row, DRAWN_ROWS + 1), page);
}

static void paint_keys(Page *page)
{
    page_key(page, ACTION_TAKE, "tight");
    page_key(page, ACTION_STRIKE, NULL);
    page_key(page, ACTION_PUT_DOWN, NULL);
    page_key(page, ACTION_BACK, "back a bolt");
    page_key(page, ACTION_MORE, NULL);
    page_key(page, ACTION_HELP, NULL);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Bolts *bolts = state;
    g_autofree char *title = desk_title(desk, desk->number);
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    page_say(&page->status, "%s", title);
    paint_keys(page);
    if (!tightening)
        return;
    const Turn *turn = in_hand(bolts, tightening);
    page_say(&page->head, "S%02u  %s, %u bolts", tightening->plan->step->index + 1, bolts->set,
             tightening->bolts);
    page_say(&page->count, "stage %u of %u", turn ? turn->stage : tightening->stages,
             tightening->stages);
    paint_bolts(tightening, turn, page);
    if (!turn)
        return;
    say_next(desk, tightening, turn, page);
    say_then(tightening, bolts->here, page);
    if (*typed) {
        page->means = TRUE;
        page_say(&page->then, "%s, as the wrench shows it", typed);
    }
}

// KEYS ------------------------------------------------------------------------------------------

// Asks for a wrench once a stage; goes back to the bench when all is done.
static Go wants(gpointer state, Desk *desk)
{
    Bolts *bolts = state;
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    const Turn *turn = tightening ? in_hand(bolts, tightening) : NULL;
    if (!turn)
        return tightening ? go_instead(VIEW_BENCH, g_strdup(bolts->step)) : go(GO_UP);
    gboolean asked;
    const Stage *stage = tightening_stage(tightening, turn->stage);
    stage_tool(desk, stage, &asked);
    if (!asked || bolts->asked == turn->stage)
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

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Bolts *bolts = state;
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    const Turn *turn = tightening ? in_hand(bolts, tightening) : NULL;
    if (!turn)
        return go(GO_STAY);
    const Stage *stage = tightening_stage(tightening, turn->stage);
    gboolean asked;
    stage_tool(desk, stage, &asked);
    if (asked)
        return ask_tool(stage);
    g_autofree char *line = tick_line(desk, tightening, turn, typed);
    g_autofree char *bolt = bolt_words(turn);
    g_autofree char *amount = stage_words(stage);
    if (!desk_line(desk, line, NULL))
        return go(GO_KEEP);
    g_autoptr(Tightening) after = tightening_of(bolts, desk);
    const Turn *done = after ? tightening_turn(after, bolts->here) : NULL;
    g_autofree char *fault = done ? fault_words(done->made) : g_strdup("");
    g_autofree char *time = moment_text(desk->now);
    desk_last(desk, "%s · %s%s · %.5s %s", bolt, amount, fault, time + 11,
              desk->who ? desk->who : "");
    bolts->placed = FALSE;
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
    case ACTION_WHY:
        return go_open(VIEW_WHY, requirement_name(turn->made));
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
                                 .act = act};
