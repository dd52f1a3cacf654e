#include "tightening_rows.h"

#include "line_words.h"
#include "struck.h"
#include "tightening_about.h"

#include <standbook/rules/thread.h>
#include <standbook/work/agenda.h>
#include <standbook/work/wrench.h>
#include <string.h>

char *bolt_words(const Turn *turn)
{
    return *turn->made->place ? g_strdup_printf("bolt %s", turn->made->place) : g_strdup("bolt");
}

// A ROUND ---------------------------------------------------------------------------------------

guint tightening_round(Desk *desk, const Tightening *tightening, guint here)
{
    const Turn *first = tightening_turn(tightening, here), *next = first;
    StageKind kind = tightening_stage(tightening, first->stage)->kind;
    gboolean group =
        tightening->plan->group->as_group && (kind == STAGE_TORQUE || kind == STAGE_SNUG);
    guint count = 0;
    while (group && next && next->stage == first->stage && next->made->verdict == VERDICT_OPEN &&
           bolt_tool_same(desk, tightening, first, next))
        next = tightening_turn(tightening, here + ++count);
    return MAX(count, 1);
}

char *tightening_round_words(const Tightening *tightening, guint here, guint count)
{
    enum { NAMED = 4 }; // so many are named one by one
    const Turn *first = tightening_turn(tightening, here),
               *last = tightening_turn(tightening, here + count - 1);
    if (count == 1)
        return bolt_words(first);
    if (count == tightening->bolts)
        return g_strdup_printf("all %u", count);
    if (count > NAMED)
        return g_strdup_printf("%u bolts, %s to %s", count, first->made->place, last->made->place);
    GString *words = g_string_new("bolts");
    for (guint i = 0; i < count; i++)
        g_string_append_printf(words, "%s %s", i ? "," : "",
                               tightening_turn(tightening, here + i)->made->place);
    return g_string_free(words, FALSE);
}

// The unit of what is shown at a turn: that of the wrench in hand, else of the stage; degrees of an
// angle, "" of anything else.
static char *shown_unit(Desk *desk, const Tightening *tightening, const Turn *turn,
                        const BoltTool *tool)
{
    StageKind kind = tightening_stage(tightening, turn->stage)->kind;
    if (stage_is_angle(kind))
        return g_strdup("°");
    if (!stage_is_torque(kind) && kind != STAGE_UNTIL && kind != STAGE_SNUG)
        return g_strdup("");
    const Shop *shop = session_shop(desk->shop);
    g_autoptr(Unit) own = tool->tool ? wrench_unit(shop_find(shop, "tool", tool->tool)) : NULL;
    return own ? g_strdup(unit_text(own)) : tightening_unit(tightening, turn->stage);
}

// What has a unit of its own, or more to come, keeps it.
static char *with_unit(const char *typed, const char *unit)
{
    gboolean bare = g_ascii_isdigit(typed[strlen(typed) - 1]);
    gboolean apart = *unit && strcmp(unit, "°") != 0;
    return g_strconcat(typed, bare && apart ? " " : "", bare ? unit : "", NULL);
}

char *tightening_shown(Desk *desk, const Tightening *tightening, const Turn *turn,
                       const char *typed)
{
    g_auto(BoltTool) tool = bolt_tool(desk, tightening, turn);
    g_autofree char *unit = shown_unit(desk, tightening, turn, &tool);
    return with_unit(typed, unit);
}

