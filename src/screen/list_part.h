// Which lines of a list are seen where not all of them have room, and which one is chosen. Pure.
#pragma once
#include <glib.h>

typedef struct {
    guint at;         // the line chosen
    guint from, rows; // the first line seen, and for how many there is room
} ListPart;

// The same part as there is room for it in a list of that many lines, with the line chosen seen.
ListPart list_part_fitted(const ListPart *part, guint lines, guint rows);

// Chooses the line that many behind, or before, as far as there are lines.
void list_part_move(ListPart *part, guint lines, gint by);

// Chooses the first line that was not seen yet; behind the last one the list begins again.
void list_part_turn(ListPart *part, guint lines);
