// Values with their units, one or several.
#include <standbook/base/text.h>
#include <standbook/work/words.h>
#include <string.h>

// Words that end a row of values; whatever else stands there must be a unit.
static const char *const fixed[] = {
    "with",    "loose", "after", "from", "by",    "to",   "customer", "second", "certificate",
    "repeats", "due",   "U",     "step", "reach", "gave", "good",     "wrong",  "adjusted"};

static gboolean is_fixed(const char *word)
{
    for (gsize i = 0; i < G_N_ELEMENTS(fixed); i++)
        if (strcmp(fixed[i], word) == 0)
            return TRUE;
    return FALSE;
}

// Where one value stands: its number, and its unit if it has its own; or the whole of it in quotes.
typedef struct {
    const char *start, *end;
    const char *unit_at;
    char *unit;
    char *whole;
} Piece;

static void piece_clear(gpointer data)
{
    Piece *piece = data;
    g_free(piece->unit);
    g_free(piece->whole);
}

static void value_free(gpointer data)
{
    WordsValue *value = data;
    reading_clear(&value->reading);
    g_free(value);
}

// The bytes of a bound and a sign, with blanks between.
static gsize front_length(const char *at)
{
    const char *start = at;
    at += *at == '<' || *at == '>';
    at += strspn(at, " \t");
    at += g_str_has_prefix(at, "−") ? strlen("−") : *at == '-' || *at == '+';
    at += strspn(at, " \t");
    return (gsize)(at - start);
}

static gboolean begins_value(const char *at)
{
    return reading_begins(at + front_length(at));
}

// Whether the word is a unit; if not, it is refused with one that a value in `wanted` could have.
static gboolean is_unit(const Words *words, const char *word, const Unit *wanted, GError **error)
{
    const char *at = words->at;
    g_autoptr(GError) why = NULL;
    g_autoptr(Unit) unit = unit_parse_for(word, wanted, &why);
    const char *near = unit ? NULL : text_nearest(word, fixed, G_N_ELEMENTS(fixed));
    if (unit)
        return TRUE;
    if (near)
        return words_refuse(words, at, error, "`%s` is no unit; did you mean `%s`?", word, near);
    return words_refuse(words, at, error, "%s", why->message);
}

// The unit behind a number, tight or behind a blank.
static gboolean read_unit(Words *words, const Unit *wanted, Piece *piece, GError **error)
{
    gboolean tight = words->at == piece->end;
    if (tight && *words->at == '"') {
        piece->unit = g_strdup("\"");
        piece->unit_at = words->at++;
        return TRUE;
    }
    gsize span = tight || *words->at != '"' ? unit_span(words->at) : 0;
    if (span == 0)
        return TRUE;
    gsize whole = strcspn(words->at, " \t[]\",");
    g_autofree char *word = g_strndup(words->at, MAX(span, whole));
    if (is_fixed(word))
        return TRUE;
    if (!is_unit(words, word, wanted, error))
        return FALSE;
    piece->unit_at = words->at;
    words->at += strlen(word);
    piece->unit = g_steal_pointer(&word);
    return TRUE;
}

// How many values to read, and how they may be written.
typedef struct {
    gsize most;
    gboolean bare;   // without units
    gboolean quoted; // also in quotes
    const Unit *unit; // what they are expected in; NULL: any, or a pure number
} Extent;

static gboolean read_bare(Words *words, Extent extent, Piece *piece, GError **error)
{
    gsize length = 0;
    gsize offset = 0;
    g_autoptr(GError) why = NULL;
    const char *digits = words->at + front_length(words->at);
    if (!reading_span(digits, &length, &offset, &why))
        return words_refuse(words, digits + offset, error, "%s", why->message);
    piece->end = digits + length;
    words->at = piece->end;
    if (*words->at != '"')
        words->at += strspn(words->at, " \t");
    return extent.bare || read_unit(words, extent.unit, piece, error);
}

static gboolean read_piece(Words *words, Extent extent, Piece *piece, GError **error)
{
    *piece = (Piece){.start = words->at};
    if (*words->at == '"') {
        piece->whole = words_text(words, "the value", error);
        return piece->whole != NULL;
    }
    if (!read_bare(words, extent, piece, error))
        return FALSE;
    words->at += strspn(words->at, " \t");
    return TRUE;
}

