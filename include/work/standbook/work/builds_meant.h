// Which builds the words of a question mean: `main caps TL-0412`, `shells marigold`. Pure.
#pragma once
#include <standbook/work/named.h>
#include <standbook/work/shop.h>

// The words without those that are the number of a build or the serial of an engine, or what
// stands behind the stroke in that, however spelled; the builds meant by these go into `numbers`
// (char *, for g_free), none where no word is one. A number of one or two digits names no build.
// The caller frees with g_free.
char *builds_meant(const Shop *shop, const char *words,
                   GPtrArray *numbers) G_GNUC_WARN_UNUSED_RESULT;

// The ids of the builds that one word names: by number or serial, or as a word of what their engine
// is called (its note up to a comma), three letters at least (const char *, of the shop). The
// caller frees with g_ptr_array_unref.
GPtrArray *builds_named(const Shop *shop, const char *word) G_GNUC_WARN_UNUSED_RESULT;

// naming_asked of the build of that number; where nothing there is called all the words, without
// those that its engine is called.
GPtrArray *build_asked(const Shop *shop, const char *number, const Naming *naming,
                       const char *words, guint most) G_GNUC_WARN_UNUSED_RESULT;
