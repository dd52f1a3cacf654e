# Control characters, characters that turn or hide text, and broken UTF-8: refused by their column,
# and never sent to the terminal.
plan: lash
2001-09-10 08:00 MO pick up Set
note "red \x1b[31m alarm"
? refused: column 11: a hidden character (U+001B); take it out
note "bell \x07"
? refused: column 12: a hidden character (U+0007); take it out
note "nul \x00 byte"
? refused: a hidden character (U+0000); take it out
note "turned \xe2\x80\xae round"
? refused: a hidden character (U+202E); take it out
note "broken \xff"
? refused: this is not UTF-8 (byte 0xFF)
note "cut off \xc3"
? refused: this is not UTF-8 (byte 0xC3)
note "too long a form \xc0\xaf"
? refused: this is not UTF-8 (byte 0xC0)
note "half of a pair \xed\xa0\x80"
? refused: this is not UTF-8
read lash\x1b]0;title\x07 0.15 with G1
? refused: a hidden character (U+001B)
note "not closed
? refused: column 6: this quote is not closed
note "Ø 50, naïve, 5 µm: all of these are taken"
? 0 from sheet T-1 record
? says: Ø 50, naïve, 5 µm
