-- H2 stores its sequence on disk for each 32 articles, by a transaction of its own that WRITE_DELAY=0 writes at once: a
-- third of the time that a load took in the database. Its numbers are those of all connections, so their order stays
-- that of the articles; a process that is killed leaves out some.
ALTER TABLE article ALTER COLUMN place SET CACHE 10000;
