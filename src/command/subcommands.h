// One function for each subcommand.
#pragma once
#include "command.h"

int adapter_run(int argc, char **argv, Common *common);
int assess_run(int argc, char **argv, Common *common);
int backup_run(int argc, char **argv, Common *common);
int build_run(int argc, char **argv, Common *common);
int engine_run(int argc, char **argv, Common *common);
int export_run(int argc, char **argv, Common *common);
int find_run(int argc, char **argv, Common *common);
int history_run(int argc, char **argv, Common *common);
int import_run(int argc, char **argv, Common *common);
int log_run(int argc, char **argv, Common *common);
int plan_run(int argc, char **argv, Common *common);
int preload_run(int argc, char **argv, Common *common);
int setting_run(int argc, char **argv, Common *common);
int sheet_run(int argc, char **argv, Common *common);
int store_run(int argc, char **argv, Common *common);
int tool_run(int argc, char **argv, Common *common);
int trace_run(int argc, char **argv, Common *common);
int verify_run(int argc, char **argv, Common *common);

// What `standbook` does without a subcommand: opens the front end.
int front_run(Common *common);
