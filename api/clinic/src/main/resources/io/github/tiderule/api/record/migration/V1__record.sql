-- Times are milliseconds since 1970 in UTC. Documents are JSON texts.
-- Of entry, revision, advice and review nothing is ever changed or removed.

CREATE TABLE person (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL UNIQUE,
  role TEXT NOT NULL,
  password TEXT,
  created_at BIGINT NOT NULL,
  closed_at BIGINT
);

CREATE TABLE session (
  digest TEXT PRIMARY KEY,
  person TEXT NOT NULL REFERENCES person (id),
  csrf TEXT NOT NULL,
  created_at BIGINT NOT NULL,
  expires_at BIGINT NOT NULL
);

CREATE TABLE api_token (
  id TEXT PRIMARY KEY,
  person TEXT NOT NULL REFERENCES person (id),
  digest TEXT NOT NULL UNIQUE,
  label TEXT NOT NULL,
  created_at BIGINT NOT NULL,
  revoked_at BIGINT
);

CREATE TABLE audit (
  id TEXT PRIMARY KEY,
  at BIGINT NOT NULL,
  person TEXT,
  deed TEXT NOT NULL,
  about TEXT,
  female TEXT,
  address TEXT
);
CREATE INDEX audit_person ON audit (person, id);
CREATE INDEX audit_female ON audit (female, id);

CREATE TABLE female (
  id TEXT PRIMARY KEY,
  owner TEXT NOT NULL REFERENCES person (id),
  handle TEXT NOT NULL,
  document TEXT NOT NULL,
  version INTEGER NOT NULL,
  shared INTEGER NOT NULL,
  created_at BIGINT NOT NULL,
  changed_at BIGINT NOT NULL,
  UNIQUE (owner, handle)
);

CREATE TABLE cycle (
  id TEXT PRIMARY KEY,
  female TEXT NOT NULL REFERENCES female (id),
  document TEXT NOT NULL,
  as_of BIGINT,
  seen_at BIGINT NOT NULL,
  version INTEGER NOT NULL,
  entries INTEGER NOT NULL,
  created_at BIGINT NOT NULL,
  changed_at BIGINT NOT NULL
);
CREATE INDEX cycle_female ON cycle (female, id);

CREATE TABLE revision (
  subject TEXT NOT NULL,
  version INTEGER NOT NULL,
  document TEXT NOT NULL,
  person TEXT NOT NULL,
  at BIGINT NOT NULL,
  PRIMARY KEY (subject, version)
);

CREATE TABLE entry (
  cycle TEXT NOT NULL REFERENCES cycle (id),
  number INTEGER NOT NULL,
  observation TEXT NOT NULL,
  change TEXT NOT NULL,
  replaces INTEGER,
  document TEXT,
  reason TEXT,
  person TEXT NOT NULL REFERENCES person (id),
  at BIGINT NOT NULL,
  PRIMARY KEY (cycle, number),
  UNIQUE (cycle, replaces)
);
CREATE INDEX entry_observation ON entry (cycle, observation, number);

CREATE TABLE advice (
  id TEXT PRIMARY KEY,
  cycle TEXT NOT NULL REFERENCES cycle (id),
  given_at BIGINT NOT NULL,
  as_of BIGINT NOT NULL,
  person TEXT NOT NULL REFERENCES person (id),
  engine TEXT NOT NULL,
  rules TEXT NOT NULL,
  cycle_file TEXT NOT NULL,
  answer TEXT NOT NULL
);
CREATE INDEX advice_cycle ON advice (cycle, id);

CREATE TABLE review (
  id TEXT PRIMARY KEY,
  advice TEXT NOT NULL REFERENCES advice (id),
  person TEXT NOT NULL REFERENCES person (id),
  at BIGINT NOT NULL,
  verdict TEXT NOT NULL,
  note TEXT
);
CREATE INDEX review_advice ON review (advice, id);

CREATE TABLE kept_answer (
  person TEXT NOT NULL,
  idempotency_key TEXT NOT NULL,
  fingerprint TEXT NOT NULL,
  status INTEGER NOT NULL,
  body TEXT,
  location TEXT,
  tag TEXT,
  at BIGINT NOT NULL,
  PRIMARY KEY (person, idempotency_key)
);
CREATE INDEX kept_answer_at ON kept_answer (at);
