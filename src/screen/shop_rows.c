#include "shop_rows.h"

#include "beside.h"

#include <standbook/work/gate.h>
#include <string.h>

// Where the columns begin, and how many cells they have; a second line may begin under the first.
enum {
    BUILD = 5,
    BUILD_CELLS = 8,
    ENGINE = 14,
    ENGINE_CELLS = 19,
    STANDS = 34,
    STANDS_CELLS = 26,
    WAITS = 61,
    WAITS_CELLS = 19,
    TALLY_CELLS = WAITS - ENGINE - 1,
    WHEN = 38, // of a clock and of what falls due
    WHAT_CELLS = WHEN - ENGINE - 1,
    CLOCK_CELLS = 26,
    WHY_CELLS = 22,
};

static const Style plain;

static void put(Canvas *canvas, guint row, guint column, guint cells, const char *text)
{
    canvas_put(canvas, row, column, cells, plain, text ? text : "");
}

// Whole counts on as many rows as they need. Returns the row behind.
static guint put_tally(Canvas *canvas, guint row, guint column, guint cells, const char *tally)
{
    g_auto(GStrv) counts = g_strsplit(tally ? tally : "", "  ", -1);
    guint end = column;
    for (guint i = 0; counts[i]; i++) {
        guint width = canvas_text_width(canvas, counts[i]);
        if (i > 0 && end + 2 + width > column + cells) {
            row++;
            end = column;
        }
        end = canvas_put(canvas, row, end + (end > column ? 2 : 0), 0, plain, counts[i]);
    }
    return row + 1;
}

// `S17 main caps: bolt 2, 4 of 6`, its turn apart; in the list, which has less room, `4/6`.
static char *stands_words(const Waits *waits, gboolean list)
{
    if (!waits->turns)
        return g_strdup(waits->stands ? waits->stands : "");
    return g_strdup_printf("%s, %u%s%u", waits->stands, waits->turn, list ? "/" : " of ",
                           waits->turns);
}

// One build, with its line in the list; `next` is the one NEXT speaks of. Returns the row behind.
static guint put_card(const Card *card, guint number, gboolean next, Canvas *rows)
{
    g_autofree char *line = g_strdup_printf("%u", number);
    g_autofree char *stands = stands_words(&card->waits, TRUE);
    canvas_put(rows, 0, 0, 0, style_of(TYPE_BOLD, 0), next ? ">" : "");
    canvas_put_right(rows, 0, 3, plain, line);
    put(rows, 0, BUILD, BUILD_CELLS, card->number);
    put(rows, 0, ENGINE, ENGINE_CELLS, card->engine);
    put(rows, 0, STANDS, STANDS_CELLS, stands);
    put(rows, 0, WAITS, WAITS_CELLS, card->waits.waits);
    put(rows, 1, WAITS, WAITS_CELLS, card->waits.since);
    return put_tally(rows, 1, ENGINE, TALLY_CELLS, card->tally);
}

static void put_heads(Canvas *body)
{
    static const struct {
        guint column;
        const char *word;
    } heads[] = {{1, "no"},
                 {BUILD, "build"},
                 {ENGINE, "engine"},
                 {STANDS, "stands at"},
                 {WAITS, "waits for"}};
    for (gsize i = 0; i < G_N_ELEMENTS(heads); i++)
        canvas_put(body, 0, heads[i].column, 0, style_of(TYPE_UNDERLINE, 0), heads[i].word);
}

guint shop_cards(const GPtrArray *cards, guint from, guint room, const Card *next, Canvas *body,
                 guint *row)
{
    guint i = from;
    put_heads(body);
    *row = 1;
    for (; i < cards->len; i++) {
        const Card *card = cards->pdata[i];
        g_autoptr(Canvas) rows = canvas_new_growing(PAGE_WIDTH, body->ascii);
        guint height = put_card(card, i + 1, card == next, rows);
        if (i > from && *row + height > room)
            break;
        canvas_copy(body, *row, 0, rows, 0, height);
        *row += height;
    }
    return i - from;
}

// CLOCKS ----------------------------------------------------------------------------------------

static gint compare_clocks(gconstpointer first, gconstpointer second)
{
    const ShopClock *one = first, *other = second;
    return one->clock.at < other->clock.at ? -1 : one->clock.at > other->clock.at;
}

