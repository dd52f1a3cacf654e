// What is outside or in doubt, accepted: where it is asked how.
#pragma once
#include "view.h"

#include <standbook/judge/assess.h>

// To the page that concedes `fault`, which fails or is in doubt; NULL: there is none, and the
// sentence `none` warns. Where the step has a doubt that can be upheld, that of `fault` first, it
// is asked which of the two is meant, so that the number pad alone reaches both; what fails is only
// conceded.
Go concede_ask(Desk *desk, const PlanStep *step, const Requirement *fault, const char *none);
