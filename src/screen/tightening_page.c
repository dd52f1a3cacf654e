#include "tightening_page.h"

#include "widget_bolts.h"
#include "widget_digits.h"

#include <string.h>

static void paint_stages(const Tightening *tightening, const Turn *here, guint row, Page *page)
{
    g_autoptr(GString) line = g_string_new(" stages  ");
    for (guint stage = 1; stage <= tightening->stages; stage++) {
        g_autofree char *words = tightening_words(tightening, stage);
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

static BoltLook look_of(const Turn *turn, const Turn *here, gboolean question)
{
    if (here && turn->made == here->made)
        return question ? BOLT_QUESTION : BOLT_HERE;
    return turn->made->verdict == VERDICT_OPEN       ? BOLT_TO_COME
           : turn->made->verdict == VERDICT_IN_DOUBT ? BOLT_DOUBT
                                                     : BOLT_TIGHT;
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
    FIGURE_END = 79
};

// The digits of what the wrench is to show: `75`, `50°`; empty where there are none.
static char *stage_figure(const Stage *stage)
{
    const char *text = stage->text + strcspn(stage->text, "0123456789");
    gsize length = strspn(text, "0123456789.");
    g_autofree char *number = g_strndup(text, length);
    return g_strconcat(number, g_str_has_prefix(text + length, "°") ? "°" : "", NULL);
}

// What the wrench is to show, right of the bolts, from a row on; below it the amount and the
// wrench.
static void paint_figure(const Tightening *tightening, const Turn *here, const char *tool,
                         guint row, guint column, Page *page)
{
    g_autofree char *figure = stage_figure(tightening_stage(tightening, here->stage));
    g_autofree char *amount = tightening_words(tightening, here->stage);
    g_autofree char *below = g_strconcat(amount, tool ? "   " : "", tool, NULL);
    guint dot = digits_dot(figure, 4, FIGURE_END - column), high = dot > 2 ? 2 : 1;
    if (dot)
        digits_paint(page->body, row, FIGURE_END - digits_width(figure, dot), dot, high,
                     style_of(TYPE_PLAIN, ROLE_CALM), figure);
    canvas_put_right(page->body, row + FIGURE_ROWS, FIGURE_END, style_of(0, 0), below);
}

guint tightening_bolts(const Tightening *tightening, const Turn *here, gboolean question,
                       const char *tool, Page *page)
{
    const TreeNode *layout = tightening->plan->group->layout;
    const char *words = layout ? layout->text : NULL;
    gboolean circle = words && strcmp(words, "circle") == 0;
    guint width = circle ? CIRCLE_WIDTH : DRAWN_WIDTH;
    g_autoptr(GArray) bolts = bolts_of(tightening, here, question);
    const Bolt *first = (const Bolt *)(gpointer)bolts->data;
    g_autoptr(GPtrArray) rows = bolt_rows(words, first, bolts->len);
    guint row = bolts_paint(page->body, circle ? 0 : 1, width, circle ? CIRCLE_ROWS : DRAWN_ROWS,
                            rows, circle, first, bolts->len, NULL);
    if (here)
        paint_figure(tightening, here, tool, question ? 2 : 0, width, page);
    if (question)
        return row;
    row = MAX(row, FIGURE_ROWS + 1);
    paint_stages(tightening, here, row, page);
    return row + 1;
}

// The bolt and its figure over the whole body.
void tightening_far(const Tightening *tightening, const Turn *here, const char *tool, Page *page)
{
    enum { DOT = 5, HIGH = 3, LEFT = 5, RIGHT = 76 };
    const Stage *stage = tightening_stage(tightening, here->stage);
    Style bold = style_of(TYPE_BOLD, ROLE_CALM);
    g_autofree char *amount = tightening_words(tightening, here->stage),
                    *figure = stage_figure(stage);
    g_autofree char *head = g_strdup_printf("%s   %s", amount, tool ? tool : "");
    guint dot = digits_dot(figure, DOT, RIGHT - 42), width = digits_width(figure, dot);
    guint room = RIGHT - LEFT - width - DOT;
    const char *place = here->made->place;
    g_autofree char *words = g_strconcat("bolt ", place, NULL);
    Style digits = style_of(TYPE_PLAIN, ROLE_HERE);
    canvas_put(page->body, 0, LEFT, 0, bold, words);
    canvas_put_right(page->body, 0, RIGHT, bold, head);
    digits_paint(page->body, 1, LEFT, digits_dot(place, DOT, room), HIGH, digits, place);
    digits_paint(page->body, 1, RIGHT - width, dot, HIGH, digits, figure);
}

void tightening_question(const Tightening *tightening, const Turn *turn, Page *page)
{
    const PlanGroup *group = tightening->plan->group;
    gboolean renewed = group->once || group->new_needed;
    g_autofree char *amount = tightening_words(tightening, turn->stage);
    g_autofree char *lines[] = {
        g_strdup(" 1  done         its mark has turned: it stays as it is"),
        g_strdup_printf(" 2  not begun    pull %s now", amount),
        g_strdup_printf(" 3  cannot tell  bolt out%s, and all its stages again",
                        renewed ? ", a new one in" : ""),
    };
    for (guint i = 0; i < G_N_ELEMENTS(lines); i++) {
        canvas_put(page->body, QUESTION_ROW + i, 0, 0, style_of(0, 0), lines[i]);
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
