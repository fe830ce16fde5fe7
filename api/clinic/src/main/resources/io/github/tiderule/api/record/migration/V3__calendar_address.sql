-- Addresses that calendar programs subscribe to. Without a female, it is of all the person keeps.
CREATE TABLE calendar_address (
  id TEXT PRIMARY KEY,
  person TEXT NOT NULL REFERENCES person (id),
  digest TEXT NOT NULL UNIQUE,
  female TEXT REFERENCES female (id),
  created_at BIGINT NOT NULL,
  used_at BIGINT,
  revoked_at BIGINT
);
CREATE INDEX calendar_address_person ON calendar_address (person, id);
