#define _GNU_SOURCE // memmem
#include "stand.h"
#include <standbook/book/find.h>

static const char TOOL[] = "6f1c2d30-0000-4000-8000-000000000020";
static const char LOT[] = "6f1c2d30-0000-4000-8000-000000000004";
static const char PERSON[] = "6f1c2d30-0000-4000-8000-0000000000aa";

static char *folder, *path;

// A ledger line of the given kind with texts: field, text, field, text, …, NULL.
static char *line_of(const char *kind, const char *ledger, gint64 seq, const char *const *texts)
{
    Entry *entry = entry_new(kind_newest(kind));
    entry->ledger = g_strdup(ledger);
    entry->seq = seq;
    entry->by = g_strdup(PERSON);
    entry->at = g_strdup("2025-03-13T10:01:00");
    for (; *texts; texts += 2)
        entry_set_text(entry, texts[0], texts[1]);
    if (strcmp(kind, "read") == 0)
        entry_set_value(entry, "value", "5979/100", "mm", "59.790");
    if (strcmp(kind, "take") == 0) {
        entry_set_number(entry, "format", 1);
        entry_set_number(entry, "seq", 1);
        json_t *body = json_pack("{s:s,s:s,s:s}", "id", TOOL, "label", "G03", "sort", "bore gauge");
        json_object_set_new(entry->body, "body", body);
    }
    GError *error = NULL;
    char *line = entry_write(entry, &error);
    ck_assert_msg(line != NULL, "%s", error ? error->message : "");
    entry_free(entry);
    return line;
}

static const struct {
    const char *kind, *ledger;
    gint64 seq;
    const char *texts[9];
} story[] = {
    {"tool", SHOP, 1, {"id", TOOL, "label", "G03", "sort", "bore gauge"}},
    {"lot", SHOP, 2, {"id", LOT, "label", "MB-2417-C", "part", "main shells"}},
    {"recall", SHOP, 3, {"lot", LOT, "why", "overlay too thin"}},
    {"take", OTHER_BUILD, 1, {"what", "tool"}},
    {"read", OTHER_BUILD, 2, {"check", "main bore", "tool", TOOL}},
    {"take", BUILD, 1, {"what", "tool"}},
    {"read", BUILD, 2, {"check", "main bore", "tool", TOOL, "note", "100 % of the Edge"}},
    {"fit", BUILD, 3, {"part", "main shells", "use", "new", "lot", LOT, "serial", "0007"}},
    {"look", BUILD, 4, {"check", "free of cracks", "answer", "yes"}},
    {"take", BUILD, 5, {"what", "tool"}},
};

static Book *begin(void)
{
    folder = folder_new();
    path = g_build_filename(folder, "stand.db", NULL);
    Book *book = store_new(path);
    char *lines[G_N_ELEMENTS(story)];
    for (gsize i = 0; i < G_N_ELEMENTS(story); i++)
        lines[i] = line_of(story[i].kind, story[i].ledger, story[i].seq, story[i].texts);
    GError *error = NULL;
    BookOutcome outcome =
        book_append(book, (const char *const *)lines, G_N_ELEMENTS(story), &error);
    ck_assert_msg(outcome == BOOK_TAKEN, "%s", error ? error->message : "");
    for (gsize i = 0; i < G_N_ELEMENTS(story); i++)
        g_free(lines[i]);
    return book;
}

static void end(Book *book)
{
    book_close(book);
    g_free(path);
    folder_remove(folder);
}

// The hits as text: the last digit of the ledger's id and the seq, for each.
static void expect_found(Book *book, BookQuestion question, const char *text, const char *expected)
{
    GError *error = NULL;
    GPtrArray *hits = book_find(book, question, text, &error);
    ck_assert_msg(hits != NULL, "%s", error ? error->message : "");
    GString *found = g_string_new(NULL);
    for (guint i = 0; i < hits->len; i++) {
        const BookHit *hit = hits->pdata[i];
        g_string_append_printf(found, "%s%s:%d", i ? " " : "", hit->ledger + 35, (int)hit->seq);
    }
    ck_assert_str_eq(found->str, expected);
    g_string_free(found, TRUE);
    g_ptr_array_unref(hits);
}

