// What is known of one place: figures, what they rest on, the entries about it.
#pragma once
#include "cells.h"
#include "desk.h"

#include <standbook/judge/assess.h>

// Paints its figures and notes from `row` on. Returns the row behind.
guint about_figures(Canvas *canvas, guint row, const Session *session, const Requirement *made);

// Paints the entries about it, one a line, the newest last. Returns the row behind.
guint about_entries(Canvas *canvas, guint row, const Session *session, const Requirement *made);

// Paints the newest entries of a build, the newest first, `count` of them, from that column on.
void about_build(Canvas *canvas, guint row, guint column, guint count, const Session *session,
                 Moment now);
