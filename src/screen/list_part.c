#include "list_part.h"

ListPart list_part_fitted(const ListPart *part, guint lines, guint rows)
{
    guint shown = MIN(MAX(rows, 1), lines), at = MIN(part->at, MAX(lines, 1) - 1);
    guint from = MIN(MIN(part->from, lines - shown), at);
    if (at >= from + shown && shown)
        from = at + 1 - shown;
    return (ListPart){.at = at, .from = from, .rows = shown};
}

void list_part_move(ListPart *part, guint lines, gint by)
{
    part->at = (guint)CLAMP((gint)part->at + by, 0, MAX((gint)lines, 1) - 1);
}

void list_part_turn(ListPart *part, guint lines)
{
    guint behind = part->from + part->rows;
    part->from = part->at = behind < lines ? behind : 0;
}
