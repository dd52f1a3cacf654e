// What a document is made of; for its printers only.
#pragma once
#include <standbook/sheet/document.h>

typedef enum { PART_HEADING, PART_PARAGRAPH, PART_LINE, PART_TABLE, PART_FOOTNOTES } PartSort;

typedef struct {
    PartSort sort;
    guint level;          // of a heading
    char *text;           // NULL for a table
    GStrv titles;         // of a table's columns
    DocumentAlign *align; // one for each
    guint columns;
    GPtrArray *rows;     // char **, `columns` cells each, NULL-terminated
    guint first, behind; // footnotes: numbers from first to behind - 1
} DocumentPart;

struct Document {
    char *kind, *title;
    GPtrArray *parts; // DocumentPart *
    GPtrArray *notes; // char *: footnote n at n - 1
    guint printed;    // footnotes already placed
};

// Prints a table, DOCUMENT_WIDTH columns wide.
void put_table(GString *out, const DocumentPart *table);
