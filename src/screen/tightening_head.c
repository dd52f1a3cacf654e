#include "tightening_head.h"

#include "others.h"

void tightening_keys(const Desk *desk, const BoltTool *tool, Page *page)
{
    page_key(page, ACTION_TAKE, tool->asked ? "choose" : "tight");
    page_key(page, ACTION_STRIKE, NULL);
    page_key(page, ACTION_PUT_DOWN, NULL);
    if (desk->big)
        page_key(page, ACTION_BIG, "small again");
    else
        page_key(page, ACTION_BACK, "back a bolt");
    page_key(page, ACTION_MORE, NULL);
    page_key(page, ACTION_HELP, NULL);
}

void tightening_name_others(Desk *desk, Tightening *tightening)
{
    for (guint i = 0; i < tightening->turns->len; i++) {
        Turn *turn = &g_array_index(tightening->turns, Turn, i);
        if (turn->made->verdict != VERDICT_OPEN)
            turn->by = others_initials(desk, turn->made->entry);
    }
}

void tightening_head(Desk *desk, const Tightening *tightening, const Turn *turn, Page *page)
{
    const PlanGroup *group = tightening->plan->group;
    guint stage = turn ? turn->stage : tightening->stages;
    StageKind kind = tightening_stage(tightening, stage)->kind;
    gboolean angle = stage_is_angle(kind);
    g_autofree char *amount = angle ? tightening_words(tightening, stage) : NULL;
    g_autofree char *others = others_here(desk, tightening->plan->step->name);
    page_say(&page->head, "S%02u  %s, %u %s%s%s", tightening->plan->step->index + 1, group->name,
             tightening->bolts, group->thread ? "× " : "bolts",
             group->thread ? group->thread->text : "", group->once ? ", one-time" : "");
    page_say(&page->count, "%s%sstage %u of %u%s%s", others ? others : "", others ? " · " : "",
             stage, tightening->stages, amount ? ": " : "", amount ? amount : "");
}
