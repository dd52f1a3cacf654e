// The page before a gate: its gaps, then what stands.
#pragma once
#include "page.h"
#include "proof_gaps.h"

// `at` is the gap in hand.
void proof_body(const Gaps *gaps, guint at, Page *page);
