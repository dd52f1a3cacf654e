#include "subcommands.h"

const Command *command_table(void)
{
    static const Command commands[] = {
        {"plan", "check, keep, list or show plans", plan_run},
        {"engine", "the engines the shop knows", engine_run},
        {"build", "the builds of the shop", build_run},
        {"tool", "the tools and their calibrations", tool_run},
        {"log", "take lines of the logbook", log_run},
        {"assess", "judge a build: what is left", assess_run},
        {"sheet", "print a build's sheets", sheet_run},
        {"setting", "the tries of a setting and its next move", setting_run},
        {"find", "find words in everything entered", find_run},
        {"history", "one check over all builds", history_run},
        {"trace", "where a lot went, what a tool was used on", trace_run},
        {"verify", "prove that the store is whole", verify_run},
        {"export", "write a ledger out", export_run},
        {"import", "take a ledger in", import_run},
        {"backup", "copy the store and verify the copy", backup_run},
        {"preload", "how far a bolt is pulled", preload_run},
        {"adapter", "what a wrench with an adapter is set to", adapter_run},
        {"store", "make a store, or make its tables again", store_run},
        {NULL, NULL, NULL},
    };
    return commands;
}
