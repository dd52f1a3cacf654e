#include "subcommands.h"

const Command *command_table(void)
{
    static const Command commands[] = {
        {"plan", "check, keep, list or show plans", plan_run},
        {"verify", "prove that the store is whole", verify_run},
        {"export", "write a ledger out", export_run},
        {"import", "take a ledger in", import_run},
        {"backup", "copy the store and verify the copy", backup_run},
        {"store", "make a store, or make its tables again", store_run},
        {NULL, NULL, NULL},
    };
    return commands;
}
