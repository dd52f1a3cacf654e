#include "judge.h"

// The state above, then the use, then the entry, so that numbers compare as causes do.
enum { SEQ_BITS = 28, SEQ_MOST = (1 << SEQ_BITS) - 1 };

gint64 cause_pack(const ToolCause *cause)
{
    if (cause->state == TOOL_GOOD || cause->use > SEQ_MOST || cause->entry > SEQ_MOST)
        return 0;
    return ((((gint64)cause->state << SEQ_BITS) | cause->use) << SEQ_BITS) | cause->entry;
}

ToolCause cause_unpack(gint64 cause)
{
    return (ToolCause){(ToolState)(cause >> (2 * SEQ_BITS)), (cause >> SEQ_BITS) & SEQ_MOST,
                       cause & SEQ_MOST};
}

void requirement_set_tool(Requirement *made, gint64 cause)
{
    guint32 doubted = made->doubts & (reason_bit(REASON_TOOL) | reason_bit(REASON_BASIS));
    if (doubted || made->upheld)
        made->tool = cause_unpack(cause);
}
