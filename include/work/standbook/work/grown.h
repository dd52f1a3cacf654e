// The plan by which a build is judged: the file that the store keeps, and what the build added.
#pragma once
#include <standbook/book/book.h>
#include <standbook/plan/plan.h>
#include <standbook/record/entry.h>

// The plan file of that digest. NULL with an error (STORE) if it is not kept or has faults. The
// caller frees with plan_free.
Plan *plan_kept(Book *book, const char *digest, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// The plan with what the first `count` entries of a build's ledger add and do not take back. What
// stands on an addition that was struck is left out with it. NULL, without an error, if nothing is
// added: then the plan itself does. The caller frees with plan_free.
Plan *plan_grown(const Plan *plan, const Entry *const *entries,
                 gsize count) G_GNUC_WARN_UNUSED_RESULT;
