# A whole step withdrawn takes its checks and its signature along.
plan: lash
2001-09-10 08:00 MO withdraw Papers "engine goes back without papers"
? planned 10, added 0, withdrawn 2
? counts: open 8
? left for hand over: 8
