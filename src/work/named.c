#include <standbook/work/named.h>

#include "spoken.h"

#include <string.h>

// What one word of a question can be found in, and what that counts.
enum { WHOLE_WORD = 15, BEGUN_WORD = 13, LABEL = 3, ELSEWHERE = 1 };

// What a requirement counts by itself, beside the words found in it.
enum {
    ANY = 20,
    WORKED_OUT = 4,
    LIMITED = 2,
    DONE = 1,
    JUST_THERE = 4,
    JUST_CALLED = 6,
    EARLIER = 4,
    NOT_THERE = 20,
    NO_VALUE = 5
};

// How a word of a question fits a word that is known.
enum { NOT_AT_ALL, BEGINS, IS };

// Some of the numbers of a naming.
typedef struct {
    guint from, count;
} Span;

// Requirements in turn that have all in common but their places.
typedef struct {
    Span name, there;  // words of the name; of the axes and the step's name
    guint from, count; // of the requirements
} Kin;

// One requirement.
typedef struct {
    const Requirement *made;
    Span labels, answer; // labels as they are; words of the answer and the value
    guint own;           // what it counts by itself
    guint less;          // less that
} Called;

struct Naming {
    GPtrArray *words;    // char *: all words that stand anywhere, folded, each once
    GHashTable *numbers; // word → its number + 1; only while it is made
    GArray *spans;       // guint: numbers of words
    GArray *kin;         // Kin
    GArray *called;      // Called, those withdrawn left out
};

// The words of a question, and how each fits each word that is known.
typedef struct {
    GPtrArray *words; // char *, folded
    guint8 **fits;    // of a word of the question: by the number of a known word
    guint *common;    // what each word counts in what the kin at hand has in common
    gboolean *label;  // whether each is a label somewhere
} Question;

// WORDS ------------------------------------------------------------------------------------------

