// What the parts of the picture of a step's checks share.
#pragma once
#include "widget_checks.h"

enum {
    LABEL_COLUMN = 2,
    VALUE_END = 30,
    DOUBT_COLUMN = 32,
    MARK_COLUMN = 40,
    STRIP_COLUMN = 49,
    LOWER_MIDDLE = 53,
    UPPER_MIDDLE = 69,
};

static const Style plain, bold = {TYPE_BOLD, ROLE_CALM}, head = {TYPE_UNDERLINE, ROLE_CALM};
static const Style here = {TYPE_REVERSE, ROLE_HERE};

static inline const Requirement *at(const Assessment *assessment, guint index)
{
    return g_ptr_array_index(assessment->requirements, index);
}

// The requirements of one check in this step: `*first`, and how many follow each other.
guint checks_span(const Checks *checks, const PlanCheck *check, guint *first);
// Whether it is worked out from that check.
gboolean check_rests_on(const PlanCheck *derived, const PlanCheck *check);

// The limits of a check over their posts, or that none is known; where they differ from place to
// place, those of the place in hand with its name between. `first`: its first requirement.
void checks_put_limits(Canvas *canvas, guint row, const Checks *checks, guint first);
// `0.086`, `·` if there is none, `(0.086)` if it is only supposed. The caller frees.
char *checks_value_shown(const Requirement *made, gboolean differs) G_GNUC_WARN_UNUSED_RESULT;
// A text that ends in front of `end`, cut to the columns it may have.
void checks_put_in(Canvas *canvas, guint row, guint end, guint room, Style style, const char *text);
// The place in hand, with what stands in the field in place of its value.
void checks_put_here(Canvas *canvas, guint row, guint end, guint room, const char *typed);

// What was struck at a place, NULL for nothing, and `──3.6──  struck: typo` of it. Returns the
// column behind.
const StruckReading *checks_struck_at(const Checks *checks, guint index);
guint checks_put_struck(Canvas *canvas, guint row, guint column, const StruckReading *struck);

// A check with places along two axes or more, whose first is `first`. Returns the row behind.
guint table_paint(Canvas *canvas, guint row, const Checks *checks, guint first, guint *focus);

// Whether what is worked out is told term by term: it has one place and is a sum.
gboolean terms_are_told(const PlanCheck *derived);
// The terms of it, each with the doubt and the tool of its reading. Returns the row behind.
guint terms_paint(Canvas *canvas, guint row, const Checks *checks, const Requirement *made,
                  guint *focus);
// What its gauge cannot tell, and what would settle it; nothing if the gauge can. Returns the row
// behind.
guint coarse_paint(Canvas *canvas, guint row, const Checks *checks, const Requirement *made);
