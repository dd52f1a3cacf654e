// What the harnesses of this folder share. Each has one LLVMFuzzerTestOneInput: libFuzzer calls it
// with made-up bytes, `replay` with those of files. What must hold of an answer is asserted; a
// refusal with a sentence is always right.
#pragma once
#include <glib.h>
#include <glib/gstdio.h>
#include <standbook/base/error.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

// The bytes as a text; what stands behind a NUL is cut. Freed with g_free.
static inline char *fuzz_text(const uint8_t *data, size_t size)
{
    return g_strndup((const char *)data, size);
}

// Ends the program, which is what a fuzzer looks for, unless it holds.
static inline void must(gboolean holds, const char *sentence)
{
    if (holds)
        return;
    fprintf(stderr, "does not hold: %s\n", sentence);
    abort();
}

// A refusal has a sentence of whole characters.
static inline void must_say(GError *error)
{
    must(error && *error->message, "a refusal says why");
    must(g_utf8_validate(error->message, -1, NULL), "a refusal is whole characters");
    g_error_free(error);
}

// Removes every file of a folder that a harness made.
static inline void fuzz_empty(const char *folder)
{
    g_autoptr(GDir) files = g_dir_open(folder, 0, NULL);
    for (const char *name; files && (name = g_dir_read_name(files));) {
        g_autofree char *path = g_build_filename(folder, name, NULL);
        g_unlink(path);
    }
}
