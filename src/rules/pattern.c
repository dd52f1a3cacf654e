#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/rules/pattern.h>

#include <string.h>

// What a plan says, and the bolts it says it of.
typedef struct {
    const char *const *bolts;
    gsize count;
    GArray *rows; // of the layout: GArray * of bolt indexes; empty without rows
    gboolean circle;
} Layout;

static gboolean is_known(const Layout *layout, const char *label, guint *index)
{
    for (gsize i = 0; i < layout->count; i++) {
        if (strcmp(layout->bolts[i], label) == 0) {
            *index = (guint)i;
            return TRUE;
        }
    }
    return FALSE;
}

static void append_quoted(GString *list, const char *label)
{
    g_autofree char *clean = text_clean(label, -1);
    g_string_append_printf(list, "%s`%s`", list->len ? ", " : "", clean);
}

// A label of one character has no near one: any other is one slip away.
static void refuse_unknown(const Layout *layout, const char *key, const char *label, GError **error)
{
    g_autofree char *clean = text_clean(label, -1);
    const char *nearest =
        g_utf8_strlen(clean, -1) > 1 ? text_nearest(label, layout->bolts, layout->count) : NULL;
    if (nearest) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "%s: there is no bolt `%s`; did you mean `%s`?", key, clean, nearest);
        return;
    }
    g_autoptr(GString) known = g_string_new(NULL);
    for (gsize i = 0; i < MIN(layout->count, 12); i++)
        append_quoted(known, layout->bolts[i]);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                "%s: there is no bolt `%s`; the bolts are %s%s", key, clean, known->str,
                layout->count > 12 ? " …" : "");
}

// Appends the bolt, and counts it in `seen`.
static gboolean take_label(const Layout *layout, const char *key, const char *label, guint *seen,
                           GArray *into, GError **error)
{
    guint index = 0;
    if (!is_known(layout, label, &index)) {
        refuse_unknown(layout, key, label, error);
        return FALSE;
    }
    if (seen[index]++) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "%s: bolt %s is there twice; write every bolt once", key, label);
        return FALSE;
    }
    g_array_append_val(into, index);
    return TRUE;
}

static gboolean take_labels(const Layout *layout, const char *key, const char *text,
                            const char *between, guint *seen, GArray *into, GError **error)
{
    g_auto(GStrv) labels = g_strsplit_set(text, between, -1);
    for (char **label = labels; *label; label++) {
        if (**label && !take_label(layout, key, *label, seen, into, error))
            return FALSE;
    }
    return TRUE;
}

static gboolean all_seen(const Layout *layout, const char *key, const guint *seen, GError **error)
{
    g_autoptr(GString) missing = g_string_new(NULL);
    guint missed = 0;
    for (gsize i = 0; i < layout->count; i++) {
        if (!seen[i])
            g_string_append_printf(missing, "%s%s", missed++ ? ", " : "", layout->bolts[i]);
    }
    if (missed == 0)
        return TRUE;
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                "%s: %s %s %s left out; write every bolt once", key, missed == 1 ? "bolt" : "bolts",
                missing->str, missed == 1 ? "is" : "are");
    return FALSE;
}

static gboolean read_layout(Layout *layout, const char *text, GError **error)
{
    if (!text || !*text)
        return TRUE;
    layout->circle = strcmp(text, "circle") == 0;
    if (layout->circle)
        return TRUE;
    g_auto(GStrv) lines = g_strsplit(text, "/", -1);
    g_autofree guint *seen = g_new0(guint, layout->count);
    for (char **line = lines; *line; line++) {
        GArray *row = g_array_new(FALSE, FALSE, sizeof(guint));
        g_array_append_val(layout->rows, row);
        if (!take_labels(layout, "layout", *line, " \t\n", seen, row, error))
            return FALSE;
    }
    return all_seen(layout, "layout", seen, error);
}

static gboolean as_numbered(const Layout *layout, GArray *order, GError **error)
{
    (void)error;
    for (guint i = 0; i < layout->count; i++)
        g_array_append_val(order, i);
    return TRUE;
}

