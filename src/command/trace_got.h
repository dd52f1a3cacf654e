// What bolts really got from a wrench that was found wrong, over all builds.
#pragma once
#include <standbook/sheet/document.h>
#include <standbook/work/opened.h>

// Puts a table of it into the document, a row for the bolts of a set that got the same and stand
// the same; nothing where there is none. `numbers` are those of the builds that know what the tool
// (by its id) gave, `since` is a day or NULL. FALSE with an error if a build cannot be read.
gboolean trace_got(Document *document, Book *book, const GPtrArray *numbers, const char *tool,
                   const char *since, GError **error);
