-- What is told apart from the record, other bays' jobs, and the list of jobs. People, rights, keys and seals need no
-- table: they are entries of the book's own chain (job 0).

-- Texts that may have to go one day: customer data, and what a PIN is checked against. The record names such a text by
-- SHA-256(salt, text) only; salt and text go together, and then nobody can find out the text by trying.
CREATE TABLE apart (
    hash BLOB NOT NULL PRIMARY KEY CHECK (length(hash) = 32),
    salt BLOB NOT NULL CHECK (length(salt) = 32),
    text TEXT NOT NULL
) STRICT;

CREATE TRIGGER apart_is_never_changed BEFORE UPDATE ON apart BEGIN
    SELECT RAISE(ABORT, 'a text told apart is never changed');
END;

-- Jobs of other bays, each as the exact text of its export. The book's own chain names it by SHA-256(text).
CREATE TABLE imported (
    hash BLOB NOT NULL PRIMARY KEY CHECK (length(hash) = 32),
    text TEXT NOT NULL
) STRICT;

CREATE TRIGGER imported_is_never_changed BEFORE UPDATE ON imported BEGIN
    SELECT RAISE(ABORT, 'an imported job is never changed');
END;

CREATE TRIGGER imported_is_never_removed BEFORE DELETE ON imported BEGIN
    SELECT RAISE(ABORT, 'an imported job is never removed');
END;

-- What the list of jobs shows of each, made of its entries with the last of them. It holds nothing of its own: what
-- verifies the book makes it anew and compares.
CREATE TABLE card (
    job  INTEGER NOT NULL PRIMARY KEY REFERENCES job (id),
    len  INTEGER NOT NULL CHECK (len >= 1),
    text TEXT    NOT NULL
) STRICT;

PRAGMA user_version = 2;
