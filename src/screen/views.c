#include "view.h"

extern const ViewOps first_view, shop_view, steps_view, who_view, strike_view, more_view, help_view;

const ViewOps *view_ops(ViewName view)
{
    static const ViewOps *const table[VIEWS] = {
        [VIEW_FIRST] = &first_view, [VIEW_SHOP] = &shop_view,     [VIEW_STEPS] = &steps_view,
        [VIEW_WHO] = &who_view,     [VIEW_STRIKE] = &strike_view, [VIEW_MORE] = &more_view,
        [VIEW_HELP] = &help_view,
    };
    return table[view] ? table[view] : &help_view;
}
