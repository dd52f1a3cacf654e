// Which parts are fitted at a place, and how they are told. Pure.
#pragma once
#include <standbook/work/agenda.h>
#include <standbook/work/entry_words.h>

// How many axes two places have in common; -1 if their labels differ on one of them.
gint common_axes(const Plan *plan, const Requirement *one, const Requirement *other);

// The parts fitted at the place of a check that it has to do with: those that share a label of an
// axis with it and differ in none, and a word (or its beginning) of the name with its name or one
// that it is worked out from; of a part itself, if it is fitted, it alone (const Requirement *).
// The caller frees with g_ptr_array_unref.
GPtrArray *parts_at(const Agenda *agenda, const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;

// Of these parts at a place a line each with lot or serial (char *), those of one name and lot in
// one: `main shells -0.25 grade A, lot MB-2417-C, Hollin Bearing Stores`, `pistons: PS-6003/4`;
// where others of that name are of another lot, `main shells upper -0.25 …`. The caller frees with
// g_ptr_array_unref.
GPtrArray *part_lines(const GPtrArray *parts, const Taken *taken,
                      const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;

// Names with the first labels of their places, each once: `main shells 2 3`. The caller frees with
// g_free.
char *part_names(const GPtrArray *parts) G_GNUC_WARN_UNUSED_RESULT;
