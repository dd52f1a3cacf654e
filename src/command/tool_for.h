// standbook tool for: which gauges of the shop can settle a place.
#pragma once
#include "command.h"

// The arguments are a build's number and a place as it is printed: `bore[4, T, mid]`. Status 1
// where no gauge settles it.
int tool_for(GStrv words, Common *common);
