#include <standbook/work/named.h>

#include <stdlib.h>
#include <string.h>

// What one word of a question can be found in, and what that counts.
enum { WHOLE_WORD = 5, BEGUN_WORD = 3, LABEL = 3, ELSEWHERE = 1 };

// What a requirement counts by itself, beside the words found in it.
enum { ANY = 20, WORKED_OUT = 4, LIMITED = 2, DONE = 1, JUST_THERE = 4, NO_VALUE = 5 };

static gboolean is_letter(char letter)
{
    return !strchr(" \t,-/()", letter);
}

// The next word of a text and its length; NULL behind the last.
static const char *next_word(const char *text, gsize *length)
{
    while (*text && !is_letter(*text))
        text++;
    for (*length = 0; text[*length] && is_letter(text[*length]);)
        ++*length;
    return *length ? text : NULL;
}

// 2 if the words are equal, 1 if the longer begins with the shorter, else 0.
static guint fits(const char *word, gsize length, const char *text, gsize size)
{
    if (length > size || g_ascii_strncasecmp(word, text, length) != 0)
        return 0;
    return length == size ? 2 : 1;
}

static guint fits_a_word(const char *word, gsize length, const char *text)
{
    guint best = 0;
    gsize size;
    for (const char *at = next_word(text, &size); at; at = next_word(at + size, &size))
        best = MAX(best, fits(word, length, at, size));
    return best;
}

static gboolean is_label(const char *word, gsize length, const Requirement *made)
{
    for (guint i = 0; made->labels && made->labels[i]; i++)
        if (fits(word, length, made->labels[i], strlen(made->labels[i])) == 2)
            return TRUE;
    return FALSE;
}

static gboolean is_axis(const char *word, gsize length, const Requirement *made)
{
    for (guint i = 0; made->check && i < made->check->places->len; i++)
        if (fits(word, length, axis_name(made->check->places->pdata[i]),
                 strlen(axis_name(made->check->places->pdata[i]))))
            return TRUE;
    return FALSE;
}

// What one word counts; 0 if it is nowhere.
static guint word_counts(const char *word, gsize length, const Requirement *made)
{
    if (is_label(word, length, made))
        return LABEL;
    guint named = fits_a_word(word, length, made->name);
    if (named)
        return named == 2 ? WHOLE_WORD : BEGUN_WORD;
    if (g_ascii_isdigit(*word) && length < 3)
        return 0;
    gboolean there = is_axis(word, length, made) ||
                     (made->step && fits_a_word(word, length, made->step->name)) ||
                     (made->answer && fits_a_word(word, length, made->answer));
    return there ? ELSEWHERE : 0;
}

static guint words_in(const char *text)
{
    guint count = 0;
    gsize size;
    for (const char *at = next_word(text, &size); at; at = next_word(at + size, &size))
        count++;
    return count;
}

guint requirement_named(const Requirement *made, const char *words)
{
    guint sum = 0, labels = 0, named = 0; // of all words, of labels, of words of the name
    gsize length;
    for (const char *at = next_word(words, &length); at; at = next_word(at + length, &length)) {
        guint counts = word_counts(at, length, made);
        if (!counts)
            return 0;
        sum += counts;
        gboolean label = is_label(at, length, made);
        labels += label ? 1 : 0;
        named += !label && counts >= BEGUN_WORD ? 1 : 0;
    }
    if (!sum || made->withdrawn)
        return 0;
    gboolean just_there = labels == g_strv_length(made->labels);
    guint other_words = words_in(made->name) - MIN(named, words_in(made->name));
    sum += ANY;
    if (just_there)
        sum += JUST_THERE;
    if (made->entry)
        sum += DONE;
    if (made->check && made->check->formula)
        sum += WORKED_OUT;
    if (made->lower || made->upper)
        sum += LIMITED;
    guint less = other_words + (made->check ? 0 : NO_VALUE);
    return sum > less ? sum - less : 1;
}

typedef struct {
    const Requirement *made;
    guint counts, at;
} Hit;

static int better(const void *one, const void *other)
{
    const Hit *left = one, *right = other;
    if (left->counts != right->counts)
        return left->counts > right->counts ? -1 : 1;
    return left->at < right->at ? -1 : left->at > right->at;
}

GPtrArray *requirements_named(const Assessment *assessment, const char *words, guint most)
{
    g_autoptr(GArray) hits = g_array_new(FALSE, FALSE, sizeof(Hit));
    for (guint i = 0; i < assessment->requirements->len; i++) {
        Hit hit = {.made = assessment->requirements->pdata[i], .at = i};
        hit.counts = requirement_named(hit.made, words);
        if (hit.counts)
            g_array_append_val(hits, hit);
    }
    g_array_sort(hits, better);
    GPtrArray *best = g_ptr_array_new();
    for (guint i = 0; i < MIN(hits->len, most); i++)
        g_ptr_array_add(best, (gpointer)g_array_index(hits, Hit, i).made);
    return best;
}

// The check, bolt set, part or step that an entry names; NULL for none.
static const char *subject_of(const Entry *entry)
{
    static const char *const fields[] = {"check", "tightening", "part", "name", "about"};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++)
        if (kind_field(entry->kind, fields[i]) && entry_text(entry, fields[i]))
            return entry_text(entry, fields[i]);
    return NULL;
}

static gboolean is_its_place(const Requirement *made, const Entry *entry)
{
    gsize count = kind_field(entry->kind, "place") ? entry_list_length(entry, "place") : 0;
    if (count != g_strv_length(made->labels))
        return FALSE;
    for (gsize i = 0; i < count; i++)
        if (strcmp(made->labels[i], entry_list_item(entry, "place", i)) != 0)
            return FALSE;
    return TRUE;
}

const Requirement *requirement_about(const Assessment *assessment, const Entry *entry)
{
    const char *subject = subject_of(entry);
    for (guint i = 0; subject && i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (!made->withdrawn && strcmp(made->name, subject) == 0 && is_its_place(made, entry))
            return made;
    }
    return NULL;
}
