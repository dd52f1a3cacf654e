#include <standbook/work/named.h>

#include <stdlib.h>
#include <string.h>

// What one word of a question can be found in, and what that counts.
enum { WHOLE_WORD = 5, BEGUN_WORD = 3, LABEL = 3, ELSEWHERE = 1 };

// What a requirement counts by itself, beside the words found in it.
enum { ANY = 20, WORKED_OUT = 4, LIMITED = 2, DONE = 1, JUST_THERE = 4, NO_VALUE = 5 };

// A word of a question, and where it stands in what the requirements of one check, bolt set, part
// or step have in common.
typedef struct {
    const char *text;
    gsize length;
    guint named;    // in the name: 2 as a whole word, 1 as the beginning of one, else 0
    gboolean there; // in an axis or in the step's name
    gboolean known; // both were looked for
} Word;

typedef struct {
    GArray *words;    // Word
    const char *name; // of those for which the words stand; NULL: of none yet
    const PlanStep *step;
    const PlanCheck *check;
} Question;

static gboolean is_letter(char letter)
{
    switch (letter) {
    case '\0':
    case ' ':
    case '\t':
    case ',':
    case '-':
    case '/':
    case '(':
    case ')':
        return FALSE;
    default:
        return TRUE;
    }
}

// The next word of a text and its length; NULL behind the last.
static const char *next_word(const char *text, gsize *length)
{
    while (*text && !is_letter(*text))
        text++;
    for (*length = 0; is_letter(text[*length]);)
        ++*length;
    return *length ? text : NULL;
}

// 2 if the words are equal, 1 if the other begins with the word, else 0.
static guint fits(const Word *word, const char *text, gsize size)
{
    if (word->length > size || g_ascii_tolower(*text) != g_ascii_tolower(*word->text) ||
        g_ascii_strncasecmp(word->text, text, word->length) != 0)
        return 0;
    return word->length == size ? 2 : 1;
}

static guint fits_a_word(const Word *word, const char *text)
{
    guint best = 0;
    gsize size;
    for (const char *at = next_word(text, &size); at; at = next_word(at + size, &size))
        best = MAX(best, fits(word, at, size));
    return best;
}

static gboolean is_label(const Word *word, const Requirement *made)
{
    for (guint i = 0; made->labels && made->labels[i]; i++)
        if (fits(word, made->labels[i], strlen(made->labels[i])) == 2)
            return TRUE;
    return FALSE;
}

static gboolean is_axis(const Word *word, const PlanCheck *check)
{
    for (guint i = 0; check && i < check->places->len; i++) {
        const char *name = axis_name(check->places->pdata[i]);
        if (fits(word, name, strlen(name)))
            return TRUE;
    }
    return FALSE;
}

static guint words_in(const char *text)
{
    guint count = 0;
    gsize size;
    for (const char *at = next_word(text, &size); at; at = next_word(at + size, &size))
        count++;
    return count;
}

static void question_init(Question *question, const char *words)
{
    gsize length;
    *question = (Question){.words = g_array_new(FALSE, FALSE, sizeof(Word))};
    for (const char *at = next_word(words, &length); at; at = next_word(at + length, &length)) {
        const Word word = {.text = at, .length = length};
        g_array_append_val(question->words, word);
    }
}

// What the words were found in holds for this requirement, or it is to be looked for anew. Those
// that have it in common follow each other in an assessment, so that is seldom.
static void look_at(Question *question, const Requirement *made)
{
    if (question->name && question->step == made->step && question->check == made->check &&
        strcmp(question->name, made->name) == 0)
        return;
    question->name = made->name;
    question->step = made->step;
    question->check = made->check;
    for (guint i = 0; i < question->words->len; i++)
        g_array_index(question->words, Word, i).known = FALSE;
}

static void look_for(Word *word, const Requirement *made)
{
    if (word->known)
        return;
    word->known = TRUE;
    word->named = fits_a_word(word, made->name);
    word->there = !word->named && (is_axis(word, made->check) ||
                                   (made->step && fits_a_word(word, made->step->name) > 0));
}

// What one word counts that is no label; 0 if it is nowhere.
static guint word_counts(Word *word, const Requirement *made)
{
    look_for(word, made);
    if (word->named)
        return word->named == 2 ? WHOLE_WORD : BEGUN_WORD;
    if (g_ascii_isdigit(*word->text) && word->length < 3)
        return 0;
    return word->there || (made->answer && fits_a_word(word, made->answer)) ? ELSEWHERE : 0;
}

// What the requirement itself counts, where so many words are labels and so many of its name.
static guint own_counts(const Requirement *made, guint sum, guint labels, guint named)
{
    guint words = words_in(made->name), other_words = words - MIN(named, words);
    guint less = other_words + (made->check ? 0 : NO_VALUE);
    sum += ANY;
    if (labels == g_strv_length(made->labels))
        sum += JUST_THERE;
    if (made->entry)
        sum += DONE;
    if (made->check && made->check->formula)
        sum += WORKED_OUT;
    if (made->lower || made->upper)
        sum += LIMITED;
    return sum > less ? sum - less : 1;
}

static guint counts_of(Question *question, const Requirement *made)
{
    guint sum = 0, labels = 0, named = 0; // of all words, of labels, of words of the name
    if (made->withdrawn || question->words->len == 0)
        return 0;
    look_at(question, made);
    for (guint i = 0; i < question->words->len; i++) {
        Word *word = &g_array_index(question->words, Word, i);
        gboolean label = is_label(word, made);
        guint counts = label ? LABEL : word_counts(word, made);
        if (!counts)
            return 0;
        sum += counts;
        labels += label ? 1 : 0;
        named += !label && counts >= BEGUN_WORD ? 1 : 0;
    }
    return own_counts(made, sum, labels, named);
}

guint requirement_named(const Requirement *made, const char *words)
{
    Question question;
    question_init(&question, words);
    guint counts = counts_of(&question, made);
    g_array_unref(question.words);
    return counts;
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
    Question question;
    question_init(&question, words);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        Hit hit = {.made = assessment->requirements->pdata[i], .at = i};
        hit.counts = counts_of(&question, hit.made);
        if (hit.counts)
            g_array_append_val(hits, hit);
    }
    g_array_unref(question.words);
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

const Requirement *requirement_about(const Assessment *assessment, const Entry *entry)
{
    const char *subject = subject_of(entry);
    for (guint i = 0; subject && i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (!made->withdrawn && strcmp(made->name, subject) == 0 &&
            entry_is_at(entry, (const char *const *)made->labels))
            return made;
    }
    return NULL;
}
