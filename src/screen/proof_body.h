// The page before a gate: its gaps, then what stands.
#pragma once
#include "page.h"
#include "proof_gaps.h"

// `at` is the gap in hand; at the right of a wide screen stands what is known of it.
void proof_body(const Gaps *gaps, guint at, const Session *session, Page *page);
