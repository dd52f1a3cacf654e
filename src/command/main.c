#include "command.h"
#include "store.h"
#include "subcommands.h"

#include <standbook/base/text.h>
#include <stdio.h>
#include <string.h>

static const char about[] =
    "The logbook beside the engine stand.\n"
    "\n"
    "The maker's current service data, local codes and licensed practice come first.\n"
    "\n";

static void say_commands(const Common *common)
{
    g_autofree char *store = store_path(common), *shown = text_path(store);
    say("Usage: standbook [--store FILE]\n"
        "       standbook [--store FILE] [--json] COMMAND ...\n\n%s"
        "standbook alone opens the front end at the stand: readings, bolts, signatures.\n"
        "The store is one file, %s;\n"
        "--store FILE or STANDBOOK_STORE in the environment names another.\n\n",
        about, shown);
    for (const Command *command = command_table(); command->name; command++)
        say("  %-10s %s\n", command->name, command->help);
    say("\nstandbook COMMAND --help says more. Exit status: 0 yes or done, 1 no, 2 misuse,\n"
        "3 trouble with the store or a file.\n");
}

static const Command *command_find(const char *name)
{
    for (const Command *command = command_table(); command->name; command++)
        if (strcmp(command->name, name) == 0)
            return command;
    return NULL;
}

static int run_command(int argc, char **argv, Common *common)
{
    const Command *command = command_find(argv[0]);
    if (command)
        return command->run(argc, argv, common);
    if (!g_utf8_validate(argv[0], -1, NULL))
        return fail_saying(2, "there is no command `%s`; standbook --help names them", argv[0]);
    GPtrArray *names = g_ptr_array_new();
    for (const Command *each = command_table(); each->name; each++)
        g_ptr_array_add(names, (gpointer)each->name);
    const char *nearest = text_nearest(argv[0], (const char *const *)names->pdata, names->len);
    g_ptr_array_unref(names);
    if (nearest)
        return fail_saying(2, "there is no command `%s`; did you mean `%s`?", argv[0], nearest);
    return fail_saying(2, "there is no command `%s`; standbook --help names them", argv[0]);
}

// Reads what stands before the command's name. Returns how many arguments that were, or -1 with
// the exit status.
static int before_command(int argc, char **argv, Common *common, int *status)
{
    int at = 1;
    *status = 0;
    for (; at < argc && argv[at][0] == '-'; at++) {
        if (strcmp(argv[at], "--json") == 0) {
            common->json = TRUE;
        } else if (strcmp(argv[at], "--store") == 0 && at + 1 < argc) {
            g_free(common->store);
            common->store = g_strdup(argv[++at]);
        } else if (g_str_has_prefix(argv[at], "--store=")) {
            g_free(common->store);
            common->store = g_strdup(argv[at] + strlen("--store="));
        } else if (strcmp(argv[at], "--help") == 0 || strcmp(argv[at], "-h") == 0) {
            say_commands(common);
            return -1;
        } else if (strcmp(argv[at], "--version") == 0) {
            say("standbook %s\n", STANDBOOK_VERSION);
            return -1;
        } else {
            *status = fail_saying(2, "there is no option `%s`; see standbook --help", argv[at]);
            return -1;
        }
    }
    return at;
}

int main(int argc, char **argv)
{
    Common common = {0};
    int status;
    int at = before_command(argc, argv, &common, &status);
    if (at >= argc)
        status = front_run(&common);
    else if (at > 0)
        status = run_command(argc - at, argv + at, &common);
    g_free(common.store);
    if (fflush(stdout) != 0 || ferror(stdout))
        status = fail_saying(3, "the answer cannot be written out");
    return status;
}