START_TEST(each_question_finds_its_entries)
{
    Book *book = begin();
    expect_found(book, BOOK_FIND_CHECK, "main bore", "2:2 3:2");
    expect_found(book, BOOK_FIND_CHECK, "free of cracks", "2:4");
    expect_found(book, BOOK_FIND_CHECK, "main", "");
    expect_found(book, BOOK_FIND_TOOL, TOOL, "2:2 3:2");
    expect_found(book, BOOK_FIND_LOT, LOT, "2:3");
    expect_found(book, BOOK_FIND_SERIAL, "0007", "2:3");
    expect_found(book, BOOK_FIND_STOCK, LOT, "1:2 1:3");
    expect_found(book, BOOK_FIND_TAKEN, TOOL, "2:1 3:1");
    expect_found(book, BOOK_FIND_WORDS, "OVERLAY TOO", "1:3");
    expect_found(book, BOOK_FIND_WORDS, "100 % of the edge", "2:2");
    expect_found(book, BOOK_FIND_WORDS, "100 _ of", ""); // no sign stands for another
    end(book);
}
END_TEST

static gboolean stands_in(const char *name, const char *bytes)
{
    char *content = NULL;
    gsize length = 0;
    if (!g_file_get_contents(name, &content, &length, NULL))
        return FALSE;
    gboolean found = memmem(content, length, bytes, strlen(bytes)) != NULL;
    g_free(content);
    return found;
}

START_TEST(what_is_erased_of_a_person_is_gone_from_the_file)
{
    Book *book = begin();
    char *log = g_strconcat(path, "-wal", NULL);
    BookPerson before = {.name = "Invented Somebody", .phone = "0000 111"}, none = {0};
    ck_assert(book_person_set(book, PERSON, &before, NULL));
    ck_assert(stands_in(path, before.name));
    BookPerson *person = book_person(book, PERSON, NULL);
    ck_assert_str_eq(person->name, before.name);
    ck_assert_str_eq(person->phone, before.phone);
    ck_assert_ptr_null(person->address);
    book_person_free(person);

    ck_assert(book_person_set(book, PERSON, &none, NULL));
    person = book_person(book, PERSON, NULL);
    ck_assert_ptr_nonnull(person);
    ck_assert_ptr_null(person->name);
    book_person_free(person);
    ck_assert(!stands_in(path, before.name));
    ck_assert(!stands_in(log, before.name));
    g_free(log);
    end(book);
}
END_TEST

static char *name_of(Book *book)
{
    BookPerson *person = book_person(book, PERSON, NULL);
    char *name = g_strdup(person->name);
    book_person_free(person);
    return name;
}

START_TEST(a_name_stands_or_falls_with_its_turn)
{
    Book *book = begin();
    const BookPerson person = {.name = "Invented Somebody"};
    BookTurn *turn = book_turn(book, NULL);
    ck_assert(book_turn_person(turn, PERSON, &person, NULL));
    book_turn_free(turn);
    ck_assert_ptr_null(name_of(book));
    turn = book_turn(book, NULL);
    ck_assert(book_turn_person(turn, PERSON, &person, NULL));
    ck_assert(book_turn_keep(turn, NULL));
    book_turn_free(turn);
    char *name = name_of(book);
    ck_assert_str_eq(name, person.name);
    g_free(name);
    end(book);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {each_question_finds_its_entries,
                                  what_is_erased_of_a_person_is_gone_from_the_file,
                                  a_name_stands_or_falls_with_its_turn};
    return run_suite("find", tests, G_N_ELEMENTS(tests));
}
