// What the answering subcommands share.
#pragma once
#include "store.h"
#include <standbook/sheet/sheet.h>

// Prints a document as text, or as JSON.
void say_document(const Document *document, gboolean json);
