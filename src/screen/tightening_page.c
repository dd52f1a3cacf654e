#include "tightening_page.h"

#include "widget_bolts.h"
#include "widget_digits.h"

#include <string.h>

// `30`, `+90°`, `wait 10 min`: bare torques without the unit, which stands beside the figure.
static const char *stage_text(const Tightening *tightening, guint stage)
{
    return tightening_stage(tightening, stage)->text;
}

// `FAIL: bolt 3 at +90°, bolt 5 at 75 N·m`; "" where none fails.
static char *failed_words(const Tightening *tightening)
{
    enum { NAMED = 3 };
    GString *words = g_string_new(NULL);
    guint named = 0, more = 0;
    for (guint i = 0; tightening_failed(tightening, i); i++) {
        const Turn *turn = tightening_turn(tightening, i);
        if (turn->made->verdict != VERDICT_FAIL)
            continue;
        g_autofree char *amount = tightening_words(tightening, turn->stage);
        if (named == NAMED)
            more++;
        else
            g_string_append_printf(words, "%s bolt %s at %s",
                                   named++ ? "," : "FAIL:", turn->made->place, amount);
    }
    if (more)
        g_string_append_printf(words, " and %u more", more);
    return g_string_free(words, FALSE);
}

// At the right of the stages, or below them where there is no room. Returns the row behind.
static guint paint_failed(const Tightening *tightening, guint row, guint behind, Page *page)
{
    g_autofree char *failed = failed_words(tightening);
    gboolean below = behind + 2 + canvas_text_width(page->body, failed) >= PAGE_WIDTH;
    row += *failed && below ? 1 : 0;
    canvas_put_right(page->body, row, PAGE_WIDTH - 1, style_of(TYPE_BOLD, ROLE_HEED), failed);
    return row + 1;
}

// ` stages   30 √   55 ?   [75: 4 of 10]   wait 10 min   75   then 75 (S40)`, and which bolts fail.
// Returns the row behind.
static guint paint_stages(const Tightening *tightening, const Plan *plan, const Turn *here,
                          guint row, Page *page)
{
    g_autoptr(GString) line = g_string_new(" stages");
    g_autofree char *later = tightening_later(tightening, plan);
    for (guint stage = 1; stage <= tightening->stages; stage++) {
        const char *words = stage_text(tightening, stage);
        const char *mark = tightening_mark(tightening, stage);
        gboolean fault = *mark && strcmp(mark, "√") != 0;
        if (here && here->stage == stage)
            g_string_append_printf(
                line, "   [%s: %u of %u%s%s]", words, tightening_done(tightening, stage),
                tightening_asked(tightening, stage), fault ? " " : "", fault ? mark : "");
        else
            g_string_append_printf(line, "   %s%s%s", words, *mark ? " " : "", mark);
    }
    if (*later)
        g_string_append_printf(line, "   later %s", later);
    guint behind = canvas_put(page->body, row, 0, PAGE_WIDTH, style_of(0, 0), line->str);
    return paint_failed(tightening, row, behind, page);
}

static BoltLook look_of(const Turn *turn, const Turn *here, gboolean question)
{
    if (here && turn->made == here->made)
        return question ? BOLT_QUESTION : BOLT_HERE;
    switch (turn->made->verdict) {
    case VERDICT_OPEN:
        return BOLT_TO_COME;
    case VERDICT_FAIL:
        return turn->made->reason == REASON_HIGH ? BOLT_HIGH : BOLT_LOW;
    case VERDICT_IN_DOUBT:
        return BOLT_DOUBT;
    case VERDICT_CONCEDED:
        return BOLT_CONCEDED;
    default:
        return BOLT_TIGHT;
    }
}

// The bolts of a stage as they are numbered; their labels belong to the assessment.
static GArray *bolts_of(const Tightening *tightening, const Turn *here, gboolean question)
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
                (Bolt){.label = turn->made->place,
                       .turn = turn->turn,
                       .look = look_of(turn, here, question),
                       .by = turn->by};
    }
    for (guint i = bolts->len; i-- > 0;) // not needed here
        if (!g_array_index(bolts, Bolt, i).label)
            g_array_remove_index(bolts, i);
    return bolts;
}

enum {
    QUESTION_ROW = 13,
    DRAWN_WIDTH = 52,
    CIRCLE_WIDTH = 47,
    DRAWN_ROWS = 10,
    CIRCLE_ROWS = 13,
    FIGURE_ROWS = 10,
    FIGURE_END = 79,
    BETWEEN = 2 // columns between bolts, or words, and the figure
};

