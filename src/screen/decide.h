// A finding that waits for its answer: where it is decided what is done about it.
#pragma once
#include "view.h"

#include <standbook/judge/assess.h>

// The finding of a step that is meant by whoever decides one: the first of `near` (NULL: none) that
// waits, else the first of the step that only a decision answers, else the first that waits; NULL
// if none does.
const Requirement *decide_meant(const Assessment *assessment, const PlanStep *step,
                                const Requirement *const near[2]);

// To the questions by which a finding that waits is decided.
Go decide_ask(const Requirement *found);
