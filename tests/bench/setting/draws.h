// The simulated engines written down, so that another program can meet the same ones.
#pragma once
#include "engine.h"
#include <stdio.h>

// One JSON object a line and engine: the job, the engine, the state of its stream of numbers as it
// is set, and what the adviser of the library came to. Lengths in mm, moves in turns.
void draws_write(FILE *file, const Job *job, guint engines, guint64 seed);
