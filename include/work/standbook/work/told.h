// What is told of one place when somebody asks for it, beside its figures. Pure.
#pragma once
#include <standbook/work/agenda.h>
#include <standbook/work/entry_words.h>

// In turn, each as a line: what it was worked out from and with which gauges, by whom; what is
// fitted there, with its lot or serial; what stands about its doubts and who decided (char *). The
// caller frees with g_ptr_array_unref.
GPtrArray *told_lines(const Agenda *agenda, const Taken *taken,
                      const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
