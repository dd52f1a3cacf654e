// The advice on a setting: a large figure and sentences. Pure.
#pragma once
#include "cells.h"

#include <standbook/work/advice.h>

// Paints the advice: its figure, what stands beside it, and its sentences, filled into lines.
// Returns the row behind.
guint advice_paint(Canvas *canvas, guint row, const Advice *advice);
