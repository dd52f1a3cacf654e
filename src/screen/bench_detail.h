// The place in hand beside the bench on a wide screen, and over the whole body for who stands away.
#pragma once
#include "desk.h"
#include "page.h"
#include "widget_checks.h"

// At the right: its figures and claims, the places beside it in one window, its gauge, what turns
// if it stands, and the entries of all who work on the build. Nothing on a narrow screen.
void detail_paint(Desk *desk, const Checks *checks, guint index, Page *page);

// The far view: the place, its strip and verdict, and the digits as typed.
void detail_far(const Checks *checks, guint index, Page *page);
