-- Links by which one season is read by who is no user.
CREATE TABLE season_link (
  id TEXT PRIMARY KEY,
  cycle TEXT NOT NULL REFERENCES cycle (id),
  person TEXT NOT NULL REFERENCES person (id),
  digest TEXT NOT NULL UNIQUE,
  label TEXT NOT NULL,
  created_at BIGINT NOT NULL,
  expires_at BIGINT NOT NULL,
  used_at BIGINT,
  revoked_at BIGINT
);
CREATE INDEX season_link_cycle ON season_link (cycle, id);