// What the bolt gets: a torque as it comes out, else the digits of the stage: `75`, `50°`; empty
// where there are none.
static char *stage_figure(const Stage *stage, const BoltTool *tool)
{
    if (tool->torque)
        return g_strdup(tool->torque);
    const char *text = stage->text + strcspn(stage->text, "0123456789");
    gsize length = strspn(text, "0123456789.");
    g_autofree char *number = g_strndup(text, length);
    return g_strconcat(number, g_str_has_prefix(text + length, "°") ? "°" : "", NULL);
}

// The unit of the figure: `N·m`, `lbf ft` where that is a torque, else the stage as it is said.
static char *unit_words(const Tightening *tightening, const Turn *here)
{
    gboolean torque = stage_is_torque(tightening_stage(tightening, here->stage)->kind);
    return torque ? tightening_unit(tightening, here->stage)
                  : tightening_words(tightening, here->stage);
}

// Digits at the right of what ends before a column, from a row on, as large as the room allows.
// Returns the column they begin in.
static guint paint_figure(const char *figure, guint row, guint column, Page *page)
{
    guint dot = digits_dot(figure, 4, FIGURE_END - column), high = dot > 2 ? 2 : 1;
    guint begin = FIGURE_END - (dot ? digits_width(figure, dot) : 0);
    if (dot)
        digits_paint(page->body, row, begin, dot, high, style_of(TYPE_PLAIN, ROLE_CALM), figure);
    return begin;
}

// What the wrench is to show, and below it the unit, the wrench and its setting. Returns the column
// the figure begins in.
static guint paint_target(const Tightening *tightening, const Turn *here, const BoltTool *tool,
                         guint column, Page *page)
{
    g_autofree char *figure = stage_figure(tightening_stage(tightening, here->stage), tool);
    g_autofree char *unit = unit_words(tightening, here);
    g_autofree char *below =
        g_strconcat(unit, tool->tool ? "   " : "", tool->tool ? tool->words : "", NULL);
    canvas_put_right(page->body, FIGURE_ROWS, FIGURE_END, style_of(0, 0), below);
    return paint_figure(figure, 0, column, page);
}

// The first sentence of a text in lines of that width (char *).
static GPtrArray *sentence_lines(const Canvas *body, const char *text, guint width)
{
    const char *end = strstr(text, ". ");
    g_autofree char *sentence = end ? g_strndup(text, (gsize)(end + 1 - text)) : g_strdup(text);
    g_auto(GStrv) words = g_strsplit(sentence, " ", -1);
    GPtrArray *lines = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; words[i]; i++) {
        char **last = lines->len ? (char **)&lines->pdata[lines->len - 1] : NULL;
        g_autofree char *longer = last ? g_strconcat(*last, " ", words[i], NULL) : NULL;
        if (!longer || canvas_text_width(body, longer) > width) {
            g_ptr_array_add(lines, g_strdup(words[i]));
            continue;
        }
        g_free(*last);
        *last = g_steal_pointer(&longer);
    }
    return lines;
}

// Which end is 1, as the plan says it first, below bolts that lie in rows and within the columns
// left of the figure; nothing where there is no room for all of it.
static void paint_numbering(const Plan *plan, guint row, guint width, Page *page)
{
    const TreeNode *numbering = tree_get(plan->tree, "numbering");
    if (!numbering || !numbering->text)
        return;
    g_autoptr(GPtrArray) lines = sentence_lines(page->body, numbering->text, width);
    if (row + lines->len > FIGURE_ROWS + 1)
        return;
    for (guint i = 0; i < lines->len; i++)
        canvas_put(page->body, row + i, 1, 0, style_of(0, 0), lines->pdata[i]);
}

guint tightening_bolts(const Tightening *tightening, const Plan *plan, const Turn *here,
                       gboolean question, const BoltTool *tool, Page *page)
{
    const TreeNode *layout = tightening->plan->group->layout;
    const char *words = layout ? layout->text : NULL;
    gboolean circle = words && strcmp(words, "circle") == 0;
    guint width = circle || question ? CIRCLE_WIDTH : DRAWN_WIDTH; // words stand beside a question
    g_autoptr(GArray) bolts = bolts_of(tightening, here, question);
    const Bolt *first = (const Bolt *)(gpointer)bolts->data;
    g_autoptr(GPtrArray) rows = bolt_rows(words, first, bolts->len);
    guint right, row = bolts_paint(page->body, circle ? 0 : 1, width,
                                   circle ? CIRCLE_ROWS : DRAWN_ROWS, rows, circle, first,
                                   bolts->len, &right);
    if (question) {
        paint_figure(here->made->place, 2, width, page);
        return row;
    }
    guint figure = here ? paint_target(tightening, here, tool, right + BETWEEN, page) : FIGURE_END;
    if (words && !circle)
        paint_numbering(plan, row, MIN(DRAWN_WIDTH, figure) - 1 - BETWEEN, page);
    row = MAX(row, FIGURE_ROWS + 1);
    return paint_stages(tightening, plan, here, row, page);
}