// What is typed of a value, with the unit of the last one if it has none.
static char *piece_text(const Piece *piece, const Piece *last)
{
    const Piece *from = piece->unit ? piece : last;
    g_autofree char *number =
        piece->whole ? NULL : g_strndup(piece->start, (gsize)(piece->end - piece->start));
    if (piece->whole || !from->unit)
        return g_strdup(piece->whole ? piece->whole : number);
    return g_strconcat(number, " ", from->unit, NULL);
}

// Where a fault in the text of a piece stands in the line.
static const char *piece_fault(const Piece *piece, const Piece *last, gsize column)
{
    if (piece->whole)
        return g_utf8_offset_to_pointer(piece->start + 1, (glong)column);
    const Piece *from = piece->unit ? piece : last;
    return from->unit ? from->unit_at : piece->start;
}

static WordsValue *make_value(const Words *words, const Piece *piece, const Piece *last,
                              const Unit *unit, GError **error)
{
    g_autofree char *text = piece_text(piece, last);
    g_autoptr(GError) why = NULL;
    gsize column = 0;
    WordsValue *value = g_new0(WordsValue, 1);
    value->at = piece->start;
    if (reading_parse(text, unit, &value->reading, &column, &why))
        return value;
    g_free(value);
    words_refuse(words, piece_fault(piece, last, column), error, "%s", why->message);
    return NULL;
}

static gboolean begins_piece(const char *at, Extent extent)
{
    return begins_value(at) || (extent.quoted && *at == '"');
}

static GArray *read_pieces(Words *words, Extent extent, GError **error)
{
    g_autoptr(GArray) pieces = g_array_new(FALSE, FALSE, sizeof(Piece));
    g_array_set_clear_func(pieces, piece_clear);
    if (!begins_piece(words->at, extent)) {
        words_refuse(words, words->at, error, "a value is missing here; write digits");
        return NULL;
    }
    while (pieces->len < extent.most && begins_piece(words->at, extent)) {
        Piece piece;
        if (!read_piece(words, extent, &piece, error)) {
            piece_clear(&piece);
            return NULL;
        }
        g_array_append_val(pieces, piece);
    }
    return g_steal_pointer(&pieces);
}

static GPtrArray *read_values(Words *words, Extent extent, GError **error)
{
    g_autoptr(GArray) pieces = read_pieces(words, extent, error);
    if (!pieces)
        return NULL;
    g_autoptr(GPtrArray) values = g_ptr_array_new_with_free_func(value_free);
    const Piece *last = &g_array_index(pieces, Piece, pieces->len - 1);
    for (guint i = 0; i < pieces->len; i++) {
        WordsValue *value =
            make_value(words, &g_array_index(pieces, Piece, i), last, extent.unit, error);
        if (!value)
            return NULL;
        g_ptr_array_add(values, value);
    }
    return g_steal_pointer(&values);
}

GPtrArray *words_values(Words *words, const Unit *unit, GError **error)
{
    return read_values(words, (Extent){.most = G_MAXSIZE, .quoted = TRUE, .unit = unit}, error);
}

static gboolean read_one(Words *words, const Unit *unit, gboolean bare, Reading *reading,
                         GError **error)
{
    g_autoptr(GPtrArray) values =
        read_values(words, (Extent){.most = 1, .bare = bare, .unit = unit}, error);
    if (!values)
        return FALSE;
    WordsValue *value = values->pdata[0];
    *reading = value->reading;
    value->reading = (Reading){0};
    return TRUE;
}

gboolean words_value(Words *words, const Unit *unit, Reading *reading, GError **error)
{
    return read_one(words, unit, FALSE, reading, error);
}

gboolean words_bare_value(Words *words, const Unit *unit, Reading *reading, GError **error)
{
    return read_one(words, unit, TRUE, reading, error);
}

gboolean words_number(Words *words, Reading *reading, GError **error)
{
    return read_one(words, NULL, TRUE, reading, error);
}

gboolean words_begin_value(const Words *words)
{
    return begins_value(words->at);
}

gboolean words_end_values(const Words *words)
{
    g_autofree char *word = words_peek(words);
    return !word || is_fixed(word) || strchr("\"(", *word);
}
