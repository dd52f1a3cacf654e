// What a document is made of; for its printers only.
#pragma once
#include <standbook/sheet/document.h>

typedef enum { PART_HEADING, PART_PARAGRAPH, PART_LINE, PART_TABLE, PART_FOOTNOTES } PartSort;

typedef struct {
    PartSort sort;
    guint level;          // of a heading
    char *text;           // NULL for a table
    gboolean kept;        // of a paragraph or line: on the page of the part behind it
    GStrv titles;         // of a table's columns
    DocumentAlign *align; // one for each
    guint columns;
    gboolean tight;      // of a table: one blank between its columns, and up to the last one
    GPtrArray *rows;     // char **, `columns` cells each, NULL-terminated
    GPtrArray *unders;   // char *: words under each row, NULL for none
    guint first, behind; // footnotes: numbers from first to behind - 1
} DocumentPart;

struct Document {
    char *kind, *title;
    GPtrArray *parts;                    // DocumentPart *
    GPtrArray *notes;                    // char *: footnote n at n - 1
    guint printed;                       // footnotes already placed
    char *head_left, *head_right, *foot; // of each page; NULL if it is not printed in pages
};

// A piece of the text form that is not parted by the end of a page.
typedef struct {
    char *text; // whole lines, each ended
    guint lines;
    gboolean parted;    // has an empty line in front, but at the top of a page
    gboolean kept;      // stays with the next one
    gboolean footnotes; // of a document without pages
    GStrv notes;        // numbers of the footnotes that it names; NULL for none
} Block;

// A table as text, DOCUMENT_WIDTH columns wide: one text (char *) for its titles, empty if it has
// none, then one for each row. The caller frees with g_ptr_array_unref.
GPtrArray *table_lines(const DocumentPart *table) G_GNUC_WARN_UNUSED_RESULT;

// All parts of a document (Block *). The caller frees with g_ptr_array_unref.
GPtrArray *document_blocks(const Document *document) G_GNUC_WARN_UNUSED_RESULT;

// Footnote `number` as whole lines. The caller frees with g_free.
char *footnote_text(const Document *document, guint number) G_GNUC_WARN_UNUSED_RESULT;

// Prints the document in pages.
void put_pages(GString *out, const Document *document);
