#include "page.h"

#include "words.h"

#include <string.h>

enum { ROW_STATUS, ROW_HEAD, ROW_RULE, ROW_BODY };

// Rows from below.
enum { BELOW_KEYS = 1, BELOW_LAST, BELOW_THEN, BELOW_NEXT, BELOW_RULE };

static const Style plain, bold = {TYPE_BOLD, ROLE_CALM}, faint = {TYPE_PLAIN, ROLE_FAINT};
static const Style here = {TYPE_REVERSE, ROLE_HERE};

void page_init(Page *page, guint width, gboolean ascii)
{
    *page = (Page){.width = width, .body = canvas_new_growing(PAGE_WIDTH, ascii)};
}

void page_clear(Page *page)
{
    char **const texts[] = {&page->status,   &page->status_right, &page->head, &page->count,
                            &page->unplaced, &page->unplaced_how, &page->next,         &page->unit, &page->then,
                            &page->last,     &page->remark};
    for (gsize i = 0; i < G_N_ELEMENTS(texts); i++)
        g_clear_pointer(texts[i], g_free);
    g_clear_pointer(&page->body, canvas_free);
    g_clear_pointer(&page->detail, canvas_free);
}

guint page_rows(const Page *page)
{
    return page->height > ROW_BODY + BELOW_RULE ? page->height - ROW_BODY - BELOW_RULE : G_MAXUINT;
}

void page_turn(Page *page, PageTurn *turn)
{
    guint behind = turn->from + page_rows(page);
    page->focus = behind - 2; // the last row but one that is seen
    turn->rest = behind < page->body->height ? behind : 0;
}

gboolean page_turn_on(PageTurn *turn)
{
    if (!turn->rest)
        return FALSE;
    turn->from = turn->rest;
    return TRUE;
}

void page_say(char **text, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    char *words = g_strdup_vprintf(format, arguments);
    va_end(arguments);
    g_free(*text);
    *text = words;
}

void page_ask_digit(Page *page, guint count)
{
    if (count)
        page_say(&page->unit, "%s%u", count > 1 ? "1 to " : "", count);
    else
        page_say(&page->unit, "0 = new");
}

Actions page_offers(const Page *page)
{
    Actions offers = 0;
    for (guint i = 0; i < KEYS_MOST && page->keys[i].action; i++)
        offers |= action_bit(page->keys[i].action);
    return offers;
}

void page_key(Page *page, Action action, const char *word)
{
    for (guint i = 0; i < KEYS_MOST; i++)
        if (page->keys[i].action == ACTION_NONE) {
            page->keys[i] = (PageKey){action, action_info(action)->keys,
                                      word ? word : action_info(action)->word};
            return;
        }
}

guint page_detail_width(guint width)
{
    return width >= PAGE_WIDE ? width - PAGE_WIDTH - 1 : 0;
}

static const char *or_empty(const char *text)
{
    return text ? text : "";
}

// Words that are too long for a row end with a whole one; where there is little room, each letter
// counts.
static void put_words(Canvas *canvas, guint row, guint column, guint room, Style style,
                      const char *words)
{
    enum { LITTLE = 40 }; // columns
    g_autofree char *front = room > LITTLE ? whole_words(words, room) : g_strdup(words);
    canvas_put(canvas, row, column, room, style, front);
}

// Left text and right text in one row; the right one is whole, the left one gives way.
static void put_both(Canvas *canvas, guint row, Style left_style, const char *left,
                     const char *right)
{
    guint width = canvas_text_width(canvas, right);
    guint room = PAGE_WIDTH - MIN(width ? width + 2 : 0, PAGE_WIDTH - 1);
    canvas_put(canvas, row, 0, room, left_style, left);
    canvas_put_right(canvas, row, PAGE_WIDTH, plain, right);
}

// How one gets rid of what is unplaced, by the keys that do it in such a field.
static const char *unplaced_ways(const Page *page, const char *typed)
{
    static const char *const ways[] = {
        [ASKS_NUMBER] = "   t takes it   *6 strikes it",
        [ASKS_TICK] = "   t takes it   *6 strikes it",
        [ASKS_LINE] = "   at a field t takes it   *6 strikes it",
        [ASKS_NOTHING] = "   at a field t takes it   *6 strikes it",
        [ASKS_TEXT] = "   .Enter 7 takes it",
        [ASKS_NAME] = "   .Enter 7 takes it   *6 strikes it",
        [ASKS_DIGIT] = "   answer first; then t takes it",
        [ASKS_KEY] = "",
    };
    return page->any_key || *typed ? "" : ways[page->field];
}

static void put_unplaced(const Page *page, const char *typed, Canvas *canvas, guint low)
{
    g_autofree char *more =
        page->unplaced_more ? g_strdup_printf(" and %u more", page->unplaced_more) : NULL;
    g_autofree char *end = g_strconcat(more ? more : "", unplaced_ways(page, typed), " ", NULL);
    guint column = canvas_put(canvas, low, 3, 0, bold, " UNPLACED  ");
    guint room = PAGE_WIDTH - 3 - column - canvas_text_width(canvas, end);
    g_autofree char *words = page->unplaced_how
                                 ? g_strconcat(page->unplaced, ", ", page->unplaced_how, NULL)
                                 : g_strdup(page->unplaced);
    column = canvas_put(canvas, low, column, room, bold, words);
    canvas_put(canvas, low, column, 0, bold, end);
}