static gboolean is_letter(char letter)
{
    return letter && !strchr(" \t,;:-/()[]#?!\"", letter);
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

static GPtrArray *words_of(const char *text)
{
    GPtrArray *words = g_ptr_array_new_with_free_func(g_free);
    gsize length;
    for (const char *at = next_word(text, &length); at; at = next_word(at + length, &length))
        g_ptr_array_add(words, g_utf8_casefold(at, (gssize)length));
    return words;
}

// TO BE ASKED ------------------------------------------------------------------------------------

static void add_word(Naming *naming, Span *span, const char *folded)
{
    guint number = GPOINTER_TO_UINT(g_hash_table_lookup(naming->numbers, folded));
    if (!number) {
        g_ptr_array_add(naming->words, g_strdup(folded));
        number = naming->words->len;
        g_hash_table_insert(naming->numbers, naming->words->pdata[number - 1],
                            GUINT_TO_POINTER(number));
    }
    number--;
    if (!span->count)
        span->from = naming->spans->len;
    g_array_append_val(naming->spans, number);
    span->count++;
}

static void add_words(Naming *naming, Span *span, const char *text)
{
    g_autoptr(GPtrArray) words = words_of(text);
    for (guint i = 0; i < words->len; i++)
        add_word(naming, span, words->pdata[i]);
}

static void add_kin(Naming *naming, const Requirement *made)
{
    Kin kin = {.from = naming->called->len};
    add_words(naming, &kin.name, made->name);
    for (guint i = 0; made->check && i < made->check->places->len; i++)
        add_words(naming, &kin.there, axis_name(made->check->places->pdata[i]));
    if (made->step)
        add_words(naming, &kin.there, made->step->name);
    if (made->asked == ASKED_BOLT || made->asked == ASKED_SIGN)
        add_words(naming, &kin.there, asked_words(made->asked));
    g_array_append_val(naming->kin, kin);
}

static void add_called(Naming *naming, const Requirement *made)
{
    Kin *kin = &g_array_index(naming->kin, Kin, naming->kin->len - 1);
    Called called = {.made = made, .own = ANY};
    for (guint i = 0; made->labels && made->labels[i]; i++) {
        g_autofree char *label = g_utf8_casefold(made->labels[i], -1);
        add_word(naming, &called.labels, label);
    }
    g_autofree char *value =
        made->value && made->check ? check_value_words(made->check, made->value) : NULL;
    if (made->answer)
        add_words(naming, &called.answer, made->answer);
    if (value)
        add_words(naming, &called.answer, value);
    if (made->entry)
        called.own += DONE;
    if (made->check && made->check->formula)
        called.own += WORKED_OUT;
    if (made->lower || made->upper)
        called.own += LIMITED;
    called.less = kin->name.count + (made->check ? 0 : NO_VALUE);
    g_array_append_val(naming->called, called);
    kin->count++;
}

static gboolean are_kin(const Requirement *one, const Requirement *other)
{
    return one->step == other->step && one->check == other->check &&
           strcmp(one->name, other->name) == 0;
}

// The check and the place, whatever step asks for it. The caller frees.
static char *place_key(const Requirement *made)
{
    g_autofree char *labels = made->labels ? g_strjoinv("\t", made->labels) : NULL;
    return g_strjoin("\n", made->name, labels, NULL);
}

// What was read last at a place is the answer: the same check there in any other step counts less.
static void put_back_earlier(Naming *naming)
{
    g_autoptr(GHashTable) last = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    g_autoptr(GPtrArray) keys = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < naming->called->len; i++) {
        const Requirement *made = g_array_index(naming->called, Called, i).made;
        g_ptr_array_add(keys, made->check ? place_key(made) : NULL);
        const Requirement *other = made->check ? g_hash_table_lookup(last, keys->pdata[i]) : NULL;
        if (made->check && made->entry && (!other || made->entry > other->entry))
            g_hash_table_insert(last, g_strdup(keys->pdata[i]), (gpointer)made);
    }
    for (guint i = 0; i < naming->called->len; i++) {
        Called *called = &g_array_index(naming->called, Called, i);
        const Requirement *newest =
            keys->pdata[i] ? g_hash_table_lookup(last, keys->pdata[i]) : NULL;
        if (newest && newest != called->made)
            called->own -= EARLIER;
    }
}

Naming *naming_new(const Assessment *assessment)
{
    Naming *naming = g_new0(Naming, 1);
    const Requirement *before = NULL;
    naming->words = g_ptr_array_new_with_free_func(g_free);
    naming->numbers = g_hash_table_new(g_str_hash, g_str_equal);
    naming->spans = g_array_new(FALSE, FALSE, sizeof(guint));
    naming->kin = g_array_new(FALSE, FALSE, sizeof(Kin));
    naming->called = g_array_new(FALSE, FALSE, sizeof(Called));
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (made->withdrawn)
            continue;
        if (!before || !are_kin(before, made))
            add_kin(naming, made);
        add_called(naming, made);
        before = made;
    }
    put_back_earlier(naming);
    g_clear_pointer(&naming->numbers, g_hash_table_unref);
    return naming;
}

void naming_free(Naming *naming)
{
    if (!naming)
        return;
    g_ptr_array_unref(naming->words);
    g_array_unref(naming->spans);
    g_array_unref(naming->kin);
    g_array_unref(naming->called);
    g_free(naming);
}

// ASKING -----------------------------------------------------------------------------------------

// How each known word is fitted by one of a question, or by the number that it says.
static guint8 *fits_of(const Naming *naming, const char *word)
{
    guint8 *fits = g_new0(guint8, naming->words->len + 1);
    const char *number = spoken_number(word);
    gsize length = strlen(word);
    for (guint i = 0; i < naming->words->len; i++) {
        const char *known = naming->words->pdata[i];
        if (*known == *word && strncmp(known, word, length) == 0)
            fits[i] = known[length] ? BEGINS : IS;
        else if (number && strcmp(known, number) == 0)
            fits[i] = IS;
    }
    return fits;
}