static gboolean row(const Layout *layout, GArray *order, GError **error)
{
    if (layout->circle || layout->rows->len > 1) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "order: `row` is for bolts in one row; write `%s`, or list the bolts",
                    layout->circle ? "criss-cross" : "spiral");
        return FALSE;
    }
    const GArray *line = layout->rows->len ? g_array_index(layout->rows, GArray *, 0) : NULL;
    gsize middle = (layout->count - 1) / 2;
    for (gsize turn = 0; turn < layout->count; turn++) {
        gsize away = (turn + 1) / 2;
        // Where the middle lies between two bolts the lower one begins, and the upper side is next.
        gboolean upper = (turn % 2 == 1) == (layout->count % 2 == 0);
        gsize place = upper ? middle + away : middle - away;
        guint bolt = line ? g_array_index(line, guint, place) : (guint)place;
        g_array_append_val(order, bolt);
    }
    return TRUE;
}

static gsize apart(gsize one, gsize other, gsize round)
{
    gsize way = one > other ? one - other : other - one;
    return MIN(way, round - way);
}

// The next four begin as far from the last four as can be, round the quarter of the circle.
static gsize farthest_free(const gboolean *done, gsize quarter, gsize last)
{
    gsize best = quarter;
    for (gsize i = 0; i < quarter; i++) {
        if (!done[i] && (best == quarter || apart(i, last, quarter) > apart(best, last, quarter)))
            best = i;
    }
    return best;
}

static void cross_fours(gsize count, GArray *order)
{
    gsize quarter = count / 4, begin = 0;
    static const gsize corners[] = {0, 2, 1, 3};
    g_autofree gboolean *done = g_new0(gboolean, quarter);
    for (gsize fours = 0; fours < quarter; fours++) {
        for (gsize corner = 0; corner < G_N_ELEMENTS(corners); corner++) {
            guint bolt = (guint)(begin + corners[corner] * quarter);
            g_array_append_val(order, bolt);
        }
        done[begin] = TRUE;
        begin = farthest_free(done, quarter, begin);
    }
}

static void cross_pairs(gsize count, GArray *order)
{
    for (gsize begin = 0; begin < count; begin += 2) {
        guint bolt = (guint)begin, opposite = (guint)((begin + count / 2) % count);
        g_array_append_val(order, bolt);
        g_array_append_val(order, opposite);
    }
}

static void cross_star(gsize count, GArray *order)
{
    gsize step = count > 1 ? count / 2 : 1;
    for (gsize turn = 0; turn < count; turn++) {
        guint bolt = (guint)(turn * step % count);
        g_array_append_val(order, bolt);
    }
}

static gboolean criss_cross(const Layout *layout, GArray *order, GError **error)
{
    if (layout->rows->len > 0) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "order: `criss-cross` goes round a circle, but the layout has rows; write "
                    "`layout: circle` or `order: spiral`");
        return FALSE;
    }
    if (layout->count % 2 == 1)
        cross_star(layout->count, order);
    else if (layout->count % 4 == 0)
        cross_fours(layout->count, order);
    else
        cross_pairs(layout->count, order);
    return TRUE;
}

// A bolt's place from the centre of the rows in half steps, right and down positive.
typedef struct {
    gint64 right, down;
    guint bolt;
    gboolean done;
} Spot;

static gint64 from_centre(const Spot *spot)
{
    return spot->right * spot->right + spot->down * spot->down;
}

static gint by_ring(gconstpointer one, gconstpointer other)
{
    const Spot *a = one, *b = other;
    gint64 differences[] = {from_centre(a) - from_centre(b), a->down - b->down,
                            b->right - a->right};
    for (gsize i = 0; i < G_N_ELEMENTS(differences); i++) {
        if (differences[i] != 0)
            return differences[i] < 0 ? -1 : 1;
    }
    return 0;
}

