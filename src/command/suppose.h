// assess --suppose.
#pragma once
#include "answer.h"

// Says which verdicts of `now` turn if a tool had read wrong: `G03=+0.01mm`, 0.01 mm high;
// `G03=-0.01mm`, 0.01 mm low. Returns the exit status.
int suppose(const Opened *opened, const Assessment *now, const char *words, gboolean json);