// The bolt and its figure over the whole body.
void tightening_far(const Tightening *tightening, const Turn *here, const BoltTool *tool,
                    Page *page)
{
    enum { DOT = 5, HIGH = 3, LEFT = 5, RIGHT = 76 };
    const Stage *stage = tightening_stage(tightening, here->stage);
    Style bold = style_of(TYPE_BOLD, ROLE_CALM);
    g_autofree char *unit = unit_words(tightening, here), *figure = stage_figure(stage, tool);
    guint dot = digits_dot(figure, DOT, RIGHT - 42), width = digits_width(figure, dot);
    guint room = RIGHT - LEFT - width - DOT;
    const char *place = here->made->place;
    g_autofree char *words = g_strconcat("bolt ", place, NULL);
    Style digits = style_of(TYPE_PLAIN, ROLE_HERE);
    canvas_put(page->body, 0, LEFT, 0, bold, words);
    guint behind = canvas_put(page->body, 0, RIGHT - width, 0, bold, unit);
    if (tool->tool)
        canvas_put_right(page->body, 0,
                         MAX(RIGHT, behind + 2 + canvas_text_width(page->body, tool->words)), bold,
                         tool->words);
    digits_paint(page->body, 1, LEFT, digits_dot(place, DOT, room), HIGH, digits, place);
    digits_paint(page->body, 1, RIGHT - width, dot, HIGH, digits, figure);
}

// The stages of a bolt up to one, or with it: `30 N·m, then +50°`.
static char *stages_words(const Tightening *tightening, guint upto)
{
    GString *words = g_string_new(NULL);
    for (guint stage = 1; stage <= upto; stage++) {
        g_autofree char *one = tightening_words(tightening, stage);
        g_string_append_printf(words, "%s%s", stage > 1 ? ", then " : "", one);
    }
    return g_string_free(words, FALSE);
}

void tightening_question(const Tightening *tightening, const Turn *turn, Page *page)
{
    const PlanGroup *group = tightening->plan->group;
    gboolean renewed = group->once || group->new_needed;
    g_autofree char *amount = tightening_words(tightening, turn->stage);
    g_autofree char *all = stages_words(tightening, turn->stage);
    g_autofree char *before =
        turn->stage > 1 ? tightening_words(tightening, turn->stage - 1) : g_strdup("loose");
    g_autofree char *lines[] = {
        g_strdup_printf(" 1  done         %s: it stays as it is",
                        group->mark ? "its mark lies across head and face" : "it is seen to be so"),
        g_strdup_printf(" 2  not begun    %sstill at %s: pull %s now",
                        group->mark ? "no mark, " : "", before, amount),
        g_strdup_printf(" 3  cannot tell  bolt %s out%s%s, %s", turn->made->place,
                        renewed ? ", new bolt" : "", group->once ? " (one-time)" : "", all),
    };
    for (guint i = 0; i < G_N_ELEMENTS(lines); i++) {
        canvas_put(page->body, QUESTION_ROW + i, 0, PAGE_WIDTH, style_of(0, 0), lines[i]);
        g_free(lines[i]);
        lines[i] = NULL;
    }
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page_say(&page->unit, "1, 2 or 3");
    page_say(&page->next, "bolt %s: how was it left?", turn->made->place);
    page_say(&page->then, "1 done     2 not begun     3 cannot tell");
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leave it open"};
    page_key(page, ACTION_WHY, NULL);
    page_key(page, ACTION_HELP, NULL);
}

void tightening_ask_again(const Tightening *tightening, const Turn *first, const Turn *here,
                          gboolean fits, Page *page)
{
    g_autofree char *amount = tightening_words(tightening, first->stage);
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page_say(&page->unit, fits ? "1 to 3" : "1 or 2");
    page_say(&page->next, "begin %s again, or loosen a bolt?", amount);
    page_say(&page->then, "1 again from bolt %s on     2 loosen bolt %s%s", first->made->place,
             here->made->place, fits ? "     3 new bolt there" : "");
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leave it as it is"};
}