static GArray *spots_of(const Layout *layout)
{
    GArray *spots = g_array_new(FALSE, TRUE, sizeof(Spot));
    for (guint i = 0; i < layout->rows->len; i++) {
        const GArray *line = g_array_index(layout->rows, GArray *, i);
        for (guint j = 0; j < line->len; j++) {
            Spot spot = {.right = 2 * (gint64)j - (gint64)line->len + 1,
                         .down = 2 * (gint64)i - (gint64)layout->rows->len + 1,
                         .bolt = g_array_index(line, guint, j)};
            g_array_append_val(spots, spot);
        }
    }
    g_array_sort(spots, by_ring);
    return spots;
}

static void take_opposite(GArray *spots, const Spot *spot, GArray *order)
{
    for (guint i = 0; i < spots->len; i++) {
        Spot *other = &g_array_index(spots, Spot, i);
        if (!other->done && other->right == -spot->right && other->down == -spot->down) {
            other->done = TRUE;
            g_array_append_val(order, other->bolt);
        }
    }
}

static gboolean spiral(const Layout *layout, GArray *order, GError **error)
{
    if (layout->rows->len == 0) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "order: `spiral` needs to know how the bolts lie; write `layout:` with rows "
                    "parted by `/`, such as `1 2 3 / 4 5 6`");
        return FALSE;
    }
    g_autoptr(GArray) spots = spots_of(layout);
    for (guint i = 0; i < spots->len; i++) {
        Spot *spot = &g_array_index(spots, Spot, i);
        if (spot->done)
            continue;
        spot->done = TRUE;
        g_array_append_val(order, spot->bolt);
        take_opposite(spots, spot, order);
    }
    return TRUE;
}

static const struct {
    const char *words;
    gboolean (*lay)(const Layout *layout, GArray *order, GError **error);
} PATTERNS[] = {
    {"as numbered", as_numbered},
    {"row", row},
    {"criss-cross", criss_cross},
    {"spiral", spiral},
};

// A misspelt pattern would otherwise be taken for a list of strange bolts.
static gboolean refuse_misspelt(const Layout *layout, const char *words, GError **error)
{
    const char *names[G_N_ELEMENTS(PATTERNS)];
    for (gsize i = 0; i < G_N_ELEMENTS(PATTERNS); i++)
        names[i] = PATTERNS[i].words;
    const char *nearest = text_nearest(words, names, G_N_ELEMENTS(names));
    g_auto(GStrv) labels = g_strsplit_set(words, "-, \t\n", -1);
    guint index = 0;
    if (!nearest || is_known(layout, labels[0], &index))
        return FALSE;
    g_autofree char *clean = text_clean(words, -1);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                "order: there is no order called `%s`; did you mean `%s`?", clean, nearest);
    return TRUE;
}

static gboolean as_listed(const Layout *layout, const char *words, GArray *order, GError **error)
{
    g_autofree guint *seen = g_new0(guint, layout->count);
    return !refuse_misspelt(layout, words, error) &&
           take_labels(layout, "order", words, "-, \t\n", seen, order, error) &&
           all_seen(layout, "order", seen, error);
}

static gboolean lay(const Layout *layout, const char *words, GArray *order, GError **error)
{
    if (!words || !*words)
        return as_numbered(layout, order, error);
    for (gsize i = 0; i < G_N_ELEMENTS(PATTERNS); i++) {
        if (strcmp(PATTERNS[i].words, words) == 0)
            return PATTERNS[i].lay(layout, order, error);
    }
    return as_listed(layout, words, order, error);
}

static void row_clear(gpointer line)
{
    g_array_unref(*(GArray **)line);
}

GArray *pattern_order(const char *words, const char *layout_text, const char *const *bolts,
                      gsize count, GError **error)
{
    g_autoptr(GArray) rows = g_array_new(FALSE, FALSE, sizeof(GArray *));
    g_array_set_clear_func(rows, row_clear);
    g_autoptr(GArray) order = g_array_sized_new(FALSE, FALSE, sizeof(guint), (guint)count);
    Layout layout = {.bolts = bolts, .count = count, .rows = rows};
    if (!read_layout(&layout, layout_text, error) || !lay(&layout, words, order, error))
        return NULL;
    return g_steal_pointer(&order);
}
