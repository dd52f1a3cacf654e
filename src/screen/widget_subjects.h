// Lines on what is asked for, subject by subject (work/subject.h). Pure.
#pragma once
#include "cells.h"

#include <standbook/work/subject.h>

// What stands there in words: the values of its places, `7.5 ±0.7`, how many bolts are through; of
// what is open `not read`. The caller frees with g_free.
char *subject_words(const Agenda *agenda, const Subject *subject) G_GNUC_WARN_UNUSED_RESULT;

// A line in the same columns of what is no subject: mark, what it is, what is said of it.
void line_paint(Canvas *canvas, guint row, Verdict verdict, const char *what, const char *said);

// A line: mark, name, what stands there, and behind it a strip between its limits where a value is
// not settled, else, and of a finding that waits, the note.
void subject_paint(Canvas *canvas, guint row, const Agenda *agenda, const Subject *subject);
