// What stands against a tool of the shop before it is used, as it would be judged.
#pragma once
#include <standbook/base/moment.h>
#include <standbook/book/find.h>
#include <standbook/rules/tool.h>
#include <standbook/work/shop.h>

// How far a torque wrench reaches where a bolt is pulled until a check passes: `ceiling 60 N·m √`,
// or `ends at 25, ceiling 60 N·m`. `ceiling` in base units, as it stands on the wrench's scale. ""
// if its upper end is not known. The caller frees with g_free.
char *tool_ceiling_words(const Entry *tool, const Number *ceiling) G_GNUC_WARN_UNUSED_RESULT;

// Whether a tool is judged as a wrench is, by what its range is of, or as a gauge.
ToolSort tool_sort(const Entry *tool);

// The beginning of the last day on which a calibration of a tool holds (the bodies of both): as it
// says, of a torque tool for which it says none a year behind it; 0 where none is set.
Moment tool_due(const json_t *tool, const json_t *calibration);
// The same as a date, `2026-06-01`; "" for none. The caller frees with g_free.
char *tool_due_words(const json_t *tool, const json_t *calibration) G_GNUC_WARN_UNUSED_RESULT;

// How often a torque tool was used since its last calibration; -1 where it has none, or nobody
// counts.
gint64 tool_uses(const Shop *shop, const Entry *tool, Book *book);

// `due 15 Oct √`, of a torque tool with the uses since (-1: not counted) `due 15 Oct √, 4,812 uses
// since`, from 5,000 on `OVERDUE after 5,012 uses`; fewer are not told beside a range; else what
// would leave its work in doubt, in capitals what a calibration says: `FOUND WRONG 11 Mar`,
// `OVERDUE since 31 Jan`, `never calibrated`, and of a value (base units; NULL: not known) that its
// range does not hold `60-300 N·m: 40 is outside`, one behind the other.
// "" where there is nothing to say. Nothing is refused for it. The caller frees with g_free.
char *tool_standing_words(const Shop *shop, const Entry *tool, ToolSort sort, const Number *value,
                          gint64 uses, Moment now) G_GNUC_WARN_UNUSED_RESULT;

// Its range as it is marked: `60-300 N·m`, without a lower mark `up to 300 N·m`; "" if it has none.
// The caller frees with g_free.
char *tool_range_words(const Entry *tool) G_GNUC_WARN_UNUSED_RESULT;
// What of that concerns its range alone: `60-300 N·m: 40 is outside`, of a range without a lower
// mark `up to 300 N·m: …`; "" where the range holds the value. The caller frees with g_free.
char *tool_outside_words(const Entry *tool, ToolSort sort,
                         const Number *value) G_GNUC_WARN_UNUSED_RESULT;
// Whether it would leave its work in doubt, by its calibration or its range: what stands so comes
// last where tools are offered.
gboolean tool_is_doubtful(const Shop *shop, const Entry *tool, ToolSort sort, const Number *value,
                          gint64 uses, Moment now);
// What its calibration alone says against it, as above; NULL for nothing. The caller frees with
// g_free.
char *tool_fault_words(const Shop *shop, const Entry *tool, ToolSort sort,
                       Moment now) G_GNUC_WARN_UNUSED_RESULT;
// The calibration that found it wrong, as long as none behind it found it good or adjusted it; NULL
// if there is none. It belongs to the shop.
const Entry *tool_found_wrong(const Shop *shop, const Entry *tool, Moment now);