static guint best_fit(const Naming *naming, const guint8 *fits, Span span)
{
    guint best = NOT_AT_ALL;
    for (guint i = span.from; i < span.from + span.count; i++)
        best = MAX(best, fits[g_array_index(naming->spans, guint, i)]);
    return best;
}

// Whether one of so many requirements has just this label.
static gboolean is_label(const Naming *naming, const guint8 *fits, guint from, guint count)
{
    for (guint i = from; i < from + count; i++)
        if (best_fit(naming, fits, g_array_index(naming->called, Called, i).labels) == IS)
            return TRUE;
    return FALSE;
}

// Takes over the words.
static void question_init(Question *question, const Naming *naming, GPtrArray *words)
{
    question->words = words;
    question->fits = g_new0(guint8 *, question->words->len + 1);
    question->common = g_new0(guint, question->words->len + 1);
    question->label = g_new0(gboolean, question->words->len + 1);
    for (guint w = 0; w < question->words->len; w++) {
        question->fits[w] = fits_of(naming, question->words->pdata[w]);
        question->label[w] = is_label(naming, question->fits[w], 0, naming->called->len);
    }
}

static void question_clear(Question *question)
{
    for (guint w = 0; w < question->words->len; w++)
        g_free(question->fits[w]);
    g_free(question->fits);
    g_free(question->common);
    g_free(question->label);
    g_ptr_array_unref(question->words);
}

// A number of one or two digits is a label, or a whole word of the name or answer.
static gboolean is_small_number(const char *word)
{
    return g_ascii_isdigit(*word) && strlen(word) < 3;
}

// What a word counts in what the places of a kin have in common. Where a place of the kin
// has it as its label it must be all of a word.
static guint common_counts(const Naming *naming, const Question *question, guint word,
                           const Kin *kin)
{
    const guint8 *fits = question->fits[word];
    guint named = best_fit(naming, fits, kin->name);
    if (named == IS)
        return WHOLE_WORD;
    if (question->label[word] && is_label(naming, fits, kin->from, kin->count))
        return 0;
    if (named == BEGINS)
        return BEGUN_WORD;
    gboolean small = is_small_number(question->words->pdata[word]);
    return !small && best_fit(naming, fits, kin->there) ? ELSEWHERE : 0;
}

// Looks for all words in what the places of a kin have in common.
static void look_at(const Naming *naming, Question *question, const Kin *kin)
{
    for (guint w = 0; w < question->words->len; w++)
        question->common[w] = common_counts(naming, question, w, kin);
}

// What one word counts of a place of the kin looked at; 0 if it is nowhere.
static guint word_counts(const Naming *naming, const Question *question, guint word,
                         const Called *called)
{
    if (question->common[word])
        return question->common[word];
    guint fit = best_fit(naming, question->fits[word], called->answer);
    gboolean whole = is_small_number(question->words->pdata[word]);
    return fit == IS || (fit == BEGINS && !whole) ? ELSEWHERE : 0;
}

static guint counts_of(const Naming *naming, const Question *question, const Kin *kin,
                       const Called *called)
{
    guint sum = called->own, less = called->less; // of all words; where a label stands elsewhere
    guint labels = 0, named = 0;                  // how many are labels, how many of the name
    for (guint w = 0; w < question->words->len; w++) {
        gboolean label = best_fit(naming, question->fits[w], called->labels) == IS;
        guint counts = label ? LABEL : word_counts(naming, question, w, called);
        if (!counts)
            return 0;
        sum += counts;
        less += question->label[w] && !label && counts < WHOLE_WORD ? NOT_THERE : 0;
        labels += label ? 1 : 0;
        named += !label && counts >= BEGUN_WORD ? 1 : 0;
    }
    if (labels == called->labels.count)
        sum += JUST_THERE;
    if (called->made->check && named >= kin->name.count)
        sum += JUST_CALLED;
    less -= MIN(named, kin->name.count);
    return sum > less ? sum - less : 1;
}

