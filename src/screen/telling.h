// The build in hand as room `work` tells it.
#pragma once
#include "desk.h"

#include <standbook/work/subject.h>

typedef struct {
    Agenda agenda;
    Taken *taken;
    Telling telling; // of both
} Told;

// FALSE if no build is in hand. The agenda and what comes from it hold until the next line.
gboolean told_init(Told *told, Desk *desk);
void told_clear(Told *told);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Told, told_clear)
