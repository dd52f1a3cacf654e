#include "subcommands.h"

const Command *command_table(void)
{
    static const Command commands[] = {
        {"plan", "check, keep, list or show plans", plan_run},
        {NULL, NULL, NULL},
    };
    return commands;
}