char *tightening_line(Desk *desk, const Tightening *tightening, guint here, const char *typed)
{
    const Turn *first = tightening_turn(tightening, here);
    const char *set = tightening->plan->group->name, *step = tightening->plan->step->name;
    guint count = tightening_round(desk, tightening, here);
    g_auto(BoltTool) tool = bolt_tool(desk, tightening, first);
    g_autofree char *with = bolt_tool_line(&tool);
    g_autofree char *target = line_target(session_plan(desk_build(desk)), first->made);
    g_autofree char *unit = *typed ? shown_unit(desk, tightening, first, &tool) : g_strdup("");
    gboolean angle = stage_is_angle(tightening_stage(tightening, first->stage)->kind);
    gboolean own = *typed && !angle && strcmp(unit, tightening->torque) != 0; // bare: the plan's
    g_autofree char *read = own ? with_unit(typed, unit) : g_strdup(typed);
    g_autofree char *shown = g_strconcat(*read ? " " : "", read, NULL);
    if (tightening_stage(tightening, first->stage)->kind == STAGE_WAIT)
        return g_strdup_printf("waited %s in %s stage %u", set, step, first->stage);
    if (count == 1)
        return g_strdup_printf("tighten %s stage %u%s%s", target, first->stage, shown, with);
    const Turn *last = tightening_turn(tightening, here + count - 1);
    g_autofree char *run =
        count == tightening->bolts
            ? g_strdup("all")
            : g_strdup_printf("from [%s] to [%s]", first->made->place, last->made->place);
    return g_strdup_printf("tighten %s in %s stage %u %s%s%s", set, step, first->stage, run, shown,
                           with);
}

// UNTIL -----------------------------------------------------------------------------------------

// Whether the labels of a place begin with those of the bolt.
static gboolean is_at_bolt(const Requirement *made, const Turn *turn)
{
    const char *bolt = turn->made->place, *place = made->place;
    gsize length = strlen(bolt);
    return strncmp(place, bolt, length) == 0 && (!length || !place[length] || place[length] == ',');
}

// Whether what is typed at that place decides the check at the bolt.
static gboolean decides(const Assessment *assessment, const Requirement *made,
                        const PlanCheck *check, const Turn *turn)
{
    if (made->asked != ASKED_READ || made->withdrawn || made->check->formula ||
        !is_at_bolt(made, turn))
        return FALSE;
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *judged = assessment->requirements->pdata[i];
        if (judged->check == check && is_at_bolt(judged, turn) &&
            (judged == made || (check->formula && agenda_goes_into(made, judged))))
            return TRUE;
    }
    return FALSE;
}

static const Requirement *read_for(Desk *desk, const Tightening *tightening, const Turn *turn)
{
    const Assessment *assessment = session_assessment(desk_build(desk));
    const PlanCheck *check = tightening_stage(tightening, turn->stage)->until;
    const Requirement *found = NULL;
    for (guint i = 0; check && i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if ((!found || (found->verdict != VERDICT_OPEN && made->verdict == VERDICT_OPEN)) &&
            decides(assessment, made, check, turn))
            found = made;
    }
    return found;
}

char *tightening_until(Desk *desk, const Tightening *tightening, const Turn *turn)
{
    const Requirement *read = read_for(desk, tightening, turn);
    return read ? requirement_title(read) : NULL;
}

char *tightening_no_torque(Desk *desk, const Tightening *tightening, const Turn *turn,
                           const char *typed)
{
    const Requirement *read = *typed ? read_for(desk, tightening, turn) : NULL;
    g_autoptr(Unit) torque = unit_parse("N·m", NULL);
    if (!read || g_ascii_isalpha(typed[strlen(typed) - 1]) ||
        kind_equal(read->check->kind, unit_kind(torque)))
        return NULL;
    g_autofree char *title = requirement_title(read);
    return g_strdup_printf("a bare number is no torque here: type it at %s", title);
}

// WORDS -----------------------------------------------------------------------------------------

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

static char *lubricant_words(const Tightening *tightening, guint position)
{
    const GPtrArray *lubricants = tightening->plan->group->lubricants;
    for (guint i = 0; lubricants && i < lubricants->len; i++) {
        const PlanLubricant *lubricant = lubricants->pdata[i];
        if (lubricant->positions[position])
            return g_strdup(lubricant->words);
    }
    return g_strdup("");
}

