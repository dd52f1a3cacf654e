// The measured figures of the customer's sheet; for its files only.
#pragma once
#include <standbook/sheet/figures.h>

// How a figure is printed.
typedef enum { WITH_LIMITS, WITHOUT_LIMITS, BY_PLAN, ON_RECORD_ALONE } Printed;

// The cells of a row, in their order.
enum {
    CELL_NAME,
    CELL_VALUE,
    CELL_DOUBT,
    CELL_FROM,
    CELL_STRIP,
    CELL_TO,
    CELL_UNIT,
    CELL_VERDICT,
    CELL_SEE,
    CELLS
};

// Rows of one table, collected before they are put.
typedef struct {
    const SheetSource *source;
    Document *document;
    GPtrArray *rows; // GStrv of CELLS
} Rows;

// What is printed so, in groups of one check in one step (GPtrArray of Requirement *). The caller
// frees with g_ptr_array_unref.
GPtrArray *measured_groups(const SheetSource *source, Printed printed) G_GNUC_WARN_UNUSED_RESULT;
// `191 more readings are on the workshop's record.`: as found, of a mock-up, read again later, or
// gone into a figure; NULL without any. The caller frees with g_free.
char *measured_elsewhere(const SheetSource *source) G_GNUC_WARN_UNUSED_RESULT;

// Adds a group: places that simply passed stand in one row, then the others one by one.
void measured_group_add(Rows *rows, const GPtrArray *group);
// How many places stand in the first row of these groups that has more than one; 0 without any.
guint measured_folded(const GPtrArray *groups);
// Cuts all strips of a table alike, so that their limits stand in one column.
void measured_strips_cut(const Rows *rows);
