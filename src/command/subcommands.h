// One function for each subcommand, each in the file of its name.
#pragma once
#include "command.h"

int plan_run(int argc, char **argv, Common *common);
