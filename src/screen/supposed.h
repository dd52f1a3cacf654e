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
// Why what is typed cannot be taken, once it can be said: behind a point, a stroke or a sign more is
// still to come. NULL if it can be taken, or nothing is to be said yet.
const char *supposed_problem(const Supposed *supposed, const char *typed);
void supposed_forget(Supposed *supposed);
