// One document, made once and printed as text or JSON: headings, paragraphs, lines, tables and
// footnotes in the order in which they were put. Everything put in is copied as it is, UTF-8 or
// not; it is made clean text (base/text.h) where it is printed.
#pragma once
#include <glib.h>
#include <jansson.h>

enum { DOCUMENT_WIDTH = 80, PAGE_LINES = 60 }; // columns and lines of the text form

typedef struct Document Document;

typedef enum {
    ALIGN_LEFT,  // whole words, broken over lines where the table would be too wide
    ALIGN_WHOLE, // left, never broken
    ALIGN_RIGHT, // never broken
    ALIGN_POINT, // figures, the decimal points under one another; never broken; where the text form
                 // would be too wide, words among them stand under their row
    ALIGN_NOTES, // left; numbers of footnotes, `1 2`, which then stand on the same page
} DocumentAlign;

typedef struct {
    const char *title;
    DocumentAlign align;
} DocumentColumn;

// `kind` is a word for programs: `customer`, `record`, `completion`. The caller frees.
Document *document_new(const char *kind, const char *title) G_GNUC_WARN_UNUSED_RESULT;
void document_free(Document *document); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Document, document_free)

// `level` 1 stands in capitals with a rule below it, 2 plainly.
void document_heading(Document *document, guint level, const char *text);
// Broken over lines at blanks.
void document_paragraph(Document *document, const char *text);
// The same without the empty line in front that parts paragraphs.
void document_line(Document *document, const char *text);
// The paragraph or line put last stands on the same page as the beginning of what is put next. What
// is kept together so and longer than a page makes a longer page.
void document_keep(Document *document);

// Begins a table of `count` columns; rows are added to the table begun last, each with as many
// cells (NULL is an empty one).
void document_table(Document *document, const DocumentColumn *columns, guint count);
void document_row(Document *document, const char *const *cells);
// Words under the row added last, across the whole table.
void document_under(Document *document, const char *text);
// The table begun last has one blank between its columns instead of two, and may reach the edge.
void document_tight(Document *document);

// The text form is printed in pages of PAGE_LINES: `left` and `right` stand above each, `foot` and
// `2 of 4` below; footnotes stand on every page on which something names them.
void document_pages(Document *document, const char *left, const char *right, const char *foot);

// Keeps a footnote and returns its number, from 1; the same words again have the same number.
guint document_footnote(Document *document, const char *text);
// Prints here the footnotes that were kept and not yet printed; the text form in pages prints them
// at the foot of its pages instead.
void document_footnotes(Document *document);

// Plain text, DOCUMENT_WIDTH columns wide, clean, every line ended; pages are parted by a form
// feed. The caller frees with g_free.
char *document_text(const Document *document) G_GNUC_WARN_UNUSED_RESULT;

// {"document": kind, "title": …, "parts": [{"heading": …, "level": 1}, {"paragraph": …},
// {"line": …}, {"columns": [titles], "rows": [[cells]]}, {"footnotes": {"1": …}}]}. Words under a
// row are one more cell of it. The caller frees with json_decref.
json_t *document_json(const Document *document) G_GNUC_WARN_UNUSED_RESULT;
