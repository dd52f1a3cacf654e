#include "store.h"
#include <standbook/book/find.h>

static const Sql questions[] = {
    [BOOK_FIND_WORDS] = SQL_FIND_WORDS,   [BOOK_FIND_CHECK] = SQL_FIND_CHECK,
    [BOOK_FIND_TOOL] = SQL_FIND_TOOL,     [BOOK_FIND_LOT] = SQL_FIND_LOT,
    [BOOK_FIND_SERIAL] = SQL_FIND_SERIAL, [BOOK_FIND_STOCK] = SQL_FIND_STOCK,
    [BOOK_FIND_TAKEN] = SQL_FIND_TAKEN,
};

static void hit_free(gpointer data)
{
    BookHit *hit = data;
    g_free(hit->ledger);
    g_free(hit);
}

GPtrArray *book_find(Book *book, BookQuestion question, const char *text, GError **error)
{
    g_autoptr(GPtrArray) hits = g_ptr_array_new_with_free_func(hit_free);
    g_autoptr(sqlite3_stmt) stmt = statement(book, questions[question], &text, 1);
    int answer;
    while ((answer = statement_step(book, stmt, error)) == SQLITE_ROW) {
        BookHit *hit = g_new0(BookHit, 1);
        hit->ledger = g_strdup((const char *)sqlite3_column_text(stmt, 0));
        hit->seq = sqlite3_column_int64(stmt, 1);
        g_ptr_array_add(hits, hit);
    }
    return answer == SQLITE_DONE ? g_steal_pointer(&hits) : NULL;
}

static void value_free(gpointer data)
{
    BookValue *value = data;
    g_free(value->ledger);
    g_free(value->value);
    g_free(value->unit);
    g_free(value);
}

GPtrArray *book_values(Book *book, const char *check, GError **error)
{
    g_autoptr(GPtrArray) values = g_ptr_array_new_with_free_func(value_free);
    g_autoptr(sqlite3_stmt) stmt = statement(book, SQL_VALUES, &check, 1);
    int answer;
    while ((answer = statement_step(book, stmt, error)) == SQLITE_ROW) {
        BookValue *value = g_new0(BookValue, 1);
        char **fields[] = {&value->ledger, &value->value, &value->unit};
        for (int i = 0; i < 3; i++)
            *fields[i] = g_strdup((const char *)sqlite3_column_text(stmt, i));
        g_ptr_array_add(values, value);
    }
    return answer == SQLITE_DONE ? g_steal_pointer(&values) : NULL;
}

gint64 book_tool_uses(Book *book, const char *tool, const char *calibration)
{
    const char *values[] = {tool, calibration};
    g_autoptr(sqlite3_stmt) stmt = statement(book, SQL_TOOL_USES, values, 2);
    return statement_step(book, stmt, NULL) == SQLITE_ROW ? sqlite3_column_int64(stmt, 0) : -1;
}

gint64 book_lot_fitted(Book *book, const char *lot)
{
    g_autoptr(sqlite3_stmt) stmt = statement(book, SQL_LOT_FITTED, &lot, 1);
    return statement_step(book, stmt, NULL) == SQLITE_ROW ? sqlite3_column_int64(stmt, 0) : -1;
}

// PEOPLE ------------------------------------------------------------------------------------------

BookPerson *book_person(Book *book, const char *id, GError **error)
{
    g_autoptr(sqlite3_stmt) stmt = statement(book, SQL_PERSON, &id, 1);
    int answer = statement_step(book, stmt, error);
    if (answer != SQLITE_ROW && answer != SQLITE_DONE)
        return NULL;
    BookPerson *person = g_new0(BookPerson, 1);
    char **fields[] = {&person->name, &person->address, &person->phone};
    for (int i = 0; answer == SQLITE_ROW && i < 3; i++)
        *fields[i] = g_strdup((const char *)sqlite3_column_text(stmt, i));
    return person;
}

void book_person_free(BookPerson *person)
{
    if (!person)
        return;
    g_free(person->name);
    g_free(person->address);
    g_free(person->phone);
    g_free(person);
}

static gboolean replace(Book *book, const char *id, const BookPerson *person, GError **error)
{
    const char *values[] = {id, person->name, person->address, person->phone};
    g_autoptr(sqlite3_stmt) erase = statement(book, SQL_PERSON_ERASE, &id, 1);
    if (statement_step(book, erase, error) != SQLITE_DONE)
        return FALSE;
    if (!person->name && !person->address && !person->phone)
        return TRUE;
    g_autoptr(sqlite3_stmt) add = statement(book, SQL_PERSON_ADD, values, 4);
    return statement_step(book, add, error) == SQLITE_DONE;
}

gboolean book_turn_person(BookTurn *turn, const char *id, const BookPerson *person, GError **error)
{
    gboolean replaced = replace(turn->book, id, person, error);
    turn->broken = turn->broken || !replaced;
    return replaced;
}

gboolean book_person_set(Book *book, const char *id, const BookPerson *person, GError **error)
{
    g_autoptr(BookTurn) turn = book_turn(book, error);
    if (!turn || !book_turn_person(turn, id, person, error) || !book_turn_keep(turn, error))
        return FALSE;
    // What was erased would otherwise stay in the log until it is next moved into the file.
    if (turn_file_take(book->turn_file, TURN_MILLISECONDS)) {
        sqlite3_wal_checkpoint_v2(book->db, "main", SQLITE_CHECKPOINT_TRUNCATE, NULL, NULL);
        turn_file_give(book->turn_file);
    }
    return TRUE;
}
