-- The pressure that an article may have at most, as a number: read out of the text by the library when the article is
-- loaded. It holds for the text in rated_read only: whoever writes to rated by SQL makes it void.
ALTER TABLE article ADD COLUMN rated_bar DOUBLE PRECISION;
ALTER TABLE article ADD COLUMN rated_read VARCHAR(400);

-- What is there to be sold, for the queries of a shop's own system: a row for each article and profile. It leaves out
-- what cannot do; whether parts suit a job is judged by the library alone.
CREATE VIEW suitable_parts AS
SELECT
  a.number,
  a.kind,
  a.name,
  COALESCE(t.word, a.profile) AS profile,
  a.one_end,
  a.other_end,
  CASE WHEN a.rated = a.rated_read THEN a.rated_bar END AS rated_bar,
  a.price,
  s.currency,
  a.quantity - a.reserved AS available
FROM article a
CROSS JOIN shop s
LEFT JOIN article_takes t ON t.number = a.number
WHERE a.quantity > a.reserved AND NOT COALESCE(a.already_there, FALSE);

-- Catalogues and reference sets that answers were given with, each once, by the SHA-256 of its text.
CREATE TABLE kept_text (
  sha256 VARCHAR(64) PRIMARY KEY,
  text TEXT NOT NULL
);

-- Answers kept for a claim. The answer is JSON as airfit-files writes it, but for the two texts that stand in
-- kept_text.
CREATE TABLE kept_answer (
  number VARCHAR(100) PRIMARY KEY,
  kept_on DATE NOT NULL,
  library VARCHAR(100) NOT NULL,
  sha256 VARCHAR(64) NOT NULL,
  question_sha256 VARCHAR(64) NOT NULL,
  set_sha256 VARCHAR(64) NOT NULL REFERENCES kept_text,
  catalogue_sha256 VARCHAR(64) NOT NULL REFERENCES kept_text,
  answer_sha256 VARCHAR(64) NOT NULL,
  answer TEXT NOT NULL
);

CREATE INDEX kept_answer_by_day ON kept_answer (kept_on);
