// What the subcommands of standbook(1) share: their table, their arguments and their way out.
#pragma once
#include <glib.h>
#include <jansson.h>
#include <standbook/base/error.h>
#include <standbook/base/moment.h>

// Arguments that every subcommand takes. Texts are as typed, in bytes.
typedef struct {
    char *store; // --store, NULL if not given
    gboolean json;
} Common;

// Runs with the arguments behind its name; argv[0] is the name itself. Returns the exit status.
typedef struct {
    const char *name;
    const char *help; // what it does, in a line
    int (*run)(int argc, char **argv, Common *common);
} Command;

// The subcommands in the order of standbook(1); the last has no name.
const Command *command_table(void);

// A subcommand's own arguments, read with GOption. `usage` is what follows the name; `entries` end
// with a NULL name and may be NULL. Returns the arguments that are no options (freed with
// g_strfreev), or NULL when the run is over: with *status 0 after --help, else 2 and the reason
// said.
GStrv arguments_read(int argc, char **argv, Common *common, const char *usage, const char *about,
                     const GOptionEntry *entries, int *status);

// What a subcommand does with its first word: `plan check FILE`.
typedef struct {
    const char *name;  // NULL ends the list
    const char *usage; // what follows it
    guint least, most; // arguments behind it
    int (*run)(GStrv words, Common *common);
    const char *help; // what it does, in a line
} Verb;

// Runs the verb that the first argument names; `about` is what else the help says. Returns the exit
// status.
int verbs_run(int argc, char **argv, Common *common, const Verb *verbs, const char *about);

// `; did you mean `X`?` with the nearest of the names, else `otherwise`. The caller frees with
// g_free.
char *hint_nearest(const char *name, const char *const *names, gsize count,
                   const char *otherwise) G_GNUC_WARN_UNUSED_RESULT;

// Whether there are at least `least` and at most `most` arguments; if not, says so with `usage`.
gboolean arguments_fit(GStrv arguments, guint least, guint most, const char *usage);

// Prints to standard output. What comes from outside goes through text_clean before; see
// say_clean.
void say(const char *format, ...) G_GNUC_PRINTF(1, 2);
// Prints text of several lines, each of them made clean.
void say_clean(const char *text);
// Prints JSON, one value, indented. Control characters are escaped by its own rules.
void say_json(const json_t *json);
// Says an error on standard error, once, and frees it. Returns the exit status: that of a
// STANDBOOK_ERROR, else 3.
int fail_with(GError *error);
// The same for a sentence of our own.
int fail_saying(int status, const char *format, ...) G_GNUC_PRINTF(2, 3);

// A whole file, or standard input for `-`; at most `most` bytes. NULL with STANDBOOK_ERROR_STORE.
GBytes *file_read(const char *path, gsize most, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Writes bytes as they are into a new file, or to standard output for NULL or `-`; never to a
// terminal, as they may hold its escapes. Returns the exit status.
int bytes_out(const char *bytes, gsize length, const char *file);

// What the workshop's wall clock shows.
Moment moment_now(void);