static void put_rules(const Page *page, const char *typed, Canvas *canvas, guint low)
{
    canvas_fill(canvas, ROW_RULE, 0, PAGE_WIDTH, faint, "─");
    canvas_fill(canvas, low, 0, PAGE_WIDTH, faint, "─");
    if (page->unplaced)
        put_unplaced(page, typed, canvas, low);
}

// The lines of the remark, each on as many rows as it needs under its own beginning, or else cut to
// one. `*rows`: how many they take.
static Canvas *remark_lines(const Page *page, gboolean ascii, gboolean wrapped, guint *rows)
{
    enum { ROOM = PAGE_WIDTH - 2 };
    Canvas *canvas = canvas_new_growing(ROOM, ascii);
    g_auto(GStrv) lines = g_strsplit(or_empty(page->remark), "\n", -1);
    guint row = 0;
    for (guint i = 0; lines[i]; i++) {
        guint from = (guint)strspn(lines[i], " ");
        if (wrapped)
            row = canvas_wrap(canvas, row, from, ROOM - from, plain, lines[i] + from);
        else
            canvas_put(canvas, row++, 0, ROOM, plain, lines[i]);
    }
    *rows = row;
    return canvas;
}

// The remark as that many rows have room for it, and how many of them it leaves for the body, with
// a blank one between.
static Canvas *remark_fitted(const Page *page, gboolean ascii, guint rows, guint *left)
{
    enum { LEAST = 4 }; // that the body keeps: else long lines are cut
    guint count = 0;
    Canvas *lines = remark_lines(page, ascii, TRUE, &count);
    if (count + LEAST > rows) {
        canvas_free(lines);
        lines = remark_lines(page, ascii, FALSE, &count);
    }
    *left = count ? rows - count - 1 : rows;
    return lines;
}

// Puts the remark on the last rows; returns how many are left for the body.
static guint put_remark(const Page *page, Canvas *canvas, guint rows)
{
    guint left;
    g_autoptr(Canvas) lines = remark_fitted(page, canvas->ascii, rows, &left);
    if (left < rows)
        canvas_copy(canvas, ROW_BODY + left + 1, 1, lines, 0, rows - left - 1);
    return left;
}

guint page_list_rows(const Page *page)
{
    guint rows = page_rows(page), left;
    if (rows == G_MAXUINT)
        return rows;
    g_autoptr(Canvas) lines = remark_fitted(page, page->body->ascii, rows, &left);
    return left - MIN(left, page->heads);
}

void page_scroll(Page *page, guint from)
{
    guint rows = page_list_rows(page);
    if (rows != G_MAXUINT)
        page->focus = from + page->heads + rows - MIN(2, page->heads + rows);
}

static void put_body(const Page *page, Canvas *canvas, guint rows)
{
    guint heads = MIN(page->heads, page->body->height), from = heads;
    rows = put_remark(page, canvas, rows);
    if (page->body->height > rows && page->focus + 2 > rows)
        from += MIN(page->focus + 2 - rows, page->body->height - rows);
    canvas_copy(canvas, ROW_BODY, 0, page->body, 0, heads);
    canvas_copy(canvas, ROW_BODY + heads, 0, page->body, from, rows - heads);
}

// The text in the field, with the end seen where it is longer, and where the cursor stands.
static guint put_typed(Canvas *canvas, guint row, guint column, guint width, const char *typed)
{
    guint length = canvas_text_width(canvas, typed);
    const char *from = typed;
    while (length + 1 > width && *from) {
        from = g_utf8_next_char(from);
        length = canvas_text_width(canvas, from);
    }
    canvas_fill(canvas, row, column, width, here, " ");
    return canvas_put(canvas, row, column, width, here, from);
}

static guint field_column(const Page *page, const char *typed, const Canvas *canvas)
{
    if (!field_is_words(page->field))
        return FIELD_COLUMN;
    guint length = canvas_text_width(canvas, typed) + 1;
    guint most = FIELD_COLUMN + FIELD_WIDTH - 18;
    return FIELD_COLUMN + FIELD_WIDTH - CLAMP(length, 40, most);
}

// How many columns a unit has more than there are behind the field: so many it gives way, `thou`.
static guint unit_over(const Page *page, const Canvas *canvas)
{
    enum { BEHIND = PAGE_WIDTH - FIELD_COLUMN - FIELD_WIDTH - 3, MOST = FIELD_WIDTH / 2 };
    guint wide = page->field == ASKS_TICK ? 0 : canvas_text_width(canvas, or_empty(page->unit));
    return wide > BEHIND ? MIN(wide - BEHIND, MOST) : 0;
}

