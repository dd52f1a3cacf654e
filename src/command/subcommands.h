// One function for each subcommand.
#pragma once
#include "command.h"

int backup_run(int argc, char **argv, Common *common);
int export_run(int argc, char **argv, Common *common);
int import_run(int argc, char **argv, Common *common);
int plan_run(int argc, char **argv, Common *common);
int store_run(int argc, char **argv, Common *common);
int verify_run(int argc, char **argv, Common *common);
