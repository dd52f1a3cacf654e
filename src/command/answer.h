// What the answering subcommands share.
#pragma once
#include "store.h"
#include <standbook/sheet/sheet.h>

// Prints a document as text, or as JSON.
void say_document(const Document *document, gboolean json);

// Says that the plan has no such gate, and the nearest or all it has. Returns the exit status.
int no_gate(const Opened *opened, const char *gate);
