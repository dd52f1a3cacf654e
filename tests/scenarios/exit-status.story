# 0 yes or done, 1 no, 2 misuse, 3 trouble with the store or a file.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 1.50 with G1
? answered: fail · high
? 0 from assess T-1
? 1 from assess T-1 --gate "first start"
? 2 from assess
? 2 from assess T-1 --gate nonsense
? 2 from assess T-1 --nonsense
? 2 from nonsense
? 0 from plan check lash.yaml
? 1 from plan check shop.log
? 3 from plan check nowhere.yaml
? 3 from log T-1 nowhere.log
? 2 from log
? 0 from sheet T-1
? 1 from sheet T-1 completion
? 2 from sheet T-1 nonsense
? 1 from find "nothing like this"
? 0 from history lash
? 0 from trace tool G1
? 2 from trace tool G99
? 0 from verify
? 3 from store new
? 3 from --store nowhere/stand.db verify
? 0 from --help
? 0 from --version