// The field; returns where its bracket opens. `*cursor` is where the cursor belongs.
static guint put_field(const Page *page, const char *typed, Canvas *canvas, guint row,
                       guint *cursor)
{
    gboolean words = (page->field == ASKS_TICK && !*typed) || page->field == ASKS_DIGIT;
    guint column = field_column(page, typed, canvas);
    *cursor = column + 1;
    if (page->field == ASKS_NOTHING || page->field == ASKS_KEY)
        return PAGE_WIDTH;
    if (words) {
        g_autofree char *box = g_strdup_printf("[ %s ]", or_empty(page->unit));
        guint end = canvas_put(canvas, row, column, 0, plain, box);
        canvas_style(canvas, row, column + 1, end - column - 2, here);
        return column;
    }
    guint width = FIELD_COLUMN + FIELD_WIDTH - column - unit_over(page, canvas);
    canvas_put(canvas, row, column, 0, plain, "[");
    *cursor = put_typed(canvas, row, column + 1, width, typed);
    canvas_put(canvas, row, column + 1 + width, 0, plain, "]");
    if (page->field != ASKS_TICK)
        canvas_put(canvas, row, column + 3 + width, 0, plain, or_empty(page->unit));
    return column;
}

// A warning ends on the row of the newest entry; what it is too long for begins on the row above.
// Returns how many rows it took.
static guint put_warning(const Page *page, Canvas *canvas, guint row)
{
    enum { ROOM = PAGE_WIDTH - 6, ROWS = 2 };
    g_autofree char *words = page->brief ? whole_words(or_empty(page->last), ROOM)
                                         : g_strdup(or_empty(page->last));
    g_autoptr(Canvas) lines = canvas_new_growing(ROOM, canvas->ascii);
    guint rows = MIN(canvas_wrap(lines, 0, 0, ROOM, bold, words), ROWS);
    for (guint i = 0; i < rows; i++)
        canvas_put(canvas, row - i, 0, 6, plain, "!");
    canvas_copy(canvas, row + 1 - rows, 6, lines, 0, rows);
    return rows;
}

static void put_then_last(const Page *page, Canvas *canvas, guint height)
{
    guint warned = page->warns ? put_warning(page, canvas, height - BELOW_LAST) : 0;
    if (warned < 2) {
        const char *head = page->means ? "=" : page->ask || page->explains ? "" : "then";
        canvas_put(canvas, height - BELOW_THEN, 0, 6, plain, head);
        put_words(canvas, height - BELOW_THEN, 6, PAGE_WIDTH - 6, plain, or_empty(page->then));
    }
    if (warned)
        return;
    canvas_put(canvas, height - BELOW_LAST, 0, 6, plain, "last");
    canvas_put(canvas, height - BELOW_LAST, 6, PAGE_WIDTH - 6, plain, or_empty(page->last));
}

// Where words are typed, a letter or a sign alone is one of theirs.
static gboolean key_acts(const Page *page, const PageKey *key)
{
    return page->field != ASKS_TEXT || g_utf8_strlen(key->keys, -1) > 1;
}

static void put_keys(const Page *page, Canvas *canvas, guint row)
{
    g_autoptr(GString) line = g_string_new(NULL);
    for (guint i = 0; i < KEYS_MOST && page->keys[i].action; i++)
        if (key_acts(page, &page->keys[i]))
            g_string_append_printf(line, "%s%s %s", line->len ? "   " : "", page->keys[i].keys,
                                   page->keys[i].word);
    canvas_put(canvas, row, 0, PAGE_WIDTH, plain, line->str);
}

static void put_detail(const Page *page, Canvas *canvas, guint low)
{
    guint width = page_detail_width(canvas->width);
    if (!width)
        return;
    for (guint row = 0; row < canvas->height; row++)
        canvas_put(canvas, row, PAGE_WIDTH, 1, faint,
                   row == ROW_RULE ? "┼"
                   : row == low    ? "┤"
                                   : "│");
    canvas_fill(canvas, ROW_RULE, PAGE_WIDTH + 1, width, faint, "─");
    if (page->detail)
        canvas_copy(canvas, ROW_HEAD, PAGE_WIDTH + 1, page->detail, 0, 1);
    if (page->detail && page->detail->height > 1)
        canvas_copy(canvas, ROW_BODY, PAGE_WIDTH + 1, page->detail, 1, canvas->height - ROW_BODY);
}

void page_paint(const Page *page, const char *typed, Canvas *canvas, guint *row, guint *column)
{
    guint height = canvas->height, next = height - BELOW_NEXT;
    put_both(canvas, ROW_STATUS, plain, or_empty(page->status), or_empty(page->status_right));
    put_both(canvas, ROW_HEAD, bold, or_empty(page->head), or_empty(page->count));
    put_rules(page, typed, canvas, height - BELOW_RULE);
    put_body(page, canvas, height - BELOW_RULE - ROW_BODY);
    guint field = put_field(page, typed, canvas, next, column);
    canvas_put(canvas, next, 0, 6, bold, page->ask ? "ASK" : "NEXT");
    put_words(canvas, next, 6, field > 7 ? field - 7 : 1, bold, or_empty(page->next));
    put_then_last(page, canvas, height);
    put_keys(page, canvas, height - BELOW_KEYS);
    put_detail(page, canvas, height - BELOW_RULE);
    *row = next;
}
