#include "view.h"

#include <string.h>

extern const ViewOps first_view, shop_view, steps_view, bench_view, tightening_view, setting_view,
    closing_view, who_view, strike_view, more_view, gauge_view, note_view, enter_view, tool_view,
    loosen_view, caution_view, concede_view, accept_view, uphold_view, why_view, working_view,
    lay_view, rework_view, add_view, find_view, over_view, print_view, seal_view, proof_view,
    help_view, end_view, decide_view;

const ViewOps *view_ops(ViewName view)
{
    static const ViewOps *const table[VIEWS] = {
        [VIEW_FIRST] = &first_view,
        [VIEW_SHOP] = &shop_view,
        [VIEW_STEPS] = &steps_view,
        [VIEW_BENCH] = &bench_view,
        [VIEW_TIGHTENING] = &tightening_view,
        [VIEW_SETTING] = &setting_view,
        [VIEW_CLOSING] = &closing_view,
        [VIEW_WHO] = &who_view,
        [VIEW_STRIKE] = &strike_view,
        [VIEW_MORE] = &more_view,
        [VIEW_GAUGE] = &gauge_view,
        [VIEW_NOTE] = &note_view,
        [VIEW_ENTER] = &enter_view,
        [VIEW_TOOL] = &tool_view,
        [VIEW_END] = &end_view,
        [VIEW_LOOSEN] = &loosen_view,
        [VIEW_CAUTION] = &caution_view,
        [VIEW_CONCEDE] = &concede_view,
        [VIEW_DECIDE] = &decide_view,
        [VIEW_ACCEPT] = &accept_view,
        [VIEW_UPHOLD] = &uphold_view,
        [VIEW_LAY] = &lay_view,
        [VIEW_REWORK] = &rework_view,
        [VIEW_WHY] = &why_view,
        [VIEW_WORKING] = &working_view,
        [VIEW_ADD] = &add_view,
        [VIEW_FIND] = &find_view,
        [VIEW_OVER] = &over_view,
        [VIEW_PRINT] = &print_view,
        [VIEW_SEAL] = &seal_view,
        [VIEW_PROOF] = &proof_view,
        [VIEW_HELP] = &help_view,
    };
    return table[view];
}

// The bits of a list that ends with ACTION_NONE.
static Actions bits(const Action *actions)
{
    Actions all = 0;
    for (; *actions != ACTION_NONE; actions++)
        all |= action_bit(*actions);
    return all;
}

Actions view_actions(const char *name, gboolean store)
{
    static const Action always[] = {ACTION_TAKE,  ACTION_UNPLACED, ACTION_HELP,
                                    ACTION_CLEAR, ACTION_UP,       ACTION_NONE};
    static const Action stored[] = {ACTION_STRIKE, ACTION_PUT_DOWN, ACTION_BACK,
                                    ACTION_MORE,   ACTION_SHOP,     ACTION_FIND,
                                    ACTION_OVER,   ACTION_PRINT,    ACTION_NONE};
    Actions all = bits(always) | (store ? bits(stored) : 0);
    for (guint i = 0; i < VIEWS; i++)
        if (strcmp(view_ops((ViewName)i)->name, name) == 0)
            all |= bits(view_ops((ViewName)i)->acts);
    return all;
}