// Bolt, turn, amount, tool with its setting, lubricant; the turn is left out where there is no
// room: the bolts above show it.
static void say_bolt(const Tightening *tightening, const Turn *turn, const char *bolts,
                     const char *tool, guint count, Page *page)
{
    enum { WIDTH = FIELD_COLUMN - 7 };
    g_autofree char *amount = tightening_words(tightening, turn->stage);
    g_autofree char *lubricant = lubricant_words(tightening, turn->position);
    const TreeNode *thread = tightening->plan->group->thread;
    gboolean left = thread && thread_is_left_hand(thread->text);
    g_autofree char *of = g_strdup_printf(" · %u of %u", turn->turn, tightening->bolts);
    g_autofree char *behind =
        g_strconcat(left ? " · LEFT-HAND" : "", " · ", amount, *tool ? " · " : "", tool,
                    *lubricant ? " · " : "", lubricant, NULL);
    glong width = g_utf8_strlen(bolts, -1) + g_utf8_strlen(of, -1) + g_utf8_strlen(behind, -1);
    page_say(&page->next, "%s%s%s", bolts, count == 1 && width <= WIDTH ? of : "", behind);
}

// What Enter says of a bolt, in a word.
static const char *tick_word(StageKind kind, const BoltTool *tool)
{
    if (tool->asked)
        return "choose";
    return kind == STAGE_SLACKEN ? "loose" : kind == STAGE_CHECK ? "held" : "tight";
}

static void say_next(Desk *desk, const Tightening *tightening, guint here, Page *page)
{
    const Turn *turn = tightening_turn(tightening, here);
    StageKind kind = tightening_stage(tightening, turn->stage)->kind;
    guint count = tightening_round(desk, tightening, here);
    g_auto(BoltTool) tool = bolt_tool(desk, tightening, turn);
    g_autofree char *bolts = tightening_round_words(tightening, here, count);
    page->field = ASKS_TICK;
    if (kind == STAGE_WAIT) {
        g_autofree char *amount = tightening_words(tightening, turn->stage);
        say_wait(desk, turn, amount, page);
        return;
    }
    if (count > 1 && !tool.asked)
        page_say(&page->unit, "Enter = all %u", count);
    else
        page_say(&page->unit, "Enter = %s", tick_word(kind, &tool));
    say_bolt(tightening, turn, bolts, tool.words, count, page);
}

// Whether a turn comes behind the one in hand: what is open before what is done again.
static gboolean comes_behind(const Tightening *tightening, guint here, guint i, gboolean open)
{
    const Turn *turn = tightening_turn(tightening, i);
    return open ? turn->made->verdict == VERDICT_OPEN && i >= here
                : i != here && tightening_to_mend(tightening, turn);
}

// How the set stands once what is in hand is done, and nothing comes behind it.
static const char *whole_words(const Tightening *tightening, guint here, guint round)
{
    return tightening_failed(tightening, 0)                ? "through, but not whole"
           : tightening_has_doubt(tightening, here, round) ? "through, but in doubt"
           : tightening->at                                ? "tight"
                                                           : "whole";
}

// What ends a stage is measured behind its bolts: where, behind what else comes first if there is
// room for both.
static void say_until(Desk *desk, const Tightening *tightening, guint here, gboolean last,
                      Page *page)
{
    enum { ROOM = PAGE_WIDTH - 7 };
    g_autofree char *read = tightening_until(desk, tightening, tightening_turn(tightening, here));
    g_autofree char *both =
        read ? g_strdup_printf("%s; to type behind it: %s", page->then, read) : NULL;
    if (read && last)
        page_say(&page->then, "%s, on the bench", read);
    else if (read && g_utf8_strlen(both, -1) <= ROOM)
        page_say(&page->then, "%s", both);
}

