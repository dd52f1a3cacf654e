// What SQLite itself takes for the rows of a log line: the same schema, pragmas and transactions as
// the program's, and nothing else. Measures only; tests/bench/run builds and runs it.
//   bare STORE SCHEMA MADE ROWS      STORE must not be there; SCHEMA files, made.sql or -
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static void end(sqlite3 *db, const char *where)
{
    fprintf(stderr, "%s: %s\n", where, sqlite3_errmsg(db));
    exit(1);
}

static void run(sqlite3 *db, const char *sql)
{
    if (sqlite3_exec(db, sql, NULL, NULL, NULL) != SQLITE_OK)
        end(db, sql);
}

static void run_file(sqlite3 *db, const char *path)
{
    static char text[65536];
    FILE *file = fopen(path, "rb");
    if (!file) {
        perror(path);
        exit(1);
    }
    text[fread(text, 1, sizeof text - 1, file)] = '\0';
    fclose(file);
    run(db, text);
}

static double seconds_of_cpu(void)
{
    struct timespec time;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return (double)time.tv_sec + (double)time.tv_nsec / 1e9;
}

static const char ledger[] = "6f1c2d30-0000-4000-8000-000000000001";

// A reading as the program writes it; the digest is as long as a true one.
static void put(sqlite3 *db, sqlite3_stmt *insert, int seq)
{
    char line[1024], digest[65];
    snprintf(line, sizeof line,
             "{\"ledger\":\"%s\",\"seq\":%d,\"kind\":\"read\",\"format\":1,"
             "\"by\":\"6f1c2d30-0000-4000-8000-0000000000aa\",\"at\":\"2025-03-13T11:36:00\","
             "\"done\":null,\"after\":null,\"body\":{\"check\":\"main bore\",\"place\":[\"1\","
             "\"front\"],\"step\":\"Crank\",\"value\":{\"value\":\"5979/100\",\"unit\":\"mm\","
             "\"typed\":\"59.790\"},\"tool\":\"6f1c2d30-0000-4000-8000-000000000009\"}}",
             ledger, seq);
    snprintf(digest, sizeof digest, "%064d", seq);
    sqlite3_bind_text(insert, 1, ledger, -1, SQLITE_STATIC);
    sqlite3_bind_int(insert, 2, seq);
    sqlite3_bind_text(insert, 3, line, -1, SQLITE_TRANSIENT);
    sqlite3_bind_text(insert, 4, digest, -1, SQLITE_TRANSIENT);
    run(db, "BEGIN IMMEDIATE");
    if (sqlite3_step(insert) != SQLITE_DONE)
        end(db, "insert");
    sqlite3_reset(insert);
    run(db, "COMMIT");
}

int main(int count, char **arguments)
{
    sqlite3 *db;
    sqlite3_stmt *insert;
    if (count < 5) {
        fprintf(stderr, "bare STORE SCHEMA... MADE|- ROWS\n");
        return 2;
    }
    if (sqlite3_open(arguments[1], &db) != SQLITE_OK)
        end(db, arguments[1]);
    sqlite3_db_config(db, SQLITE_DBCONFIG_ENABLE_FKEY, 1, NULL);
    run(db, "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;"
            "PRAGMA recursive_triggers = ON; PRAGMA cell_size_check = ON;"
            "PRAGMA secure_delete = ON; PRAGMA temp_store = MEMORY");
    for (int i = 2; i < count - 1; i++)
        if (strcmp(arguments[i], "-") != 0)
            run_file(db, arguments[i]);
    char *begin = sqlite3_mprintf("INSERT INTO ledger VALUES (%Q, 'build', 'bench')", ledger);
    run(db, begin);
    sqlite3_free(begin);
    if (sqlite3_prepare_v2(db, "INSERT INTO entry (ledger, seq, line, digest) VALUES (?,?,?,?)", -1,
                           &insert, NULL) != SQLITE_OK)
        end(db, "prepare");
    int rows = atoi(arguments[count - 1]);
    double before = seconds_of_cpu();
    for (int seq = 1; seq <= rows; seq++)
        put(db, insert, seq);
    printf("%.4f\n", 1000.0 * (seconds_of_cpu() - before) / rows);
    sqlite3_finalize(insert);
    sqlite3_close(db);
    return 0;
}
