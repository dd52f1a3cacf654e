// The files in schema/, as CMake puts them into the program.
#pragma once

extern const char store_sql[]; // schema/001-store.sql: a new store

enum { STORE_APPLICATION = 0x53744266, STORE_VERSION = 1 }; // the pragmas it sets