guint shop_clocks(GArray *clocks, guint row, Moment now, Canvas *body)
{
    g_array_sort(clocks, compare_clocks);
    if (clocks->len)
        put(body, row, 1, 0, "clocks");
    for (guint i = 0; i < clocks->len; i++, row++) {
        const ShopClock *one = &g_array_index(clocks, ShopClock, i);
        g_autofree char *what = g_strconcat(one->number, " ", one->clock.subject, NULL);
        g_autofree char *until = clock_until(&one->clock, now);
        g_autofree char *left = clock_left(&one->clock, now);
        put(body, row, ENGINE, WHAT_CELLS, what);
        canvas_put(body, row, WHEN, CLOCK_CELLS, style_of(0, ROLE_UNSURE), until);
        canvas_put_right(body, row, PAGE_WIDTH, plain, left);
    }
    return clocks->len ? row + 1 : row;
}

// DUE -------------------------------------------------------------------------------------------

static guint put_dues(const GArray *dues, guint row, const char *number, Canvas *body)
{
    for (guint i = 0; i < dues->len; i++, row++) {
        const Due *due = &g_array_index(dues, Due, i);
        g_autofree char *what = g_strconcat(number, *number ? " " : "", due->what, NULL);
        put(body, row, ENGINE, WHAT_CELLS, what);
        put(body, row, WHEN, WHY_CELLS, due->why);
        canvas_put_right(body, row, PAGE_WIDTH, plain, due->when);
    }
    return row;
}

// The ids of the tools that builds use which are not done at their last gate.
static void add_used(GHashTable *used, Session *session)
{
    const GPtrArray *gates = session_assessment(session)->gates;
    if (((const GateCount *)gates->pdata[gates->len - 1])->left == 0)
        return;
    const GPtrArray *entries = session_entries(session);
    for (guint i = 0; i < entries->len; i++) {
        const char *tool = entry_text(entries->pdata[i], "tool");
        if (tool)
            g_hash_table_add(used, (gpointer)tool);
    }
}

void shop_dues(const GPtrArray *cards, guint row, Desk *desk, Canvas *body)
{
    guint first = row;
    g_autoptr(GHashTable) used = g_hash_table_new(g_str_hash, g_str_equal);
    for (guint i = 0; i < cards->len; i++) {
        const Card *card = cards->pdata[i];
        if (!card->dues)
            continue;
        row = put_dues(card->dues, row, card->number, body);
        add_used(used, desk_session(desk, card->number));
    }
    g_autoptr(GArray) tools =
        desk->shop ? dues_of_tools(session_shop(desk->shop), used, desk->now) : NULL;
    if (tools)
        row = put_dues(tools, row, "", body);
    if (row > first)
        put(body, first, 1, 0, "due");
}

// DETAIL ----------------------------------------------------------------------------------------

static guint put_gates(Canvas *told, guint row, guint width, Session *session, Moment now)
{
    const GPtrArray *gates = session_assessment(session)->gates;
    const Entry *const *entries = (const Entry *const *)session_entries(session)->pdata;
    for (guint i = 0; i < gates->len; i++, row++) {
        const GateCount *gate = gates->pdata[i];
        g_autofree char *left =
            gate->sealed ? gate_seal_words(gate, entries, now) : g_strdup_printf("%u left", gate->left);
        canvas_put(told, row, 1, width - canvas_text_width(told, left) - 3, plain, gate->name);
        canvas_put_right(told, row, width - 1, plain, left);
    }
    return row;
}

void shop_detail(const Card *card, Desk *desk, Page *page)
{
    g_autoptr(Canvas) told = beside_begin(page);
    Session *session = told && card->dues ? desk_session(desk, card->number) : NULL;
    if (!session)
        return;
    g_autofree char *title = desk_title(desk, card->number);
    g_autofree char *stands = stands_words(&card->waits, FALSE);
    guint cells = told->width - 2, row = 2;
    canvas_put(told, 0, 1, 0, style_of(TYPE_BOLD, 0), title);
    row = canvas_wrap(told, row, 1, cells, plain, stands);
    row = canvas_wrap(told, row, 1, cells, plain, card->waits.waits);
    row = canvas_wrap(told, row, 1, cells, plain, card->waits.since);
    row = put_tally(told, row + 1, 1, cells, card->tally);
    row = put_gates(told, row + 1, told->width, session, desk->now);
    beside_end(page, told, row, session, desk->now);
}