// The bolts still to come at this stage, of many the first, or the stage behind it.
static void say_then(Desk *desk, const Tightening *tightening, guint here, guint round, Page *page)
{
    g_autoptr(GString) places = g_string_new(NULL);
    g_autofree char *after = NULL;
    enum { MOST = 50 }; // characters of their names
    guint stage = tightening_turn(tightening, here)->stage, count = 0, more = 0;
    guint open = tightening_next(tightening, here + round);
    gboolean opens = tightening_turn(tightening, open) != NULL;
    for (guint i = opens ? open : 0; i < tightening->turns->len && !after; i++) {
        const Turn *next = tightening_turn(tightening, i);
        if (!comes_behind(tightening, here, i, opens))
            continue;
        if (next->stage != stage)
            after = tightening_words(tightening, next->stage);
        else if (places->len >= MOST)
            more++;
        else
            g_string_append_printf(places, "%s%s", count++ ? ", " : "", next->made->place);
    }
    if (more)
        page_say(&page->then, "bolts %s and %u more", places->str, more);
    else if (count)
        page_say(&page->then, "bolt%s %s%s%s", count > 1 ? "s" : "", places->str,
                 after ? ", then " : "", after ? after : "");
    else if (after)
        page_say(&page->then, "the next stage, %s", after);
    else
        page_say(&page->then, "%s is %s", tightening->at ? tightening->at : "the set",
                 whole_words(tightening, here, round));
    say_until(desk, tightening, here, !count && !after, page);
}

// Of a bolt that fails already: what was shown, and what can be done; FALSE if it does not. Only
// who entered it strikes it.
static gboolean say_failed(Desk *desk, const Tightening *tightening, const Turn *turn, Page *page)
{
    const Requirement *made = turn->made;
    if (made->verdict != VERDICT_FAIL)
        return FALSE;
    StageKind kind = tightening_stage(tightening, turn->stage)->kind;
    const char *way = tightening_may_pull_again(tightening, turn) ? "pull it again"
                      : stage_is_angle(kind)                      ? "no turn more: l loosen"
                                                                  : "l loosen";
    page_say(&page->unit, "Enter = again");
    page_say(&page->then, "%s FAIL: %s; %s, c accept%s", made->reason == REASON_HIGH ? "▲" : "▼",
             made->answer, way, struck_is_own(desk, made->entry) ? "; slip: w, *" : "");
    return TRUE;
}

// Of a bolt that stands tighter than it is pulled: a wrench would only click. FALSE if it does not.
static gboolean say_above(const Tightening *tightening, const Turn *turn, Page *page)
{
    const Turn *above = tightening_above(tightening, turn);
    if (!above)
        return FALSE;
    g_autofree char *stands = tightening_words(tightening, above->stage);
    page_say(&page->then, "it stands at %s: loosen it first (l), a wrench would only click",
             stands);
    return TRUE;
}

// Where the wrench in use was found wrong, that comes before what is behind.
static void say_wrong(Desk *desk, const Tightening *tightening, guint here, Page *page)
{
    g_auto(BoltTool) tool = bolt_tool(desk, tightening, tightening_turn(tightening, here));
    if (tool.wrong)
        page_say(&page->then, "%s", tool.wrong);
}

void tightening_rows(Desk *desk, const Tightening *tightening, guint here, const char *typed,
                     Page *page)
{
    say_next(desk, tightening, here, page);
    const Turn *turn = tightening_turn(tightening, here);
    gboolean failed = say_failed(desk, tightening, turn, page);
    gboolean above = !failed && say_above(tightening, turn, page);
    if (!failed && !above)
        say_then(desk, tightening, here, tightening_round(desk, tightening, here), page);
    if (!*typed) {
        if (!above) // first it is loosened
            say_wrong(desk, tightening, here, page);
        return;
    }
    g_autofree char *shown = tightening_shown(desk, tightening, turn, typed);
    g_autofree char *none = tightening_no_torque(desk, tightening, turn, typed);
    page->means = none == NULL;
    page_say(&page->then, none ? "%s" : "%s, as the wrench shows it", none ? none : shown);
}
