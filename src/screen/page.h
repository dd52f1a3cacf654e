// One screen before it is painted: five rows that never move, and a body. Pure.
#pragma once
#include "cells.h"
#include "typing.h"

enum {
    PAGE_WIDTH = 80,  // least, and the width of the main part at any size
    PAGE_HEIGHT = 24, // least
    PAGE_WIDE = 120,  // from here on with detail at the right
    FIELD_COLUMN = 61,
    FIELD_WIDTH = 13,
    KEYS_MOST = 6,
};

// What the foot line says of a key: the words of its action if `word` is NULL.
typedef struct {
    Action action;
    const char *keys, *word; // static
} PageKey;

// All texts are freed by page_clear.
typedef struct {
    guint width, height;         // of the screen it is for; height 0: all of it is wanted
    char *status, *status_right; // row 1
    char *head, *count;          // row 2
    Canvas *body;                // grows; PAGE_WIDTH wide
    guint focus;                 // the row of the body that must be seen
    guint heads;                 // rows of the body that stay where the others scroll
    char *remark; // on the last rows of the body, a line on as many rows as it needs;
                  // NULL for none
    Canvas *detail;              // at the right of a wide screen; NULL for none
    char *unplaced;              // in the lower rule, cut to its room; NULL for none
    char *unplaced_how;          // and whence it is, where there is room; NULL: it is not asked
    guint unplaced_more;         // how many wait behind it
    gboolean ask;                // ASK instead of NEXT
    char *next;                  // row 21
    Asks field;
    gboolean any_key;        // any key goes back: the field is only seen
    char *unit;              // behind a number's field; what a tick or an ask shows in it
    gboolean means;          // row 22 says what is typed (`=`) instead of what is next (`then`)
    gboolean explains;       // row 22 stands by itself, with neither in front
    char *then;              // row 22
    gboolean warns;          // row 23 warns (`!`), and row 22 too where it needs both …
    gboolean brief;          // … unless this is set: row 22 is to be seen
    char *last;              // row 23
    PageKey keys[KEYS_MOST]; // row 24, up to the first ACTION_NONE
} Page;

void page_init(Page *page, guint width, gboolean ascii);
void page_clear(Page *page);

// Sets one of its texts; the old one is freed.
void page_say(char **text, const char *format, ...) G_GNUC_PRINTF(2, 3);
// What a question shows where the digits up to `count` answer it and 0 makes a new one: `1 to 3`,
// `1`, `0 = new`.
void page_ask_digit(Page *page, guint count);

// What the foot line offers.
Actions page_offers(const Page *page);
// Adds a key to the foot line, as long as there is room. `word` NULL: its action's own.
void page_key(Page *page, Action action, const char *word);

// How many rows of the body are seen; G_MAXUINT where all of it is wanted.
guint page_rows(const Page *page);

// How many of the rows behind its heads are seen above its remark, where they are more than that;
// G_MAXUINT where all of it is wanted.
guint page_list_rows(const Page *page);

// Begins what stands behind its heads with that row of it. Its remark is already said.
void page_scroll(Page *page, guint from);

// Which part of a body is shown of one that has more rows than there is room for.
typedef struct {
    guint from; // the row shown first
    guint rest; // that with which the rest begins; 0: there is none
} PageTurn;

// Shows the body from `from` on, and puts in `rest` what it has behind.
void page_turn(Page *page, PageTurn *turn);
// On to the rest; FALSE if there is none.
gboolean page_turn_on(PageTurn *turn);

// How many columns the detail of a screen of that width has; 0 for none.
guint page_detail_width(guint width);

// Paints it on a canvas of at least PAGE_WIDTH × PAGE_HEIGHT. `typed` stands in the field. Where
// the cursor belongs is put in *row and *column.
void page_paint(const Page *page, const char *typed, Canvas *canvas, guint *row, guint *column);
