// Where a reading belongs.
#pragma once
#include <standbook/judge/assess.h>

// The requirement that a `read` is an answer to, by check, place and step; NULL if it is not asked
// there.
const Requirement *reading_place(const Assessment *assessment, const Entry *entry);