typedef struct {
    const Requirement *made;
    guint counts;
} Hit;

// Of bolts of one set as good as each other what was done last is the answer: the last stage.
static gboolean is_newer(const Requirement *one, const Requirement *other)
{
    return one->asked == ASKED_BOLT && other->asked == ASKED_BOLT &&
           strcmp(one->name, other->name) == 0 && one->entry > other->entry;
}

static gboolean is_better(Hit one, Hit other)
{
    return one.counts > other.counts ||
           (one.counts == other.counts && is_newer(one.made, other.made));
}

// Puts it behind those that are as good.
static void add_hit(GArray *hits, Hit hit, guint most)
{
    guint at = hits->len;
    while (at > 0 && is_better(hit, g_array_index(hits, Hit, at - 1)))
        at--;
    if (at >= most)
        return;
    g_array_insert_val(hits, at, hit);
    g_array_set_size(hits, MIN(hits->len, most));
}

// Takes over the words.
static GArray *hits_of(const Naming *naming, GPtrArray *words, guint most)
{
    Question question;
    GArray *hits = g_array_new(FALSE, FALSE, sizeof(Hit));
    question_init(&question, naming, words);
    for (guint k = 0; question.words->len && k < naming->kin->len; k++) {
        const Kin *kin = &g_array_index(naming->kin, Kin, k);
        look_at(naming, &question, kin);
        for (guint i = kin->from; i < kin->from + kin->count; i++) {
            const Called *called = &g_array_index(naming->called, Called, i);
            Hit hit = {called->made, counts_of(naming, &question, kin, called)};
            if (hit.counts)
                add_hit(hits, hit, most);
        }
    }
    question_clear(&question);
    return hits;
}

// The words that may name something; NULL if they are all, or none.
static GPtrArray *naming_words(const char *text)
{
    GPtrArray *words = words_of(text);
    guint all = words->len;
    for (guint i = all; i-- > 0;)
        if (spoken_names_nothing(words->pdata[i]))
            g_ptr_array_remove_index(words, i);
    if (words->len > 0 && words->len < all)
        return words;
    g_ptr_array_unref(words);
    return NULL;
}

GPtrArray *naming_asked(const Naming *naming, const char *words, guint most)
{
    GPtrArray *best = g_ptr_array_new();
    g_autoptr(GArray) hits = hits_of(naming, words_of(words), most);
    GPtrArray *fewer = hits->len == 0 ? naming_words(words) : NULL;
    if (fewer) {
        g_array_unref(hits);
        hits = hits_of(naming, fewer, most);
    }
    for (guint i = 0; i < hits->len; i++)
        g_ptr_array_add(best, (gpointer)g_array_index(hits, Hit, i).made);
    return best;
}

GPtrArray *requirements_named(const Assessment *assessment, const char *words, guint most)
{
    g_autoptr(Naming) naming = naming_new(assessment);
    return naming_asked(naming, words, most);
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

gboolean entry_is_about(const Entry *entry, const Requirement *made)
{
    if (g_strcmp0(subject_of(entry), made->name) != 0)
        return FALSE;
    gsize labels = kind_field(entry->kind, "place") ? entry_list_length(entry, "place") : 0;
    for (gsize i = 0; i < labels; i++)
        if (!g_strv_contains((const char *const *)made->labels, entry_list_item(entry, "place", i)))
            return FALSE;
    return made->asked != ASKED_BOLT || !kind_field(entry->kind, "bolts") ||
           entry_list_has(entry, "bolts", made->place);
}

char *named_title(const Requirement *made)
{
    g_autofree char *title = requirement_title(made);
    if (made->asked != ASKED_SIGN)
        return g_steal_pointer(&title);
    return g_strconcat(made->entry ? "signed " : "sign ", title, NULL);
}
