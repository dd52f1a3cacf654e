// The files in schema/, as CMake puts them into the program.
#pragma once

extern const char store_sql[];       // schema/001-store.sql: a new store
extern const char projections_sql[]; // schema/projections.sql: its projections, empty
extern const char made_sql[];        // schema/made.sql: how they are made, at each opening

enum { STORE_APPLICATION = 0x53744266, STORE_VERSION = 1 }; // the pragmas it sets
