// What a half-typed line would come to, worked out once for each line.
#pragma once
#include "desk.h"

typedef struct {
    char *line;       // for which the next two were worked out; NULL for none
    Assessment *made; // NULL if the line cannot be taken
    char *problem;    // why not; NULL if it can
} Supposed;

// Supposes a log line of the build in hand (NULL: nothing is typed), as the person who works here.
void supposed_take(Supposed *supposed, Desk *desk, const char *line);
void supposed_forget(Supposed *supposed);
