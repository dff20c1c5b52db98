-- The record: jobs, and the entries of each in a chain of hashes. What the hash covers stands in src/chain.rs.
--
-- Every migration ends in the next user_version, which is how a program sees that a book is newer than itself.

PRAGMA application_id = 1113147460; -- 'BYHD': this file is a job book

CREATE TABLE job (
    id     INTEGER PRIMARY KEY CHECK (id >= 0),
    -- RFC 3339 with offset, the same text as `at` of the job's first entry. Row 0 is the book itself, which has none.
    opened TEXT CHECK ((id = 0) = (opened IS NULL))
) STRICT;

INSERT INTO job (id, opened) VALUES (0, NULL);

CREATE TABLE entry (
    mono   INTEGER PRIMARY KEY CHECK (mono >= 1),              -- place in the whole book, over all jobs, without gaps
    job    INTEGER NOT NULL REFERENCES job (id),               -- 0: the book's own chain, one entry for each job opened
    number INTEGER NOT NULL CHECK (number >= 1),               -- place in the job's chain, without gaps
    at     TEXT    NOT NULL,                                   -- RFC 3339 with offset, hashed as it stands here
    body   TEXT    NOT NULL,                                   -- JSON, hashed as it stands here
    hash   BLOB    NOT NULL CHECK (length(hash) = 32),
    UNIQUE (job, number)
) STRICT;

-- The guards work against mistakes: other programs, later versions of this one. Against intent there are the hashes.
-- The two on insert also stop INSERT OR REPLACE, which would take a row away without asking the guards on delete.

CREATE TRIGGER entry_goes_at_the_end BEFORE INSERT ON entry BEGIN
    SELECT RAISE(ABORT, 'an entry goes at the end of its job and of the book')
    WHERE NEW.mono IS NOT (SELECT coalesce(max(mono), 0) + 1 FROM entry)
       OR NEW.number IS NOT (SELECT coalesce(max(number), 0) + 1 FROM entry WHERE job = NEW.job);
END;

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry BEGIN
    SELECT RAISE(ABORT, 'an entry is never changed');
END;

CREATE TRIGGER entry_is_never_removed BEFORE DELETE ON entry BEGIN
    SELECT RAISE(ABORT, 'an entry is never removed');
END;

CREATE TRIGGER job_goes_at_the_end BEFORE INSERT ON job BEGIN
    SELECT RAISE(ABORT, 'a job goes at the end of the book')
    WHERE NEW.id IS NOT (SELECT max(id) + 1 FROM job);
END;

CREATE TRIGGER job_is_never_changed BEFORE UPDATE ON job BEGIN
    SELECT RAISE(ABORT, 'a job is never changed');
END;

CREATE TRIGGER job_is_never_removed BEFORE DELETE ON job BEGIN
    SELECT RAISE(ABORT, 'a job is never removed');
END;

PRAGMA user_version = 1;
